"""Joined pieces, layers and sections by boxes of round measures, in mm."""

from collections.abc import Sequence
from dataclasses import replace
from typing import Any

import pytest

from tests.art.conftest import ROW
from tests.placement.test_put_by_hand import BLANK, decal, job
from xlbatch.check.garment import Garment
from xlbatch.geometry.outline import Outline, pack
from xlbatch.job.feature import Feature
from xlbatch.placement.clear_of_features import below_features
from xlbatch.placement.fewer_sections import less_wide
from xlbatch.placement.pieces import one_drawing, pieces
from xlbatch.placement.place import Place, Register
from xlbatch.placement.register import drawings, registered
from xlbatch.placement.sections import Section, plate_lying, sections

GARMENT = Garment(replace(ROW, size="M"), BLANK, "white", "Ana", (), (), True)
PRESS = replace(job().presses[0], width=200.0, depth=300.0, overlap=20.0)


def at(
    left: float, bottom: float, width: float, height: float, number: int = 1, side: str = "front", **more: Any
) -> Place:
    """A box on a shirt's side: to the right of the middle as one looks at it, and above the hem."""
    middle = left + width / 2
    from_center = middle if side == "back" else -middle
    below = 700 - (100 if side == "front" else 20) - bottom - height
    clear = 250 - abs(middle) - width / 2
    places: dict[str, Any] = {"above_opening": None, "above_hem": None, "sections": (Section(0, 0),)} | more.pop(
        "place", {}
    )
    box = Outline(pack([("M", (0, 0)), ("L", (width, 0)), ("L", (width, height)), ("Z", ())]), width, height, 1, 0, 0)
    own = replace(decal("front", width, height, number, **more), outline=box)
    return Place(
        GARMENT, own, side, "seam", below, from_center=from_center, clear_side=clear, clear_hem=bottom, **places
    )


@pytest.mark.parametrize("side", ["front", "back"])
def test_parts_in_one_piece_lie_in_the_box_around_them_and_are_measured_by_the_topmost(side: str) -> None:
    one, two = at(-50, 300, 40, 60, side=side), at(0, 380, 90, 20, 2, side)
    (piece,) = pieces(PRESS, [(one, two)])
    assert (piece.decal.width, piece.decal.height) == (140, 100)
    assert [part.offset for part in piece.decal.parts] == [(0, 0), (50, 80)]
    assert tuple(piece.extent) == (-50, 300, 90, 400)
    assert (piece.below_collar, piece.clear_side, piece.clear_hem) == (
        two.below_collar,
        min(one.clear_side, two.clear_side),
        300,
    )
    assert piece.from_center == (20 if side == "back" else -20)
    assert piece.presses == 1
    wide, far = at(-200, 300, 40, 60, side=side), at(160, 300, 40, 60, 2, side)
    assert pieces(PRESS, [(wide, far)])[0].presses == 2  # 400 across plates of 300 that overlap by 20


def test_parts_measured_from_below_keep_the_least() -> None:
    one = at(0, 60, 40, 40, place={"above_hem": 60.0})
    two = at(50, 110, 40, 40, 2, place={"above_hem": 110.0})
    (piece,) = pieces(PRESS, [(one, two)])
    assert (piece.above_hem, piece.above_opening) == (60, None)
    assert pieces(PRESS, [(one,), (two,)]) == (one, two)


def drawn(
    number: int, left: float, bottom: float, width: float, height: float, name: str = "sea.svg", **spec: Any
) -> Place:
    """A film of a drawing 200 by 100 at 0, 300."""
    it = at(left, bottom, width, height, number, whole=(200.0, 100.0), drawing=name)
    return replace(it, decal=replace(it.decal, spec=replace(it.decal.spec, **spec)))


def test_films_of_one_drawing() -> None:
    sea, boat = drawn(1, 0, 300, 200, 50), drawn(2, 30, 340, 40, 40)
    assert one_drawing(sea, boat)
    assert not one_drawing(sea, replace(boat, side="back"))
    assert not one_drawing(sea, drawn(2, 30, 340, 40, 40, "other.svg"))
    assert not one_drawing(at(0, 0, 10, 10), at(0, 0, 10, 10, 2))


def test_what_shares_a_drawing_with_a_joined_piece_lines_up_with_it() -> None:
    sea, boat, name, alone = (
        drawn(1, 0, 300, 200, 50),
        drawn(2, 30, 340, 40, 40),
        at(50, 420, 100, 20, 3),
        at(0, 100, 20, 20, 4),
    )
    piece, over, other = pieces(PRESS, [(sea, name), (boat,), (alone,)])
    assert (piece.decal.whole, over.decal.whole) == ((200, 140), (200, 140))
    assert (piece.decal.offset, over.decal.offset) == ((0, 0), (30, 40))
    assert piece.decal.drawing == over.decal.drawing != ""
    assert other is alone


