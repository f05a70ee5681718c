"""The fonts at hand: those that come with the program (trade/fonts.csv), and font files beside the workbook."""

from functools import cache, partial
from importlib.resources import files
from pathlib import Path

from xlbatch.files.beside import beside
from xlbatch.lettering.typeface import Typeface, lacking, open_typeface
from xlbatch.trade.tables import Line, table

_WIDTHS = ("narrow", "usual", "wide")


def font_names() -> tuple[str, ...]:
    """The names of the bundled fonts, the usual one first."""
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


def stand_in(text: str, asked: str) -> Typeface | None:
    """The bundled font most like the one called `asked` that has all characters of `text`, or None."""
    alike = sorted(table("fonts"), key=partial(_unlike, _look(asked)))
    return next((face for face in map(_bundled, alike) if not lacking(face, text)), None)


def _look(name: str) -> Line:
    """A font's line in the table; of a font that is not in it, one of a usual look."""
    usual = {"Shape": "plain", "Width": "usual"}
    return next((line for line in table("fonts") if line["Font"] == name), usual)


def _unlike(line: Line, other: Line) -> tuple[bool, int]:
    """How unlike two fonts look: first by the shape of their letters, then by how wide those are."""
    wider = _WIDTHS.index(line["Width"]) - _WIDTHS.index(other["Width"])
    return line["Shape"] != other["Shape"], abs(wider)


def fewest_lacking(text: str) -> tuple[str, ...]:
    """The characters of `text` that the best of the bundled fonts lacks."""
    return min((lacking(face, text) for face in map(_bundled, table("fonts"))), key=len)


@cache
def _open(package: str, file: str, name: str, weight: str) -> Typeface:
    path = Path(str(files(package))) / "files" / file
    face = open_typeface(name, path, int(weight) if weight else None)
    assert face is not None, path  # a packaged font that cannot be read is a fault of the installation
    return face


def _bundled(line: Line) -> Typeface:
    return _open(line["Package"], line["File"], line["Font"], line["Weight"])
