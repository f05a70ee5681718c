"""Film on hand: what there was and the rolls that came, less what was cut since; rolls on the way are among the film
there is: as many as were ordered, of the film and length that were."""

from collections.abc import Callable, Collection, Sequence
from dataclasses import replace
from pathlib import Path

import pytest

from tests.art.conftest import FILM
from tests.kept.test_numbers_kept import kept
from xlbatch.job.job import Film, FilmPiece, Job, Roll
from xlbatch.job.marks import OrderKey, Stock
from xlbatch.kept.film_left import FilmLeft, film_left, kept_film, with_coming
from xlbatch.kept.memory import KeptDecal, KeptStrip
from xlbatch.kept.on_the_way import Ordered
from xlbatch.roster.read import Reading, blank_job
from xlbatch.units import LengthUnit

YARD = 36 * 25.4


def test_rolls_on_the_way_are_there(reading_of: Callable[..., Reading]) -> None:
    sheet = [
        ["Film", "Rolls sold", "On hand"],
        ["White smooth", "1 yd = 6; 5 yd = 21", "12 in x 20 in"],
        ["Gold", "1 yd"],
    ]
    job = reading_of([["Who", "Size"], ["Ana", "M"]], Film=sheet).job
    assert with_coming(job) == job
    key = OrderKey("film", "White smooth, 12 in × 1 yd roll", "", "", "")
    of_blank = OrderKey("blank", key.item, "", "", "")
    coming = with_coming(replace(job, orders={key: Stock(2, 0), of_blank: Stock(7, 0)}))
    white, gold, *_ = coming.films
    assert white.on_hand == (FilmPiece(304.8, 508.0), FilmPiece(304.8, YARD), FilmPiece(304.8, YARD))
    assert gold.on_hand == ()


BLACK = replace(
    FILM, roll_width=304.8, on_hand=(FilmPiece(304.8, 999),), rolls=(Roll(YARD, None), Roll(5 * YARD, None))
)
FIVE = FilmPiece(304.8, 5 * YARD)
CAME = OrderKey("film", "Black smooth, 12 in × 5 yd roll", "", "", "")


def job_of(*films: Film, unit: LengthUnit = "cm") -> Job:
    job = blank_job(Path("list.xlsx"))
    return replace(job, films=films, settings=replace(job.settings, length_unit=unit))


def strip(run: int, number: int, length: float, cut_from: str = "roll", counted: str = "") -> KeptStrip:
    return KeptStrip("Black Smooth", run, number, length, cut_from, counted)


def on(run: int, number: int, state: str = "cut") -> KeptDecal:
    return kept(1, state, run=run, strip=number)


def left(
    before: Sequence[FilmPiece] | None,
    strips: Sequence[KeptStrip],
    decals: Sequence[KeptDecal],
    came: int = 0,
    counted: Collection[str] = (),
    unit: LengthUnit = "cm",
) -> FilmLeft:
    memory = [] if before is None else [kept_film("black SMOOTH", before)]
    return film_left(
        job_of(BLACK, unit=unit), memory, strips, decals, {CAME: Ordered(0, came, None)} if came else {}, counted
    )


def pieces(film: FilmLeft) -> list[float]:
    return [round(piece.length, 3) for piece in film.films[0].on_hand]


@pytest.mark.parametrize(
    ("before", "lengths", "left_over", "codes"),
    [
        ([1000, 600], [], [1000, 600], []),
        ([1000, 600], [550], [1000, 50], ["film-reckoned"]),  # the shortest that is long enough
        ([1000, 600], [700], [300, 600], ["film-reckoned"]),
        ([1000, 600], [600.4], [1000], ["film-reckoned"]),  # a hair more than there was
        ([1000, 600], [600.6], [399, 600], ["film-reckoned"]),
        ([1000, 600], [575], [1000, 25], ["film-reckoned"]),
        ([1000, 600], [575.5], [1000], ["film-reckoned"]),  # the rest is waste
        ([1000, 600], [100.5, 100.5], [1000, 399], ["film-reckoned"]),
        ([1000, 600], [1001], [1000, 600], ["film-came-unmarked"]),
        ([1000.6, 24], [], [1000.6], []),
    ],
)
def test_each_run_is_off_the_shortest_piece_that_is_long_enough(
    before: list[float], lengths: list[float], left_over: list[float], codes: list[str]
) -> None:
    """In whole millimeters where any was cut."""
    there = [FilmPiece(304.8, length) for length in before]
    strips = [strip(run, run, length) for run, length in enumerate(lengths, 1)]
    film = left(there, strips, [on(run, run) for run in range(1, len(lengths) + 1)])
    assert pieces(film) == left_over
    assert [problem.code for problem in film.problems] == codes
    assert film.kept == (kept_film("Black smooth", there),)


