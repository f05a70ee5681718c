"""Pieces made of a cut, and what is told of ink to one side and of numbers too small: sums by hand, in mm."""

from dataclasses import replace
from types import SimpleNamespace
from typing import Any

import pytest

from xlbatch.art.bench import Bench, edge_of
from xlbatch.art.decal import Decal
from xlbatch.art.drawing import rules_of
from xlbatch.art.number_size import number_sizes
from xlbatch.art.off_center import off_center
from xlbatch.art.row_cut import Cut, decals_of
from xlbatch.geometry.outline import Outline, pack

IN = 25.4


def pieces(make: Any, cut: Cut, spec: Any, *beside: Any) -> tuple[Decal, ...]:
    garment = make.garment(spec, *beside)
    return decals_of(Bench(make.job(), (garment,)), garment, spec, cut, (spec, *beside))


def test_a_piece_keeps_its_place_in_its_drawing(make: Any) -> None:
    spec = make.artwork(artwork="")
    (whole,) = pieces(make, Cut(None, 50, 20), spec)
    assert (whole.offset, whole.whole, whole.shift, whole.condensed) == ((0, 0), None, 0, 1)
    (part,) = pieces(make, Cut(None, 50, 20, offset=(5, 6), whole=(100, 80), center=30), spec)
    assert (part.width, part.height, part.offset, part.whole) == (50, 20, (5, 6), (100, 80))
    assert part.shift == 20  # to the middle of the whole drawing, at 50
    (thin,) = pieces(make, Cut(None, 50, 20), replace(spec, outline_width=3.0))  # no film for an outline: none
    assert (thin.offset, thin.whole) == ((0, 0), None)


@pytest.mark.parametrize(("beside", "edge"), [(0.0, 3), (2.0, 3), (5.0, 5)])
def test_an_outline_stands_out_on_every_side_within_the_widest_of_its_drawing(
    make: Any, beside: float, edge: float
) -> None:
    spec = make.artwork(artwork="", outline_film="Gold smooth", outline_width=3.0)
    other = replace(spec, decal="Other", outline_film="Gold smooth" if beside else "", outline_width=beside or None)
    assert edge_of((spec, other)) == edge
    under, decal = pieces(make, Cut(None, 50, 20, offset=(5, 6), whole=(100, 80), center=52), spec, other)
    assert (under.border, under.width, under.height) == (True, 56, 26)
    assert under.offset == (5 + edge - 3, 6 + edge - 3)
    assert (decal.border, decal.width, decal.height, decal.offset) == (False, 50, 20, (5 + edge, 6 + edge))
    assert under.whole == decal.whole == (100 + 2 * edge, 80 + 2 * edge)
    assert decal.shift == 0  # 2 of 100 off


def decal_of(make: Any, spec: Any, no: int = 1, **changes: Any) -> Decal:
    (decal,) = pieces(make, Cut(None, 100, 50), spec)
    return replace(decal, garment_no=no, **changes)


def test_ink_to_one_side_is_told_once_a_row_of_the_piece_that_is_off_the_most(make: Any) -> None:
    spec = make.artwork(artwork="", position="left chest")
    garments = [make.garment(spec, no=no) for no in (1, 2, 3)]
    bench = Bench(make.job(), garments)
    right, left = decal_of(make, spec, shift=-IN, width=300.0), decal_of(make, spec, 2, shift=0.5 * IN, text="AB")
    (found,) = off_center(bench, garments, (right, left, decal_of(make, spec, 3)))
    assert found.rows == (2, 3)  # the third is not off
    assert "“AB” and 1 more: most of the film lies to the left of the middle, by 13 % of the width" in found.wrong
    assert "1/2 in more to the right" in found.todo
    (found,) = off_center(bench, garments, (right,))
    assert "Logo: most of the film lies to the right of the middle, by 8 % of the width" in found.wrong
    assert "1 in more to the left" in found.todo
    (found,) = off_center(bench, garments, (replace(right, whole=(508.0, 50.0)),))
    assert "by 5 %" in found.wrong  # of the whole drawing
    (found,) = off_center(bench, garments, (replace(right, shift=0.5, width=10.0),))
    assert "lies to the left of the middle, by 5 %" in found.wrong
    assert off_center(bench, garments, (replace(right, border=True),)) == ()
    number = replace(spec, source=replace(spec.source, row=3), decal="Number")
    assert len(off_center(bench, garments, (right, decal_of(make, number, 2, shift=IN)))) == 2


