"""A sheet as it lies in the file: paper, margins, what repeats on each page, row heights, breaks, links, looks. Read by
openpyxl; heights and widths in points, the arithmetic beside each check."""

from collections.abc import Iterator
from datetime import time
from decimal import Decimal
from pathlib import Path
from typing import Any
from zipfile import ZipFile

import pytest
from openpyxl import load_workbook
from openpyxl.cell.rich_text import CellRichText, TextBlock

from xlbatch.paper.cell import Formula, Link, printable, unbroken
from xlbatch.paper.measure import line_count, text_height, text_width
from xlbatch.paper.page import CUSHION, Column, Page, tabled
from xlbatch.paper.paging import paper
from xlbatch.paper.picture import drawn
from xlbatch.paper.widths import PAD
from xlbatch.paper.workbook import Book
from xlbatch.roster.read import blank_job

COLUMNS = (Column("No", 0.5, ("count",)), Column("Who", 2.0), Column("By hand", 1.0, outside=True))
ROWS = ((1, "Ana", None), (2, "Bo", None), (3, "Cy", "x"))


class Written:
    """A workbook being made, and then as it is read again."""

    def __init__(self, path: Path, *, metric: bool = False) -> None:
        self.path = path
        self.book = Book(path, blank_job(path, metric=metric))

    def page(self, name: str = "Sheet", **how: bool) -> Page:
        return self.book.page(name, **how)

    def read(self, name: str = "Sheet") -> Any:
        self.book.__exit__(None, None, None)
        return load_workbook(self.path, rich_text=True)[name]


@pytest.fixture
def written(tmp_path: Path) -> Iterator[Written]:
    return Written(tmp_path / "Tea & cake.xlsx")  # type: ignore[return-value]


def table(written: Written, **how: int) -> tuple[Page, Any]:
    page, frame = written.page(), tabled(COLUMNS, ROWS)
    page.lay_columns(COLUMNS, frame)
    page.title("Title", "Do this.")
    page.table(frame, **how)
    return page, written.read()


@pytest.mark.parametrize(
    ("metric", "landscape", "number", "width", "height"),
    [
        (False, False, 1, 8.5 - 2 * 0.3, 11 - 0.4 - 0.45),
        (False, True, 1, 11 - 2 * 0.3, 8.5 - 0.4 - 0.45),
        (True, False, 9, 8.27 - 2 * 0.3, 11.69 - 0.4 - 0.45),  # A4 is 210 mm by 297 mm (ISO 216)
    ],
)
def test_the_paper_and_the_room_on_it(
    tmp_path: Path, metric: bool, landscape: bool, number: int, width: float, height: float
) -> None:
    written = Written(tmp_path / "list.xlsx", metric=metric)
    page = written.page(landscape=landscape)
    assert page.paper.width == pytest.approx(width * 72 * 0.975)
    assert page.paper.height == pytest.approx(height * 72 * 0.975)
    sheet = written.read()
    assert sheet.page_setup.paperSize == number
    assert sheet.page_setup.orientation == ("landscape" if landscape else "portrait")
    margins = sheet.page_margins
    assert (margins.left, margins.right, margins.top, margins.bottom) == (0.3, 0.3, 0.4, 0.45)
    assert sheet.sheet_properties.pageSetUpPr.fitToPage
    assert (sheet.page_setup.fitToWidth, sheet.page_setup.fitToHeight) == (None, 0)  # not told: 1
    assert sheet.print_options.horizontalCentered


def test_every_page_says_job_sheet_number_and_file(written: Written) -> None:
    written.page("Runs", form=True)
    sheet = written.read("Runs")
    footer = sheet.oddFooter
    assert footer.left.text.strip() == "Tea && cake"
    assert footer.center.text.strip() == "&A"
    assert footer.right.text.strip() == "Page &P of &N"
    assert sheet.oddHeader.right.text == "&F"
    assert not sheet.sheet_view.showGridLines


def test_a_table_repeats_its_headings_and_prints_only_its_printed_columns(written: Written) -> None:
    page, sheet = table(written)
    assert page.head == 2  # below the title and one line
    assert sheet.freeze_panes == "A4"
    assert sheet.print_title_rows == "$3:$3"
    assert sheet.auto_filter.ref == "A3:C6"
    assert sheet.print_area == "'Sheet'!$A$1:$B$6"
    assert page.below("Who") == "$B$4:$B$6"


def test_the_printed_columns_fill_the_paper_and_the_others_keep_their_width(written: Written) -> None:
    page, sheet = table(written)
    assert page.room == pytest.approx(page.paper.width)
    assert page.widths[1] / page.widths[0] == pytest.approx(4)  # shares of 2.0 and 0.5
    assert sheet.column_dimensions["C"].width * 7 + 5 == pytest.approx(page.widths[2] * 96 / 72, abs=1)  # of pixels


