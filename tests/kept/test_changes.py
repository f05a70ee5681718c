"""Changes after work was begun are asked about, what was answered is not asked again, nothing typed is lost."""

from pathlib import Path

import pytest

from tests.plan_book import PlanBook, codes, decals, steps, written
from tests.plan_book import drop_for_workbook as drop
from tests.workbooks import Rows, heading_at, write_workbook

DESIGNS = [
    ["Design", "Decal", "What", "Film", "Position", "Height"],
    ["Name", "Front", "print name", "Black smooth", "full front", "1 in"],
    ["Name", "Back", "print name", "Red smooth", "back name", "1 in"],
]
PEOPLE = [["Who", "Size"], ["Ana", "M"], ["Ivo", "L"], ["Mei", "S"]]


@pytest.fixture
def first(tmp_path: Path) -> PlanBook:
    return written(drop(write_workbook(tmp_path / "roster.xlsx", {"Roster": PEOPLE, "Designs": DESIGNS})))


def changes(book: PlanBook) -> list[tuple[str, str, str, str]]:
    rows = [row for _, row in book.rows("Changes", "What follows")]
    return [(row["Sheet"], row["What"], row["Before"] or "", row["Now"] or "") for row in rows]


def test_a_first_plan_has_no_changes_and_an_untouched_one_neither(first: PlanBook) -> None:
    assert "Changes" not in first.book.sheetnames
    assert "Changes" not in written(drop(first.path)).book.sheetnames


def test_a_setting_under_its_old_name_is_no_change(first: PlanBook) -> None:
    """The plan of an earlier version has it so on Job and in its memory."""
    renamed = 0
    for sheet in first.book:
        for cell in (cell for row in sheet.iter_rows() for cell in row):
            if isinstance(cell.value, str) and "Enough spares per 100 jobs" in cell.value:
                cell.value = cell.value.replace("Enough spares per 100 jobs", "Sureness of spares")
                renamed += 1
    assert renamed >= 2
    first.mark("Job", "Value", 90, lambda row: row["Setting"] == "Sureness of spares")
    second = written(first.drop())
    assert changes(second) == [("Job", "Value", "", "90")]
    assert ("Enough spares per 100 jobs", 90) in {
        (row["Setting"], row["Value"]) for _, row in second.rows("Job", "Setting")
    }


def test_each_edit_is_one_line_newest_first(first: PlanBook) -> None:
    first.edit(2, "Size", "XL")
    first.mark("Job", "Value", "1/2 in", lambda row: row["Setting"] == "Gap between decals")
    second = written(first.drop())
    assert changes(second) == [("Roster", "Size", "L", "XL"), ("Job", "Value", "1/4 in", "1/2 in")]
    second.join(Who="Kai", Size="M")
    third = written(second.drop())
    assert [what for _, what, _, _ in changes(third)] == ["row added", "Size", "Value"]
    assert changes(written(drop(third.path))) == changes(third)


@pytest.mark.parametrize(("heading", "value"), [("Size", "XL"), ("Color", "navy"), ("Print name", "Annie")])
def test_what_is_changed_on_a_garment_that_is_done_is_asked_at_its_cell(
    first: PlanBook, heading: str, value: str
) -> None:
    first.cut()
    first.result("ok", lambda row: row["Garment no."] == 1)
    first.edit(1, heading, value)
    outcome = first.drop()
    asked = [found for found in outcome.problems if found.code == "changed-after-pressing"]
    assert asked
    assert {found.where.sheet for found in asked} == {"Roster"}
    assert {found.found for found in asked} == {value}
    assert 1 not in {step[0] for step in steps(written(outcome))}


def test_a_garment_half_pressed_is_planned_on_as_it_was_pressed(first: PlanBook) -> None:
    first.cut()
    first.result("ok", lambda row: row["Decal"] == "D001")
    first.edit(1, "Size", "XL")
    outcome = first.drop()
    second = written(outcome)
    assert "changed-after-pressing" in codes(outcome)
    assert [step[1] for step in steps(second) if step[0] == 1] == ["D002"]
    assert {row["Size"] for _, row in second.rows("Press log", "Step") if row["Garment no."] == 1} == {"M"}
    assert next(row["Size"] for _, row in second.rows("Roster", "Who") if row["Garment no."] == 1) == "XL"


def test_what_was_answered_is_not_asked_again_until_its_cell_changes(first: PlanBook) -> None:
    first.cut()
    first.edit(1, "Print name", "Annie")
    outcome = first.drop()
    assert codes(outcome).count("cut-not-needed") == 1
    second = written(outcome)
    second.mark("Problems", "Answer", "ok", lambda row: row["Code"] == "cut-not-needed")
    outcome = second.drop()
    assert "cut-not-needed" not in codes(outcome)
    assert "cut-not-needed" not in codes(drop(written(outcome).path))


