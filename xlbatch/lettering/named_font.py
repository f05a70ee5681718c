"""The font that a drawing names: one that comes with the program, one beside the workbook, one on the computer, or else
the bundled one nearest in kind."""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import uharfbuzz as hb

from xlbatch.lettering.computer_fonts import font_files
from xlbatch.lettering.fonts import find_font, font_names
from xlbatch.lettering.typeface import Typeface, open_typeface
from xlbatch.trade.tables import table

_FAMILY, _STYLE, _TYPOGRAPHIC_FAMILY, _TYPOGRAPHIC_STYLE = 1, 2, 16, 17  # name numbers: OpenType, table `name`
_PLAIN_WORDS = re.compile(r"\b(regular|normal|bold|black|heavy|italic|mt|ms|ps)\b|[^a-z0-9]")
_HEAVY = re.compile(r"bold|black|heavy", re.IGNORECASE)
_SLANTED = re.compile(r"italic|oblique", re.IGNORECASE)


@dataclass(frozen=True, eq=False)
class Named:
    """A font, and the name asked for where it is another: "" where it is the one."""

    face: Typeface
    instead_of: str = ""


def named_font(families: Iterable[str], bold: bool, italic: bool, folder: Path, usual: str) -> Named:
    """The first family of `families` to be had, bold or italic where it can be; with none asked for, the `usual` one;
    with none to be had, the bundled font nearest in kind."""
    families = tuple(families)
    for family in families:
        if face := _to_be_had(family, bold, italic, folder):
            return Named(face)
    wanted = families[0] if families else ""
    nearest = find_font(_nearest(wanted, bold) if families else usual, folder) or find_font(font_names()[0], folder)
    assert nearest  # a bundled font
    return Named(nearest, wanted)


def _to_be_had(family: str, bold: bool, italic: bool, folder: Path) -> Typeface | None:
    bundled = next((name for name in font_names() if _plain(name) == _plain(family)), None)
    if face := find_font(bundled or family, folder):
        return face
    for files in (sorted(_fonts_in(folder)), font_files()):
        if file := _best(_files_of(tuple(files), _plain(family)), bold, italic):
            return open_typeface(_full_name(file), file, 700 if bold else None)
    return None


def _fonts_in(folder: Path) -> Iterator[Path]:
    return (file for file in folder.glob("*") if file.suffix.lower() in (".ttf", ".otf"))


def _best(files: tuple[Path, ...], bold: bool, italic: bool) -> Path | None:
    """The file of a family nearest to the weight and slant asked for."""
    return min(
        files, key=lambda file: (_is(_SLANTED, file) != italic, _is(_HEAVY, file) != bold, str(file)), default=None
    )


def _is(kind: re.Pattern[str], file: Path) -> bool:
    return bool(kind.search(_names(file)[1]))


@cache
def _files_of(files: tuple[Path, ...], family: str) -> tuple[Path, ...]:
    return tuple(file for file in files if family and _plain(_names(file)[0]) == family)


@cache
def _names(file: Path) -> tuple[str, str]:
    """The family and style a font file gives itself; of one that can't be read, nothing."""
    try:
        face = hb.Face(hb.Blob.from_file_path(str(file)))
        family = face.get_name(_TYPOGRAPHIC_FAMILY) or face.get_name(_FAMILY)
        style = face.get_name(_TYPOGRAPHIC_STYLE) or face.get_name(_STYLE)
    except (hb.HarfBuzzError, OSError, ValueError):
        return "", ""
    return family or "", style or ""


def _full_name(file: Path) -> str:
    return " ".join(part for part in _names(file) if part and part != "Regular")


def _plain(name: str) -> str:
    """A family's name without spaces, signs and words for its weight."""
    return _PLAIN_WORDS.sub("", name.casefold())


def _nearest(family: str, bold: bool) -> str:
    """The bundled font nearest in kind to a family, by words in its name."""
    name = family.casefold()
    for line in table("font_kinds"):
        if re.search(line["Words"], name) and line["Bold"] in ("", "yes" if bold else "no"):
            return line["Font"]
    return font_names()[0]
