"""Ten ugly lists, each with the traps of another origin, planned as they are: every row is read right.

A garment is written `who|group|size|number|color`. What is asked about a list stands beside it by code and cell.
"""

from collections.abc import Callable, Mapping, Sequence
from datetime import date, datetime
from pathlib import Path
from typing import NamedTuple

import pytest
from openpyxl import Workbook
from openpyxl.worksheet.worksheet import Worksheet

from tests.open_document import rows_xml, write_open_document
from xlbatch.roster.read import Reading, read
from xlbatch.run import make_plan
from xlbatch.sheets.job_sheet import ASSUMED


class Ugly(NamedTuple):
    """A list: how it is made, its garments, the rows held back, and the problems."""

    make: Callable[[Path], Path]
    garments: str
    problems: str
    held: Sequence[str] = ()


def book(path: Path, sheets: Mapping[str, Sequence[Sequence[object]]]) -> tuple[Workbook, Path]:
    made = Workbook()
    del made["Sheet"]
    for name, rows in sheets.items():
        sheet = made.create_sheet(name)
        for row in rows:
            sheet.append(list(row))
    return made, path / "list.xlsx"


def saved(made: Workbook, path: Path) -> Path:
    made.save(path)
    return path


def sign_up_form(path: Path) -> Path:
    """An export of questions, with answers as people type them."""
    rows: list[list[object]] = [
        ["Timestamp", "E-mail address", "Child's first name", "Child's last name",
         "What size shirt does your child wear?", "Which color?", "Anything we should know?"],
        [datetime(2026, 3, 1, 9), "a@example.org", " Ana ", "Novák", "youth med", "Navy Blue", None],
        [datetime(2026, 3, 1, 10), "b@example.org", "Bo", "O'Shea", "10/12", "navy blue", "late"],
        [datetime(2026, 3, 2, 8), "c@example.org", "Cy", "van der Berg", "Adult Large", "NAVY", None],
        [datetime(2026, 3, 2, 9), "d@example.org", "Đỗ", "Trần", "Women's M", "navy", None],
        [datetime(2026, 3, 2, 9), "d@example.org", "Eli", "Null", "2T (toddler)", "navy", None],
    ]  # fmt: skip
    return saved(*book(path, {"Form Responses 1": rows}))


def team_sheet(path: Path) -> Path:
    """A title, headings in two rows with merged cells, numbers shown as 07, a hidden row, totals."""
    made, target = book(
        path,
        {
            "Sheet1": [
                ["Harbor Runners 2026"],
                [],
                ["Player", None, "Jersey", None, "Quantity"],
                ["First", "Last", "Size", "#", None],
                ["Ana", "Novak", "M", 7, 1],
                ["Ivo", "Berg", "XXL", 12, 2],
                ["Mei", "Lin", "L tall", 0, 1],
                [None, None, None, None, 4],
            ]
        },
    )
    sheet: Worksheet = made["Sheet1"]
    sheet.merge_cells("A3:B3")
    sheet.merge_cells("C3:D3")
    sheet.merge_cells("E3:E4")
    sheet["D5"].number_format = "00"
    sheet["D7"].number_format = "00"
    sheet.row_dimensions[6].hidden = True
    return saved(made, target)


def cousins_email(path: Path) -> Path:
    """Lines of a message saved as text: semicolons, Windows-1252, no headings, blank lines."""
    target = path / "from cousin.txt"
    lines = ["Agnès Dubois;M", "Noël Dubois;XL", "", "Zoë Dubois;Youth S", "Søren Brøgger;2XL", "the twins;18 mo"]
    target.write_bytes("\r\n".join(lines).encode("cp1252"))
    return target


def school_sheet(path: Path) -> Path:
    """Two lists side by side under a title, one longer; a third with other columns below; a legend at the edge."""
    rows: list[list[object]] = [
        ["Class trip", None, None, None, None, None, "Sizes"],
        ["Name", "Size", None, "Name", "Size"],
        ["Ana", "YS", None, "Ben", "YM", None, "YS = 6-8"],
        ["Eva", "YM", None, "Cid", "YL", None, "YM = 10-12"],
        [None, None, None, "Dan", "YXL"],
        [],
        ["Helpers"],
        ["Size", "Color", "Name"],
        ["L", "red", "Ms. Okafor"],
        ["3X", "red", "Mr. Lund"],
    ]
    return saved(*book(path, {"Sheet1": rows}))


