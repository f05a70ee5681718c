"""What is too thin for its film, on drawn cases just below and just above the limit, and in the bundled fonts."""

import itertools
import math
from dataclasses import replace
from pathlib import Path
from typing import Any

import numpy as np
import pytest
import shapely
import shapely.ops

from tests.geometry.test_sums_by_hand import disk as round_disk
from tests.lettering.test_text_line import polygon
from xlbatch.art.draw import draw
from xlbatch.art.thin import SMALLEST_DOT, Thin, too_fine, too_thin
from xlbatch.geometry.ink import InkPart, measured, outline
from xlbatch.geometry.outline import Outline, Segment
from xlbatch.geometry.path import transform
from xlbatch.lettering.fonts import find_font
from xlbatch.lettering.text_line import Scale, letter
from xlbatch.trade.tables import table

Ring = list[tuple[float, float]]

ORDINARY = [
    "Ana Ruiz", "José Peñalver", "Renée Dubois", "Zoë Lindqvist", "Łukasz Wrona", "Ayşe Demir", "Jürgen Vogt",
    "Inés Marín", "Åsa Berg", "Søren Holt", "Chloé Martel", "Begüm Şahin", "Małgorzata Lis", "Núria Pons",
    "Björn Falk", "Noël Carter", "Sofía Ibáñez", "Öykü Kaya", "Marek Žák", "Jana Nováková", "Petr Dvořák",
    "Iñaki Arana", "Lucía Gómez", "Müge Çelik", "Mário Antão", "Conceição Brás", "Élodie Garçon", "Þóra Jónsdóttir",
    "Milan Đurić", "Ante Šarić", "Gheorghe Țurcanu", "Mihăiță Popa", "Zsófia Nagy", "Gergő Kőrösi",
    "Tadhg Ó Briain", "Siân Prys", "Grażyna Wójcik", "Kęstutis Rimkus", "Līga Ozola", "Tõnu Mägi",
]  # fmt: skip


def box(left: float, bottom: float, right: float, top: float) -> Ring:
    return [(left, bottom), (right, bottom), (right, top), (left, top)]


def disk(x: float, y: float, radius: float) -> Ring:
    turns = (2 * math.pi * part / 720 for part in range(720))
    return [(x + radius * math.cos(turn), y + radius * math.sin(turn)) for turn in turns]


def drawn(*rings: Ring) -> Outline:
    """Rings as they wind: outer ones counterclockwise, holes clockwise."""
    segments: list[Segment] = []
    for ring in rings:
        segments += [("M" if not at else "L", point) for at, point in enumerate(ring)]
        segments.append(("Z", ()))
    ink = measured(segments)
    assert ink is not None
    return outline((InkPart(ink),))


def kinds(found: tuple[Thin, ...]) -> list[str]:
    return [each.kind for each in found]


def hairline(width: float) -> Outline:
    return drawn(box(0, 0, 30, width))


def hairline_between_blocks(width: float) -> Outline:
    """One outline: two blocks of 10 mm, 3 mm apart, joined by a hairline."""
    low, high = 5 - width / 2, 5 + width / 2
    left = [(10, high), (10, 10), (0, 10), (0, 0), (10, 0), (10, low)]
    return drawn([*left, (13, low), (13, 0), (23, 0), (23, 10), (13, 10), (13, high)])


def ring(width: float) -> Outline:
    return drawn(disk(20, 20, 10 + width), disk(20, 20, 10)[::-1])


def gap_between_boxes(width: float) -> Outline:
    return drawn(box(0, 0, 10, 10), box(10 + width, 0, 20, 10))


def gap_between_disks(width: float) -> Outline:
    return drawn(disk(0, 0, 6), disk(12 + width, 0, 6))


def corner_near_a_wall(width: float) -> Outline:
    return drawn([(0, 5), (5, 0), (10, 5), (5, 10)], box(10 + width, -5, 20, 15))


