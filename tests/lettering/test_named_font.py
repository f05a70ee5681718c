"""The font that a drawing names: bundled, beside the workbook, on the computer, or the nearest in kind."""

import importlib.util
import shutil
from pathlib import Path

import pytest
from fontTools.ttLib import TTFont

from xlbatch.geometry.ink import outline
from xlbatch.lettering.fonts import font_names
from xlbatch.lettering.named_font import named_font
from xlbatch.lettering.typeface import set_line

COMPUTER = "xlbatch.lettering.named_font.font_files"


def font_file(package: str, file: str) -> Path:
    spec = importlib.util.find_spec(package)
    assert spec
    assert spec.origin
    return Path(spec.origin).parent / "files" / file


@pytest.fixture(autouse=True)
def _no_fonts_of_the_computer(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(COMPUTER, tuple)


def named(
    folder: Path, *families: str, bold: bool = False, italic: bool = False, usual: str = "Anton"
) -> tuple[str, str]:
    """The font taken, and the one asked for in its place."""
    found = named_font(families, bold, italic, folder, usual)
    return found.face.name, found.instead_of


@pytest.mark.parametrize(
    ("families", "taken"),
    [
        (("Anton",), ("Anton", "")),
        (("lobster regular",), ("Lobster", "")),
        (("Archivo-Black MT",), ("Archivo Black", "")),
        (("Nosuch", "Oswald"), ("Oswald Bold", "")),
        ((), ("Anton", "")),  # the usual one
        (("Old Fancy", "Nosuch"), ("Lobster", "Old Fancy")),
        (("Impact",), ("Anton", "Impact")),
        (("Army Stencil",), ("Black Ops One", "Army Stencil")),
        (("Times",), ("Arimo Bold", "Times")),
    ],
)
def test_a_bundled_font_of_that_name_or_the_nearest_in_kind(
    tmp_path: Path, families: tuple[str, ...], taken: tuple[str, str]
) -> None:
    assert named(tmp_path, *families) == taken
    assert named(tmp_path, *families, bold=True, italic=True) == taken


def test_without_a_usual_font_the_first_is_taken(tmp_path: Path) -> None:
    assert named(tmp_path, usual="Nosuch") == (font_names()[0], "")


STYLES = ("Regular", "Bold", "Italic", "BoldItalic")


@pytest.mark.parametrize(
    ("there", "bold", "italic", "taken"),
    [
        (STYLES, False, False, "Lato"),
        (STYLES, True, False, "Lato Bold"),
        (STYLES, False, True, "Lato Italic"),
        (STYLES, True, True, "Lato Bold Italic"),
        (("Regular", "Italic"), True, False, "Lato"),
        (("Regular", "Italic"), True, True, "Lato Italic"),
        (("Bold", "Italic"), False, False, "Lato Bold"),  # upright before the right weight
        (("Bold", "BoldItalic"), False, True, "Lato Bold Italic"),
        (("Black", "Regular"), True, False, "Lato Black"),
        (("Black", "Regular"), False, False, "Lato"),
    ],
)
def test_of_a_family_beside_the_workbook_the_nearest_in_slant_and_weight(
    tmp_path: Path, there: tuple[str, ...], bold: bool, italic: bool, taken: str
) -> None:
    for no, style in enumerate(there):
        shutil.copy(font_file("font_lato", f"Lato-{style}.ttf"), tmp_path / f"{9 - no}{['.ttf', '.OTF'][no % 2]}")
    (tmp_path / "broken.ttf").write_bytes(b"no font")
    assert named(tmp_path, "Lato", bold=bold, italic=italic) == (taken, "")
    assert named(tmp_path, "Lato Plus") == ("Arimo Bold", "Lato Plus")


def test_fonts_beside_the_workbook_come_before_those_of_the_computer(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    bold, italic = (font_file("font_lato", f"Lato-{style}.ttf") for style in ("Bold", "Italic"))
    monkeypatch.setattr(COMPUTER, lambda: (italic,))
    assert named(tmp_path, "Nosuch", "Lato") == ("Lato Italic", "")
    shutil.copy(bold, tmp_path / "some.txt")
    assert named(tmp_path, "Lato", italic=True) == ("Lato Italic", "")
    shutil.copy(bold, tmp_path / "some.ttf")
    assert named(tmp_path, "Lato", italic=True) == ("Lato Bold", "")
    assert named(tmp_path, "some.ttf") == ("some.ttf", "")


def test_a_variable_font_is_bold_where_bold_is_asked_for(tmp_path: Path) -> None:
    font = TTFont(font_file("fontpkg_arimo", "Arimo[wght].ttf"))
    for number in (1, 16):
        font["name"].setName("Team Sans", number, 3, 1, 0x409)
    font.save(tmp_path / "team.ttf")
    areas = [
        outline(set_line(named_font(("Team Sans",), bold, False, tmp_path, "").face, "H").pieces).area
        for bold in (False, True)
    ]
    assert areas[1] > 1.3 * areas[0]