def size_grid(path: Path) -> Path:
    """Households with one column a size, grouped as adult and youth, with marks and a row of totals."""
    rows: list[list[object]] = [
        ["Family name", "Adult", None, None, "Youth", None, "Paid?"],
        [None, "S", "M", "XL", "S", "M", None],
        ["Novak", 1, None, 2, None, "x", "yes"],
        ["Berg", None, 1, None, 1, None, "no"],
        ["Total", 1, 1, 2, 1, 1, None],
    ]
    return saved(*book(path, {"Orders": rows}))


def tab_for_each_team(path: Path) -> Path:
    """A cover sheet, then a sheet for each team, their columns in different order."""
    return saved(
        *book(
            path,
            {
                "Read me": [["Please fill in your team's sheet by Friday"]],
                "U10": [["Player", "Shirt size", "Shirt no."], ["Ana", "YM", "4"], ["Bo", "YL", "5"]],
                "U12": [["No.", "Size", "Name"], ["4", "YXL", "Cy"], ["11", "S", "Di"]],
            },
        )
    )


def open_document(path: Path) -> Path:
    """From another spreadsheet program: blank edges, the headings again on each page, a size become a date."""
    zero_seven = '<table:table-cell office:value-type="float" office:value="7"><text:p>07</text:p></table:table-cell>'
    heads: list[object] = [None, "Name", "Nr", "Size"]
    rows: list[list[object]] = [
        [],
        heads,
        [None, "Ana", zero_seven, "M"],
        [],
        heads,
        [None, "Ivo", 8, date(2026, 3, 5)],
        [None, "Mei", 9, "l"],
    ]
    return write_open_document(path / "list.ods", {"Table1": rows_xml(rows)})


def web_export(path: Path) -> Path:
    """UTF-16, tabs, hidden characters, letters in pieces, names that look like formulas or nothing."""
    lines = [
        "full name\tteam\tT-shirt size\tjersey no.",
        "Ana\u00a0 Novak\tRed\tAdult M\t07",
        "MarÃ­a NÃºÃ±ez\tRed\tAdult M\t8",
        "=Ivo\u200b Berg\tRed\tadult s.\t9",
        "None\tRed\tADULT XL\t10",
        "Аnna Lind\tRed\tAdult-L\t11",
    ]
    target = path / "export.csv"
    target.write_bytes("\r\n".join(lines).encode("utf-16"))
    return target


def youth_and_adult_columns(path: Path) -> Path:
    """Two columns of sizes of which a person fills one, a surname column first, hand-set status, a filtered row."""
    made, target = book(
        path,
        {
            "Members": [
                ["Surname", "First", "Kids size", "Adult T-shirt size", "Qty", "Status", "Phone"],
                ["Novak", "Ana", "M", None, None, None, 123],
                ["Berg", "Ivo", None, "M", 2, None, None],
                ["Lin", "Mei", "L", "S", None, None, None],
                ["Okafor", "Ada", None, "XL", None, "Cancelled", None],
            ]
        },
    )
    made["Members"].row_dimensions[3].hidden = True
    return saved(made, target)


def printed_pages(path: Path) -> Path:
    """Comma-separated with quotes and a line break in a heading; sections with titles; a footnote under no heading."""
    text = (
        '"Reunion, 14 June",,\n"Name\n(as printed)",Shirt Size,Fam.\n"Ruiz, Pia",chest 38 in,Ruiz\n"Ruiz, Leo",8,Ruiz\n'
        ',,\nCousins,,\n"Name\n(as printed)",Shirt Size,Fam.\nKai,104,Kahale\nGrand total: 3,,\n'
    )
    target = path / "reunion.csv"
    target.write_text(text, encoding="utf-8-sig")
    return target


