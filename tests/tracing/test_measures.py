"""Pictures of rectangles, each dot as dark as it is covered: their outlines are known to a fraction of a dot."""

from pathlib import Path

import numpy as np
import pathops
import pytest
from PIL import Image

from tests.tracing.pictures import drawn
from xlbatch.geometry.weld import segments_of, tidy
from xlbatch.problems.phrases import phrase
from xlbatch.svg.layer import Layer, Layers
from xlbatch.tracing import trace as trace_module
from xlbatch.tracing.trace import COARSEST, pale_copy, trace

BLACK, RED, BLUE, WHITE = (0, 0, 0), (220, 0, 0), (0, 0, 170), (255, 255, 255)
Color = tuple[int, ...]
Box = tuple[float, float, float, float]  # left, top, right, bottom; y downward
WIDE, HIGH = 120, 90


def covered(box: Box, wide: int, high: int) -> np.ndarray[tuple[int, ...], np.dtype[np.float64]]:
    """How far each dot is covered."""
    left, top, right, bottom = box
    column, row = np.arange(wide), np.arange(high)
    across = np.clip(np.minimum(column + 1, right) - np.maximum(column, left), 0, 1)
    down = np.clip(np.minimum(row + 1, bottom) - np.maximum(row, top), 0, 1)
    return np.outer(down, across)[..., None]


def picture(*boxes: tuple[Color, Box], ground: Color = WHITE, wide: int = WIDE, high: int = HIGH) -> Image.Image:
    dots = np.broadcast_to(np.array(ground, dtype=float), (high, wide, len(ground)))
    for color, box in boxes:
        dots = dots + (np.array(color) - dots) * covered(box, wide, high)
    return Image.fromarray(np.rint(dots).astype(np.uint8))


def traced(image: Image.Image, folder: Path) -> Layers:
    image.save(folder / "a.png")
    found = trace(folder / "a.png")
    assert isinstance(found, Layers), found
    return found


def reason(image: Image.Image, folder: Path) -> str:
    image.save(folder / "a.png")
    found = trace(folder / "a.png")
    assert not isinstance(found, Layers)
    return found[0].reason


def corners(layer: Layer) -> set[tuple[float, ...]]:
    """The ends of the outlines' lines, to a tenth."""
    assert {verb for verb, _ in segments_of(layer.path)} <= {"M", "L", "Z"}
    return {tuple(round(value, 1) + 0.0 for value in place) for _, place in segments_of(layer.path) if place}


def square(left: float, low: float, right: float, high: float) -> set[tuple[float, ...]]:
    return {(left, low), (right, low), (right, high), (left, high)}


def test_an_edge_lies_where_the_dots_are_partly_covered(tmp_path: Path) -> None:
    found = traced(picture((BLACK, (20.3, 11.8, 90.75, 60.1))), tmp_path)
    (layer,) = found.layers
    assert layer.color == "#000000"
    assert layer.use
    assert layer.path.bounds == pytest.approx((20.3, HIGH - 60.1, 90.75, HIGH - 11.8), abs=0.01)
    assert layer.path.area == pytest.approx((90.75 - 20.3) * (60.1 - 11.8), abs=1)
    assert len(corners(layer)) == 4
    assert found.mm == pytest.approx(25.4 / 96)
    assert found.page == pytest.approx((0, 0, WIDE, HIGH))
    assert not found.notes
    assert found.widest == pytest.approx((90.75 - 20.3) * COARSEST, rel=1e-3)


def test_an_edge_may_lie_within_the_outermost_dots(tmp_path: Path) -> None:
    (layer,) = traced(picture((BLACK, (0.3, 0.4, 90, 60))), tmp_path).layers
    assert layer.path.bounds == pytest.approx((0.3, HIGH - 60, 90, HIGH - 0.4), abs=0.05)


@pytest.mark.parametrize("off", [0.0, 0.2, 0.5, 0.9])
def test_an_edge_spread_over_two_dots_lies_in_their_middle(off: float, tmp_path: Path) -> None:
    left, top, right, bottom = box = (20 + off, 11 + off, 90 + off, 60 + off)
    shifted = [np.asarray(picture((BLACK, (left + by, top + by, right + by, bottom + by)))) for by in (-0.5, 0.5)]
    (layer,) = traced(Image.fromarray(np.mean(shifted, axis=0).astype(np.uint8)), tmp_path).layers
    assert layer.path.bounds == pytest.approx((box[0], HIGH - box[3], box[2], HIGH - box[1]), abs=0.05)


