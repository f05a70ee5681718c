"""Interlocked decals: the gap kept between their shapes, each in one piece, and no strip longer than of boxes.

Shapely judges the shapes; the cut files of a whole job are judged as they were written."""

import itertools
import math
import os
from collections.abc import Iterator, Sequence
from dataclasses import replace
from datetime import datetime
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import numpy as np
import pytest
import shapely
from fontTools.pens.recordingPen import RecordingPen
from fontTools.svgLib.path import parse_path
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry.base import BaseGeometry

import xlbatch.film.interlock
from xlbatch.art.decal import Decal
from xlbatch.cutfiles.run_svg import cut_files
from xlbatch.film.box import UM, bed_of
from xlbatch.film.layout import Layout, Lying
from xlbatch.film.profile import HELD, Profile, cut_out, profiles
from xlbatch.film.verify import faults
from xlbatch.geometry.outline import Outline, Segment, pack
from xlbatch.geometry.path import transform
from xlbatch.roster.read import Reading, read
from xlbatch.run import make_plan

EXAMPLES = Path(__file__).parents[2] / "example_workbooks"
GAP = 6.0
TRIANGLE = [(0, 0), (100, 0), (50, 90)]
POLYGONS = st.lists(st.tuples(st.integers(0, 90), st.integers(0, 90)), min_size=3, max_size=6, unique=True)


def shaped(decal: Decal, *contours: Sequence[tuple[float, float]]) -> Decal:
    """The decal with an outline of straight contours, its ink box moved to (0, 0)."""
    left, low, right, high = shapely.MultiPoint([at for contour in contours for at in contour]).bounds
    segments: list[Segment] = []
    for contour in contours:
        (x, y), *rest = [(x - left, y - low) for x, y in contour]
        segments += [("M", (x, y)), *(("L", at) for at in rest), ("Z", ())]
    area = shapely.union_all([shapely.Polygon(contour) for contour in contours]).area
    outline = Outline(pack(segments), right - left, high - low, len(contours), 1.0, area)
    return replace(decal, width=right - left, height=high - low, outline=outline)


def shop_of(new_shop: Any, *shapes: Sequence[Sequence[tuple[float, float]]], **changes: Any) -> Any:
    """One garment with a decal of each of these shapes."""
    shop = new_shop()
    shop.settings = replace(shop.settings, interlock=True, gap=GAP, **changes)
    shop.decals([(1.0, 1.0)] * len(shapes))
    shop.made = [shaped(decal, *contours) for decal, contours in zip(shop.made, shapes, strict=True)]
    return shop


def shape(lying: Lying, mirrored: bool) -> BaseGeometry:
    """The straight outline where it lies."""
    assert lying.decal.outline
    points = [
        at for verb, at in transform(lying.decal.outline.segments, lying.matrix(mirrored=mirrored)) if verb != "Z"
    ]
    starts = [at for at, verb in enumerate(lying.decal.outline.segments.verbs.replace("Z", "")) if verb == "M"]
    return shapely.union_all(
        [shapely.Polygon(points[begin:end]) for begin, end in itertools.pairwise([*starts, len(points)])]
    )


def nearest(layout: Layout) -> float:
    """The least distance between the shapes of any two decals of a run."""
    return min(
        (
            float(shapely.distance(*(shape(each, run.mirrored) for each in pair)))
            for run in layout.runs
            for pair in itertools.combinations(run.lying, 2)
        ),
        default=math.inf,
    )


def simple(points: Sequence[tuple[int, int]]) -> Sequence[tuple[float, float]]:
    """A polygon that does not cross itself: the points around their middle."""
    middle = np.mean(points, axis=0)
    return sorted(points, key=lambda at: math.atan2(at[1] - middle[1], at[0] - middle[0]))


@settings(max_examples=25, deadline=None)
@given(st.lists(POLYGONS.map(simple).filter(lambda p: shapely.Polygon(p).buffer(0).area > 50), min_size=1, max_size=7),
       st.booleans(), st.booleans())  # fmt: skip
