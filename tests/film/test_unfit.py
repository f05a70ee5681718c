"""Decals that can't lie on their film stop their garment, at the Designs sheet's Width."""

from dataclasses import replace
from typing import Any

import pytest

from xlbatch.film.unfit import unfit
from xlbatch.job.job import Roll
from xlbatch.problems import Where

STRIP = "decal-longer-than-strip"


@pytest.fixture
def problems_of(shop: Any) -> Any:
    def make(*sizes: tuple[float, float], one_direction: bool = False, turn: bool = True) -> Any:
        shop.films = (replace(shop.films[0], one_direction=one_direction),)
        shop.settings = replace(shop.settings, turn=turn, longest_strip=500, length_unit="mm")
        shop.decals(list(sizes))
        return unfit(shop.job, tuple(shop.garments), tuple(shop.made))

    return make


def test_a_decal_that_fits_turned_is_no_problem(problems_of: Any) -> None:
    assert problems_of((300, 200)) == ()


@pytest.mark.parametrize("only", [{"one_direction": True}, {"turn": False}])
def test_where_it_must_not_be_turned_its_width_counts(problems_of: Any, only: dict[str, bool]) -> None:
    (found,) = problems_of((300, 200), **only)
    assert (found.code, found.where, found.rows) == ("decal-wider-than-film", Where("Designs", "K2"), (2,))
    assert found.wrong == "Ana 1’s Front would be 300 mm × 200 mm; Black smooth is 290 mm wide."
    assert found.todo == "Make it at most 290 mm wide, or use a wider roll."


def test_wider_both_ways_states_the_width_at_which_it_fits_turned(problems_of: Any) -> None:
    # 400 × 300 fits turned when 300 is made 290, and it is then 386 wide
    (found,) = problems_of((400, 300))
    assert "at most 386 mm wide" in found.todo


def test_a_decal_longer_than_a_strip(problems_of: Any) -> None:
    (found,) = problems_of((280, 510))
    assert (found.code, found.rows) == ("decal-longer-than-strip", (2,))
    assert (
        found.wrong
        == "Ana 1’s Front is 510 mm long on the film; the longest strip is 500 mm: it gets a longer strip of its own."
    )
    assert found.level == "check"


def test_a_garments_decals_together_longer_than_a_strip(problems_of: Any) -> None:
    (found,) = problems_of((280, 255), (280, 255))
    assert found.wrong.startswith("Ana 1’s set of 2 decals is 516 mm long on the film; the longest strip is 500 mm")


def test_a_decal_longer_than_a_cut_is_held_back(problems_of: Any) -> None:
    (found,) = problems_of((280, 1800))
    assert (found.code, found.level) == ("decal-longer-than-cut", "stop")


def test_a_built_in_design_points_at_the_roster(shop: Any) -> None:
    shop.decals([(400, 300)])
    spec = replace(shop.made[0].spec, source=replace(shop.made[0].spec.source, row=0))
    (found,) = unfit(shop.job, tuple(shop.garments), (replace(shop.made[0], spec=spec),))
    assert found.where == Where("Roster", "B2")


@pytest.mark.parametrize(
    ("length", "code"),
    [
        (500, ""),
        (500.1, "decal-longer-than-strip"),
        (1750, "decal-longer-than-strip"),
        (1750.1, "decal-longer-than-cut"),
    ],
)
def test_a_strip_and_a_cut_hold_all_of_their_lengths(problems_of: Any, length: float, code: str) -> None:
    """The longest cut is 1800, with a margin of 25 at both ends."""
    assert "".join(problem.code for problem in problems_of((280, length))) == code


def test_a_decal_longer_than_the_longest_roll_tells_what_that_holds(shop: Any) -> None:
    shop.films = (replace(shop.films[0], rolls=(Roll(500, None), Roll(914.4, None))),)
    shop.settings = replace(shop.settings, length_unit="mm")
    shop.decals([(280, 864.4)])
    shop.decals([(280, 864.5)])
    shop.decals([(280, 300), (280, 300), (280, 300)])
    found = unfit(shop.job, tuple(shop.garments), tuple(shop.made))
    assert [(problem.code, problem.rows) for problem in found] == [("decal-longer-than-cut", (row,)) for row in (3, 4)]
    assert "Front is 865 mm long" in found[0].wrong
    assert "set of 3 decals is 912 mm long" in found[1].wrong
    assert all("864.4 mm" in problem.wrong for problem in found)
