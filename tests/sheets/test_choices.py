"""Drop-downs offer the right lists, as written and after an office program has opened and saved the workbook."""

import re
import shutil
import subprocess
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import pytest
from openpyxl import load_workbook
from openpyxl.utils import range_boundaries
from openpyxl.utils.cell import coordinate_from_string

from xlbatch.roster.read import blank_job
from xlbatch.sheets.write import write_blank

OFFICE = shutil.which("soffice")
JOURNEYS = [(), ("xlsx",), ("ods", "xlsx")]  # the formats a workbook is saved in, one after the other
SIZES = ["XS", "S", "M", "L", "XL", "2XL", "3XL", "4XL", "5XL"]
LADIES = ["Ladies XS", "Ladies S", "Ladies M", "Ladies L", "Ladies XL", "Ladies 2XL"]
YOUTH = ["Youth XS", "Youth S", "Youth M", "Youth L", "Youth XL"]
SMALL = ["2T", "3T", "4T", "5T", "6M", "12M", "18M", "24M"]


@pytest.fixture(scope="module")
def blank(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("blank") / "roster.xlsx"
    write_blank(path, blank_job(path))
    return path


@pytest.fixture(scope="module", params=JOURNEYS, ids=" ".join)
def saved(
    request: pytest.FixtureRequest, blank: Path, written: Path, tmp_path_factory: pytest.TempPathFactory
) -> Mapping[str, Path]:
    """The blank workbook and a plan, as written or saved again by an office program."""
    found = {"blank": blank, "plan": written}
    if request.param and not OFFICE:
        pytest.skip("saving again needs LibreOffice, which is not installed")
    home = tmp_path_factory.mktemp("office").as_uri()
    for ending in request.param:
        folder = tmp_path_factory.mktemp(ending)
        command = [str(OFFICE), f"-env:UserInstallation={home}", "--headless", "--convert-to", ending]
        subprocess.run([*command, "--outdir", str(folder), *map(str, found.values())], check=True, capture_output=True)
        found = {name: folder / f"{path.stem}.{ending}" for name, path in found.items()}
    return found


class Choices:
    """What the drop-downs of a workbook offer, their formulas worked out."""

    def __init__(self, path: Path) -> None:
        self.book: Any = load_workbook(path)

    def at(self, sheet: str, cell: str, **written: str) -> list[str]:
        """What a cell's drop-down offers; `written`: other cells of the sheet as a person would have filled them."""
        for other, text in written.items():
            self.book[sheet][other].value = text
        found = [each for each in self.book[sheet].data_validations.dataValidation if cell in each.sqref]
        assert len(found) == 1, (sheet, cell)
        each = found[0]
        assert each.type == "list"
        assert not each.hide_drop_down
        own = coordinate_from_string(cell)[1] - coordinate_from_string(str(each.sqref).split(":")[0])[1]
        return self._offered(sheet, str(each.formula1), own)

    def _offered(self, sheet: str, formula: str, down: int) -> list[str]:
        if formula.startswith('"'):
            return formula.strip('"').split(",")
        formula = formula.replace("'", "")
        if per_row := re.fullmatch(
            r'OFFSET\((\w+)!\$(\w)\$(\d+),MATCH\((IF\(\$(\w)(\d+)="","([^"]*)",\$\w\d+\)),(\w+!\$A\$\d+:\$A\$\d+),0\),0,'
            r"COUNTIF\(\8,\4\),1\)",
            formula,
        ):
            name, column, start, _, own, row, usual, names = per_row.groups()
            wanted = self.book[sheet][f"{own}{int(row) + down}"].value or usual
            listed = [cell.value for (cell,) in self._cells(names)]
            first, count = int(start) + listed.index(wanted) + 1, listed.count(wanted)
            return [str(cell.value) for (cell,) in self.book[name][f"{column}{first}:{column}{first + count - 1}"]]
        below = re.fullmatch(
            r"OFFSET\((\w+)!\$(\w)\$(\d+),0,0,MAX\(1,COUNTA\((\w+!\$\w\$\d+:\$\w\$\d+)\)\),1\)", formula
        )
        assert below, formula
        count = sum(cell.value is not None for (cell,) in self._cells(below[4]))
        return [str(self.book[below[1]][f"{below[2]}{int(below[3]) + at}"].value) for at in range(count)]

    def _cells(self, reference: str) -> Any:
        sheet, cells = reference.split("!")
        left, top, right, bottom = range_boundaries(cells)
        return self.book[sheet].iter_rows(top, bottom, left, right)

    def every(self) -> Mapping[str, tuple[str, ...]]:
        """What every drop-down of the workbook offers in its first cell."""
        found = {}
        for sheet in self.book:
            for each in sheet.data_validations.dataValidation:
                if each.type == "list":
                    cell = str(each.sqref).split(":")[0].split()[0]
                    found[f"{sheet.title} {cell}"] = tuple(self._offered(sheet.title, str(each.formula1), 0))
        return found


def test_the_blank_offers_what_its_own_sheets_hold(saved: Mapping[str, Path]) -> None:
    choices = Choices(saved["blank"])
    roster = {cell.value: cell.column_letter for cell in choices.book["Roster"][3]}
    garment, size = (f"{roster[name]}9" for name in ("Garment", "Size"))
    assert choices.at("Roster", size) == [*SIZES, *LADIES, *YOUTH, *SMALL]
    hooded = choices.at("Roster", size, **{garment: "Hooded sweatshirt"})
    assert hooded == [*SIZES, *YOUTH]
    assert "Hooded sweatshirt" in choices.at("Roster", garment)
    films = [row[0].value for row in choices.book["Film"].iter_rows(4) if row[0].value]
    designs = {cell.value: cell.column_letter for cell in choices.book["Designs"][3]}
    assert choices.at("Designs", f"{designs['Film']}4") == films
    assert len(films) > 20
    assert "left chest" in choices.at("Designs", f"{designs['Position']}12")
    job = {row[0].value: row[1].coordinate for row in choices.book["Job"].iter_rows(4)}
    assert choices.at("Job", job["Turn decals"]) == ["yes", "no"]
    assert "Hooded sweatshirt" in choices.at("Job", job["Usual garment"])
    assert "navy" in choices.at("Job", job["Usual color"])


def test_a_film_written_below_the_others_is_offered_too(blank: Path) -> None:
    choices = Choices(blank)
    film, last = choices.book["Film"], choices.book["Film"].max_row
    film.cell(last + 1, 1).value = "Teal smooth"
    column = next(cell.column_letter for cell in choices.book["Designs"][3] if cell.value == "Film")
    assert choices.at("Designs", f"{column}4")[-1] == "Teal smooth"


@pytest.mark.parametrize("name", ["blank", "plan"])
def test_every_drop_down_survives(name: str, saved: Mapping[str, Path], blank: Path, written: Path) -> None:
    before, after = Choices({"blank": blank, "plan": written}[name]).every(), Choices(saved[name]).every()
    assert len(before) > 12
    assert before.items() <= after.items()  # an office program may part a range and so name one list twice
    assert set(before.values()) == set(after.values())
