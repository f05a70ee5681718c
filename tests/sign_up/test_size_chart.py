"""Whom a size fits, in the words of the sign-up's size chart."""

from dataclasses import replace
from pathlib import Path

import pytest

from xlbatch.job.job import Class
from xlbatch.roster.read import blank_job
from xlbatch.sign_up.size_chart import chart_row

BLANK = blank_job(Path("list.xlsx")).blanks[0]


@pytest.mark.parametrize(
    ("for_", "size", "fits"),
    [
        ("adult", "M", "94 to 102 cm chest"),
        ("ladies", "Ladies M", "90 to 98 cm chest"),
        ("toddler", "2T", "92 cm tall"),  # a size of its own
        ("youth", "Youth S", "116 to 128 cm tall"),  # US sizes 6 to 8
        ("youth", "Youth L", "164 to 176 cm tall"),
        ("infant", "6M", ""),
        ("adult", "9XL", ""),
    ],
)
def test_a_size_says_whom_it_fits(for_: Class, size: str, fits: str) -> None:
    """Source: EN 13402-3, chests by letter code and heights beside US children's sizes."""
    assert chart_row(for_, replace(BLANK, size=size))[-1] == fits


def test_flat_measures_are_told_to_an_eighth_of_an_inch_and_a_millimeter() -> None:
    row = chart_row("adult", replace(BLANK, size="M", chest=533.4, length=740.0))
    assert row[:6] == ("adult", "M", 21, 53.3, 29.125, 74)
