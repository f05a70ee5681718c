"""Names of about one length lie turned side by side: batches that fill the film's width."""

from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from xlbatch.film.batch_costs import FilmBoxes
from xlbatch.film.box import Bed, Box
from xlbatch.film.side_by_side import STEP, side_by_side

WIDE = 500 * STEP
SIDES = st.integers(min_value=1, max_value=300).map(lambda steps: steps * STEP)
NAMES = st.lists(st.tuples(SIDES, SIDES), min_size=1, max_size=9)


def _film(names: list[Box], *, turn: bool = True) -> FilmBoxes:
    return FilmBoxes(Bed(WIDE, 10 * WIDE, STEP, turn), tuple((name,) for name in names))


@settings(max_examples=60, deadline=None)
@given(NAMES, st.integers(min_value=1, max_value=5))
def test_every_garment_is_in_one_batch_that_fits_across(names: list[Box], most: int) -> None:
    batches = side_by_side([_film(names)], most) or []
    assert sorted(garment for batch in batches for garment in batch) == list(range(len(names)))
    for batch in batches:
        assert len(batch) <= most
        assert sum(min(names[garment]) for garment in batch) <= WIDE


@settings(max_examples=60, deadline=None)
@given(NAMES, st.integers(min_value=1, max_value=5))
def test_beside_the_longest_lie_those_that_cover_most(names: list[Box], most: int) -> None:
    """Against every choice there is."""
    first = min(range(len(names)), key=lambda garment: (-max(names[garment]), -min(names[garment]), garment))
    batch = next(batch for batch in side_by_side([_film(names)], most) or [] if first in batch)
    others = [garment for garment in range(len(names)) if garment != first]
    best = max(
        sum(a * b for a, b in (names[garment] for garment in chosen))
        for count in range(most)
        for chosen in combinations(others, count)
        if sum(min(names[garment]) for garment in (first, *chosen)) <= WIDE
    )
    assert sum(names[garment][0] * names[garment][1] for garment in batch if garment != first) == best


@pytest.mark.parametrize(
    "films",
    [
        [_film([(STEP, STEP)], turn=False)],
        [_film([(STEP, STEP)]), _film([(STEP, STEP)])],
        [FilmBoxes(Bed(WIDE, WIDE, STEP, turn=True), (((STEP, STEP),) * 2,))],
    ],
)
def test_only_where_each_garment_has_one_box_that_may_be_turned(films: list[FilmBoxes]) -> None:
    assert side_by_side(films, 4) is None


@pytest.mark.parametrize(("between", "beside"), [(39, True), (40, False)])
def test_beside_the_longest_lie_names_of_about_its_length(between: int, beside: bool) -> None:
    """Those between are too wide to lie beside any other; the last is short and narrow."""
    names = [(300 * STEP, 400 * STEP), *[(260 * STEP, 390 * STEP)] * between, (90 * STEP, 100 * STEP)]
    batches = side_by_side([_film(names)], 3) or []
    assert (batches[0] == (0, between + 1)) == beside


def test_widths_count_in_fifths_of_a_millimeter_rounded_up() -> None:
    """Beside 300 steps there are 200: two names a hair wider than half of them do not both lie there."""
    for more, count in ((0, 3), (1, 2)):
        names = [(300 * STEP, 400 * STEP), *[(100 * STEP + more, 300 * STEP)] * 2]
        assert len((side_by_side([_film(names)], 3) or [])[0]) == count
