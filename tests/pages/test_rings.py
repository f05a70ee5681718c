"""Places too thin are ringed at the size of the fault, not so as to hide the letters."""

import re
from dataclasses import replace

import pytest

from tests.page_jobs import bare_list
from tests.pages.conftest import planned
from xlbatch.art.decal import Decal
from xlbatch.pictures.swatch import LEAST_RING, LEAST_SMALL, RING, thin_marks


@pytest.fixture(scope="module")
def decal(tmp_path_factory: pytest.TempPathFactory) -> Decal:
    return replace(planned(bare_list(tmp_path_factory.mktemp("rings"))).decals[0], thin=((10.0, 4.0),))


def radii(marks: str) -> list[float]:
    return [float(radius) for radius in re.findall(r' r="([\d.]+)"', marks)]


def test_a_ring_is_as_large_as_the_fault_where_the_drawing_is_large(decal: Decal) -> None:
    assert radii(thin_marks(decal, (0, 0), 10.0)) == [RING, RING]  # mm, about the thinnest stroke of a film


@pytest.mark.parametrize(("small", "least"), [(False, LEAST_RING), (True, LEAST_SMALL)])
def test_a_ring_can_be_seen_where_the_drawing_is_small(decal: Decal, *, small: bool, least: float) -> None:
    scale = 0.2  # points a mm
    assert radii(thin_marks(decal, (0, 0), scale, small=small))[0] * scale == pytest.approx(least)
    assert least < 72 / 8 / 2  # so that it is less than an eighth of an inch across


def test_what_is_thick_enough_has_no_ring(decal: Decal) -> None:
    assert thin_marks(replace(decal, thin=()), (0, 0), 1.0) == ""
