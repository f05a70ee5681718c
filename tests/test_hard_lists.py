"""Lists nobody would write on purpose: answered in plain words, and in time that grows no faster than they do."""

import sys
from datetime import datetime
from pathlib import Path

import pytest

from xlbatch.files.book import open_book
from xlbatch.files.raw import UnreadableFile
from xlbatch.run import Options, Outcome, run
from xlbatch.tables.heading_rows import find_headings
from xlbatch.tables.list_parts import list_parts


def planned(path: Path, text: str) -> Outcome:
    path.write_text(text, encoding="utf-8")
    return run(path, Options(effort=0), lambda _step: None, datetime(2026, 1, 1))


@pytest.mark.parametrize("many", ["9" * 400, "9" * 5000, "1e400", "-" + "9" * 400, "0." + "0" * 400 + "1"])
def test_a_how_many_of_400_digits_holds_back_its_row_alone(tmp_path: Path, many: str) -> None:
    outcome = planned(tmp_path / "list.csv", f"Who,Size,How many\nAna,M,{many}\nIvo,L,1\n")
    assert outcome.code == 1
    assert outcome.message == "1 garment planned, 1 held back."
    assert [problem.code for problem in outcome.problems if problem.level == "stop"] == ["how-many-unclear"]


def test_a_number_of_400_digits_is_printed_as_typed(tmp_path: Path) -> None:
    assert planned(tmp_path / "list.csv", f"Who,Size,Number\nAna,M,{'8' * 400}\n").code in (0, 1, 2)


def calls(path: Path, lines: str, count: int) -> int:
    """How many functions are called to divide a list of so many such lines."""
    path.write_text("Who,Size,Number\n" + lines * count, encoding="utf-8")
    book = open_book(path)
    assert not isinstance(book, UnreadableFile)
    headings, called = find_headings(book[0], "Roster"), 0

    def count_call(_frame: object, event: str, _argument: object) -> None:
        nonlocal called
        called += event == "call"

    sys.setprofile(count_call)
    try:
        list_parts(book[0], headings)
    finally:
        sys.setprofile(None)
    return called


@pytest.mark.parametrize(
    "lines", ["Who,Size,Number\n", "Who,Size\nAna,M\n", "Who,Size\nSize,Who\n", "Who,Size\nTitle\n", "Ana,M\nTotal,2\n"]
)
def test_dividing_a_list_takes_time_in_proportion(tmp_path: Path, lines: str) -> None:
    calls(tmp_path / "warm.csv", lines, 300)  # what is remembered of words is remembered now
    once, four_times = (calls(tmp_path / "list.csv", lines, count) for count in (300, 1200))
    assert four_times < 5 * once
