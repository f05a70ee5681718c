"""The film on hand now: the pieces there were and the rolls that came, less the strips that were cut since."""

import math
from collections import defaultdict
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from xlbatch.job.job import Film, FilmPiece, Job
from xlbatch.job.marks import OrderKey
from xlbatch.kept.memory import KeptDecal, KeptFilm, KeptStrip, strips_cut
from xlbatch.kept.on_the_way import Ordered
from xlbatch.problems import Problem, problem
from xlbatch.shopping.buy import roll_item
from xlbatch.trade.tables import practice
from xlbatch.units import LengthUnit, length_text, print_step

LEAST = practice("a shorter end of film is waste")
UNITS: tuple[LengthUnit, ...] = ("in", "cm", "mm")


@dataclass(frozen=True)
class FilmLeft:
    """The films with what is on hand, what that is reckoned from, the strips with those counted marked, questions."""

    films: tuple[Film, ...]
    kept: tuple[KeptFilm, ...]
    strips: tuple[KeptStrip, ...]
    problems: tuple[Problem, ...]


def film_left(
    job: Job,
    kept: Iterable[KeptFilm],
    strips: Sequence[KeptStrip],
    decals: Iterable[KeptDecal],
    orders: Mapping[OrderKey, Ordered],
    counted: Collection[str],
) -> FilmLeft:
    """`counted`: the films, in lower case, whose On hand a person changed: it is as of now, after all cuts."""
    before = {film_.film.casefold(): film_ for film_ in kept}
    cut, came = strips_cut(decals), {key: order.came for key, order in orders.items()}
    films: list[Film] = []
    reckoned: list[KeptFilm] = []
    problems: list[Problem] = []
    done: set[tuple[str, int, int]] = set()
    for film in job.films:
        name = film.name.casefold()
        mine = [strip for strip in strips if strip.place[0] == name and strip.place in cut]
        if name in counted or name not in before:
            base = film.on_hand
            done |= {strip.place for strip in mine}
        else:
            base = tuple(map(_piece, before[name].pieces))
        there = base if name in counted else _with_rolls(base, film, came)
        since = [strip for strip in mine if strip.place not in done and not strip.counted]
        left, lacking = _cut_off(there, since, job)
        films.append(replace(film, on_hand=left))
        reckoned.append(kept_film(film.name, there))
        if lacking and since:
            problems.append(problem("film-came-unmarked", film.source.at("On hand"), film.name))
        elif since:
            problems.append(problem("film-reckoned", film.source.at("On hand"), film.name))
    marked = tuple(replace(strip, counted="yes") if strip.place in done else strip for strip in strips)
    return FilmLeft(tuple(films), tuple(reckoned), marked, tuple(problems))


def _with_rolls(base: tuple[FilmPiece, ...], film: Film, came: Mapping[OrderKey, int]) -> tuple[FilmPiece, ...]:
    """The pieces with the rolls that came, and without those that did not come after all."""
    there = [*base, *_rolls(film, came)]
    for roll in _rolls(film, {key: -count for key, count in came.items()}):
        if roll in there:
            there.remove(roll)
    return tuple(there)


def _rolls(film: Film, counts: Mapping[OrderKey, int]) -> Iterable[FilmPiece]:
    """The rolls of a film that lines of the shopping list, each so many, come to."""
    for roll in film.rolls:
        items = {roll_item(film, roll, unit) for unit in UNITS}
        for key, count in counts.items():
            if key.kind == "film" and key.item in items:
                yield from [FilmPiece(film.roll_width, roll.length)] * count


def with_coming(job: Job) -> Job:
    """The job with the rolls that are on the way among the film there is: it need not be bought again."""
    coming = {key: stock.on_the_way for key, stock in job.orders.items()}
    films = (replace(film, on_hand=(*film.on_hand, *_rolls(film, coming))) for film in job.films)
    return replace(job, films=tuple(films)) if job.orders else job


def _cut_off(there: Iterable[FilmPiece], strips: Iterable[KeptStrip], job: Job) -> tuple[tuple[FilmPiece, ...], bool]:
    """What is left of the pieces, each run cut from the piece it was planned on, else from the shortest that is long
    enough; and whether there was not enough."""
    runs: dict[int, list[KeptStrip]] = defaultdict(list)
    for strip in strips:
        runs[strip.run].append(strip)
    left, lacking = list(there), False
    for them in runs.values():
        length = sum(strip.length for strip in them)
        fits = [number for number, piece in enumerate(left) if piece.length >= length - 0.5]
        named = [number for number in fits if _called(left[number], job) == them[0].cut_from]
        piece_no = min(named or fits, key=lambda piece_no_: left[piece_no_].length, default=None)
        if piece_no is None:
            lacking = True
        else:
            left[piece_no] = replace(left[piece_no], length=round(left[piece_no].length - length, 3))
    step = print_step(job.settings.length_unit)
    whole = (replace(piece, length=math.floor(piece.length / step + 1e-6) * step) for piece in left)
    return tuple(piece for piece in (whole if runs else left) if piece.length >= LEAST), lacking


def _called(piece: FilmPiece, job: Job) -> str:
    unit = job.settings.length_unit
    return f"piece {length_text(piece.width, unit)} × {length_text(piece.length, unit)}"


def kept_film(film: str, pieces: Iterable[FilmPiece]) -> KeptFilm:
    """The record of a film's pieces."""
    return KeptFilm(film, tuple(f"{piece.width:.9g} x {piece.length:.9g}" for piece in pieces))


def _piece(text: str) -> FilmPiece:
    width, _, length = text.partition(" x ")
    return FilmPiece(float(width), float(length))
