"""What a sign-up form asks, and whose list its answers join."""

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from tests.workbooks import Rows, write_workbook
from xlbatch.job.job import Class
from xlbatch.roster.read import Reading
from xlbatch.sign_up.asked import asked
from xlbatch.sign_up.together import _names


@pytest.mark.parametrize(
    ("classes", "prints_name", "asks"),
    [
        ({"adult", "ladies"}, True, False),
        ({"adult", "youth"}, True, True),
        ({"toddler"}, True, True),
        ({"adult", "youth"}, False, False),  # no name comes to stand on anything
    ],
)
def test_consent_is_asked_where_a_child_s_name_may_be_printed(
    classes: set[Class], prints_name: bool, asks: bool, reading_of: Callable[..., Reading]
) -> None:
    ask = asked(reading_of([["Who", "Size"], ["Ana", "M"]]).job)
    blanks = tuple(blank for blank in ask.blanks if blank.for_ in classes)
    assert {blank.for_ for blank in blanks} == classes
    assert replace(ask, blanks=blanks, prints_name=prints_name).for_children is asks


@pytest.mark.parametrize(
    ("job_name", "event", "theirs"),
    [
        ("Harbor picnic", "harbor PICNIC", True),
        ("Harbor picnic", "list", True),  # after its file
        ("Harbor picnic", "Lake camp", False),
        (None, "Harbor picnic", False),
    ],
)
def test_a_list_is_an_event_s_by_its_job_s_name_or_its_file_s(
    job_name: str | None, event: str, theirs: bool, tmp_path: Path
) -> None:
    people: Rows = [["Who", "Size"], ["Ana", "M"]]
    job: Rows = [["Setting", "Value"], ["Job name", job_name]]
    path = write_workbook(tmp_path / "list.xlsx", {"Roster": people, "Job": job})
    assert _names(path, event) is theirs


def test_what_is_no_workbook_or_not_there_names_only_its_file(tmp_path: Path) -> None:
    (tmp_path / "notes.xlsx").write_bytes(b"PK no workbook")
    assert _names(tmp_path / "notes.xlsx", "notes")
    assert not _names(tmp_path / "notes.xlsx", "Harbor picnic")
    assert _names(tmp_path / "gone.xlsx", "gone")
