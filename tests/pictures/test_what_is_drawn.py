"""What stands on the small drawings, as the SVG they are made of: where things lie, by arithmetic beside each check."""

import re
from dataclasses import replace

import pytest

from tests.cutfiles.test_run_svg import decal, run_of
from tests.plan_texts import JOBS, plan
from tests.workbooks import write_workbook
from xlbatch.film.layout import Lying, Strip
from xlbatch.geometry.outline import Outline, pack
from xlbatch.pictures.art_panel import seen_in
from xlbatch.pictures.font_picture import HIGH, font_picture
from xlbatch.pictures.garment_drawing import by_side
from xlbatch.pictures.plate_picture import plate_picture
from xlbatch.pictures.sketch import body_shape
from xlbatch.pictures.strip_picture import BARE, EDGE, view_of
from xlbatch.pictures.swatch import Swatch, proof_picture
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


@pytest.mark.parametrize(("width", "height"), [(150, 120), (300, 60), (60, 300)])
def test_the_plate_is_seen_whole_wherever_it_comes_down(
    relay: Plan, monkeypatch: pytest.MonkeyPatch, width: float, height: float
) -> None:
    """As large as fits, but for 2 points on each side, the piece in the middle."""
    place = next(place for place in relay.places if len(place.sections) > 1)
    svgs = drawing(monkeypatch, "plate_picture")
    plate_picture(place, relay.job.presses[0], width, height)
    piece, *plates = numbers(svgs[0], "rect", "x", "y", "width", "height")
    assert len(plates) == len(place.sections) == len(numbers(svgs[0], "circle", "cx"))
    left, top = min(x for x, *_ in plates), min(y for _, y, *_ in plates)
    right, bottom = max(x + wide for x, _, wide, _ in plates), max(y + high for _, y, _, high in plates)
    edges = min(left, top, width - right, height - bottom)
    assert edges == pytest.approx(2, abs=0.02)
    x, y, wide, high = piece
    assert (x + wide / 2, y + high / 2) == pytest.approx((width / 2, height / 2), abs=0.02)
    assert wide / high == pytest.approx(place.decal.width / place.decal.height, rel=0.002)


def test_sides_are_told_front_first(relay: Plan) -> None:
    places = sorted(relay.places, key=lambda place: place.side, reverse=True)
    assert list(by_side(places))[:2] == ["front", "back"]
    assert sum(map(len, by_side(places).values())) == len(places)


def test_a_bare_armhole_goes_down_to_the_armpit_and_no_further(relay: Plan) -> None:
    """The right edge of a tank top from the neck to the hem: in to the strap and out to the chest, never up again."""
    blank = replace(relay.places[0].garment.blank, chest=500, length=700, sleeve_length=None, sleeve_opening=None)
    edge = re.findall(r"(-?[.\d]+) (-?[.\d]+)", body_shape(blank, "front").split('"')[1])
    right = [(float(x), float(y)) for x, y in edge[: len(edge) // 2]]
    assert [y for _, y in right] == sorted(y for _, y in right)
    assert right[-2:] == [(250, right[-2][1]), (250, 700)]
    assert all(x < 250 for x, _ in right[:-2])


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


def test_letters_that_the_edge_of_a_room_cuts_are_left_out_with_their_bellies() -> None:
    """A room from (10, 10) to (30, 30): a letter in it stays, one across its edge goes with its hole, and what is
    higher than the room, a frame, stays."""
    letter, cut, hole, frame = (12, 12, 18, 18), (25, 20, 35, 26), (27, 22, 29, 24), (28, 0, 60, 50)
    segments = [
        segment
        for x, y, right, top in (letter, cut, hole, frame)
        for segment in (("M", (x, y)), ("L", (right, y)), ("L", (right, top)), ("L", (x, top)), ("Z", ()))
    ]
    room = (10.0, 10.0, 30.0, 30.0)
    drawn = replace(decal(1), outline=Outline(pack(segments), 60, 50, 4, 0, 0), rooms=(room,))
    assert [values for verb, values in seen_in(drawn, room) if verb == "M"] == [(12, 12), (28, 0)]
    moved = (110.0, 10.0, 130.0, 30.0)  # the decal 100 mm to the right of its group's corner
    assert len(list(seen_in(replace(drawn, offset=(100.0, 0.0)), moved))) == 2 * 5
    assert len(list(seen_in(replace(drawn, rooms=()), room))) == 4 * 5


@pytest.mark.parametrize(
    ("width", "height", "scale"),
    [
        (60.0, 26.0, (26 - 8.5 - 2 * 3) / 60),  # a caption of 8.5 points below, a margin of 3 on each side
        (14.0, 50.0, (14 - 2 * 3) / 40),
    ],
)
def test_a_decal_is_as_large_as_its_panel_allows(
    width: float, height: float, scale: float, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A decal of 40 by 60 mm, in the middle of its panel."""
    svgs = drawing(monkeypatch, "swatch")
    proof_picture(Swatch([decal(1)], ["A"], "white"), {}, width, height)
    left, bottom, factor = re.findall(r"translate\(([\d.]+) ([\d.]+)\) scale\(([\d.]+) ", svgs[0])[0]
    assert float(factor) == pytest.approx(scale, abs=1e-5)
    assert float(left) == pytest.approx((width - 40 * scale) / 2, abs=0.01)
    assert float(bottom) == pytest.approx((height - 8.5 + 60 * scale) / 2, abs=0.01)