def slit(width: float) -> Outline:
    """A block of 20 mm with a slit 12 mm deep."""
    return drawn([(0, 0), (20, 0), (20, 20), (10 + width, 20), (10 + width, 8), (10, 8), (10, 20), (0, 20)])


def small_hole_in_a_ring_of_ink(width: float) -> Outline:
    """A long counter as wide as a gap."""
    return drawn(box(0, 0, 30, 20), box(5, 8, 25, 8 + width)[::-1])


def wall_between_two_holes(width: float) -> Outline:
    return drawn(box(0, 0, 20 + width, 20), box(5, 5, 10, 15)[::-1], box(10 + width, 5, 15 + width, 15)[::-1])


@pytest.mark.parametrize("limit", [1.0, 2.0])
@pytest.mark.parametrize(
    ("case", "kind"),
    [
        (hairline, "stroke"), (hairline_between_blocks, "stroke"), (ring, "stroke"),
        (gap_between_boxes, "gap"), (gap_between_disks, "gap"), (corner_near_a_wall, "gap"), (slit, "gap"),
        (small_hole_in_a_ring_of_ink, "gap"), (wall_between_two_holes, "stroke"),
    ],
)  # fmt: skip
def test_just_below_the_limit_is_found_and_just_above_is_not(case: Any, kind: str, limit: float) -> None:
    found = too_thin(case(limit * 0.99), limit)
    assert kinds(found) == [kind]
    assert found[0].width == pytest.approx(limit * 0.99, rel=0.005)
    assert found[0].grow == pytest.approx(1 / 0.99, rel=0.005)
    assert too_thin(case(limit * 1.01), limit) == ()


@pytest.mark.parametrize("limit", [1.0, 2.0])
def test_a_separate_dot_holds_where_it_is_two_strokes_wide(limit: float) -> None:
    """Common practice, no source."""
    (found,) = too_thin(drawn(disk(0, 0, SMALLEST_DOT * limit / 2 * 0.99)), limit)
    assert found.kind == "dot"
    assert found.grow == pytest.approx(1 / 0.99, rel=0.001)
    assert too_thin(drawn(disk(0, 0, SMALLEST_DOT * limit / 2 * 1.01)), limit) == ()


def test_what_is_as_wide_as_the_limit_holds() -> None:
    for case in (hairline, gap_between_boxes, slit, small_hole_in_a_ring_of_ink):
        assert too_thin(case(1.0), 1) == ()
    thin, *_ = too_thin(drawn(box(0, 0, 6, 0.5), box(0, 20, 6, 21)), 1)
    assert {round(y, 3) for _, y in thin.places} == {0.25}


def round_ring(width: float) -> Outline:
    """Of true curves, 4 mm wide inside."""
    ink = measured((*round_disk(0, 0, 2 + width), *mirrored(round_disk(0, 0, 2))))
    assert ink
    return outline((InkPart(ink),))


def mirrored(segments: tuple[Segment, ...]) -> tuple[Segment, ...]:
    return transform(segments, (-1, 0, 0, 1, 0, 0))


def test_curves_are_followed_closely() -> None:
    (found,) = too_thin(round_ring(0.98), 1)
    assert found.kind == "stroke"
    assert found.width == pytest.approx(0.98, abs=0.01)
    assert too_thin(round_ring(1.02), 1) == ()


def test_of_many_dots_the_eight_smallest_are_marked_in_their_middles() -> None:
    radii = [0.5 + 0.04 * (no * 7 % 10) for no in range(10)]
    (found,) = too_thin(drawn(*(disk(10 * no, 0, radius) for no, radius in enumerate(radii))), 1)
    smallest = sorted(range(10), key=radii.__getitem__)[:8]
    assert found.kind == "dot"
    assert (found.width, found.grow) == pytest.approx((1, 2), abs=1e-4)
    assert [x for x, _ in found.places] == pytest.approx(
        [10 * no + 0.5 for no in smallest]
    )  # the first one's left is 0
    assert {round(y, 3) for _, y in found.places} == {0.86}


