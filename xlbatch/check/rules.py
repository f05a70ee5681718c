"""The rules a garment must keep, one function each, and the tuple of them all. Each yields problems."""

from collections.abc import Callable, Iterable, Iterator

from xlbatch.check.colors import dye_stays_in_the_cloth, film_shows_on_garment
from xlbatch.check.garment import Garment
from xlbatch.check.given_not_used import given_is_used, numbers_are_printed
from xlbatch.check.names import did_you_mean
from xlbatch.check.numbers import number_is_filled_in, number_is_legal, number_once_in_a_group
from xlbatch.check.printed_text import capitals_as_usual, letters_of_one_alphabet, name_alone, name_is_filled_in
from xlbatch.check.spelling import names_spelled_one_way
from xlbatch.check.text import braces_problems
from xlbatch.job.job import NO_NAME, DecalSpec, Job
from xlbatch.job.source import MOST_SHEET_ROWS, Source
from xlbatch.problems import Problem, problem
from xlbatch.trade.tables import color_name

Rule = Callable[[Job, tuple[Garment, ...]], Iterable[Problem]]


def color_is_made(_job: Job, garments: tuple[Garment, ...]) -> Iterator[Problem]:
    """The garment is listed in the color asked for."""
    for garment in garments:
        made = {color_name(color) for color in garment.blank.colors}
        if made and color_name(garment.color) not in made:
            yield problem(
                "color-not-made",
                garment.row.source.at("Color"),
                garment.color,
                suggestion=did_you_mean(garment.color, garment.blank.colors),
                rows=(garment.row.source.row,),
                garment=f"{garment.blank.garment} {garment.blank.size}",
            )


def name_is_given(_job: Job, garments: tuple[Garment, ...]) -> Iterator[Problem]:
    """A design that prints a name has one."""
    for garment in garments:
        if not garment.print_name and garment.row.print_name != NO_NAME and _prints(garment, "print name"):
            yield problem("name-missing", garment.row.source.at("Who"), rows=(garment.row.source.row,))


def number_is_given(_job: Job, garments: tuple[Garment, ...]) -> Iterator[Problem]:
    """A design that prints a number has one."""
    for garment in garments:
        if not garment.row.number and _prints(garment, "number"):
            yield problem("number-missing", garment.row.source.at("Number"), rows=(garment.row.source.row,))


def no_one_twice(_job: Job, garments: tuple[Garment, ...]) -> Iterator[Problem]:
    """No row repeats another, and no one stands in two rows of one group, or by a whole name for the same in two."""
    rows: dict[tuple[str, ...], int] = {}
    people: dict[tuple[str, ...], Source] = {}
    for garment in garments:
        row, number = garment.row, garment.row.source.row
        if not row.who:
            continue
        all_of_it = (row.who, row.group, row.garment, row.size, row.color, row.design, row.print_name, row.number)
        first = rows.setdefault(all_of_it, number)
        group = "" if row.group == row.source.sheet else row.group.casefold()  # whoever stands on two sheets is asked
        first_of_them = people.setdefault((row.who.casefold(), group), row.source)
        if first_of_them is row.source and len(row.who.split()) > 1:
            same = (row.who.casefold(), row.garment, row.size, row.color, row.design)
            first_of_them = people.setdefault(same, row.source)
        if first != number:
            yield problem(
                "duplicate-row", row.source.at("Who"), row.who, rows=(number,), row=(first - 1) % MOST_SHEET_ROWS + 1
            )
        elif (first_of_them.sheet, first_of_them.sheet_row) != (row.source.sheet, row.source.sheet_row):
            yield problem("who-twice", row.source.at("Who"), row.who, rows=(number,), row=first_of_them.sheet_row)


def braces_are_filled_in(job: Job, garments: tuple[Garment, ...]) -> Iterator[Problem]:
    """What a design's texts have in braces names a column or setting, and each garment has something in that column.
    A setting may be blank: then nothing is printed."""
    for garment in garments:
        for spec in garment.design:
            if spec.what == "text":
                problems = braces_problems(spec.text, garment.row, job.settings, spec.source.at("Text"))
                yield from (problem_ for problem_ in problems if problem_.where.sheet != "Job")


def films_are_known(job: Job, garments: tuple[Garment, ...]) -> Iterator[Problem]:
    """Every film a design names is on the Film sheet."""
    known = {film.name.casefold() for film in job.films}
    for spec, rows in _rows_of_specs(garments):
        for heading, name in (("Film", spec.film), ("Outline film", spec.outline_film)):
            if name and name.casefold() not in known:
                likely = did_you_mean(name, (film.name for film in job.films))
                yield problem("film-unknown", spec.source.at(heading), name, suggestion=likely, rows=rows)


def positions_are_known(job: Job, garments: tuple[Garment, ...]) -> Iterator[Problem]:
    """Every position a design names is in the placement table."""
    known = tuple(name.casefold() for name in job.position_names)
    for spec, rows in _rows_of_specs(garments):
        if spec.position.casefold() not in known:
            yield problem(
                "position-unknown",
                spec.source.at("Position"),
                spec.position,
                suggestion=did_you_mean(spec.position, known),
                rows=rows,
                positions=", ".join(known),
            )


RULES: tuple[Rule, ...] = (
    films_are_known,
    positions_are_known,
    name_is_given,
    number_is_given,
    braces_are_filled_in,
    numbers_are_printed,
    given_is_used,
    name_is_filled_in,
    number_is_filled_in,
    number_once_in_a_group,
    number_is_legal,
    letters_of_one_alphabet,
    capitals_as_usual,
    name_alone,
    names_spelled_one_way,
    color_is_made,
    film_shows_on_garment,
    dye_stays_in_the_cloth,
    no_one_twice,
)


def _prints(garment: Garment, what: str) -> bool:
    return any(spec.what == what for spec in garment.to_do)


def _rows_of_specs(garments: tuple[Garment, ...]) -> Iterable[tuple[DecalSpec, tuple[int, ...]]]:
    """Each decal of a design, with the roster rows it is for."""
    rows_of: dict[tuple[str, str, int], tuple[DecalSpec, dict[int, None]]] = {}
    for garment in garments:
        for spec in garment.to_do:
            key = (spec.design, spec.decal, spec.source.row)
            rows_of.setdefault(key, (spec, {}))[1][garment.row.source.row] = None
    return ((spec, tuple(rows)) for spec, rows in rows_of.values())