def test_a_decal_whose_name_was_changed_after_it_was_cut_is_not_needed_and_comes_back_with_the_name(
    first: PlanBook,
) -> None:
    first.cut()
    first.edit(1, "Print name", "Annie")
    second = written(first.drop())
    assert decals(second, "not needed") == {"D001", "D002"}
    assert decals(second, "to cut") == {"D007", "D008"}
    second.edit(1, "Print name", None)
    third = written(second.drop())
    assert decals(third, "not needed") == set()
    assert {step[1] for step in steps(third) if step[0] == 1} == {"D001", "D002"}


def test_a_deleted_row_is_back_as_cancelled(first: PlanBook) -> None:
    sheet = first.sheet("Roster")
    row = next(number for number, cells in first.rows("Roster", "Who") if cells["Garment no."] == 2)
    sheet.delete_rows(row)
    outcome = first.drop()
    assert "row-deleted" in codes(outcome)
    second = written(outcome)
    roster = {row["Garment no."]: (row["Who"], row["Status"]) for _, row in second.rows("Roster", "Who") if row["Who"]}
    assert roster[2] == ("Ivo", "cancelled")
    assert {step[0] for step in steps(second)} == {1, 3}


def test_a_deleted_row_of_a_shirt_that_was_done_is_back_as_done(first: PlanBook) -> None:
    first.cut()
    first.result("ok", lambda row: row["Garment no."] == 2)
    second = written(first.drop())
    second.sheet("Roster").delete_rows(second.row_of(2))
    third = written(second.drop())
    roster = {row["Garment no."]: (row["Who"], row["Status"]) for _, row in third.rows("Roster", "Who") if row["Who"]}
    assert roster[2] == ("Ivo", "done")


def test_notes_beside_steps_come_back_or_go_to_changes(first: PlanBook) -> None:
    first.cut()
    first.result("ok", lambda row: row["Garment no."] == 1)
    first.mark("Press log", "Note", "edge lifted", lambda row: row["Decal"] in ("D001", "D004"))
    first.mark("Press log", "By", "Kai", lambda row: row["Decal"] == "D004")
    first.mark("Proof", "Checked", "A. N.", lambda row: row["Garment no."] == 2)
    second = written(first.drop())
    row = next(row for _, row in second.rows("Press log", "Step") if row["Decal"] == "D004")
    assert (row["By"], row["Note"]) == ("Kai", "edge lifted")
    assert changes(second) == [("Press log", "Note", "edge lifted", "")]
    assert next(row["Checked"] for _, row in second.rows("Proof", "Checked") if row["Garment no."] == 2) == "A. N."


def test_of_a_copied_row_the_one_nearest_to_the_plan_keeps_the_number(first: PlanBook) -> None:
    sheet = first.sheet("Roster")
    row = next(number for number, cells in first.rows("Roster", "Who") if cells["Garment no."] == 2)
    values = [cell.value for cell in sheet[row]]
    sheet.insert_rows(row)
    for column, value in enumerate(values, 1):
        sheet.cell(row, column).value = "Pia" if value == "Ivo" else value  # the copy, above, for someone else
    second = written(first.drop())
    names = {cells["Garment no."]: cells["Who"] for _, cells in second.rows("Roster", "Who") if cells["Who"]}
    assert names == {1: "Ana", 2: "Ivo", 3: "Mei", 4: "Pia"}


def test_whether_anything_was_cut_is_asked_once(first: PlanBook) -> None:
    outcome = first.drop()
    assert codes(outcome).count("anything-cut") == 1
    second = written(outcome)
    second.mark("Problems", "Answer", "ok", lambda row: row["Code"] == "anything-cut")
    assert "anything-cut" not in codes(second.drop())


def test_garments_of_one_row_are_not_asked_about_as_if_they_were_entered_twice(tmp_path: Path) -> None:
    people: list[list[object]] = [["Who", "Size", "How many"], ["Ana", "M", 3]]
    first = drop(write_workbook(tmp_path / "many.xlsx", {"Roster": people}))
    assert "duplicate-row" not in codes(drop(written(first).path))


def test_sheets_under_other_names_and_in_another_order_are_read_all_the_same(first: PlanBook) -> None:
    first.cut()
    first.result("ok", lambda row: row["Garment no."] == 1)
    for name in ("Press log", "Cut list", "Shopping list", "Proof", "Film", "Decals", "Kept by the program"):
        first.book.move_sheet(name, -4)
        first.book[name].title = f"Our {name}"
    outcome = first.drop()
    assert not [found for found in outcome.problems if found.code.startswith("sheet-")]
    second = written(outcome)
    assert {step[0] for step in steps(second)} == {2, 3}
    assert decals(second, "to cut") == set()