def test_of_many_strokes_the_eight_thinnest_are_marked_in_their_middles() -> None:
    """Ten lines of 6 mm, 0.3 mm wide and more: five of them are smaller than a dot 2 mm wide, of 3.14 mm²."""
    wide = [0.3 + 0.05 * no for no in range(10)]
    stroke, dot = too_thin(drawn(*(box(0, 20 * no, 6, 20 * no + width) for no, width in enumerate(wide))), 1)
    assert (stroke.kind, dot.kind) == ("stroke", "dot")
    assert (stroke.width, stroke.grow) == pytest.approx((0.3, 1 / 0.3))
    assert [y for _, y in stroke.places] == pytest.approx([20 * no + wide[no] / 2 for no in range(8)])
    assert all(1 < x < 5 for x, _ in stroke.places)
    assert dot.width == pytest.approx(2 * math.sqrt(6 * 0.3 / math.pi))
    assert dot.places == pytest.approx(np.array([(3, 20 * no + wide[no] / 2) for no in range(5)]))


def test_gaps_are_marked_in_their_middles_the_narrowest_first() -> None:
    (found,) = too_thin(drawn(box(0, 0, 10, 10), box(10.6, 0, 20, 10), box(0, 10.8, 10, 20)), 1)
    assert (found.width, found.grow) == pytest.approx((0.6, 1 / 0.6))
    upright = [x for x, y in found.places if y < 10]
    assert found.places[0][0] in upright
    assert upright == pytest.approx([10.3] * len(upright))
    assert [y for _, y in found.places if y > 10] == pytest.approx([10.4] * (len(found.places) - len(upright)))
    assert 0 < len(upright) < len(found.places)


def test_tips_corners_and_notches_are_not_thin() -> None:
    """A wedge of 20° holds and a notch of 20° weeds: only what stays thin for long tears."""
    tip = 20 * math.tan(math.radians(10))
    assert too_thin(drawn([(0, 0), (20, -tip), (20, tip)]), 1) == ()
    assert too_thin(drawn([(0, -9), (25, -9), (25, -tip), (5, 0), (25, tip), (25, 9), (0, 9)]), 1) == ()
    assert too_thin(drawn(box(0, 0, 3, 3)), 1) == ()
    tooth = [(0.4, 0), (0.35, 2), (0.05, 2), (0, 0)]  # low, at the foot of a slope
    assert too_thin(drawn([(-3, -9), (1.2, -9), (1.2, 8), *tooth, (-3, 0)]), 1) == ()


def test_the_place_lies_in_what_is_thin() -> None:
    (found,) = too_thin(hairline_between_blocks(0.5), 1)
    bridge = shapely.box(10, 4.75, 13, 5.25)
    assert found.places
    assert all(bridge.buffer(1e-6).contains(shapely.Point(place)) for place in found.places)


def test_at_the_size_stated_it_passes_and_a_little_below_it_does_not() -> None:
    face = find_font("Anton", Path())
    assert face
    up = 8 / face.cap_height
    found = too_thin(letter(face, "GRADE 6", Scale(up, up)), 1)
    grow = max(each.grow for each in found)
    assert too_thin(letter(face, "GRADE 6", Scale(up * grow * 1.01, up * grow * 1.01)), 1) == ()
    assert too_thin(letter(face, "GRADE 6", Scale(up * grow * 0.98, up * grow * 0.98)), 1)


def test_what_is_far_too_fine_everywhere_would_not_hold() -> None:
    assert too_fine(hairline(0.45), 1)
    assert not too_fine(hairline(0.55), 1)
    assert not too_fine(drawn(box(0, 0, 1, 1)), 1)  # half the limit on average is not less
    assert not too_fine(hairline_between_blocks(0.1), 1)


