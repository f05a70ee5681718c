"""Chats: who each message gives a size of."""

import pytest

from tests.tables.short_lists import cases, read_short


@pytest.mark.parametrize(("text", "reading"), cases("chats.txt"))
def test_who_says_which_size(text: str, reading: str) -> None:
    assert read_short(text) == reading
