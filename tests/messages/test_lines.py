"""The words below a garment in a group's picture."""

import pytest

from xlbatch.messages.group_picture import _lines
from xlbatch.paper.measure import text_width

TEXT = "Back name ADA in white on a navy crew-neck tee"


@pytest.mark.parametrize("wide", [60, 90, 140, 400])
def test_no_word_is_lost_and_every_line_fits(wide: float) -> None:
    lines = _lines(TEXT, 11, wide)
    assert " ".join(lines) == TEXT
    assert all(text_width(line, 11, bold=True) <= wide for line in lines if " " in line)
    assert (len(lines) == 1) is (wide == 400)


def test_nothing_takes_no_line() -> None:
    assert _lines("", 11, 100) == []
