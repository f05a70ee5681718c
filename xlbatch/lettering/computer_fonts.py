"""Fonts on this computer, for letters that no bundled font has. Another computer may have others."""

import os
import sys
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import uharfbuzz as hb

from xlbatch.lettering.typeface import Typeface, open_typeface, set_line
from xlbatch.resources import home

_MOST = 5000  # font files looked at
_ENDINGS = (".ttf", ".otf", ".ttc", ".otc")  # of a collection, the first font


def computer_font(text: str) -> Typeface | None:
    """A font on this computer that has all of `text`, a bold one if there is one, or None."""
    wanted = {ord(letter) for letter in text}
    for file in font_files():
        if wanted <= _letters(file):
            face = open_typeface(file.name, file)
            if face and not (line := set_line(face, text)).lacks and line.box:
                return face
    return None


@cache
def _letters(file: Path) -> frozenset[int]:
    try:
        return frozenset(hb.Face(hb.Blob(file.read_bytes())).unicodes)
    except OSError:
        return frozenset()


@cache
def font_files() -> tuple[Path, ...]:
    """The font files, bold upright ones first, then by name, so that the same computer always takes the same one."""
    files = [
        file
        for folder in _folders()
        for file in sorted(folder.rglob("*"))[:_MOST]
        if file.suffix.lower() in _ENDINGS and file.is_file()
    ]
    return tuple(sorted(files, key=lambda file: (_plain(file.stem), file.name, str(file))))


def _plain(stem: str) -> bool:
    return "bold" not in stem.lower() or "italic" in stem.lower() or "oblique" in stem.lower()


def _folders() -> Iterator[Path]:
    user = home()
    if sys.platform == "win32":
        places = [
            Path(os.environ.get("WINDIR", "C:/Windows")) / "Fonts",
            user / "AppData/Local/Microsoft/Windows/Fonts",
        ]
    elif sys.platform == "darwin":
        places = [Path("/System/Library/Fonts"), Path("/Library/Fonts"), user / "Library/Fonts"]
    else:
        places = [
            Path("/usr/share/fonts"),
            Path("/usr/local/share/fonts"),
            user / ".local/share/fonts",
            user / ".fonts",
        ]
    return (place for place in places if place.is_dir())
