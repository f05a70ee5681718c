"""Times of day, as people and spreadsheets write them, in minutes."""

from datetime import time, timedelta

from xlbatch.files.raw import Raw
from xlbatch.tables import cells
from xlbatch.tables.cells import Unclear

UNCLEAR = Unclear()


def test_clock() -> None:
    times = {
        "9:00": 540,
        "9": 540,
        "9 am": 540,
        "5:30 pm": 1050,
        "12 am": 0,
        "12:15 pm": 735,
        "17h30": 1050,
        "09:00:00": 540,
    }
    assert {typed: cells.clock(Raw(typed)) for typed in times} == times
    assert cells.clock(Raw(time(9, 30))) == cells.clock(Raw(timedelta(hours=9, minutes=30))) == 570
    assert cells.clock(Raw(0.375, "0.00")) == 540
    assert cells.clock(Raw(23.25 / 24, "0.00")) == 1395
    assert cells.clock(Raw(0.9999, "0.00")) == 0  # to the minute it is midnight
    assert cells.clock(Raw(timedelta(hours=23, minutes=59))) == 1439
    assert cells.clock(Raw(timedelta(hours=24))) == UNCLEAR
    assert cells.clock(Raw("25:00")) == cells.clock(Raw("13 pm")) == cells.clock(Raw("noonish")) == UNCLEAR