@pytest.mark.parametrize(("number", "marked"), [(0, []), (1, ["A5"]), (2, ["A6"])])
def test_a_heavy_line_stands_above_the_record_of_that_number_alone(
    written: Written, number: int, marked: list[str]
) -> None:
    _, sheet = table(written, line_above=number)
    assert [f"A{row}" for row in (4, 5, 6) if sheet.cell(row, 1).border.top.style == "thick"] == marked


def test_a_row_is_as_high_as_its_longest_text_needs(written: Written) -> None:
    """Two lines of 10 points at 1.22, and 2.75: 27.15, in quarters of a point 27.25; one line 15."""
    page, word = written.page(), "Quillfeather"
    wide = (text_width(word, 10) + PAD + 2) / 72
    page.lay_columns((Column("A", 1.0), Column("B", wide)), None, fill=False)
    page.widths[1] = wide * 72
    page.record(("a", word))
    page.record(("a", f"{word} {word}"))
    page.record(("a", word), least=40.0)
    page.record(("a", word), also={"B": "caption"})  # an indent of 9 points leaves no room for the last letter
    assert page.heights == [15, 27.25, 40, 27.25]
    sheet = written.read()
    assert [sheet.row_dimensions[row].height for row in (1, 2, 3, 4)] == pytest.approx(
        page.heights, abs=0.5
    )  # whole dots
    assert CUSHION == 2.75


def test_a_banner_begins_in_bold(written: Written) -> None:
    page = written.page()
    page.lay_columns(COLUMNS)
    page.banner("Batch 1", " of 3", "banner")
    page.banner("Batch 2", "", "banner")
    page.banner("", "all the rest", "banner")
    sheet = written.read()
    rich = sheet["A1"].value
    assert isinstance(rich, CellRichText)
    assert [(str(part), bool(part.font.b) if isinstance(part, TextBlock) else None) for part in rich] == [
        ("Batch 1", True),
        (" of 3", False),
    ]
    assert (sheet["A2"].value, sheet["A2"].font.b) == ("Batch 2", True)
    assert (sheet["A3"].value, sheet["A3"].font.b) == ("all the rest", False)
    assert sheet["B1"].fill.fgColor.rgb == sheet["A1"].fill.fgColor.rgb  # as wide as what is printed
    assert not sheet["C1"].has_style


def test_pages_break_between_blocks_and_a_wide_sheet_is_printed_smaller(written: Written) -> None:
    """Blocks of three rows of 100 points on 712.5: at most two on a page. Twice as wide as the paper, twice as many
    fit; the pages are as even as so few allow."""
    page = written.page()
    for factor, first in ((1, (3, 9)), (2, (6,))):
        page.widths, page.columns = [page.paper.width * factor], (Column("A", 1.0),)
        page.heights, page.row = [100.0] * 15, 15
        page.break_pages(range(0, 15, 3))
        assert page.starts == first
        assert page.printed == len(first) + 1
    page.widths = [page.paper.width]
    page.break_pages((0, 12), repeated=20.0)  # 1,200 points do not fit on any page: broken evenly
    assert page.starts == (5, 10)  # the last 3 rows stay together
    assert [each.id for each in written.read().row_breaks.brk] == [5, 10]


def test_links_keep_what_the_cells_hold(written: Written) -> None:
    page = written.page()
    page.lay_columns(COLUMNS, tabled(COLUMNS, ROWS))
    page.table(tabled(COLUMNS, ROWS))
    page.links("No", (Link("1", "It's here", 4, 2), None, Link("3", "Runs")))
    page.links("Who", (None, Link("Bo", "Runs", 1, 27)))
    written.page("Runs")
    written.page("It's here")
    sheet = written.read()
    assert [sheet.cell(row, 1).value for row in (2, 3, 4)] == [1, 2, 3]
    where = {cell.coordinate: cell.hyperlink.location for row in sheet.iter_rows() for cell in row if cell.hyperlink}
    assert where == {"A2": "'It''s here'!C5", "A4": "'Runs'!A1", "B3": "'Runs'!AB2"}
    assert (sheet["A2"].font.u, sheet["A3"].font.u) == ("single", None)


def test_what_looks_like_a_formula_or_a_number_stays_text(written: Written) -> None:
    page = written.page()
    page.lay_columns(COLUMNS)
    values = ("=1+1", "07", "a\x07b", 7, Decimal("2.50"), time(13, 30), None, "")
    for value in values:
        page.cells((value,), "cell")
    page.cells((5, "x"), "cell")
    page.record((2, Formula("{No}*3", 6), None))
    sheet = written.read()
    cells = [sheet.cell(row, 1) for row in range(1, 9)]
    assert [cell.value for cell in cells] == ["=1+1", "07", "ab", 7, 2.5, 0.5625, None, None]
    assert [cell.data_type for cell in cells[:3]] == ["s", "s", "s"]
    assert sheet["B10"].value == "=A10*3"
    assert load_workbook(written.path, data_only=True)["Sheet"]["B10"].value == 6