def test_layers_are_laid_on_the_lowest_hottest_first_and_alike_drawings_go_together() -> None:
    sea, boat = drawn(1, 0, 300, 200, 50, layer=1), drawn(2, 30, 340, 40, 45, layer=2)
    other, flag = drawn(3, 0, 300, 200, 50, "b.svg", layer=2), drawn(4, 30, 340, 40, 45, "b.svg", layer=1)
    back = replace(boat, side="back", decal=replace(boat.decal, id="D9"))
    low, up, second, base, alone = registered(job(), [sea, boat, other, flag, back])
    assert (low.register, base.register, alone.register) == (None, None, None)
    assert up.register == Register("D1", -35, 30)  # its top at 385, the sea's at 350
    assert second.register == Register("D4", 35, -30)
    assert [[place.decal.id for place in them[0]] for them in drawings((low, up, second, base))] == [
        ["D1", "D2"],
        ["D4", "D3"],
    ]
    again = [replace(it, decal=replace(it.decal, id=f"E{no}")) for no, it in enumerate((low, up))]

    again[1] = replace(again[1], register=up.register._replace(on="E0"))
    (alike,) = drawings((low, up, *again))
    assert [[place.decal.id for place in drawing] for drawing in alike] == [["D1", "D2"], ["E0", "E1"]]
    border = drawn(5, 0, 300, 200, 50, layer=1)
    border = replace(border, decal=replace(border.decal, border=True))
    assert [it.register and it.register.on for it in registered(job(), [sea, border])] == ["D5", None]


@pytest.mark.parametrize(
    ("width", "height", "spots"),
    [
        (200, 300, [(0, 0)]), (300, 200, [(0, 0)]),  # the garment lies the other way round
        (201, 300, [(-0.5, 0), (0.5, 0)]), (380, 300, [(-90, 0), (90, 0)]), (381, 300, [(-90.5, 0), (0, 0), (90.5, 0)]),
        (200, 580, [(0, 140), (0, -140)]), (380, 580, [(-90, 140), (90, 140), (-90, -140), (90, -140)]),
    ],
)  # fmt: skip
def test_placements_of_a_plate_of_200_by_300(width: float, height: float, spots: Sequence[tuple[float, float]]) -> None:
    assert [tuple(spot) for spot in sections(width, height, PRESS)] == spots
    assert plate_lying(300, 200, PRESS) == (300, 200)
    assert plate_lying(200, 300, PRESS) == (200, 300)


def test_an_overlap_of_more_than_half_the_plate_is_half_of_it() -> None:
    assert [spot.right for spot in sections(300, 300, replace(PRESS, overlap=150.0))] == [-50, 50]
    assert [spot.right for spot in sections(301, 300, replace(PRESS, overlap=150.0))] != [-50.5, 50.5]


@pytest.mark.parametrize(
    ("width", "height", "less"),
    [(210, 250, 200), (200, 250, None), (216, 250, 200), (340, 210, None), (320, 210, 300), (209, 310, 200),
     (260, 250, None)],
)  # fmt: skip
def test_artwork_a_little_smaller_for_half_the_placements(width: float, height: float, less: float | None) -> None:
    place = at(0, 100, width, height, place={"sections": sections(width, height, PRESS)})
    assert less_wide(place, PRESS, 5.0) == less


def test_a_stack_on_a_placket_goes_below_it_as_one() -> None:
    """The placket ends 120 below the collar seam, 480 above the hem."""
    placket = Feature("placket", "front", 30.0, 120.0, "collar")
    blank = replace(BLANK, keep_clear=(placket,))
    on, under = (replace(at(-50, bottom, 100, 40), garment=replace(GARMENT, blank=blank)) for bottom in (500, 440))
    moved, (told,) = below_features(job(), (on, under))
    gap = 12.7  # half an inch
    assert [place.clear_hem for place in moved] == [pytest.approx(480 - gap - 40), pytest.approx(480 - gap - 100)]
    assert [place.below_collar for place in moved] == [pytest.approx(120 + gap), pytest.approx(120 + gap + 60)]
    assert (told.code, told.rows, "13.3 cm below" in told.wrong) == ("position-moved", (2,), True)
    beside = replace(on, from_center=70.0)
    assert below_features(job(), (beside, under)) == ((beside, under), ())
