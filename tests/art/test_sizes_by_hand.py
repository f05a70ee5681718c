"""Sizes that garments and film allow, sizes beside those that lie cut, and joined pieces: sums by hand, in mm."""

from collections.abc import Callable, Mapping
from dataclasses import replace

import numpy as np
import pytest

from xlbatch.art.decal import Decal
from xlbatch.art.few_sizes import AskedSize, beside, few_sizes
from xlbatch.art.joined import joined
from xlbatch.art.size import Limits
from xlbatch.art.thin import _apart
from xlbatch.geometry.ink import InkPart, measured, outline
from xlbatch.plan import Plan


@pytest.mark.parametrize(
    ("limits", "size", "fits", "part"),
    [
        (Limits(300, 200, turned=False), (200, 900), True, 1),
        (Limits(300, 200, turned=False), (200.0005, 900), True, 200 / 200.0005),
        (Limits(300, 200, turned=False), (200.5, 900), False, 200 / 200.5),
        (Limits(300, 200, turned=False), (250, 100), False, 0.8),
        (Limits(300, 200, turned=True), (250, 100), True, 1),
        (Limits(300, 200, turned=True), (250, 250), False, 0.8),
        (Limits(300, 200, turned=True), (400, 100), True, 0.75),  # too wide for the garment
        (Limits(100, 200, turned=False), (200, 50), True, 0.5),
    ],
)
def test_what_fits_the_film_and_how_much_smaller_fits_both(
    limits: Limits, size: tuple[float, float], fits: bool, part: float
) -> None:
    assert limits.fits_film(*size) is fits
    assert limits.shrink(*size) == pytest.approx(part)


@pytest.mark.parametrize(
    ("limits", "widths"),
    [
        (Limits(300, 200, turned=True), (300, 200)),
        (Limits(300, 200, turned=False), (200,)),
        (Limits(150, 200, turned=False), (150,)),
        (Limits(150, 200, turned=True), (150, 150)),
    ],
)
def test_the_widths_to_try_for_lettering(limits: Limits, widths: tuple[float, ...]) -> None:
    assert limits.widths() == widths


ASKED = (AskedSize(100, 5), AskedSize(110, 1), AskedSize(200, 2), AskedSize(220, 2, 210))


@pytest.mark.parametrize(
    ("most", "made"),
    [
        (1, {100: 100, 110: 100, 200: 100, 220: 100}),  # 450 of change, as at 110: the smaller
        (2, {100: 100, 110: 100, 200: 200, 220: 200}),  # 10 + 40, as at 210, the most that fits the last
        (3, {100: 100, 110: 100, 200: 200, 220: 210}),
        (9, {100: 100, 110: 110, 200: 200, 220: 210}),
    ],
)
def test_few_sizes_change_the_least_in_all(most: int, made: Mapping[float, float]) -> None:
    assert few_sizes(ASKED, most) == made


@pytest.mark.parametrize(
    ("most", "lying", "made"),
    [
        (2, {}, {100: 1, 110: 1, 200: 1, 220: 1}),  # nothing lies cut: as they are chosen anew
        # two lie cut and there may be two: each takes the nearest that fits
        (2, {100: 100, 200: 215}, {100: 100, 200: 215, 110: 100, 220: 100}),  # 215 is too wide for the last
        (2, {100: 100, 220: 210}, {100: 100, 220: 210, 110: 100, 200: 210}),
        (2, {100: 230, 200: 240}, {100: 230, 200: 240, 110: 230, 220: 1}),  # none fits the last: anew
        # one lies cut and there may be two: the others share one new size
        (2, {100: 100}, {100: 100, 110: 200, 200: 200, 220: 200}),
    ],
)
def test_sizes_that_lie_cut_stay(most: int, lying: Mapping[float, float], made: Mapping[float, float]) -> None:
    assert beside(ASKED, most, dict.fromkeys((100, 110, 200, 220), 1.0), lying) == made


def test_places_of_faults_stand_apart() -> None:
    """Four times the limit; those beside one already marked are left out."""
    places = np.array([0, 3, 4.1, 4.1j, 8 + 8j, 8 + 9j])
    assert _apart(places, 1.0) == ((0, 0), (4.1, 0), (0, 4.1), (8, 8))
    assert _apart(places, 0.5) == ((0, 0), (3, 0), (0, 4.1), (8, 8))


@pytest.fixture
def decal(plan_of: Callable[..., Plan]) -> Decal:
    return plan_of([["Who", "Size"], ["Ana", "M"]]).decals[0]


def test_a_joined_piece_has_the_places_of_its_parts(decal: Decal) -> None:
    """A box of 10 x 10 at (50, 30), and one of 20 x 10 the same height 100 to the right and 7 down."""

    def part(wide: float, high: float, text: str, font: str, offset: tuple[float, float]) -> Decal:
        corners = ((0, 0), (wide, 0), (wide, high), (0, high))
        ink = measured([*(("L" if no else "M", corner) for no, corner in enumerate(corners)), ("Z", ())])
        assert ink
        shape = outline((InkPart(ink),))
        return replace(
            decal, width=wide, height=high, outline=shape, text=text, font=font, offset=offset, thin=((1, 2),),
            rooms=((0, 0, wide, high),), base=(0, 0, wide, 5),
        )  # fmt: skip

    whole = joined((part(10, 10, "ANA", "Anton", (50, 30)), part(20, 10, "7", "Anton", (150, 23))))
    assert (whole.width, whole.height, whole.text, whole.font) == (120, 17, "ANA / 7", "Anton")
    assert [part_.offset for part_ in whole.parts] == [(0, 7), (100, 0)]
    assert list(whole.thin) == [(1, 9), (101, 2)]
    assert list(whole.rooms) == [(0, 7, 10, 17), (100, 0, 120, 10)]
    assert list(whole.base or ()) == [0, 7, 10, 12]
    assert whole.outline
    assert (whole.outline.width, whole.outline.height, whole.outline.contours) == (120, 17, 2)
    assert (whole.outline.cut_length, whole.outline.area) == (40 + 60, 100 + 200)
    assert whole.outline.center == pytest.approx((100 * 5 + 200 * 110) / 300, abs=0.001)
