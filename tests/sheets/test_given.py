"""What the memory keeps of the input sheets is what people can change."""

from dataclasses import replace
from pathlib import Path

from tests.workbooks import write_workbook
from xlbatch.job.part_line import PartLine
from xlbatch.job.source import Source
from xlbatch.roster.read import Reading, read
from xlbatch.sheets.given import given_rows


def test_what_the_program_tells_of_a_part_is_no_change_of_a_persons(tmp_path: Path) -> None:
    """A drawing made wider has all its parts wider: that is one change, on Designs."""
    reading = read(write_workbook(tmp_path / "list.xlsx", {"Roster": [["Who", "Size"], ["Ana", "M"]]}))
    assert isinstance(reading, Reading)
    part = PartLine(Source("Drawing parts"), "ring.svg", "1", width=20, height=10, place="50 % across, 40 % down")
    wider = replace(part, width=40, height=20, place="50 % across, 41 % down")
    named = replace(part, replace_by="{Group}")
    as_was, as_wider, as_named = (
        given_rows(replace(reading.job, drawing_parts=(line,))) for line in (part, wider, named)
    )
    assert as_wider == as_was
    assert as_named != as_was
