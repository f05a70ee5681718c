"""Where decals go on a shirt of round measures, in mm, and what keeps them off it, either side of each limit."""

from collections.abc import Sequence
from dataclasses import replace
from typing import Any

import pytest

from tests.art.conftest import ROW, SPEC
from tests.kept.test_what_is_remembered import job as blank_job
from xlbatch.art.decal import Decal
from xlbatch.check.garment import Garment
from xlbatch.job.job import Blank, Job
from xlbatch.job.position import Position
from xlbatch.job.source import Source
from xlbatch.placement.place import Place
from xlbatch.placement.put import place
from xlbatch.problems import Problem

BLANK = replace(
    blank_job().blanks[0],
    garment="Tee", size="M", for_="adult", neckline="crew", chest=500.0, length=700.0, drop_front=100.0, drop_back=20.0,
    sleeve_length=200.0, sleeve_opening=180.0, keep_clear=(), between_armholes=None,
)  # fmt: skip
CELLS = Source("Designs", 3, {"Position": "E3", "Width": "F3"})


def rule(name: str, side: str, start: str, distance: float, across: float = 0, under: Sequence[str] = ()) -> Position:
    return Position(Source("Positions"), name, "adult", "any", side, start, distance, across, tuple(under), 12.0)


RULES = (
    rule("front", "front", "front collar seam", 75), rule("back", "back", "back collar seam", 100),
    rule("number", "back", "back collar seam", 250, under=("back",)), rule("hem", "front", "hem", 60),
    rule("chest", "front", "side of the collar seam", 150, -100), rule("cuff", "left sleeve", "sleeve opening", 25),
    rule("waist", "front", "hem", 80, 90), rule("shoulder", "back", "back collar seam", 30, 110),
)  # fmt: skip


def job(**rules: float) -> Job:
    own = blank_job()
    clear = {"clear_of_side": 40.0, "clear_of_hem": 50.0, "clear_of_sleeve_edge": 10.0}
    settings = replace(own.settings, length_unit="cm", **clear | rules)  # type: ignore[arg-type]
    return replace(own, settings=settings, positions=RULES)


def decal(position: str, width: float, height: float, number: int = 1, **changes: Any) -> Decal:
    spec = replace(SPEC, decal=f"Piece {number}", position=position, source=CELLS)
    return Decal(f"D{number}", 1, spec, "", "Black smooth", "", width, height, None, **changes)


def put(*decals: Decal, blank: Blank = BLANK, own: Job | None = None) -> tuple[tuple[Place, ...], tuple[Problem, ...]]:
    garment = Garment(replace(ROW, size="M"), blank, "white", "Ana", (), (), True)
    return place(own or job(), (garment,), decals)


def only(*decals: Decal, blank: Blank = BLANK) -> Place:
    places, problems = put(*decals, blank=blank)
    assert problems == ()
    return places[0]


@pytest.mark.parametrize(
    ("position", "below", "above_opening", "above_hem", "center", "clear_side", "clear_hem"),
    [
        ("FRONT", 75, None, None, 0, 200, 485),  # 700 - 100 - 75 - 40
        ("back", 100, None, None, 0, 200, 540),  # 700 - 20 - 100 - 40
        ("hem", None, None, 60, 0, 200, 60),
        ("waist", None, None, 80, 90, 110, 80),
        ("chest", 150, None, None, -100, 100, 510),  # from the shoulder point: 700 - 150 - 40
        ("shoulder", 30, None, None, 110, 90, 610),
        ("cuff", None, 25, None, 0, 40, None),
    ],
)
def test_a_box_100_wide_and_40_high_at_each_position(
    position: str,
    below: float,
    above_opening: float,
    above_hem: float,
    center: float,
    clear_side: float,
    clear_hem: float,
) -> None:
    it = only(decal(position, 100, 40))
    assert (it.below_collar, it.above_opening, it.above_hem) == (below, above_opening, above_hem)
    assert (it.from_center, it.clear_side, it.clear_hem) == (center, clear_side, clear_hem)


def test_films_of_one_drawing_lie_in_its_box_and_are_mirrored_on_the_back_as_one_looks_at_it() -> None:
    """A box 100 by 60 with a piece of 20 by 30 at its lower left."""
    for position, center, below in (("front", 30, 75 + 20), ("back", -30, 100 + 20)):
        it = only(decal(position, 20, 30, whole=(100.0, 60.0), offset=(10.0, 10.0)))
        assert (it.from_center, it.below_collar) == (center, below)
    it = only(decal("hem", 20, 30, whole=(100.0, 60.0), offset=(10.0, 10.0)))
    assert (it.from_center, it.above_hem, it.clear_hem) == (30, 70, 70)


def test_a_hair_off_the_middle_is_the_middle_and_the_first_press_is_the_one_used() -> None:
    it = only(decal("front", 80, 30, whole=(100.0, 60.0), offset=(10.0002, 10.0)))
    assert str(it.from_center) == "0.0"
    own = job()
    small = replace(own.presses[0], width=60.0, depth=60.0, overlap=10.0)
    for presses, count in (((small, own.presses[0]), 2), ((own.presses[0], small), 1)):
        places, _ = put(decal("front", 100, 40), own=replace(own, presses=presses))
        assert [it.presses for it in places] == [count]


def test_decals_of_one_position_go_one_below_the_other() -> None:
    places, _ = put(decal("front", 100, 40), decal("front", 60, 30, 2), decal("front", 60, 20, 3))
    assert [it.below_collar for it in places] == [75, 75 + 40 + 12, 75 + 40 + 12 + 30 + 12]
    places, _ = put(decal("hem", 100, 40), decal("hem", 60, 30, 2))
    assert {it.decal.id: it.above_hem for it in places} == {"D2": 60, "D1": 60 + 30 + 12}


