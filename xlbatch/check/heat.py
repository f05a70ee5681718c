"""Whether a garment bears the heat of a film, and whether the press reaches it.

The limit is the maker's stated limit, else the care label's dots (ISO 3758:2012: 1, 2, 3 dots are 110, 150,
200 °C); with neither, it is that of the most delicate fiber, and only a pure synthetic fabric stops the row.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import permutations

from xlbatch.check.garment import Garment
from xlbatch.job.job import Blank, Film, Job
from xlbatch.problems import Problem, Where, problem
from xlbatch.problems.phrases import phrase
from xlbatch.trade.fibers import fibers_in
from xlbatch.trade.tables import dot_limit
from xlbatch.units import temperature_text

SAME = 0.001  # °C: closer than this two heats are the same


@dataclass(frozen=True)
class HeatLimit:
    """The hottest a garment may be pressed (°C), why, and whether going over it stops the row."""

    celsius: float
    reason: str
    stops: bool


def heat_limit(blank: Blank) -> HeatLimit | None:
    """The limit of a blank; None where neither maker, label nor fiber tells."""
    if blank.heat_limit is not None:
        return HeatLimit(blank.heat_limit, phrase("maker's limit"), stops=True)
    if blank.dots is not None:
        dots = "1 dot" if blank.dots == 1 else f"{blank.dots} dots"
        return HeatLimit(dot_limit(blank.dots), phrase("care label", dots=dots), stops=True)
    fibers = fibers_in(blank.fabric)
    if not fibers:
        return None
    limit, reason = min(fiber.usual_limit for fiber in fibers), phrase("fabric", fabric=blank.fabric)
    return HeatLimit(limit, reason, stops=all(fiber.synthetic for fiber in fibers))


def heat_problems(job: Job, garments: tuple[Garment, ...]) -> tuple[Problem, ...]:
    """One problem for each film and kind of blank that do not go together, naming all the rows it is about."""
    together: dict[tuple[str, Where], list[Garment]] = {}
    for garment in garments:
        for name in dict.fromkeys(film_names(garment)):
            together.setdefault((name, _label_cell(garment)), []).append(garment)
    too_hot = (_too_hot(job, job.film_of[name], where, tuple(them)) for (name, where), them in together.items())
    return (
        *(problem_ for problem_ in too_hot if problem_),
        *_press_too_cool(job, garments),
        *_layers_against_heat(garments, job.film_of),
        *_over_pressed(garments, job.film_of),
    )


def film_names(garment: Garment) -> tuple[str, ...]:
    """The films a garment's decals need, by name without regard to case."""
    return tuple(name.casefold() for spec in garment.to_do for name in (spec.film, spec.outline_film) if name)


def _too_hot(job: Job, film: Film, where: Where, garments: tuple[Garment, ...]) -> Problem | None:
    blank = garments[0].blank
    limit = heat_limit(blank)
    if limit is None or film.temperature <= limit.celsius + SAME:
        return None
    unit = job.settings.temperature_unit
    return problem(
        "heat-over-limit" if limit.stops else "heat-check-label",
        where,
        temperature_text(film.temperature, unit),
        suggestion=_cooler_film(job, film, limit.celsius),
        rows=tuple(dict.fromkeys(garment.row.source.row for garment in garments)),
        film=film.name,
        garment=f"{blank.garment} {blank.size}",
        fabric=blank.fabric,
        temperature=temperature_text(film.temperature, unit),
        limit=temperature_text(limit.celsius, unit),
        reason=limit.reason,
        remedy=_remedy(job, limit.celsius),
    )


def _remedy(job: Job, limit: float) -> str:
    unit = job.settings.temperature_unit
    kinds = {film.kind: film.temperature for film in job.films if film.temperature <= limit}
    if not kinds:
        return phrase("no film so cool")
    listed = ", ".join(f"{kind} ({temperature_text(heat, unit)})" for kind, heat in kinds.items())
    return phrase("cooler film", kinds=listed)


def _cooler_film(job: Job, film: Film, limit: float) -> str:
    fits = [other for other in job.films if other.temperature <= limit]
    of_color = [other for other in fits if other.color.casefold() == film.color.casefold()] or fits
    return max(of_color, key=lambda other: other.temperature).name if of_color else ""


def _label_cell(garment: Garment) -> Where:
    """Where the limit was read: the Garments row, or the roster's garment where that row is built in."""
    source = garment.blank.source
    heading = "Heat limit" if garment.blank.heat_limit is not None else "Iron dots"
    return garment.row.source.at("Garment") if source.built_in else source.at(heading)


def _press_too_cool(job: Job, garments: tuple[Garment, ...]) -> tuple[Problem, ...]:
    press, unit = job.presses[0], job.settings.temperature_unit
    return tuple(
        problem(
            "press-too-cool",
            press.source.at("Hottest"),
            temperature_text(press.hottest, unit),
            rows=tuple(dict.fromkeys(g.row.source.row for g in garments if name in film_names(g))),
            film=job.film_of[name].name,
            temperature=temperature_text(job.film_of[name].temperature, unit),
            press=press.name,
            hottest=temperature_text(press.hottest, unit),
        )
        for name in dict.fromkeys(name for garment in garments for name in film_names(garment))
        if job.film_of[name].temperature > press.hottest + SAME
    )


def _layers_against_heat(garments: tuple[Garment, ...], films: Mapping[str, Film]) -> tuple[Problem, ...]:
    """A stop for each pair of films whose layers ask for the hotter one over the cooler one."""
    by_layers: dict[tuple[Where, str, str], dict[int, None]] = {}
    for garment in garments:
        for (early, _, below), (late, where, above) in permutations(_pieces(garment, films), 2):
            if early < late and above.temperature > below.temperature + SAME:
                by_layers.setdefault((where, below.name, above.name), {})[garment.row.source.row] = None
    return tuple(
        problem("heat-order", where, later, rows=tuple(rows), earlier=earlier, later=later)
        for (where, earlier, later), rows in by_layers.items()
    )


def _over_pressed(garments: tuple[Garment, ...], films: Mapping[str, Film]) -> Iterator[Problem]:
    """A check for each garment that already carries a film which bears less heat than one still to come."""
    for garment in (garment_ for garment_ in garments if garment_.row.done_so_far):
        pressed = [
            films[name.casefold()]
            for spec in garment.design
            for piece, name in ((spec.border, spec.outline_film), (spec.decal, spec.film))
            if name and piece in garment.row.done_so_far
        ]
        coolest = min(pressed, key=lambda film: film.temperature, default=None)
        hottest = max((film for *_, film in _pieces(garment, films)), key=lambda film: film.temperature, default=None)
        if coolest and hottest and hottest.temperature > coolest.temperature + SAME:
            where = garment.row.source.at("Done so far")
            yield problem(
                "heat-over-pressed",
                where,
                coolest.name,
                rows=(garment.row.source.row,),
                earlier=coolest.name,
                later=hottest.name,
            )


def _pieces(garment: Garment, films: Mapping[str, Film]) -> list[tuple[tuple[int, bool], Where, Film]]:
    """A garment's pieces of film: level (layer; a border piece below its lettering), the cell of the layer, film."""
    return [
        ((spec.layer, not border), spec.source.at("Layer"), films[name.casefold()])
        for spec in garment.to_do
        for border, name in ((True, spec.outline_film), (False, spec.film))
        if name
    ]
