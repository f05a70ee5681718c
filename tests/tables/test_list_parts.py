"""Lists in parts: totals, titles, further lists below and beside, and what ends a list."""

import pytest

from tests.tables.short_lists import cases, read_short


@pytest.mark.parametrize(("text", "reading"), cases("list_parts.txt"))
def test_the_parts_of_a_list(text: str, reading: str) -> None:
    assert read_short(text) == reading