def test_a_position_below_another_keeps_the_gap_to_its_lowest() -> None:
    places, _ = put(decal("number", 100, 200), decal("back", 100, 40, 2), decal("back", 60, 30, 3))
    assert {it.decal.id: it.below_collar for it in places} == {"D1": 182 + 12, "D2": 100, "D3": 152}
    assert [it.decal.id for it in places] == ["D1", "D2", "D3"]
    assert only(decal("number", 100, 200)).below_collar == 250


def test_chest_art_stays_clear_of_the_collar_and_all_of_it_is_centered_alike() -> None:
    """Below the collar's 100 mm there is none: 150 below, it is where the position says."""
    places, _ = put(decal("chest", 60, 40), decal("chest", 120, 40, 2))
    assert [it.from_center for it in places] == [-100, -100]
    deep = replace(BLANK, drop_front=300.0)
    wide = put(decal("chest", 120, 40), decal("chest", 60, 40, 2), blank=deep)[0]
    # half a neck of 0.36 x 500, at 150 of 300: x sqrt(1/2); 1/4 in clear; half of the widest
    assert [it.from_center for it in wide] == [pytest.approx(-(90 * 0.5**0.5 + 6.35 + 60), abs=0.01)] * 2


@pytest.mark.parametrize(
    ("position", "width", "height", "fits"),
    [
        ("front", 420, 40, ""), ("front", 420.5, 40, "42 cm wide and 4 cm high"),  # 500 less twice 40
        ("front", 100, 475, ""), ("front", 100, 475.5, "10 cm wide and 47.5 cm high"),  # 600 - 75 - 50
        ("waist", 240, 40, ""), ("waist", 242, 40, "24 cm wide and 4 cm high"),
        ("hem", 100, 540, ""), ("hem", 100, 541, "10 cm wide and 54 cm high"),  # up to the collar
        ("cuff", 160, 40, ""), ("cuff", 161, 40, "16 cm wide and 4 cm high"),
        ("cuff", 100, 165, ""), ("cuff", 100, 166, "10 cm wide and 16.5 cm high"),  # 200 - 10 - 25
        ("shoulder", 200, 40, ""), ("shoulder", 202, 40, "20 cm wide and 4 cm high"),
    ],
)  # fmt: skip
def test_what_comes_too_near_an_edge_is_held_back_with_what_would_fit(
    position: str, width: float, height: float, fits: str
) -> None:
    places, problems = put(decal(position, width, height))
    if not fits:
        assert (len(places), problems) == (1, ())
    else:
        (found,) = problems
        assert (found.code, found.where.cell, places) == ("decal-off-garment", "F3", ())
        assert f"Make it at most {fits}," in found.todo


def test_a_hem_that_is_kept_clear_of_and_what_can_not_fit_at_all() -> None:
    near = replace(RULES[3], distance=49.0)
    (found,) = put(decal("hem", 100, 40), own=replace(job(), positions=(near,)))[1]
    assert "10 cm wide and 3.9 cm high" in found.todo
    (found,) = put(decal("front", 100, 40), blank=replace(BLANK, length=200.0))[1]
    assert "Make it smaller" in found.todo
    built_in = decal("front", 100, 400)
    built_in = replace(built_in, spec=replace(built_in.spec, source=Source("Designs")))
    (found,) = put(built_in, blank=replace(BLANK, length=500.0))[1]
    assert found.where.sheet == "Roster"


def test_what_reaches_above_the_armpits_stays_between_the_armholes() -> None:
    """The armpit is 0.45 of the chest below the shoulder: 225 mm. Between the armholes are 380."""
    blank = replace(BLANK, between_armholes=380.0)
    assert len(put(decal("back", 380, 40), blank=blank)[0]) == 1
    (found,) = put(decal("back", 384, 40), blank=blank)[1]
    assert "38 cm wide and 4 cm high" in found.todo
    assert len(put(decal("number", 384, 40), blank=blank)[0]) == 1  # below them: 20 + 250 under the shoulder


@pytest.mark.parametrize(
    ("blank", "decals", "code"),
    [
        (BLANK, [decal("collar", 50, 20)], "position-not-made"),
        (replace(BLANK, for_="youth"), [decal("front", 50, 20)], "position-not-made"),
        (replace(BLANK, sleeve_opening=None), [decal("cuff", 50, 20)], "measure-missing sleeve opening"),
        (replace(BLANK, sleeve_length=None), [decal("cuff", 50, 20)], "measure-missing sleeve length"),
        (replace(BLANK, sleeve_length=None), [decal("front", 50, 20)], ""),
        (BLANK, [decal("front", 100, 400), decal("hem", 100, 66, 2)], "decals-overlap"),  # 125 and 126 from the hem
        (BLANK, [decal("front", 100, 400), decal("hem", 100, 64, 2)], ""),
        (BLANK, [decal("back", 100, 400), decal("hem", 100, 66, 2)], ""),
        (
            BLANK,
            [decal("front", 100, 400), decal("waist", 84, 66, 2)],
            "decals-overlap",
        ),  # from 51 to 129 off the middle
        (BLANK, [decal("front", 100, 400), decal("waist", 78, 66, 2)], ""),
    ],
)
def test_what_can_not_be_placed(blank: Blank, decals: Sequence[Decal], code: str) -> None:
    places, problems = put(*decals, blank=blank)
    assert [f"{each.code} {_measure(each)}".strip() for each in problems] == ([code] if code else [])
    assert len(places) == (0 if code else len(decals))
    assert all(each.rows == (2,) for each in problems)


def _measure(found: Problem) -> str:
    return next((name for name in ("sleeve opening", "sleeve length") if f"has no {name}" in found.wrong), "")