def ring(area: float, length: float, contours: int) -> Outline:
    return Outline(pack(()), 100, 100, contours, length, area)


@pytest.mark.parametrize(
    ("position", "height", "outline", "told"),
    [  # NFHS baseball: on the back 8 in, on the front 6 in... as the rule below has it
        ("full front", 99.6, None, []),
        ("full front", 99.4, None, ["number-too-low"]),
        ("back number", 199.6, None, []),
        ("back number", 199.4, None, ["number-too-low"]),
        ("left sleeve", 20.0, None, []),  # no measure is given for it
        ("back number", 200.0, ring(100 * 19.6, 200, 2), []),  # 2 A / P
        ("back number", 200.0, ring(100 * 19.4, 200, 2), ["number-too-thin"]),
        ("back number", 200.0, ring(100 * 19.6, 239.2, 1), []),  # a bar of 100 x 19.6
        ("back number", 200.0, ring(100 * 19.4, 238.8, 1), ["number-too-thin"]),
        ("back number", 100.0, ring(100 * 10, 200, 2), ["number-too-low", "number-too-thin"]),
    ],
)
def test_numbers_are_held_to_their_rule_by_half_a_millimeter(
    make: Any, monkeypatch: pytest.MonkeyPatch, position: str, height: float, outline: Outline | None, told: list[str]
) -> None:
    rule = SimpleNamespace(name="Rule", edition="2026", front=100.0, back=200.0, stroke=20.0)
    monkeypatch.setattr("xlbatch.art.number_size.number_rule", lambda _: rule)
    spec = make.spec(what="number", decal="Number", position=position)
    garments = (make.garment(spec, number="7"), make.garment(spec, no=2, number="7"))
    one = decal_of(make, spec, height=height, outline=outline)
    found = number_sizes(make.job(), garments, (one, replace(one, garment_no=2)))
    assert [each.code for each in found] == told  # once a row of the design
    assert all(each.rows == (2,) for each in found)
    assert number_sizes(make.job(), garments, (replace(one, border=True), replace(one, garment_no=9))) == ()
    name = replace(one, spec=replace(spec, what="print name"))
    assert number_sizes(make.job(), garments, (name,)) == ()


def test_words_are_fitted_into_a_drawing_by_its_units(make: Any) -> None:
    """A drawing 100 units wide from 20 to 120, 250 mm wide: a unit is 2.5 mm."""
    job = make.job()
    settings = replace(
        job.settings, gap_in_drawing=5.0, least_letter_height=10.0, narrowest_letters=75, widest_letters=120
    )
    looked: Any = SimpleNamespace(box=(20.0, 0.0, 120.0, 40.0))
    rules = rules_of(replace(job, settings=settings), looked, 250.0)
    assert (rules.gap, rules.least, rules.narrowest, rules.widest) == (2, 4, 0.75, 1.2)
    assert (rules.font, rules.folder) == (settings.font, make.folder)


@pytest.mark.parametrize("arch", [-170.0, 170.0])
def test_an_arch_is_bent_as_far_as_its_text_bears_and_to_the_side_asked_for(make: Any, arch: float) -> None:
    spec = make.spec(arch=arch)
    (most,), (found, *_) = make.drawn(spec, who="Jo")
    used = int(found.wrong.rpartition("by ")[2].rstrip("°."))
    assert f"{arch:g}°" in found.wrong
    assert (used > 0) == (arch > 0)
    (same,), problems = make.drawn(replace(spec, arch=float(used)), who="Jo")
    assert same.outline == most.outline
    assert "arch-too-strong" not in {each.code for each in problems}
    step = 1 if arch > 0 else -1
    assert "arch-too-strong" in {each.code for each in make.drawn(replace(spec, arch=used + step), who="Jo")[1]}
