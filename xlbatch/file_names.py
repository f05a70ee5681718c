"""Names for files, made of what people typed, that every system takes."""

import re
import unicodedata
from collections.abc import Iterable, Mapping
from pathlib import PureWindowsPath

_FORBIDDEN = re.compile(r'[<>:"/\\|?*\x00-\x1f\x7f]+')  # Windows forbids the most
_UNSEEN = ("Cf", "Cs", "Cn", "Zl", "Zp")  # direction marks and the like, by Unicode's general category
MOST_BYTES = 100  # file systems count bytes (255 for a whole name), not letters


def plain_name(text: str) -> str:
    """The text as part of a file's name: shortened at a whole letter; may be empty."""
    seen = "".join(sign for sign in text if unicodedata.category(sign) not in _UNSEEN)
    name = _FORBIDDEN.sub("-", seen).strip(" .")
    return name.encode()[:MOST_BYTES].decode(errors="ignore").strip(" .")


def whole_name(text: str, otherwise: str) -> str:
    """The text as a file's name less its ending; `otherwise` where nothing is left of it."""
    name = plain_name(text) or otherwise
    return f"{otherwise} {name}" if PureWindowsPath(f"{name}.xlsx").is_reserved() else name  # CON.x is a device


def names_apart(texts: Iterable[str], otherwise: str) -> Mapping[str, str]:
    """A name for each text, as part of a file's name; no two alike where capitals do not count."""
    names: dict[str, str] = {}
    taken: set[str] = set()
    for text in texts:
        plain = plain_name(text) or otherwise
        name, number = plain, 2
        while name.casefold() in taken:
            name, number = f"{plain} {number}", number + 1
        taken.add(name.casefold())
        names[text] = name
    return names
