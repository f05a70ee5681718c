"""Boxes that a person ticks on a plan's sheets, in any of the ways people do that."""

import re
from datetime import date, time, timedelta

from xlbatch.files.raw import Raw
from xlbatch.tables.cells import MONTHS, Unclear, number, shown_value, yes_no

MOST = 999_999  # of one thing
# 12/5, 12.5.2026, 2026-05-12, 12 May
_DAY = re.compile(rf"\d{{1,4}}[./-]\d{{1,2}}(?:[./-]\d{{0,4}})?|(?=.*\d).*\b(?:{'|'.join(MONTHS)}).*", re.IGNORECASE)


def mark(cell: Raw) -> bool | Unclear:
    """Whether a box is marked: yes in any way to write it, the day it was done, or how many."""
    if isinstance(cell.value, date | time | timedelta) or _DAY.fullmatch(shown_value(Raw(cell.value))):
        return True
    count = arrived(cell)
    return count if isinstance(count, Unclear) else count > 0


def arrived(cell: Raw) -> bool | int | Unclear:
    """Whether what was ordered has come, or how many have: 1 is one, not yes; less than 0 takes that many back."""
    many = number(cell)
    if isinstance(many, Unclear) or isinstance(cell.value, bool):
        return yes_no(cell)
    return int(many) if many == int(many) and abs(many) <= MOST else Unclear()
