"""The rules about what a person gave on the other sheets: nothing of it is passed over without a word."""

from collections.abc import Iterable, Iterator

from xlbatch.check.garment import Garment
from xlbatch.check.placeholders import stands_for
from xlbatch.job.job import Job
from xlbatch.job.source import Source
from xlbatch.problems import Problem, problem
from xlbatch.tables.built_in import is_built_in


def given_is_used(job: Job, garments: tuple[Garment, ...]) -> Iterator[Problem]:
    """Of the person's own designs, garments and films, the usual built-in ones are not used in place of all."""
    specs = [spec for garment in garments for spec in garment.design]
    films = {name.casefold() for spec in specs for name in (spec.film, spec.outline_film) if name}
    designs = {row.design.casefold() or job.settings.usual_design.casefold() for row in job.roster}
    blanks = {garment.blank.garment.casefold() for garment in garments}
    yield from _unused(garments, "garment", ((blank.garment, blank.source) for blank in job.blanks), blanks)
    yield from _unused(garments, "film", ((film.name, film.source) for film in job.films), films)
    asked = not is_built_in(job.settings.usual_design) and not any(row.design for row in job.roster)
    for name, source in {spec.design.casefold(): (spec.design, spec.source) for spec in job.designs}.values():
        if not source.built_in and name.casefold() not in designs and not is_built_in(name) and not asked:
            yield problem("design-unused", source.at("Design"), name)


def _unused(
    garments: tuple[Garment, ...], what: str, listed: Iterable[tuple[str, Source]], used: set[str]
) -> Iterator[Problem]:
    own = {name.casefold(): (name, source) for name, source in listed if not source.built_in}
    if not own or used & set(own) or not garments:
        return
    name, source = next(iter(own.values()))
    rows = tuple(dict.fromkeys(garment.row.source.row for garment in garments))
    heading = what.capitalize()
    yield problem("given-unused", source.at(heading), name, rows=rows, what=what, used=", ".join(sorted(used)))


def numbers_are_printed(_job: Job, garments: tuple[Garment, ...]) -> Iterator[Problem]:
    """A number is of digits alone; numbers given are printed by some design, or it is asked once."""
    given = [garment for garment in garments if garment.row.number]
    printing = {garment.no for garment in garments if any(spec.what == "number" for spec in garment.design)}
    for garment in given:
        row = garment.row
        if not row.number.isdecimal() and not (garment.no in printing and stands_for(row.number)):
            code = "number-no-digits" if garment.no in printing else "number-no-digits-unprinted"
            yield problem(code, row.source.at("Number"), row.number, rows=(row.source.row,))
    unprinted = [garment for garment in given if garment.no not in printing]
    if unprinted and not printing and "Number" in unprinted[0].row.source.cells:
        row = unprinted[0].row
        yield problem(
            "list-numbers-unprinted", row.source.at("Number"), row.number, design=unprinted[0].design[0].design
        )
