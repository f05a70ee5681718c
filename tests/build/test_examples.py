"""The example workbooks are the ones the script makes, and complete."""

from pathlib import Path
from types import ModuleType

import openpyxl
import pytest

EXAMPLES = Path(__file__).resolve().parents[2] / "example_workbooks"
WORKBOOKS = ("cove weekend.xlsx", "lantern walk.xlsx", "relay squad.xlsx")
Cells = dict[tuple[str, str], object]


def cells(path: Path) -> Cells:
    book = openpyxl.load_workbook(path)
    filled = (cell for sheet in book for row in sheet.iter_rows() for cell in row if cell.value is not None)
    return {(cell.parent.title, cell.coordinate): cell.value for cell in filled}


def column(path: Path, sheet: str, heading: str) -> list[object]:
    headings, *rows = openpyxl.load_workbook(path)[sheet].iter_rows(values_only=True)
    return [row[headings.index(heading)] for row in rows]


def test_the_script_makes_the_same_cells(make_examples: ModuleType, tmp_path: Path) -> None:
    make_examples.make_all(tmp_path)
    assert sorted(made.name for made in tmp_path.iterdir()) == sorted(WORKBOOKS)
    for name in WORKBOOKS:
        assert cells(tmp_path / name) == cells(EXAMPLES / name)


@pytest.mark.parametrize("name", WORKBOOKS)
def test_the_artwork_is_beside_the_workbook(name: str) -> None:
    drawings = {str(drawing) for drawing in column(EXAMPLES / name, "Designs", "Artwork") if drawing}
    assert drawings
    assert all((EXAMPLES / drawing).is_file() for drawing in drawings)


def test_a_player_number_is_text_so_that_07_stays_07() -> None:
    numbers = [number for number in column(EXAMPLES / "relay squad.xlsx", "Roster", "Number") if number]
    assert {"07", "00"} <= set(numbers)
    assert all(isinstance(number, str) for number in numbers)