@pytest.mark.parametrize("off", [0.0, 0.3, 0.5, 0.8])
@pytest.mark.parametrize("wide", [1.2, 2.0, 2.4])
def test_a_thin_line_lies_where_it_is_though_it_covers_no_dot_wholly(wide: float, off: float, tmp_path: Path) -> None:
    upright, level = (30 + off, 40, 30 + off + wide, 80), (50, 50 + off, 100, 50 + off + wide)
    (layer,) = traced(picture((BLACK, (20, 10, 100, 30)), (BLACK, upright), (BLACK, level)), tmp_path).layers
    _, (left, _, right, _), (_, low, _, high) = sorted(contour.bounds for contour in layer.path.contours)
    assert (left, right) == pytest.approx((30 + off, 30 + off + wide), abs=0.25)
    assert (HIGH - high, HIGH - low) == pytest.approx((50 + off, 50 + off + wide), abs=0.25)


def test_an_outline_reaches_to_the_edges_of_the_picture(tmp_path: Path) -> None:
    (layer,) = traced(picture((BLACK, (0, 30, WIDE, 60)), (BLACK, (40, 0, 80, HIGH))), tmp_path).layers
    ends = {(x, y) for x in (0, 40, 80, 120) for y in (0, 30, 60, 90)} - square(0, 0, 120, 90)
    assert corners(layer) == ends


def test_the_largest_with_what_lies_in_it_is_lowest_and_goes_under_what_touches_it(tmp_path: Path) -> None:
    """Half a millimeter of a drawing of 254 would be half a dot for these 254 dots."""
    boxes = [(RED, (3, 20, 257, 80)), (BLUE, (43, 30, 143, 70)), (BLACK, (53, 40, 73, 60)), (BLACK, (203, 5, 243, 20))]
    found = traced(picture(*boxes, wide=260, high=100), tmp_path)
    assert [layer.color for layer in found.layers] == ["#dc0000", "#0000aa", "#000000"]
    red, blue, black = found.layers
    assert black.path.area == pytest.approx(20 * 20 + 40 * 15, abs=3)
    assert blue.path.area == pytest.approx(100 * 40 - 19 * 19, abs=5)
    assert red.path.area == pytest.approx(254 * 60 - 99 * 39 + 40 * 0.5, abs=5)
    assert black.path.bounds == pytest.approx((53, 40, 243, 95), abs=0.1)


@pytest.mark.parametrize(("speck", "count"), [((5, 5, 8, 8), 1), ((5, 5, 7, 8), 0)])
def test_a_speck_of_fewer_than_twelve_sides_of_dots_is_left_out(speck: Box, count: int, tmp_path: Path) -> None:
    found = traced(picture((BLACK, (20, 20, 100, 70)), (BLACK, speck)), tmp_path)
    assert sum(verb == "M" for verb, _ in segments_of(found.layers[0].path)) == 1 + count
    told = [note.facts["what"] for note in found.notes if note.code == "picture-changed"]
    assert told == ([] if count else [phrase("speck", count=1)])


def test_specks_are_counted(tmp_path: Path) -> None:
    specks = [(BLACK, (5.0 + 10 * number, 5.0, 7.0 + 10 * number, 8.0)) for number in range(3)]
    found = traced(picture((BLACK, (20, 20, 100, 70)), *specks), tmp_path)
    assert [note.facts["what"] for note in found.notes] == [phrase("specks", count=3)]


@pytest.mark.parametrize(("across", "enough"), [(64, True), (63, False)])
def test_a_drawing_has_at_least_64_dots_across(across: int, enough: bool, tmp_path: Path) -> None:
    image = picture((BLACK, (20, 20, 20 + across, 70)))
    if enough:
        assert traced(image, tmp_path).widest == pytest.approx(across * COARSEST)
    else:
        assert f"{WIDE} by {HIGH}" in reason(image, tmp_path)


