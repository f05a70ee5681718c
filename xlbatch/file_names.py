"""Names for files, made of what people typed, that every system takes."""

import re
import unicodedata

_FORBIDDEN = re.compile(r'[<>:"/\\|?*\x00-\x1f\x7f]+')  # Windows forbids the most
_UNSEEN = ("Cf", "Cs", "Cn", "Zl", "Zp")  # direction marks and the like, by Unicode's general category
MOST_BYTES = 100  # file systems count bytes (255 for a whole name), not letters


def plain_name(text: str) -> str:
    """The text as part of a file's name: shortened at a whole letter; may be empty."""
    seen = "".join(sign for sign in text if unicodedata.category(sign) not in _UNSEEN)
    name = _FORBIDDEN.sub("-", seen).strip(" .")
    return name.encode()[:MOST_BYTES].decode(errors="ignore").strip(" .")
