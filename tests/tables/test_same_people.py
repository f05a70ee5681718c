"""Several sheets with the same people, or with others."""

import pytest

from tests.tables.short_lists import cases, read_short


@pytest.mark.parametrize(("text", "reading"), cases("same_people.txt"))
def test_which_sheets_are_the_list(text: str, reading: str) -> None:
    assert read_short(text) == reading
