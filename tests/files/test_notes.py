"""Notes on the cells of an .xlsx."""

from pathlib import Path

import pytest
from openpyxl import Workbook
from openpyxl.comments import Comment

from xlbatch.files.book import open_book
from xlbatch.files.chat import is_chat
from xlbatch.files.raw import UnreadableFile


def test_a_note_is_read_at_its_cell(tmp_path: Path) -> None:
    book = Workbook()
    book.worksheets[0].append(["Who", "Size"])
    book.worksheets[0].append(["Ana", "M"])
    book.worksheets[0]["B2"].comment = Comment("call her first", "Eve")
    book.save(tmp_path / "list.xlsx")
    sheets = open_book(tmp_path / "list.xlsx")
    assert not isinstance(sheets, UnreadableFile)
    assert sheets[0].notes == {(2, 2): "call her first"}


ANA, IVO = "[5/2/26, 9:14:03 PM] Ana Quill: M", "[5/2/26, 9:15:40 PM] Ivo Rusk: L please"


@pytest.mark.parametrize(
    ("lines", "chat"),
    [
        ((ANA, IVO), True),
        ((ANA, IVO, "and one for Bo", "Size M"), False),  # two of four
        ((ANA, IVO, ANA, IVO, "and one for Bo"), True),
        ((ANA,), False),
        (("Who,Size", "Ana,M"), False),
    ],
)
def test_a_chat_is_known_by_most_of_its_lines(lines: tuple[str, ...], chat: bool) -> None:
    assert is_chat("\n".join(lines)) is chat