def test_any_shapes_keep_the_gap_and_take_no_more_than_boxes(
    new_shop: Any, shapes: Any, turn: bool, mirror: bool
) -> None:
    whole = [[p] for p in shapes if shapely.Polygon(p).is_valid]
    shop = shop_of(new_shop, *whole, turn=turn, mirror=mirror)
    layout = shop.lay()
    assert faults(layout, shop.made, shop.settings) == ()
    assert nearest(layout) >= GAP - 0.005
    shop.settings = replace(shop.settings, interlock=False)
    assert sum(run.length for run in layout.runs) <= sum(run.length for run in shop.lay().runs)
    for need in layout.needs:
        assert need.least <= need.length - 2 * shop.settings.end_margin * need.runs
        assert need.used <= 1


def test_triangles_nest(new_shop: Any) -> None:
    """Two lie point to foot beside each other where the film is 100 + 50 + the gap along the slanted side wide: as long
    as one. The gap is GAP / sin of the side's angle across (geometry; a hair more for the columns)."""
    slanted = GAP / math.sin(math.atan2(90, 50))
    shop = shop_of(new_shop, [TRIANGLE], [TRIANGLE])
    shop.films = (replace(shop.films[0], usable_width=150 + slanted + 2),)
    [run] = shop.lay().runs
    assert run.strips[0].length == pytest.approx(90, abs=0.001)
    assert {each.turned for each in run.lying} == {0, 180}


def test_a_film_of_one_direction_is_never_turned(new_shop: Any) -> None:
    shop = shop_of(new_shop, *[[TRIANGLE]] * 4)
    shop.films = (replace(shop.films[0], one_direction=True),)
    assert {each.turned for run in shop.lay().runs for each in run.lying} == {0}


def region(profile: Profile) -> BaseGeometry:
    """What a profile holds, in mm."""
    edges = zip((profile.low / UM).tolist(), (profile.high / UM).tolist(), strict=True)
    return shapely.union_all([shapely.box(at, low, at + 1, high) for at, (low, high) in enumerate(edges) if low < high])


@pytest.mark.parametrize("turned", range(4))
@pytest.mark.parametrize(
    "contours",
    [
        [TRIANGLE],
        [[(0, 0), (60, 0), (60, 60), (0, 60)], [(120, 130), (150, 130), (150, 150), (120, 150)]],  # one far above
        [[(0, 0), (20, 0), (20, 30), (0, 30)], [(90, 0), (110, 0), (110, 30), (90, 30)]],  # two words far apart
    ],
)
def test_a_profile_holds_the_shape_and_half_the_gap_in_one_piece(new_shop: Any, contours: Any, turned: int) -> None:
    shop = shop_of(new_shop, contours)
    bed = bed_of(shop.films[0], shop.settings)
    profile = profiles(shop.made[0], bed, mirrored=True)[turned]
    held = region(profile)
    lying = Lying(shop.made[0], GAP / 2, GAP / 2, profile.turned)
    inside = shape(lying, True).buffer(GAP / 2 - 0.01)
    assert held.buffer(0.001).contains(inside)
    assert held.buffer(0.001 - HELD / 2, join_style="mitre").geom_type == "Polygon"


def test_the_judge_sees_shapes_too_near_and_one_inside_another(new_shop: Any) -> None:
    shop = shop_of(new_shop, [TRIANGLE], [TRIANGLE], [[(0, 0), (9, 0), (9, 9), (0, 9)]])
    shop.films = (replace(shop.films[0], usable_width=162),)  # the triangles interlock, or else lie one after another
    layout = shop.lay()
    [run] = layout.runs
    [strip] = run.strips

    def with_last(across: float, along: float) -> Sequence[str]:
        last = replace(strip.lying[-1], across=across, along=along)
        moved = replace(run, strips=(replace(strip, lying=(*strip.lying[:-1], last)),))
        return faults(replace(layout, runs=(moved,)), shop.made, shop.settings)

    first, last = strip.lying[0], strip.lying[-1]
    assert with_last(last.across, last.along) == ()
    inside = with_last(first.across + first.width / 2 - 4.5, first.along + first.length / 2 - 4.5)
    assert any("too close" in fault for fault in inside)
    apart = shapely.distance(shape(first, True), shape(strip.lying[1], True))
    shop.settings = replace(shop.settings, gap=apart + 0.02)
    assert any("D001 and D002 are too close" in fault for fault in faults(layout, shop.made, shop.settings))
    shop.settings = replace(shop.settings, gap=GAP, interlock=False)
    assert any("too close" in fault for fault in faults(layout, shop.made, shop.settings))


