"""Lines that stand each in one cell, as in a message."""

import pytest

from tests.tables.short_lists import cases, read_short


@pytest.mark.parametrize(("text", "reading"), cases("one_column.txt"))
def test_lines_in_one_column(text: str, reading: str) -> None:
    assert read_short(text) == reading
