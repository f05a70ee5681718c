"""Which rows are the headings: two rows, titles above, rows of sizes, garments and people."""

import pytest

from tests.tables.short_lists import cases, read_short
from xlbatch.files.raw import Raw, RawSheet
from xlbatch.tables.heading_rows import Headings, find_headings


@pytest.mark.parametrize(("text", "reading"), cases("heading_rows.txt"))
def test_a_list_by_its_headings(text: str, reading: str) -> None:
    assert read_short(text) == reading


@pytest.mark.parametrize(("above", "found"), [(0, 1), (29, 30), (30, 0)])
def test_headings_stand_in_the_first_thirty_filled_rows(above: int, found: int) -> None:
    rows = {row: {1: Raw("run of the year")} for row in range(1, above + 1)}
    people = {above + 1: {1: Raw("Name"), 2: Raw("Size")}, above + 2: {1: Raw("Ana"), 2: Raw("M")}}
    assert find_headings(RawSheet("Sheet1", rows | people), "Roster").row == found


def test_what_is_known_of_headings() -> None:
    sized = Headings(1, {1: "Name", 2: "S", 3: "M"}, sizes={2: "S", 3: "M"})
    assert set(sized.known) == {"Size"}
    assert set(sized.special) == {2, 3}
    assert not sized.used
    for_some = Headings(1, {1: "Name", 2: "Youth size", 3: "Adult size"}, wearers={2: "youth", 3: "adult"})
    assert set(for_some.known) == {"Size"}
    assert set(for_some.special) == {2, 3}
    part = for_some.within(frozenset((1, 2)))
    assert part.titles == {1: "Name", 2: "Youth size"}
    assert part.wearers == {2: "youth"}
    assert set(part.known) == {"Who", "Size"}
