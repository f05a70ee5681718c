"""Drop-downs: on which cells, of which names, and where there can be none."""

from collections.abc import Sequence
from pathlib import Path
from typing import Any

import pytest
from openpyxl import load_workbook

from xlbatch.paper.workbook import Book
from xlbatch.roster.read import blank_job
from xlbatch.sheets.inputs import offer

LIST_CHARACTERS = 255  # of a list that stands in a cell's rule: a limit of the file format (ECMA-376, from memory)


def offered(folder: Path, source: Sequence[str] | str, **how: Any) -> list[Any]:
    """The rules of cells after a drop-down was put on C5 and the two cells below it."""
    path = folder / "list.xlsx"
    with Book(path, blank_job(path)) as book:
        offer(book.page("Sheet"), 4, 2, 3, source, **how)
    return list(load_workbook(path)["Sheet"].data_validations.dataValidation)


def test_a_drop_down_is_on_so_many_cells_and_no_more(tmp_path: Path) -> None:
    (rule,) = offered(tmp_path, ["red", "navy", "red"], strict=True, hint="Pick a color.")
    assert (str(rule.sqref), rule.type, rule.formula1) == ("C5:C7", "list", '"red,navy"')
    assert (rule.showErrorMessage, rule.prompt) == (True, "Pick a color.")


def test_where_other_names_may_be_typed_none_is_refused(tmp_path: Path) -> None:
    (rule,) = offered(tmp_path, ["red"])
    assert not rule.showErrorMessage
    assert not rule.prompt


@pytest.mark.parametrize(
    "source",
    [[], ["Smith, Jo", "Lee"], ["Lee", "Smith, Jo"], ["x" * (LIST_CHARACTERS + 1)]],
    ids=["nothing to offer", "a comma would part a name", "in any name", "too long"],
)
def test_where_no_list_can_stand_the_hint_stands_alone(tmp_path: Path, source: list[str]) -> None:
    (rule,) = offered(tmp_path, source, hint="Whose is it?")
    assert (str(rule.sqref), rule.type, rule.prompt) == ("C5:C7", None, "Whose is it?")
    assert offered(tmp_path, source) == []


def test_the_longest_list_that_can_stand(tmp_path: Path) -> None:
    assert len(offered(tmp_path, ["x" * LIST_CHARACTERS])) == 1


def test_a_range_may_be_offered_whatever_its_formula_has_in_it(tmp_path: Path) -> None:
    (rule,) = offered(tmp_path, "=OFFSET(Film!$A$4,0,0,9,1)")
    assert (rule.type, rule.formula1) == ("list", "OFFSET(Film!$A$4,0,0,9,1)")
