"""Finding fonts, and what stands in where one lacks a letter."""

import importlib.util
import shutil
from pathlib import Path
from typing import Any

import pytest

from xlbatch.files.beside import beside
from xlbatch.lettering.fonts import fewest_lacking, find_font, font_names, stand_in
from xlbatch.lettering.typeface import set_line
from xlbatch.trade.tables import table


def test_a_bundled_font_is_found_in_any_case(tmp_path: Path) -> None:
    found = find_font(" archivo BLACK ", tmp_path)
    assert found
    assert found.name == "Archivo Black"
    assert find_font("Archivo Blak", tmp_path) is None


def test_a_font_file_beside_the_workbook_is_found(tmp_path: Path) -> None:
    spec = importlib.util.find_spec("font_fjallaone")
    assert spec
    assert spec.origin
    shutil.copy(Path(spec.origin).parent / "files" / "FjallaOne-Regular.ttf", tmp_path / "Team.ttf")
    found = find_font("Team.ttf", tmp_path)
    assert found
    assert found.name == "Team.ttf"
    assert found.cap_height == 1708  # the ink height of its H


def test_a_file_that_is_no_font_is_not_found(tmp_path: Path) -> None:
    (tmp_path / "Team.ttf").write_bytes(b"not a font at all")
    (tmp_path / "notes.txt").write_text("Ana")
    assert find_font("Team.ttf", tmp_path) is None
    assert find_font("notes.txt", tmp_path) is None


@pytest.mark.parametrize(
    "name",
    ["../logo.svg", "..\\logo.svg", "/etc/passwd", "C:\\logo.svg", "C:logo.svg", "\\\\server\\share\\logo.svg", ""],
)
def test_no_file_outside_the_workbooks_folder_is_opened(tmp_path: Path, name: str) -> None:
    inside = tmp_path / "job"
    inside.mkdir()
    (tmp_path / "logo.svg").write_text("<svg/>")
    assert beside(inside, name) is None


def test_a_file_in_a_folder_inside_is_found(tmp_path: Path) -> None:
    (tmp_path / "art").mkdir()
    (tmp_path / "art" / "logo.svg").write_text("<svg/>")
    assert beside(tmp_path, "art/logo.svg") == beside(tmp_path, "art\\logo.svg") == tmp_path / "art" / "logo.svg"


@pytest.mark.parametrize(
    ("text", "asked", "used"),
    [
        ("Nguyễn", "Archivo Black", "Arimo Bold"),  # not Anton, which is much narrower
        ("Nguyễn", "Saira Condensed", "Anton"),
        ("Анна", "Anton", "Oswald Bold"),
        ("Анна", "Alfa Slab One", "Arimo Bold"),
        ("Ωμέγα", "Oswald Bold", "Arimo Bold"),
        ("דנה", "Archivo Black", "Arimo Bold"),
        ("কিরণ", "Archivo Black", "Hind Siliguri Bold"),
        ("தீபா", "Archivo Black", "Catamaran"),
        ("రాజశేఖర్", "Archivo Black", "Noto Sans Telugu"),
        ("อรุณี ทองดี", "Archivo Black", "Noto Sans Thai"),
        ("សុខា", "Archivo Black", "Noto Sans Khmer"),
        ("Ωμέγα", "Team.ttf", "Arimo Bold"),
    ],
)
def test_the_font_most_like_the_one_asked_for_stands_in(text: str, asked: str, used: str) -> None:
    found = stand_in(text, asked)
    assert found
    assert found.name == used


@pytest.mark.parametrize("line", table("fonts"), ids=lambda line: line["Font"])
def test_widths_in_the_table_are_those_of_the_letters(line: Any) -> None:
    """A sample of all kinds of letters in cap heights: up to 13 narrow, up to 17 usual, wider is wide."""
    face = find_font(line["Font"], Path())
    assert face
    box = set_line(face, "HARVEST oneadis 0258").box
    assert box
    wide = (box[2] - box[0]) / face.cap_height
    assert line["Width"] == ("narrow" if wide < 13 else "usual" if wide < 17 else "wide")


def test_letters_no_font_has_are_named() -> None:
    assert stand_in("Ana 日本", "Anton") is None
    assert fewest_lacking("Ana 日本") == ("日", "本")


def test_hidden_characters_are_not_lacking(tmp_path: Path) -> None:
    for name in font_names():
        found = find_font(name, tmp_path)
        assert found
        assert set_line(found, "An\u200da\u00ad Ruiz\u00a0").lacks == ()
