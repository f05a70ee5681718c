"""Lists of other shapes: when lines are a chat, and the cell that each of many people in it came from."""

import pytest

from tests.tables.short_lists import cases, read_short
from xlbatch.files.raw import Raw, RawSheet
from xlbatch.tables.chats import chat
from xlbatch.tables.other_shapes import several_in_a_cell


def sheet(*lines: str) -> RawSheet:
    return RawSheet("Roster", {row: {1: Raw(line)} for row, line in enumerate(lines, 1)})


@pytest.mark.parametrize(
    ("lines", "said"),
    [
        (("Mira: M for me", "Tom: L for me", "Ana: thanks", "done"), ["Mira M", "Tom L"]),  # three of four lines
        (("Mira: M for me", "Tom: L for me", "thanks", "done"), []),  # half of them: notes
        (
            ("Mira: M", "Tom: L", "Ana: S"),
            [],
        ),  # names and sizes: nobody writes for another
    ],
)
def test_lines_are_a_chat_where_most_have_a_sender_who_says_more_than_a_size(
    lines: tuple[str, ...], said: list[str]
) -> None:
    shape = chat(sheet(*lines))
    rows = shape.sheet.rows.values() if shape else ()
    assert [f"{cells[1].value} {cells[2].value}" for cells in rows] == said


def test_fifty_people_in_a_cell_keep_their_cell() -> None:
    names = [f"{name} {letter}" for name in ("Ana", "Bo") for letter in "ABCDEFGHIJKLMNOPQRSTUVWXY"]
    shape = several_in_a_cell(sheet("; ".join(f"{name} - M" for name in names), "Cy Z - L; Di Z - S"))
    assert shape
    made = shape.sheet
    assert len(made.rows) == 52
    assert [made.orientation.cell(1, row) for row in made.rows] == ["A1"] * 50 + ["A2"] * 2


@pytest.mark.parametrize(("text", "reading"), cases("other_shapes.txt"))
def test_lists_of_another_shape(text: str, reading: str) -> None:
    assert read_short(text) == reading
