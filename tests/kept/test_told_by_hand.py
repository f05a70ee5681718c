"""What a later plan tells, against figures counted by hand from its own sheets."""

from pathlib import Path

import pytest

from tests.kept.test_cut_stays_cut import DESIGNS, JOB, PEOPLE
from tests.plan_book import PlanBook, drop, steps, written
from tests.workbooks import heading_at, write_workbook

FILM = [
    ["Film", "Rolls sold", "On hand"],
    ["Black smooth", "1 yd = 6; 5 yd = 21", "12 in x 60 in"],
    ["Red smooth", "1 yd = 9", ""],
]
MEASURE_IT = "FFEDF0F2"  # the tint of a figure that was reckoned


@pytest.fixture(scope="module")
def plans(tmp_path_factory: pytest.TempPathFactory) -> tuple[PlanBook, PlanBook]:
    """A plan all cut, with one decal spoiled and a late joiner, and the plan after it."""
    path = tmp_path_factory.mktemp("told") / "roster.xlsx"
    sheets = {"Roster": PEOPLE, "Designs": DESIGNS, "Job": JOB, "Film": FILM}
    first = written(drop(write_workbook(path, sheets)))
    first.cut()
    first.cut("D003", "Spoiled", lambda row: "D003" in row["Decals"])
    first.join(Who="Kai", Size="M")
    return first, written(first.drop())


def test_what_follows_from_a_late_joiner_is_counted(plans: tuple[PlanBook, PlanBook]) -> None:
    """Both of Kai's decals, a shirt, two steps; of the film half of the strip shared with one other and one whole."""
    _, second = plans
    (told,) = [row["What follows"] for row in second.changes() if row["What"] == "row added"]
    runs = {row["Film"]: row["Length (in)"] for _, row in second.rows("Runs", "Run") if row["Film"]}
    assert told.startswith("2 decals to cut, ")
    assert told.endswith("1 blank, M white; 2 steps to press")
    assert sum(1 for no, *_ in steps(second) if no == 6) == 2
    length, price = told.split(";")[0].removeprefix("2 decals to cut, ").split(" in of film for $")
    whole, _, eighths = length.partition(" ")
    above, _, below = eighths.partition("/")
    inches = int(whole) + (int(above) / int(below) if above else 0)
    assert inches == pytest.approx(runs["Black smooth"] / 2 + runs["Red smooth"], abs=1 / 4)
    assert float(price) == pytest.approx(runs["Black smooth"] / 2 * 6 / 36 + runs["Red smooth"] * 9 / 36, abs=0.1)


def test_a_banner_names_all_strips_of_one_film(plans: tuple[PlanBook, PlanBook]) -> None:
    """Ivo's front is cut anew: its batch needs the first plan's strip of that film and the new one."""
    _, second = plans
    (banner,) = [str(row["Step"]) for _, row in second.rows("Press log", "Step") if "no. 1, 2" in str(row["Step"])]
    assert banner.endswith("strips Black smooth 2, Black smooth 3, Red smooth 2")


def test_film_that_was_reckoned_is_tinted(plans: tuple[PlanBook, PlanBook]) -> None:
    first, second = plans
    tints = []
    for plan in (first, second):
        sheet = plan.sheet("Film")
        top, column = heading_at(sheet, "On hand")
        row = next(row for row in range(top + 1, sheet.max_row) if sheet.cell(row, 1).value == "Black smooth")
        tints.append(sheet.cell(row, column).fill.fgColor.rgb)
    assert tints[1] == MEASURE_IT
    assert tints[0] != MEASURE_IT
    assert "measure it" in " ".join(str(cell.value) for row in second.sheet("Film")["A1:A3"] for cell in row)


def test_a_size_said_to_be_an_adults_stays_so(tmp_path: Path) -> None:
    """In a family with children's sizes; nothing is asked of it again. Elsewhere a size has one spelling."""
    people = [
        ["Who", "Group", "Size"],
        ["Ana", "Fox", "Adult L"], ["Ivo", "Fox", "Youth M"], ["Bo", "Elm", "Adult L"], ["Cy", "Elm", "M"],
    ]  # fmt: skip
    plan = written(drop(write_workbook(tmp_path / "list.xlsx", {"Roster": people})))
    for _ in range(2):
        sizes = {row["Who"]: row["Size"] for _, row in plan.rows("Roster", "Who") if row["Who"]}
        assert sizes == {"Ana": "Adult L", "Ivo": "Youth M", "Bo": "L", "Cy": "M"}
        assert plan.asked("size-whose") == set()
        assert plan.changes() == []
        plan = written(plan.drop())


def test_a_stop_takes_no_ok(tmp_path: Path) -> None:
    people = [["Who", "Size"], ["Ana", "M"], ["Ivo", "huge"]]
    plan = written(drop(write_workbook(tmp_path / "list.xlsx", {"Roster": people})))
    plan.mark("Problems", "Answer", "ok", lambda row: row["Code"] == "size-unknown")
    again = written(plan.drop())
    assert [row["Level"] for _, row in again.rows("Problems", "Code") if row["Code"] == "size-unknown"] == ["stop"]
    assert {no for no, *_ in steps(again)} == {1}