UGLY = [
    Ugly(
        sign_up_form,
        "Ana Novák||Youth M||Navy Blue  Bo O'Shea||Youth M||navy blue  Cy van der Berg||L||NAVY  "
        "Đỗ Trần||Ladies M||navy  Eli Null||2T||navy",
        "contrast-low F2  contrast-low F3  contrast-low F4  contrast-low F5  font-other C5  heading-unknown A1",
    ),
    Ugly(
        team_sheet,
        "Ana Novak||M|07|  Ivo Berg||2XL|12|  Ivo Berg||2XL|12|",
        "list-numbers-unprinted D5  row-totals E8  sheet-hidden-rows   size-not-made C7",
        held=["Mei Lin||L Tall|00|"],
    ),
    Ugly(
        cousins_email,
        "Agnès Dubois||M||  Noël Dubois||XL||  Zoë Dubois||Youth S||  Søren Brøgger||2XL||  the twins||18M||",
        "capitals-odd A6  encoding-judged A1  headings-missing A1",
    ),
    Ugly(
        school_sheet,
        "Ana||Youth S||  Eva||Youth M||  Ben||Youth M||  Cid||Youth L||  Dan||Youth XL||  Ms. Okafor||L||red  "
        "Mr. Lund||3XL||red",
        "contrast-low B9  heading-unknown G2  row-title A7  table-joined A8  table-joined D2",
    ),
    Ugly(
        size_grid,
        "Novak||S||  Novak||XL||  Novak||XL||  Novak||Youth M||  Berg||M||  Berg||Youth S||",
        "row-totals A5",
    ),
    Ugly(
        tab_for_each_team,
        "Ana|U10|Youth M|4|  Bo|U10|Youth L|5|  Cy|U12|Youth XL|4|  Di|U12|S|11|",
        "list-numbers-unprinted C2  sheet-joined   sheet-unknown   size-whose B3",
    ),
    Ugly(
        open_document,
        "Ana||M|07|  Mei||L|9|",
        "date-for-size D6  list-numbers-unprinted C3",
        held=["Ivo||5-Mar-2026|8|"],
    ),
    Ugly(
        web_export,
        "Ana Novak|Red|M|07|  =Ivo Berg|Red|S|9|  None|Red|XL|10|  Аnna Lind|Red|L|11|",
        "encoding-broken A3  font-other A6  letters-mixed A6  list-numbers-unprinted D2  name-and-more A4  "
        "name-or-none A5  text-cleaned A2  text-cleaned A4",
        held=["MarÃ\u00ada NÃºÃ±ez|Red|M|8|"],
    ),
    Ugly(
        youth_and_adult_columns,
        "Ana Novak||Youth M||  Ivo Berg||M||  Ivo Berg||M||",
        "heading-unknown G1  sheet-hidden-rows   size-unknown C4",
        held=["Mei Lin||youth L and adult S||"],
    ),
    Ugly(
        printed_pages,
        "Ruiz, Pia|Ruiz|M||  Ruiz, Leo|Ruiz|Youth S||  Kai|Kahale|Youth XS||",
        "list-last-first A3  row-title A6  row-totals A9  size-read-as B3  size-read-as B4  size-read-as B8",
    ),
]


@pytest.mark.parametrize("ugly", UGLY, ids=lambda ugly: ugly.make.__name__)
def test_an_ugly_list_is_read_right_row_by_row(ugly: Ugly, tmp_path: Path) -> None:
    reading = read(ugly.make(tmp_path))
    assert isinstance(reading, Reading)
    plan = make_plan(reading, 0, lambda _stage: None, datetime(2026, 5, 4))
    rows = [garment.row for garment in plan.garments]
    assert "  ".join(f"{row.who}|{row.group}|{row.size}|{row.number}|{row.color}" for row in rows) == ugly.garments
    assert [f"{row.who}|{row.group}|{row.size}|{row.number}|{row.color}" for row in plan.held] == list(ugly.held)
    passed_over = (*ASSUMED, "gap-thin", "stroke-thin", "dot-small", "off-center")  # of the drawing, not of the list
    odd = sorted(f"{each.code} {each.where.cell}" for each in plan.problems if each.code not in passed_over)
    assert "  ".join(odd) == ugly.problems


def test_there_are_ten() -> None:
    assert len(UGLY) == 10
