"""One example workbook for each problem code: it has that problem, at the cell it says, and no other."""

import re
from collections.abc import Iterator
from datetime import datetime
from pathlib import Path
from types import ModuleType
from typing import Any

import openpyxl
import pytest
from fontTools.fontBuilder import FontBuilder
from fontTools.pens.ttGlyphPen import TTGlyphPen
from PIL import Image

from xlbatch.lettering import computer_fonts
from xlbatch.problems import KINDS
from xlbatch.problems.of_sign_ups import SIGN_UP_KINDS
from xlbatch.roster.read import Reading, read
from xlbatch.run import Options, make_plan, run
from xlbatch.sheets.job_sheet import ASSUMED

ROOT = Path(__file__).resolve().parents[2]
MISTAKES = ROOT / "example_workbooks" / "with_mistakes"
RUN_AT = datetime(2026, 5, 4, 9, 30)
CODES = [kind.code for kind in KINDS if kind not in SIGN_UP_KINDS]  # those need several workbooks: tests/sign_up
PLAIN = {*ASSUMED, "off-center"}  # notes that many a job has
WHOLE = (
    "list-not-found",
    "memory-damaged",
    "anything-cut",
    "row-deleted",
    "sheet-joined",
    "sheet-without-names",
    "sheet-unknown",
    "sheet-second",
    "sheet-again",
    "sheet-older",
    "sheet-hidden-rows",
    *ASSUMED,
)  # no one cell
LETTER = "Ա"  # of the example for a font of the computer


def table(make_mistakes: ModuleType) -> dict[str, Any]:
    return dict(make_mistakes.mistakes())


def test_every_code_has_a_workbook_and_no_other_is_there(make_mistakes: ModuleType) -> None:
    assert sorted(table(make_mistakes)) == sorted(CODES)
    assert sorted(path.stem for path in MISTAKES.iterdir() if path.suffix in (".xlsx", ".csv")) == sorted(CODES)


@pytest.fixture(scope="module", autouse=True)
def _fonts_of_the_computer(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    """One font, with the one letter that no bundled font has, in place of this computer's own."""
    folder = tmp_path_factory.mktemp("fonts")
    pen = TTGlyphPen(None)
    for move, *at in (("moveTo", 0, 0), ("lineTo", 0, 700), ("lineTo", 700, 700), ("lineTo", 700, 0)):
        getattr(pen, move)(tuple(at))
    pen.closePath()
    font = FontBuilder(1000, isTTF=True)
    font.setupGlyphOrder([".notdef", "square"])
    font.setupCharacterMap({ord(LETTER): "square"})
    square = pen.glyph()
    font.setupGlyf({".notdef": square, "square": square})
    font.setupHorizontalMetrics({".notdef": (800, 0), "square": (800, 0)})
    font.setupHorizontalHeader(ascent=800, descent=-200)
    font.setupNameTable({"familyName": "Square", "styleName": "Bold"})
    font.setupOS2(sCapHeight=700, usWeightClass=700)
    font.setupPost()
    font.save(folder / "square bold.ttf")
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(computer_fonts, "_folders", lambda: iter([folder]))
        computer_fonts.font_files.cache_clear()
        yield
    computer_fonts.font_files.cache_clear()


@pytest.mark.parametrize("code", CODES)
def test_a_mistake_is_found_at_its_cell_and_nothing_else_is(code: str, make_mistakes: ModuleType) -> None:
    """Besides the plain notes of what was assumed. Each names sheet and cell, what was found and what to do."""
    reading = read(MISTAKES / make_mistakes.example(code, table(make_mistakes)[code]))
    assert isinstance(reading, Reading)
    problems = make_plan(reading, 0, lambda _stage: None, RUN_AT).problems
    found = {(each.code, " ".join(filter(None, each.where))) for each in problems}
    assert (code, table(make_mistakes)[code]["at"]) in found
    assert {each for each, _ in found} - PLAIN <= {code}
    assert len([each for each in problems if each.code == code]) == 1 or code in PLAIN
    for each in problems:
        assert each.where.sheet
        assert each.where.cell or each.code in WHOLE or each.code != code
        assert " ".join(filter(None, each.where)) in each.sentence
        assert each.wrong.endswith((".", ":"))
        assert each.todo.endswith((".", "…"))
        assert not re.search(r"\{[a-z_]*\}", each.wrong + each.todo)  # a fact that was not filled in
        (it,) = [kind for kind in KINDS if kind.code == each.code]
        assert "{found}" not in it.wrong or each.found in each.wrong


def test_the_script_makes_the_same_workbooks(make_mistakes: ModuleType, tmp_path: Path) -> None:
    make_mistakes.make_all(tmp_path)
    assert sorted(path.name for path in tmp_path.iterdir()) == sorted(path.name for path in MISTAKES.iterdir())
    for path in tmp_path.iterdir():
        if path.suffix == ".xlsx":
            assert cells(path) == cells(MISTAKES / path.name), path.name
        elif path.suffix == ".png":
            with Image.open(path) as made, Image.open(MISTAKES / path.name) as kept:
                assert made.convert("RGBA").tobytes() == kept.convert("RGBA").tobytes(), path.name
        else:
            assert path.read_bytes().split() == (MISTAKES / path.name).read_bytes().split()


def cells(path: Path) -> dict[tuple[str, str], object]:
    book = openpyxl.load_workbook(path)
    filled = (cell for sheet in book for row in sheet.iter_rows() for cell in row if cell.value is not None)
    return {(cell.parent.title, cell.coordinate): (cell.value, cell.number_format) for cell in filled}


def test_the_problems_sheet_links_to_the_cell_and_the_roster_colors_and_annotates_it(tmp_path: Path) -> None:
    """Size is the roster's fifth column there, and the first of its rows is the fourth."""
    copy = tmp_path / "list.xlsx"
    copy.write_bytes((MISTAKES / "size-unknown.xlsx").read_bytes())
    outcome = run(copy, Options(effort=0), lambda _stage: None, RUN_AT)
    assert outcome.code == 2
    assert outcome.written is not None
    book = openpyxl.load_workbook(outcome.written)
    problem = next(row for row in book["Problems"].iter_rows() if "size-unknown" in [cell.value for cell in row])
    assert problem[2].hyperlink is not None
    cell = book["Roster"][str(problem[2].hyperlink.location).split("!")[1].replace("$", "")]
    assert cell.value == "mediun"
    assert cell.fill.fgColor.rgb not in (None, "00000000")
    assert cell.comment is not None
    assert "is no size" in cell.comment.text