def test_a_drawing_made_larger_than_it_had_dots_for_is_too_blurred_where_these_are_too_few(tmp_path: Path) -> None:
    image = picture((BLACK, (15, 10, 40, 35)), wide=60, high=45)
    assert "too blurred" in reason(image.resize((480, 360), Image.Resampling.BICUBIC), tmp_path)


@pytest.mark.parametrize(("level", "told"), [(244, ["#f4ffff"]), (245, [])])
def test_a_background_that_is_not_white_is_told(level: int, told: list[str], tmp_path: Path) -> None:
    found = traced(picture((BLACK, (20, 20, 100, 70)), ground=(level, 255, 255)), tmp_path)
    assert [note.facts["color"] for note in found.notes if note.code == "picture-background"] == told


def test_what_is_enclosed_is_one_layer_with_its_islands_left_out(tmp_path: Path) -> None:
    """A frame, in it an island, and beside it another frame."""
    frame = (BLACK, (5.0, 5.0, 75.0, 85.0)), (WHITE, (15.0, 15.0, 65.0, 75.0))
    other = (BLACK, (80.0, 5.0, 115.0, 85.0)), (WHITE, (90.0, 15.0, 105.0, 75.0))
    ground, ink = traced(picture(*frame, (BLACK, (30, 30, 50, 60)), *other), tmp_path).layers
    assert (ground.color, ground.use, ink.use) == ("#ffffff", False, True)
    assert ground.path.area == pytest.approx(50 * 60 - 20 * 30 + 15 * 60, abs=0.5)
    assert corners(ground) == square(15, 15, 65, 75) | square(30, 30, 50, 60) | square(90, 15, 105, 75)
    assert ink.path.area == pytest.approx(70 * 80 + 35 * 80 - ground.path.area, abs=0.5)


@pytest.mark.parametrize("ground", [WHITE, (255, 255, 255, 0)])
def test_a_pale_copy(ground: Color, tmp_path: Path) -> None:
    """Three tenths of its own color, on white, at most so many dots across."""
    ink = BLACK if len(ground) == 3 else (*BLACK, 255)
    image = picture((ink, (20, 20, 100, 70)), ground=ground)
    image.save(tmp_path / "a.png")
    (tmp_path / "pale.png").write_bytes(pale_copy(tmp_path / "a.png", 60))
    with Image.open(tmp_path / "pale.png") as pale:
        assert (pale.size, pale.mode) == ((60, 45), "RGB")
        assert pale.getpixel((30, 22)) == pytest.approx((178, 178, 178), abs=1)
        assert pale.getpixel((3, 3)) == (255, 255, 255)


@pytest.mark.parametrize(
    ("larger", "taken"), [(1.0, True), (1.002, True), (0.998, True), (1.004, False), (0.996, False)]
)
def test_welded_outlines_are_taken_where_their_area_is_as_before(
    larger: float, taken: bool, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    """To 3 in 1,000 and a dot; else outlines are left as they are."""
    side = larger**0.5
    monkeypatch.setattr(trace_module, "tidy", lambda path: tidy(path).transform(side, 0, 0, side, 0, 0))
    (layer,) = traced(picture((BLACK, (20, 10, 100, 70))), tmp_path).layers
    right = 100 * side if taken else 100
    assert layer.path.bounds[2] == pytest.approx(right, abs=0.02)


def test_where_curves_cannot_be_welded_they_are_welded_as_short_lines(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    def lines_alone(path: pathops.Path) -> pathops.Path:
        if any(verb == "C" for verb, _ in segments_of(path)):
            raise pathops.PathOpsError
        return tidy(path)

    monkeypatch.setattr(trace_module, "tidy", lines_alone)
    (layer,) = traced(drawn('<rect x="100" y="100" width="600" height="600" rx="60"/>', width=160), tmp_path).layers
    verbs = [verb for verb, _ in segments_of(layer.path)]
    assert set(verbs) == {"M", "L", "Z"}
    assert verbs.count("L") >= 4 * 4
    assert layer.path.area == pytest.approx(120**2 - (4 - np.pi) * 12**2, rel=0.003)
