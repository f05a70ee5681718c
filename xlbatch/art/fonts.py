"""The fonts at hand: those that come with the program (trade/fonts.csv), and font files beside the workbook."""

from functools import cache
from importlib.resources import files
from pathlib import Path

from xlbatch.art.beside import beside
from xlbatch.art.typeface import Typeface, open_typeface, set_line
from xlbatch.trade.tables import Line, table


def font_names() -> tuple[str, ...]:
    """The names of the bundled fonts, in the order in which they stand in for one another."""
    return tuple(line["Font"] for line in table("fonts"))


def find_font(name: str, folder: Path) -> Typeface | None:
    """The font called `name` (upper or lower case alike), or the font file of that name in `folder`, or None."""
    for line in table("fonts"):
        if line["Font"].casefold() == name.strip().casefold():
            return _bundled(line)
    file = beside(folder, name)
    if file is None or file.suffix.lower() not in (".ttf", ".otf"):
        return None
    return open_typeface(file.name, file)


def first_font() -> Typeface:
    """The bundled font used where the one asked for is not to be had."""
    return _bundled(table("fonts")[0])


def stand_in(text: str) -> Typeface | None:
    """The first bundled font that has all characters of `text`, or None."""
    return next((face for face in map(_bundled, table("fonts")) if not set_line(face, text).lacks), None)


def fewest_lacking(text: str) -> tuple[str, ...]:
    """The characters of `text` that the best of the bundled fonts lacks."""
    return min((set_line(face, text).lacks for face in map(_bundled, table("fonts"))), key=len)


@cache
def _open(package: str, file: str, name: str, weight: str) -> Typeface:
    path = Path(str(files(package))) / "files" / file
    face = open_typeface(name, path, int(weight) if weight else None)
    assert face is not None, path  # a packaged font that cannot be read is a fault of the installation
    return face


def _bundled(line: Line) -> Typeface:
    return _open(line["Package"], line["File"], line["Font"], line["Weight"])
