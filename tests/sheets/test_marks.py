"""Doubtful cells are colored and annotated where they now stand, and Problems leads to them."""

from collections.abc import Mapping
from typing import Any

from xlbatch.paper.style import STOP
from xlbatch.plan import Plan
from xlbatch.problems import Where, problem
from xlbatch.sheets import inputs, job_input, problems_sheet
from xlbatch.sheets.all_sheets import INPUTS
from xlbatch.sheets.roster import ROSTER


def cell_of(book: Mapping[str, Any], who: str, heading: str) -> Any:
    """The Roster cell of a person under a heading."""
    sheet = book["Roster"]
    headings = {cell.value: cell.column for cell in sheet[inputs.FIRST]}
    row = next(
        cell.row for (cell,) in sheet.iter_rows(min_col=headings["Who"], max_col=headings["Who"]) if cell.value == who
    )
    return sheet.cell(row, headings[heading])


def test_a_stop_is_colored_and_annotated(book: Mapping[str, Any]) -> None:
    cell = cell_of(book, "Held Back", "Size")
    assert cell.value == "Enormous"
    assert cell.fill.fgColor.rgb == f"FF{STOP[1:].upper()}"
    assert cell.comment.text.startswith("stop: “Enormous” is no size this program knows.")


def test_a_row_without_problems_is_not_colored(book: Mapping[str, Any]) -> None:
    assert cell_of(book, "+Plus", "Size").fill.fill_type is None
    assert cell_of(book, "+Plus", "Size").comment is None


def test_problems_lead_to_the_returned_cell(book: Mapping[str, Any], plan: Plan) -> None:
    sheet = book["Problems"]
    stop = next(row for row in sheet.iter_rows() if row[0].value == "stop")
    assert [cell.value for cell in stop[1:5]] == ["Roster", "C11", "Held Back", "Enormous"]  # as in the dropped list
    target = cell_of(book, "Held Back", "Size")
    assert stop[2].hyperlink.location == f"'Roster'!{target.coordinate}"
    levels = [row[0].value for row in sheet.iter_rows() if row[0].value in ("stop", "check", "note")]
    assert levels == sorted(levels, key=("stop", "check", "note").index)
    assert len(levels) == len(plan.problems)


def test_a_row_for_several_garments_is_marked_in_each(plan: Plan) -> None:
    row = next(row for row in plan.job.roster if row.who == "1E5")
    spots = inputs.spots(ROSTER, plan.job)[row.source.at("Size")]
    assert len(spots) == 2


def test_a_cell_the_list_has_no_column_for_is_the_rows_first(plan: Plan) -> None:
    row = plan.job.roster[0]
    links = problems_sheet.places(plan.job, INPUTS)
    assert row.source.at("Garment") == Where("Roster", "A2")
    assert links[row.source.at("Garment")].sheet == "Roster"


def test_a_setting_leads_to_its_value(plan: Plan) -> None:
    where = plan.job.setting_cells["Job name"]
    link = problems_sheet.places(plan.job, INPUTS)[where]
    assert (link.sheet, link.column) == (job_input.NAME, 1)


def test_a_problem_of_no_one_cell_has_no_link(plan: Plan) -> None:
    found = problem("price-missing", Where("Film"), what="Black smooth", sheet="Film")
    frame = problems_sheet.table([found], problems_sheet.places(plan.job, INPUTS), plan.job)
    assert frame["Cell"].tolist() == [""]


def test_every_link_stays_within_the_workbook(book: Mapping[str, Any]) -> None:
    links = [cell.hyperlink for row in book["Problems"].iter_rows() for cell in row if cell.hyperlink]
    assert links
    for link in links:
        sheet, cell = link.location.rsplit("!", 1)
        assert book[sheet.strip("'")][cell].coordinate == cell