@pytest.mark.parametrize("line", table("fonts"), ids=lambda line: line["Font"])
def test_the_least_letter_height_of_each_font(line: Any) -> None:
    """At the height stated for a film of 1 mm, A to Z and 0 to 9 pass; half a millimeter lower, one does not."""
    face = find_font(line["Font"], Path())
    assert face
    least = float(line["Least letter height (mm)"])

    def fails(height: float) -> list[str]:
        up = height / face.cap_height
        return [
            each for each in "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789" if too_thin(letter(face, each, Scale(up, up)), 1)
        ]

    assert fails(least) == []
    assert fails(least - 0.5)
    assert fails(least * 1.3) == []


def test_of_ordinary_names_few_are_too_fine_and_truly_so(make: Any) -> None:
    """At the usual height and width on sizes S to 5XL; each place has, to shapely too, ink on both sides
    within half a millimeter."""
    spec, sizes = make.spec(), itertools.cycle(("S", "M", "L", "5XL"))
    garments = tuple(make.garment(spec, no=no, who=who, size=next(sizes)) for no, who in enumerate(ORDINARY, 1))
    decals, problems = draw(make.job(), garments)
    assert len(decals) == 40
    assert [(each.code, len(each.rows)) for each in problems if each.level == "check"] == [("gap-thin", 3)]
    for decal in decals:
        assert decal.outline
        shape = polygon(decal.outline)
        for place in map(shapely.Point, decal.thin):
            _, near = shapely.ops.nearest_points(place, shape)
            opposite = shapely.Point(2 * place.x - near.x, 2 * place.y - near.y)
            assert 0 < place.distance(near) < 0.5
            assert shape.distance(opposite) < 0.02


def test_a_problem_names_the_least_size_and_the_proof_marks_the_place(make: Any) -> None:
    decals, problems = make.drawn(make.spec(font="Anton", height=9.0, scale=False), who="Greta Graf")
    (found,) = (each for each in problems if each.code == "gap-thin")
    assert found.level == "check"
    assert "It passes with letters" in found.todo
    assert found.rows == (2,)
    assert decals[0].thin


def test_what_would_not_hold_is_a_stop(make: Any) -> None:
    decals, problems = make.drawn(make.spec(font="Arimo Bold", height=1.4, scale=False), who="Ana")
    assert ("stop", "decal-too-fine") in [(each.level, each.code) for each in problems]
    assert decals == ()


def test_one_problem_a_piece_tells_of_all_names(make: Any) -> None:
    spec = make.spec(font="Anton", height=9.0, scale=False)
    garments = tuple(make.garment(spec, no=no, who=who) for no, who in enumerate(("Greta", "Sigrid", "Gus"), 1))
    _, problems = draw(make.job(), garments)
    (found,) = (each for each in problems if each.code == "gap-thin")
    assert found.rows == (2, 3, 4)
    assert "and 2 more" in found.wrong


def test_a_film_that_needs_bolder_strokes_is_held_to_its_own_limit(make: Any) -> None:
    """Glitter and flock hold from 2 mm (common practice, no source); letters 22 mm high pass in smooth film only."""
    job = make.job(
        films=tuple(replace(film, thinnest=2.0) if film.name == "Flock" else film for film in make.job().films)
    )
    for film, codes in (("Black smooth", set()), ("Flock", {"gap-thin"})):
        spec = make.spec(font="Archivo Black", height=22.0, film=film, scale=False)
        _, problems = draw(job, (make.garment(spec, who="G 6"),))
        assert {each.code for each in problems} & {"gap-thin", "stroke-thin", "dot-small"} == codes


def test_a_size_that_would_do_is_told_only_where_the_garment_has_room_for_it(make: Any) -> None:
    spec, who = make.spec(font="Anton", height=12.0, scale=False), "Wilhelmina Featherstone"
    for position, possible in (("full front", True), ("left sleeve", False)):
        found = [each for each in make.drawn(replace(spec, position=position), who=who)[1] if "thin" in each.code]
        assert found
        for each in found:
            assert ("It passes" in each.todo) == possible
            assert "choose another font" in each.todo
