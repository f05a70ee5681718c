"""What one closing of the plate presses, by pieces placed by hand."""

from collections.abc import Sequence
from dataclasses import replace
from typing import Any

import pytest

from tests.art.conftest import FILM
from tests.kept.test_what_is_remembered import job
from tests.placement.test_pieces_by_hand import at
from xlbatch.placement.place import Place
from xlbatch.press.closing import closings

HOT, COOL = replace(FILM, name="Hot", temperature=160), replace(FILM, name="Cool", temperature=130)
OTHER = replace(FILM, name="Other", temperature=160)
FILMS = {film.name.casefold(): film for film in (HOT, COOL, OTHER)}
PRESS = replace(job().presses[0], width=200.0, depth=300.0)


def piece(
    number: int, film: str = "Hot", left: float = 0, bottom: float = 300, side: str = "front", **spec: Any
) -> Place:
    """A box 40 by 20; `drawing` says what it is a film of, `border` that it is the border piece."""
    drawing, border = spec.pop("drawing", ""), spec.pop("border", False)
    it = at(left, bottom, 40, 20, number, side)
    whole = (40.0, 20.0) if drawing else None
    own = replace(it.decal, film=film, drawing=drawing, whole=whole, border=border, spec=replace(it.decal.spec, **spec))
    return replace(it, decal=own)


def closed(*places: Place) -> list[tuple[list[str], bool, tuple[str, ...]]]:
    """Of each closing its decals, whether they are but tacked, and what is to cover."""
    return [([it.decal.id for it in each.places], each.tack, each.cover) for each in closings(places, FILMS, PRESS)]


@pytest.mark.parametrize(
    ("places", "expected"),
    [
        ([piece(1), piece(2, left=60)], [(["D1", "D2"], False, ())]),
        ([piece(1), piece(2, left=260)], [(["D1", "D2"], False, ())]),  # 300 across: the plate lies that way
        ([piece(1), piece(2, left=261)], [(["D1"], False, ()), (["D2"], False, ("D1",))]),
        ([piece(1), piece(2, bottom=580)], [(["D1", "D2"], False, ())]),
        ([piece(1), piece(2, bottom=581)], [(["D1"], False, ()), (["D2"], False, ("D1",))]),
        ([piece(1), piece(2, left=161, bottom=481)], [(["D1"], False, ()), (["D2"], False, ("D1",))]),  # 201 by 201
        ([piece(1), piece(2, left=160, bottom=481)], [(["D1", "D2"], False, ())]),  # 200 by 201
        ([piece(1), piece(2, "Other", 60)], [(["D1"], False, ()), (["D2"], False, ("D1",))]),
        ([piece(1), piece(2, side="back")], [(["D1"], False, ()), (["D2"], False, ())]),
        ([piece(1, "Cool"), piece(2)], [(["D2"], False, ()), (["D1"], False, ("D2",))]),  # the hottest first
        ([piece(1), piece(2, layer=2)], [(["D1"], False, ()), (["D2"], False, ("D1",))]),
        ([piece(1, layer=2), piece(2)], [(["D2"], False, ()), (["D1"], False, ("D2",))]),
        ([piece(1), piece(2, side="back"), piece(3)], [(["D1", "D3"], False, ()), (["D2"], False, ())]),
        ([piece(1, layer=2), piece(2, side="back"), piece(3)],
         [(["D3"], False, ()), (["D1"], False, ("D3",)), (["D2"], False, ())]),  # a side is finished first
    ],
)  # fmt: skip
def test_what_is_pressed_at_once(places: Sequence[Place], expected: list[Any]) -> None:
    assert closed(*places) == expected


@pytest.mark.parametrize(
    ("over", "tacked"),
    [
        ({"layer": 2}, True), ({"layer": 1}, False), ({"layer": 2, "film": "Other"}, True),
        ({"layer": 2, "film": "Cool"}, False),
        ({"layer": 2, "drawing": "b"}, False), ({"layer": 2, "side": "back"}, False),
    ],
)  # fmt: skip
def test_a_lower_layer_is_tacked_where_one_of_its_drawing_follows_at_its_heat(
    over: dict[str, Any], tacked: bool
) -> None:
    upper: dict[str, Any] = {"drawing": "a"} | over
    first, *_ = closed(piece(1, drawing="a"), piece(2, **upper))
    assert first == ((["D1"] if over != {"layer": 1} else ["D1", "D2"]), tacked, ())


def test_a_border_is_under_its_lettering_and_what_is_but_tacked_is_not_covered() -> None:
    lettering, border = piece(1, drawing="a"), piece(2, "Other", drawing="a", border=True)
    assert closed(lettering, border) == [(["D2"], True, ()), (["D1"], False, ())]
    more = piece(3, "Cool", left=60)
    assert closed(lettering, border, more)[-1] == (["D3"], False, ("D1",))
    heats = [each.heat for each in closings([lettering, more], FILMS, PRESS)]
    assert heats == [160, 130]