def test_one_core_and_two_interlock_alike(new_shop: Any, monkeypatch: pytest.MonkeyPatch) -> None:
    shop = shop_of(new_shop, [TRIANGLE], [TRIANGLE])
    for no in range(2, 6):
        shop.decals([(90 + 10 * no, 60)], outlined=True)
    monkeypatch.setattr(xlbatch.film.interlock, "MUCH", 0)
    layouts = []
    for cores in (1, 2):
        monkeypatch.setattr(os, "cpu_count", lambda cores=cores: cores)
        layouts.append(shop.lay())
    assert layouts[0] == layouts[1]


def written(svg: str) -> Iterator[BaseGeometry]:
    """Each decal of a written cut file, in mm: the polygons inside an odd number of its contours."""
    for group in ElementTree.fromstring(svg).iter("{http://www.w3.org/2000/svg}g"):
        if not (group.get("id") or "").startswith("D"):
            continue
        rings = []
        for path in group.iter("{http://www.w3.org/2000/svg}path"):
            pen = RecordingPen()
            parse_path(path.get("d") or "", pen)
            ring: list[tuple[float, float]] = []
            for verb, points in pen.value:
                if verb == "moveTo":
                    ring = [points[0]]
                    rings.append(ring)
                ring += bent(ring[-1], points) if verb in ("curveTo", "qCurveTo") else points
        yield shapely.build_area(shapely.MultiLineString([[*ring, ring[0]] for ring in rings]))


def bent(start: tuple[float, float], points: Sequence[tuple[float, float]]) -> list[tuple[float, float]]:
    """Points on a quadratic or cubic Bézier curve, near enough to judge a gap of some mm (Bernstein's form)."""
    control, t = np.array([start, *points]), np.linspace(0, 1, 33)[1:, None]
    degree = len(control) - 1
    at = sum(math.comb(degree, k) * t**k * (1 - t) ** (degree - k) * control[k] for k in range(degree + 1))
    return [(float(x), float(y)) for x, y in np.asarray(at)]


def test_the_cut_files_of_a_whole_job_keep_the_gap_on_less_film() -> None:
    reading = read(EXAMPLES / "lantern walk.xlsx")
    assert isinstance(reading, Reading)
    lengths = {}
    for interlock in (False, True):
        job = replace(reading.job, settings=replace(reading.job.settings, interlock=interlock))
        plan = make_plan(replace(reading, job=job), 0, lambda _: None, datetime(2026, 5, 4))
        lengths[interlock] = sum(run.length for run in plan.layout.runs)
    for file in cut_files(plan.layout, job.settings):
        if "guide" not in file.name:
            for one, other in itertools.combinations(written(file.text), 2):
                assert shapely.distance(one, other) >= job.settings.gap - 0.05
    assert lengths[True] < lengths[False] * 0.95


def test_what_is_cut_out_holds_its_decal_and_meets_no_other(new_shop: Any) -> None:
    word = [[(0, 0), (20, 0), (20, 30), (0, 30)], [(60, 0), (80, 0), (80, 30), (60, 30)]]
    shop = shop_of(new_shop, *[[TRIANGLE]] * 3, word, word)
    [run] = shop.lay().runs
    pieces = [shapely.Polygon(cut_out(lying, GAP, mirrored=True)) for lying in run.lying]
    for piece, lying in zip(pieces, run.lying, strict=True):
        assert piece.buffer(0.1).contains(shape(lying, True))
    for one, other in itertools.combinations(pieces, 2):
        assert one.intersection(other).area < 0.01 * min(one.area, other.area)
