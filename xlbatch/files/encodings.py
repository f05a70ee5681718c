"""Judges in which encoding a text file that does not say so, and is no UTF-8, was written."""

import re
import unicodedata
from functools import cache
from typing import NamedTuple

from xlbatch.trade.tables import table

_MOST_BYTES = 50_000  # of the lines with such letters that are looked at
_NAMES_TOLD = 5
# Encodings spreadsheet programs still write, and what people call them.
NAMES = {
    "cp1252": "Western European (Windows-1252)",
    "cp1250": "Central European (Windows-1250)",
    "cp1254": "Turkish (Windows-1254)",
    "cp1251": "Cyrillic (Windows-1251)",
    "cp1253": "Greek (Windows-1253)",
    "cp1255": "Hebrew (Windows-1255)",
    "cp1256": "Arabic (Windows-1256)",
    "cp1257": "Baltic (Windows-1257)",
    "mac_roman": "Western European (Mac)",
    "cp850": "Western European (DOS 850)",
    "cp852": "Central European (DOS 852)",
    "cp866": "Cyrillic (DOS 866)",
    "koi8_r": "Cyrillic (KOI8-R)",
    "cp932": "Japanese (Shift-JIS)",
    "cp949": "Korean (949)",  # before Chinese: bytes of Korean letters are also those of common characters
    "gb18030": "Chinese (GB 18030)",
    "big5": "Chinese (Big5)",
}
_SIGNS_BETWEEN_WORDS = "‘’“”„–—…€£§°«»·•\u00a0"
_WORD = re.compile(r"[^\s,;:|\t\"()]+")


class Judged(NamedTuple):
    """The encoding, and how plausible the letters it gives are (0 to 1)."""

    encoding: str
    plausible: float


def judge(data: bytes) -> Judged:
    """The encoding that gives letters as one language has them; of several, the commoner, then the library's first."""
    sample = b"\n".join(line for line in data.splitlines() if not line.isascii())[:_MOST_BYTES]
    order = (*NAMES, *_by_library(sample))
    judged = (Judged(encoding, _plausible(sample, encoding)) for encoding in dict.fromkeys(order))
    return max(judged, key=lambda judgment: judgment.plausible)


def _by_library(sample: bytes) -> tuple[str, ...]:
    """The encodings charset-normalizer finds possible beside those of NAMES, likeliest first."""
    from charset_normalizer import from_bytes

    return tuple(match.encoding for match in from_bytes(sample) if not match.encoding.startswith("utf"))


def _plausible(sample: bytes, encoding: str) -> float:
    """The share of the letters outside a to z that one language has; 0 where the bytes are none of the encoding."""
    try:
        text = sample.decode(encoding)
    except UnicodeDecodeError:
        return 0.0
    words = [word.strip(_SIGNS_BETWEEN_WORDS) for word in _WORD.findall(text) if not word.isascii()]
    letters = "".join(_small(sign) for word in words for sign in word if not sign.isascii() and sign not in "’")
    if not letters:
        return 0.0
    # The list as of one language, and each word by itself: lists mix families, no word mixes languages.
    held = (_held(letters) + sum(map(_held, words))) / 2
    asian = float(sum(_is_common_there(letter, encoding) for letter in letters))
    oddness: float = sum(map(_oddness, words))
    return float(max(held, asian) - oddness) / len(letters)


def _held(text: str) -> float:
    """How many of a text's letters outside a to z the language has that has most of them."""
    letters = [_small(sign) for sign in text if not sign.isascii()]
    held = [weight * sum(letter in alphabet for letter in letters) for alphabet, weight in _alphabets()]
    return max(held)


def _small(sign: str) -> str:
    """A letter in its small form; İ, whose own is two signs, as the other i beside a to z."""
    return "ı" if sign == "İ" else sign.lower()


def _oddness(word: str) -> float:
    """How unlike a word: alphabets mixed, capitals inside it, or a small letter at its start."""
    scripts = {unicodedata.name(letter, "").partition(" ")[0] for letter in word if letter.isalpha()}
    if len(scripts - {"CJK", "HIRAGANA", "KATAKANA"}) > 1 or ("LATIN" in scripts and len(scripts) > 1):
        return float(len(word))
    parts = re.findall(r"[^\W\d_]+", word)
    turned: int = sum(
        not (part.istitle() or part.islower() or part.isupper()) and part != part.lower() for part in parts
    )
    return 0.5 * turned + 0.1 * word[:1].islower()


# The lead bytes of each encoding's common characters: JIS X 0208 level 1 with kana, GB 2312 level 1, Big5 level 1,
# KS X 1001 syllables.
_COMMON = {"cp932": (0x82, 0x98), "gb18030": (0xB0, 0xD7), "big5": (0xA4, 0xC6), "cp949": (0xB0, 0xC8)}


def _is_common_there(letter: str, encoding: str) -> bool:
    first, last = _COMMON.get(encoding, (1, 0))
    return first <= letter.encode(encoding, "replace")[0] <= last


@cache
def _alphabets() -> tuple[tuple[frozenset[str], float], ...]:
    return tuple((frozenset(line["Letters beside a to z"]), float(line["Weight"])) for line in table("alphabets"))


def called(encoding: str) -> str:
    """What people call an encoding, or its own name: ISO8859-2."""
    return NAMES.get(encoding, encoding.replace("_", "-").upper())


def names_concerned(text: str) -> str:
    """The first words in a text with letters outside a to z."""
    cells = (cell.strip('" ') for line in text.splitlines()[1:] for cell in re.split(r"[,;|\t]", line))
    return ", ".join(list(dict.fromkeys(cell for cell in cells if not cell.isascii()))[:_NAMES_TOLD])
