"""Fonts of the computer: which files are looked at, and in which order."""

import shutil
from collections.abc import Iterator
from importlib.resources import files
from pathlib import Path

import pytest

from xlbatch.lettering import computer_fonts
from xlbatch.lettering.computer_fonts import computer_font, font_files

FONT = str(files("fontpkg_archivo_black") / "files" / "ArchivoBlack-Regular.ttf")


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Path]:
    monkeypatch.setattr(computer_fonts, "_folders", lambda: iter([tmp_path]))
    font_files.cache_clear()
    yield tmp_path
    font_files.cache_clear()


def test_bold_upright_ones_come_first_then_by_name(folder: Path) -> None:
    (folder / "more").mkdir()
    for name in ("b.ttf", "a-BoldItalic.otf", "z-Bold.TTF", "more/c-bold.ttc", "d.otc", "Bold oblique.ttf"):
        (folder / name).touch()
    for name in ("bold.txt", "bold.woff", "e-bold"):
        (folder / name).touch()
    (folder / "bold.ttf").mkdir()
    names = [file.name for file in font_files()]
    assert names == ["c-bold.ttc", "z-Bold.TTF", "Bold oblique.ttf", "a-BoldItalic.otf", "b.ttf", "d.otc"]


def test_a_font_is_taken_only_where_it_has_every_letter(folder: Path) -> None:
    (folder / "broken-bold.ttf").write_bytes(b"no font")
    shutil.copy(FONT, folder / "whole.ttf")
    face = computer_font("Ana")
    assert face
    assert face.name == "whole.ttf"
    assert computer_font("Ana \u4e2d") is None
    assert computer_font(" ") is None  # without ink
