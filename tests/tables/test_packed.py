"""Many short records in few cells, and back as they were."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from xlbatch.tables.packed import MOST, NotPacked, packed, unpacked

VALUES = st.text() | st.integers(-(10**9), 10**9) | st.lists(st.text(), max_size=4)
RECORDS = st.lists(st.lists(VALUES, max_size=6), max_size=30)


@given(RECORDS)
def test_what_is_packed_comes_back_as_it_was(records: list[list[object]]) -> None:
    rows = list(packed(records))
    assert [record for row in rows for record in unpacked(row)] == records


@pytest.mark.parametrize("letters", [10, 900, 40_000])
def test_no_cell_is_too_long_and_all_of_it_is_plain(letters: int) -> None:
    records = [["Ægir \u0007 ", "é" * letters, number] for number in range(30)]
    rows = list(packed(records))
    cells = [cell for row in rows for cell in row]
    assert [record for row in rows for record in unpacked(row)] == records
    assert all(len(cell) <= MOST and cell.isascii() and cell.isprintable() for cell in cells)
    assert len(rows) < 30 or letters > 900


@pytest.mark.parametrize("text", ["", "[", "1", "{}", "[1]", '["a"]', "[[1]"])
def test_what_was_never_packed_is_refused(text: str) -> None:
    with pytest.raises(NotPacked):
        unpacked([text])
