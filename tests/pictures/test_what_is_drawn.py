"""What stands on the small drawings, as the SVG they are made of: where things lie, by arithmetic beside each check."""

import re

import pytest

from tests.cutfiles.test_run_svg import decal, run_of
from tests.plan_texts import JOBS, plan
from tests.workbooks import write_workbook
from xlbatch.film.layout import Lying, Strip
from xlbatch.pictures.font_picture import HIGH, font_picture
from xlbatch.pictures.garment_drawing import by_side
from xlbatch.pictures.plate_picture import plate_picture
from xlbatch.pictures.strip_picture import BARE, EDGE, view_of
from xlbatch.plan import Plan


@pytest.fixture(scope="module")
def relay(tmp_path_factory: pytest.TempPathFactory) -> Plan:
    """A plate of 9 in and numbers of 8 in with a border, which it cannot press at once."""
    return plan(write_workbook(tmp_path_factory.mktemp("relay") / "list.xlsx", JOBS["relay"]))


def drawing(patch: pytest.MonkeyPatch, module: str) -> list[str]:
    """The SVG of the pictures that a module draws from now on."""
    drawn: list[str] = []
    real = __import__(f"xlbatch.pictures.{module}", fromlist=["drawn"]).drawn

    def keep(svg: str, *rest: object, **how: object) -> object:
        drawn.append(svg)
        return real(svg, *rest, **how)

    patch.setattr(f"xlbatch.pictures.{module}.drawn", keep)
    return drawn


def numbers(svg: str, element: str, *names: str) -> list[tuple[float, ...]]:
    found = re.findall(rf"<{element} [^>]*>", svg)
    return [tuple(float(re.findall(rf' {name}="([-.\d]+)"', tag)[0]) for name in names) for tag in found]


def test_a_strip_is_seen_as_large_as_the_room_allows() -> None:
    """A strip 60 mm long, its decal 40 mm wide 20 mm from the film's edge, on film of 100 mm."""
    run, strip = run_of(), Strip(1, 10, 60, (Lying(decal(1), 20, 10, 0),))
    left, across = 20 - BARE, 40 + 2 * BARE
    tall = view_of(run, strip, 100 + 2 * EDGE, 600 + 2 * EDGE)
    assert (tall.lying, tall.left, tall.across) == (False, left, across)
    assert tall.scale == pytest.approx(min(100 / across, 600 / 60))
    flat = view_of(run, strip, 600 + 2 * EDGE, 100 + 2 * EDGE)
    assert flat.lying
    assert flat.scale == pytest.approx(min(600 / 60, 100 / across))
    whole = view_of(run, Strip(1, 10, 60, (Lying(decal(1), 1, 10, 0), Lying(decal(2), 59, 10, 0))), 100, 100)
    assert (whole.left, whole.across) == (0, 100)  # nearly all of the film: all of it


def test_the_plate_is_seen_whole_wherever_it_comes_down(relay: Plan, monkeypatch: pytest.MonkeyPatch) -> None:
    place = next(place for place in relay.places if len(place.sections) > 1)
    svgs = drawing(monkeypatch, "plate_picture")
    plate_picture(place, relay.job.presses[0], 150, 120)
    piece, *plates = numbers(svgs[0], "rect", "x", "y", "width", "height")
    assert len(plates) == len(place.sections) == len(numbers(svgs[0], "circle", "cx"))
    assert all(x >= 1.9 and y >= 1.9 and x + w <= 148.1 and y + h <= 118.1 for x, y, w, h in (piece, *plates))
    room = max((max(x + w - 75 for x, _, w, _ in plates) / 73, max(y + h - 60 for _, y, _, h in plates) / 58))
    assert room == pytest.approx(1, abs=0.01)  # as large as fits, but for 2 points on each side
    x, y, wide, high = piece
    assert (x + wide / 2, y + high / 2) == pytest.approx((75, 60), abs=0.02)  # in the middle
    assert wide / high == pytest.approx(place.decal.width / place.decal.height, rel=0.001)


def test_sides_are_told_front_first(relay: Plan) -> None:
    places = sorted(relay.places, key=lambda place: place.side, reverse=True)
    assert list(by_side(places))[:2] == ["front", "back"]
    assert sum(map(len, by_side(places).values())) == len(places)


def test_a_font_is_shown_as_large_as_fits(monkeypatch: pytest.MonkeyPatch) -> None:
    """In 26 points of height less 3 above and below, or the width less as much."""
    svgs = drawing(monkeypatch, "font_picture")
    font_picture("Anton", "Ag", 400)
    assert HIGH == 26
    font_picture("Anton", "Ag" * 12, 120)
    for svg, wide in zip(svgs, (400, 120), strict=True):
        path = re.findall(r' d="([^"]*)"', svg)[0]
        points = [float(number) for number in re.findall(r"-?\d+(?:\.\d+)?", path)]
        xs, ys = points[::2], points[1::2]
        full = max((max(xs) - min(xs)) / (wide - 6), (max(ys) - min(ys)) / 20)
        assert full == pytest.approx(1, abs=0.02)
