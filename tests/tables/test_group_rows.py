"""Titles among a list's rows that are groups, and those that are not."""

import pytest

from tests.tables.short_lists import cases, read_short


@pytest.mark.parametrize(("text", "reading"), cases("group_rows.txt"))
def test_titles_of_groups(text: str, reading: str) -> None:
    assert read_short(text) == reading
