"""A run made of strips, cut in one go."""

from collections.abc import Sequence
from dataclasses import replace

from xlbatch.film.layout import Run, Strip
from xlbatch.job.job import Film, Settings
from xlbatch.trade.tables import practice

TEST_CUT = practice("the side of the test square, where the margin has room for it")
LEAST_TEST_CUT = practice("the side of the smallest test square that tells anything")


def run_of(film: Film, strips: Sequence[Strip], settings: Settings, no: int) -> Run:
    """The strips one after another, a gap between them and a margin at both ends."""
    start = settings.end_margin
    placed: list[Strip] = []
    for strip in strips:
        lying = tuple(replace(decal, along=round(start + decal.along, 3)) for decal in strip.lying)
        placed.append(replace(strip, start=round(start, 3), lying=lying))
        start += strip.length + settings.gap
    length = round(start - settings.gap + settings.end_margin, 3)
    square = test_square(settings) if settings.test_cut else 0.0
    test_cut = square if square >= LEAST_TEST_CUT else 0.0
    return Run(no, film, length, tuple(placed), settings.mirror, "roll", settings.cut_file_kind, test_cut, settings.gap)


def test_square(settings: Settings) -> float:
    """How large a test square the end margin holds, the gap to the first decal kept, in mm."""
    return max(0.0, min(TEST_CUT, settings.end_margin / 2, settings.end_margin - settings.gap))


def room_for_test_cut(settings: Settings) -> float:
    """The least end margin that holds a test cut, in mm."""
    return max(2 * LEAST_TEST_CUT, LEAST_TEST_CUT + settings.gap)
