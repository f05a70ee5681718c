"""Which files of a folder are lists."""

from pathlib import Path

from tests.plan_texts import JOBS, plan
from tests.workbooks import write_workbook
from xlbatch.each_list import lists_in
from xlbatch.sheets.write import write_plan


def test_a_folder_s_lists_without_plans_pictures_and_what_is_open(tmp_path: Path) -> None:
    assert list(lists_in([tmp_path])) == [tmp_path]
    first = write_workbook(tmp_path / "b.xlsx", JOBS["picnic"])
    second = tmp_path / "a.CSV"
    second.write_text("Name,Size\nAna,M\n", encoding="utf-8")
    for other in ("~$b.xlsx", ".hidden.xlsx", "logo.svg", "notes.txt"):
        (tmp_path / other).write_bytes(b"")
    write_plan(tmp_path / "b - plan.xlsx", plan(first))
    assert list(lists_in([tmp_path])) == [second, first]
    assert list(lists_in([first, tmp_path / "none.xlsx"])) == [first, tmp_path / "none.xlsx"]
