"""A plan written to another folder than its list's is dropped there like any other: the drawings come along."""

from dataclasses import replace
from pathlib import Path

import pytest

from tests.plan_book import NOW, PlanBook, codes, decals, written
from tests.workbooks import write_workbook
from xlbatch.run import Options, Outcome, run

PEOPLE = [["Who", "Size"], ["Ana", "M"], ["Ivo", "L"]]
DESIGNS = [
    ["Design", "Decal", "What", "Artwork", "Film", "Position", "Width"],
    ["Name", "Crest", "artwork", "crest.svg", "Black smooth", "full front", "6 in"],
]
SHAPES = {"ring": "M0 0H100V60H0Z", "wedge": "M0 0H100L0 60Z"}


def planned(path: Path, folder: Path | None = None) -> Outcome:
    return run(path, replace(Options(effort=0), folder=folder), lambda _: None, NOW)


def a_list(folder: Path, name: str, shape: str) -> Path:
    folder.mkdir()
    drawing = f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 60"><path d="{SHAPES[shape]}"/></svg>'
    (folder / "crest.svg").write_text(drawing)
    return write_workbook(folder / f"{name}.xlsx", {"Roster": PEOPLE, "Designs": DESIGNS})


def test_two_lists_with_drawings_of_one_name_are_planned_into_one_folder_and_go_on_there(tmp_path: Path) -> None:
    there = tmp_path / "plans"
    there.mkdir()
    lists = [a_list(tmp_path / shape, shape, shape) for shape in SHAPES]
    plans = [written(planned(path, there)) for path in lists]
    for path in lists:
        path.with_name("crest.svg").unlink()  # they are no longer where they were
    for plan in plans:
        plan.cut()
        plan.result("ok", lambda row: row["Garment no."] == 1)
        plan.book.save(plan.path)
        outcome = planned(plan.path)
        assert "artwork-missing" not in codes(outcome)
        second = written(outcome)
        assert decals(second, "to cut") == set()
        assert [row["Decal"] for _, row in second.steps()] == ["D002"]
        assert PlanBook(second.path).asked("artwork-missing") == set()


@pytest.mark.parametrize("name", ["crest.svg"])
def test_a_drawing_that_lies_beside_the_plan_already_is_not_copied(tmp_path: Path, name: str) -> None:
    outcome = planned(a_list(tmp_path / "here", "job", "ring"))
    assert outcome.cut_files is not None
    assert not list(outcome.cut_files.rglob(name))