def test_a_copied_row_begins_anew_though_done_and_paid_were_copied_with_it(first: PlanBook) -> None:
    first.cut()
    first.result("ok", lambda row: row["Garment no."] == 2)
    first.edit(2, "Paid", 12)
    second = written(first.drop())
    sheet = second.sheet("Roster")
    row = second.row_of(2)
    for column, cell in enumerate([cell.value for cell in sheet[row]], 1):
        sheet.cell(row + 2, column).value = "Pia" if cell == "Ivo" else cell
    outcome = second.drop()
    assert [found.found for found in outcome.problems if found.code == "copied-with-it"] == ["Status done, Paid 12.00"]
    third = written(outcome)
    rows = {row["Who"]: (row["Garment no."], row["Status"], row["Paid"]) for _, row in third.rows("Roster", "Who")}
    assert rows["Ivo"] == (2, "done", 12)
    assert rows["Pia"] == (4, None, None)
    assert {step[0] for step in steps(third)} == {1, 3, 4}


def test_a_design_changed_after_pressing_is_asked_about_at_its_cell(first: PlanBook) -> None:
    first.cut()
    first.result("ok", lambda row: row["Garment no."] in (1, 2))
    first.mark("Designs", "Film", "Red smooth", lambda row: row["Decal"] == "Front")
    outcome = first.drop()
    (asked,) = [found for found in outcome.problems if found.code == "design-after-pressing"]
    assert (asked.where.sheet, asked.found) == ("Designs", "Red smooth")
    assert "2 garments" in asked.wrong
    assert decals(written(outcome), "to cut") == {"D007"}  # the Front of the one still to press


def test_a_group_that_a_drawing_sets_is_asked_about_once_it_is_pressed(tmp_path: Path) -> None:
    """And no other heading whose word happens to stand in the text: a seat 12 in The Class of 12."""
    (tmp_path / "class.svg").write_text(
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 400 100">'
        '<text x="10" y="80" font-size="70" font-family="Anton">The {Group}</text></svg>'
    )
    people: Rows = [["Who", "Size", "Group", "Seat"], ["Ana", "M", "Class of 12", 12], ["Ivo", "L", "Class of 12", 14]]
    designs = [
        ["Design", "Decal", "What", "Artwork", "Film", "Position", "Width"],
        ["Name", "Class", "artwork", "class.svg", "Black smooth", "full front", "9 in"],
    ]
    plan = written(drop(write_workbook(tmp_path / "roster.xlsx", {"Roster": people, "Designs": designs})))
    plan.cut()
    plan.result("ok", lambda row: row["Garment no."] == 1)
    plan = written(plan.drop())
    for no in (1, 2):
        plan.edit(no, "Group", "Class of 13")
    plan.edit(1, "Seat", 16)
    asked = [found for found in plan.drop().problems if found.code == "changed-after-pressing"]
    group = heading_at(plan.sheet("Roster"), "Group")[1]
    assert [(found.where.cell, found.found) for found in asked] == [
        (plan.sheet("Roster").cell(plan.row_of(1), group).coordinate, "Class of 13")
    ]
    assert "The Class of 12" in asked[0].wrong


def test_a_design_with_more_than_is_pressed_on_a_done_garment_is_asked_about(first: PlanBook) -> None:
    first.cut()
    first.result("ok", lambda row: row["Garment no."] == 1)
    second = written(first.drop())
    sheet = second.sheet("Designs")
    for across, value in enumerate([cell.value for cell in sheet[4]], 1):
        sheet.cell(6, across).value = {"Front": "Sleeve", "full front": "left sleeve"}.get(str(value), value)
    outcome = second.drop()
    assert [found.found for found in outcome.problems if found.code == "done-without"] == ["Sleeve"]


def test_by_and_note_in_a_banner_are_for_its_steps(first: PlanBook) -> None:
    log = first.sheet("Press log")
    banner = next(at for at, row in first.rows("Press log", "Step") if str(row["Step"]).startswith("Batch"))
    for heading, text in (("By", "Kai"), ("Note", "plate at 320")):
        log.cell(banner, heading_at(log, heading)[1]).value = text
    second = written(first.drop())
    rows = [row for _, row in second.steps()]
    assert {row["By"] for row in rows} == {"Kai"}
    assert [row["Note"] for row in rows if row["Note"]] == ["plate at 320"]
