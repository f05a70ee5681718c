"""Rolls on the way are among the film there is: as many as were ordered, of the film and length that were."""

from collections.abc import Callable
from dataclasses import replace

from xlbatch.job.job import FilmPiece
from xlbatch.job.marks import OrderKey, Stock
from xlbatch.kept.film_left import with_coming
from xlbatch.roster.read import Reading

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
