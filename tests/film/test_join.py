"""Joined pieces: what lies together in one film is one decal."""

from collections.abc import Callable, Sequence
from pathlib import Path

import pytest

from xlbatch.plan import Plan

HEAD = ["Who", "Size"]
NAMES = ("Ana Novak", "Ivo Lund", "Mei Chen", "Tùng Tran", "Bartholomew Ashgrove", "Lu Xi", "Joan Wren", "Carl Otte")
SIZES = ("S", "M", "L", "XL", "2XL", "Youth M", "Youth S", "Ladies M")
SHARED: Sequence[Sequence[object]] = [["Setting", "Value"], ["Shared line", "Lantern Walk"]]
DESIGN = ["Design", "Decal", "What", "Artwork", "Film", "Position", "Width", "Height", "Widest"]
CANOE: Sequence[Sequence[object]] = [
    DESIGN,
    ["Trip", "Canoe", "artwork", "canoe.svg", "Black smooth", "full front", "9 in", None, None],
    ["Trip", "Name", "print name", None, "Black smooth", "full front", None, "1 1/2 in", "8 in"],
]


def write_drawing(path: Path, shapes: str) -> None:
    path.write_text(f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 200 100">{shapes}</svg>', encoding="utf-8")


def people(count: int, *more: object) -> list[list[object]]:
    return [[f"{NAMES[at % 8]}{'' if at < 8 else chr(57 + at)}", SIZES[at % 8], *more] for at in range(count)]


def areas(plan: Plan) -> tuple[float, ...]:
    """The area of all film that stays, garment by garment, in mm²."""
    of_garment = {garment.no: 0.0 for garment in plan.garments}
    for decal in plan.decals:
        assert decal.outline is not None
        of_garment[decal.garment_no] += decal.outline.area
    return tuple(of_garment.values())


def test_a_bare_list_with_a_shared_line_is_one_piece_a_shirt(plan_of: Callable[..., Plan]) -> None:
    plan = plan_of([HEAD, *people(20)], Job=SHARED)
    assert (len(plan.garments), len(plan.decals), len(plan.pressing.steps)) == (20, 20, 20)
    assert plan.decals[0].piece == "Shared line + Name"
    assert plan.decals[0].text == "Lantern Walk / Ana Novak"


def test_artwork_with_the_name_under_it_is_one_piece_a_shirt(plan_of: Callable[..., Plan], tmp_path: Path) -> None:
    write_drawing(tmp_path / "canoe.svg", '<path d="M0 20h200l-30 60H30z"/>')
    plan = plan_of([[*HEAD, "Design"], *people(26, "Trip")], Designs=CANOE)
    assert (len(plan.garments), len(plan.decals), len(plan.pressing.steps)) == (26, 26, 26)


def test_a_joined_outline_is_its_parts_where_they_would_lie(plan_of: Callable[..., Plan], tmp_path: Path) -> None:
    write_drawing(tmp_path / "canoe.svg", '<path d="M0 20h200l-30 60H30z"/>')
    roster = [[*HEAD, "Design"], *people(8, "Trip")]
    joined, apart = (
        plan_of(roster, Designs=CANOE, Job=[["Setting", "Value"], ["Join pieces", answer]]) for answer in ("yes", "no")
    )
    assert areas(joined) == pytest.approx(areas(apart), abs=0.01)
    lying = {(place.garment.no, place.decal.piece): place.extent for place in apart.places}
    for place in joined.places:
        box = place.extent
        for part in place.decal.parts:
            own = lying[place.garment.no, part.piece]
            corner = (box.left + part.offset[0], box.bottom + part.offset[1])
            assert corner == pytest.approx((own.left, own.bottom), abs=0.002)
            assert (part.width, part.height) == pytest.approx((own.right - own.left, own.top - own.bottom))
        parts = [it for it in apart.places if it.garment.no == place.garment.no]
        assert place.below_collar == min(it.below_collar for it in parts if it.below_collar)
        assert (place.clear_side, place.above_hem) == (min(it.clear_side for it in parts), None)
        assert place.clear_hem == min(it.clear_hem for it in parts if it.clear_hem)
        assert place.presses == 1


def test_a_long_name_does_not_change_its_artwork(plan_of: Callable[..., Plan], tmp_path: Path) -> None:
    write_drawing(tmp_path / "canoe.svg", '<path d="M0 20h200l-30 60H30z"/>')
    names = (*NAMES, "Al Hart", "Bartholomew Vandermolen-Ashgrove")
    plan = plan_of([[*HEAD, "Design"], *([name, "M", "Trip"] for name in names)], Designs=CANOE)
    short, long = (next(part for part in decal.parts if part.piece == "Canoe") for decal in plan.decals[-2:])
    assert (short.width, short.height) == (long.width, long.height)


def test_what_would_waste_film_stays_apart(plan_of: Callable[..., Plan]) -> None:
    """A short line over long names: its piece would take the line's height at the name's whole width."""
    plan = plan_of([HEAD, *people(8)], Job=[["Setting", "Value"], ["Shared line", "Go"]])
    assert len(plan.decals) == 16


def test_other_films_layers_and_places_stay_apart(plan_of: Callable[..., Plan]) -> None:
    designs = [
        ["Design", "Decal", "What", "Text", "Film", "Layer", "Position", "Height"],
        ["Two", "Front", "text", "Lantern Walk", "Navy smooth", 1, "full front", "2 in"],
        ["Two", "Under", "text", "Lantern Walk", "Red stretch", 1, "full front", "2 in"],
        ["Two", "Chest", "text", "Walk", "Navy smooth", 1, "left sleeve", "1/2 in"],
        ["Two", "Back", "text", "Lantern Walk", "Navy smooth", 1, "full back", "2 in"],
    ]
    plan = plan_of([[*HEAD, "Design"], *people(3, "Two")], Designs=designs)
    assert len(plan.decals) == 12


def test_a_border_and_what_is_on_it_are_joined_each_in_its_film(plan_of: Callable[..., Plan]) -> None:
    designs = [
        ["Design", "Decal", "What", "Text", "Film", "Position", "Height", "Widest", "Outline film", "Outline width"],
        ["Two", "Line", "text", "Lantern Walk", "Navy smooth", "full front", "2 in", "9 in", "White smooth", "1/8 in"],
        ["Two", "Name", "text", "Walk Lantern", "Navy smooth", "full front", "2 in", "9 in", "White smooth", "1/8 in"],
    ]
    plan = plan_of([[*HEAD, "Design"], *people(3, "Two")], Designs=designs)
    assert [place.decal.piece for place in plan.places][:2] == ["Line border + Name border", "Line + Name"]
    low, high = plan.places[:2]
    assert high.register is not None
    assert (high.register.on, low.register) == (low.decal.id, None)
    assert (high.register.from_top, high.register.from_left) == pytest.approx((25.4 / 8, 25.4 / 8), abs=0.05)


def test_a_piece_is_as_large_as_the_plate_at_most(plan_of: Callable[..., Plan]) -> None:
    def decals(**plate: float) -> int:
        press = [
            ["Press", "Kind", "Plate width", "Plate depth", "Hottest", "Cover", "Overlap"],
            ["Small", "hand-held plate", *(f"{plate[side]} mm" for side in ("wide", "deep")), "390 °F", "cover sheet",
             "1 in"],
        ]  # fmt: skip
        return len(plan_of([HEAD, *people(1)], Job=SHARED, Press=press).decals)

    (piece,) = plan_of([HEAD, *people(1)], Job=SHARED).decals
    assert decals(wide=piece.width + 1, deep=piece.height + 1) == 1
    assert decals(wide=piece.width - 1, deep=piece.height + 1) == 2
    assert decals(wide=piece.width + 1, deep=piece.height - 1) == 2
