"""The lines made of a list's rows: marks that repeat, sizes for some, counts, several in a cell."""

import pytest

from tests.tables.short_lists import cases, read_short


@pytest.mark.parametrize(("text", "reading"), cases("rows.txt"))
def test_the_garments_of_a_list(text: str, reading: str) -> None:
    assert read_short(text) == reading