def test_a_named_cell_is_found_from_any_sheet(written: Written) -> None:
    page = written.page("Cut list")
    page.name_cell("Film left", 3, 2)
    written.read("Cut list")
    assert load_workbook(written.path).defined_names["Film_left"].attr_text == "'Cut list'!$C$4"


@pytest.mark.parametrize(
    ("looks", "value", "shown"),
    [
        (("money",), Decimal("1234.5"), "$1,234.50"),
        (("owed",), Decimal("-3"), "credit_$3.00"),
        (("owed",), Decimal("3"), "$3.00"),
        (("count",), 7.0, "7"),
        (("exact",), 1.5, "1.500"),
        (("text",), 7.25, "7.25"),
        (("text",), None, ""),
        (("text",), Link("there", "Runs"), "there"),
        (("money",), Formula("A1", Decimal(2)), "$2.00"),
    ],
)
def test_what_a_viewer_shows(written: Written, looks: tuple[str, ...], value: Any, shown: str) -> None:
    assert written.page().formats.shown(value, *looks) == shown


def test_the_later_look_wins(written: Written) -> None:
    formats = written.page().formats
    assert (formats.size("cell"), formats.size("small"), formats.size("small", "title")) == (10, 9, 20)
    assert (formats.indent("cell"), formats.indent("caption", "cell")) == (0, 9)
    assert formats.get("cell", "strong") is formats.get("cell", "strong")


def test_what_leads_the_eye_is_bold_and_large(written: Written) -> None:
    formats = written.page().formats
    assert all(formats.get(look).bold for look in ("title", "section", "heading", "sum", "fact", "strong"))
    assert not any(formats.get(look).bold for look in ("cell", "lead", "text", "small", "quiet"))
    assert formats.size("title") > formats.size("fact") > formats.size("section") > formats.size("cell")
    assert formats.get("cell").text_wrap  # nothing is hidden behind the next cell
    assert formats.get("lead").text_wrap


def test_lines_are_counted_as_they_wrap() -> None:
    room = text_width("two words", 10) + 0.1
    assert line_count("two words", room, 10) == 1
    assert line_count("two words two words", room, 10) == 2
    assert line_count("two words\nmore", room, 10) == 2
    assert line_count("x" * 30, text_width("x" * 10, 10) + 0.1, 10) == 3  # a word longer than the cell is broken
    assert line_count("two words", room - 0.2, 10) == 2
    assert text_height("a\nb", 100, 10) == pytest.approx(2 * 10 * 1.22)
    assert text_width("Ana", 20) == pytest.approx(2 * text_width("Ana", 10))
    assert text_width("Ana", 10, True) > text_width("Ana", 10)


def test_the_width_of_letters_is_that_of_the_font() -> None:
    """Arial's advances in 2048 units, as published for its metric twins: space 569, A 1366, n 1139, a 1139."""
    assert text_width("Ana", 2048) == pytest.approx(1366 + 1139 + 1139, abs=2)
    assert text_width(" ", 2048) == pytest.approx(569, abs=1)
    assert text_width("\N{SNOWMAN}", 10) == 10  # a letter that the font lacks counts as a square


def test_measures_are_not_parted_and_texts_fit_a_cell() -> None:
    gap = "\N{NO-BREAK SPACE}"
    assert unbroken("7 1/8 in high, 330 °F") == f"7{gap}1/8{gap}in high, 330{gap}°F"
    assert unbroken("2 shirts in all") == "2 shirts in all"
    assert printable("a\x00b\n") == "ab\n"
    assert len(printable("x" * 40_000)) == 32_767  # the published limit of one cell


def test_a_picture_keeps_its_size_and_says_what_it_shows(written: Written) -> None:
    """36 by 18 points at two dots a point: 72 by 36 dots, shown at half of three quarters of a point a dot."""
    svg = (
        '<svg xmlns="http://www.w3.org/2000/svg" width="36" height="18"><rect width="36" height="18" fill="red"/></svg>'
    )
    picture = drawn(svg, "a red box")
    assert picture.height == pytest.approx(18)
    page = written.page()
    page.gap(40)
    page.picture(0, 0, picture)
    written.read()
    with ZipFile(written.path) as files:
        drawing = files.read("xl/drawings/drawing1.xml").decode()
    assert 'descr="a red box"' in drawing
    assert "<xdr:colOff>38100</xdr:colOff>" in drawing  # 3 points from the corner, 12,700 units each (ECMA-376)
    assert f'<a:ext cx="{36 * 12700}" cy="{18 * 12700}"/>' in drawing


def test_paper_is_known_by_name() -> None:
    assert paper("Letter", landscape=False).number == 1
    with pytest.raises(KeyError):
        paper("Foolscap", landscape=False)
