"""Finds text whose letters were read in the wrong encoding on the way into the list, and what it was before."""

import re

_LEADS = "\u00c2-\u00f4"  # what the first byte of a letter in UTF-8 looks like in Windows-1252
LOST = "\ufffd"  # stands for a letter that could not be read
_BYTES = {
    bytes([byte]).decode("cp1252"): byte for byte in range(0x80, 0x100) if byte not in (0x81, 0x8D, 0x8F, 0x90, 0x9D)
}
_BYTES |= {chr(byte): byte for byte in range(0x80, 0x100)}
_FOLLOWS = "".join(re.escape(sign) for sign, byte in _BYTES.items() if 0x80 <= byte < 0xC0)
_RUN = re.compile(f"[{_LEADS}][{_FOLLOWS}]{{1,3}}")


def is_broken(text: str) -> bool:
    """Whether a text holds letters in pieces (`MarÃ­a`), or the sign for a letter that was lost."""
    return not text.isascii() and (LOST in text or mended(text) != text)


def mended(text: str) -> str:
    """The text with letters in pieces put together: `María`. What stays unreadable stays as it is."""
    return text if text.isascii() else _RUN.sub(_letter, text)


def _letter(match: re.Match[str]) -> str:
    run = match[0]
    for end in range(len(run), 1, -1):
        try:
            letters = bytes(_BYTES[sign] for sign in run[:end]).decode("utf-8")
        except UnicodeDecodeError:
            continue
        if len(letters) == 1 and (letters.isalpha() or "\u2000" <= letters <= "\u206f" or letters == "\u00a0"):
            return letters + run[end:]
    return run