def test_in_inches_what_is_left_is_in_eighths() -> None:
    film = left([FilmPiece(304.8, 600)], [strip(1, 1, 100.5)], [on(1, 1)], unit="in")
    assert pieces(film) == [pytest.approx(157 / 8 * 25.4, abs=0.001)]  # 499.5 mm are 157.3 eighths


def test_the_strips_of_a_run_are_cut_off_one_piece_and_those_not_cut_off_none() -> None:
    there = [FilmPiece(304.8, 600), FilmPiece(304.8, 350)]
    strips = [strip(1, 1, 200), strip(1, 2, 200), strip(2, 3, 340)]
    assert pieces(left(there, strips, [on(1, 1), on(1, 2), on(2, 3, "to cut")])) == [200, 350]
    assert pieces(left(there, strips, [on(1, 1), on(1, 2, "to cut"), on(2, 3, "spoiled")])) == [600 - 340, 150]
    other = replace(strips[0], film="White smooth")
    assert pieces(left(there, [other], [replace(on(1, 1), film="White smooth")])) == [600, 350]


def test_a_run_is_cut_off_the_piece_it_was_planned_on() -> None:
    there = [FilmPiece(304.8, 600), FilmPiece(304.8, 400), FilmPiece(304.8, 500)]
    assert pieces(left(there, [strip(1, 1, 100, "piece 30.48 cm × 50 cm")], [on(1, 1)])) == [600, 400, 400]
    assert pieces(left(there, [strip(1, 1, 450, "piece 30.48 cm × 40 cm")], [on(1, 1)])) == [600, 400, 50]


def test_rolls_that_came_are_there_and_go_where_that_is_taken_back() -> None:
    piece = FilmPiece(304.8, 600)
    assert pieces(left([piece], [], [], 2)) == [600, FIVE.length, FIVE.length]
    assert pieces(left([piece, FIVE, FIVE], [], [], -1)) == [600, FIVE.length]
    assert pieces(left([piece], [], [], -1)) == [600]


def test_film_that_was_measured_is_as_of_now_and_its_strips_are_counted() -> None:
    strips = [strip(1, 1, 200), strip(2, 2, 100)]
    measured = left([FilmPiece(304.8, 600)], strips, [on(1, 1), on(2, 2, "to cut")], 1, ["black smooth"])
    assert (pieces(measured), measured.problems) == ([999], ())
    assert [each.counted for each in measured.strips] == ["yes", ""]
    assert measured.kept == (kept_film("Black smooth", [FilmPiece(304.8, 999)]),)
    later = left([FilmPiece(304.8, 999)], measured.strips, [on(1, 1), on(2, 2)])
    assert (pieces(later), [each.counted for each in later.strips]) == ([899], ["yes", ""])


def test_a_film_without_a_memory_is_as_the_list_says_and_what_came_is_added() -> None:
    new = left(None, [strip(1, 1, 200)], [on(1, 1)], 1)
    assert (pieces(new), [each.counted for each in new.strips]) == ([999, FIVE.length], ["yes"])


@pytest.mark.parametrize("eighths", [1263, 1269, 3001])
def test_a_long_piece_stays_what_it_was_from_plan_to_plan(eighths: int) -> None:
    """157 7/8 in are 4,010.025 mm: seven digits."""
    long = FilmPiece(304.8, round(eighths * 3.175, 3))
    assert left([long], [], [], unit="in").films[0].on_hand == (long,)
    after = left([long], [strip(1, 1, 8 * 3.175)], [on(1, 1)], unit="in")
    assert pieces(after) == [round((eighths - 8) * 3.175, 3)]
