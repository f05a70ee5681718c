"""The rules about colors: film on a garment of nearly its own color, and dye that comes through film."""

from collections.abc import Iterator, Mapping

from xlbatch.check.garment import Garment
from xlbatch.job.job import DecalSpec, Job
from xlbatch.problems import Problem, Where, problem
from xlbatch.trade.contrast import LEAST, contrast, shade
from xlbatch.trade.fibers import fibers_in
from xlbatch.trade.tables import practice

WHITE, BLACK = "#ffffff", "#000000"
DARK = practice("contrast with white from which a cloth counts as dark")


def film_shows_on_garment(job: Job, garments: tuple[Garment, ...]) -> Iterator[Problem]:
    """Film and garment differ by a contrast of 3 to 1 (WCAG 2), once for each film and color."""
    film_on_color: dict[tuple[str, str], tuple[Where, float, dict[int, None]]] = {}
    for garment in garments:
        for spec in garment.to_do:
            film, ratio = _seen_on(spec, garment, job.film_colors)
            if ratio < LEAST and _is_lowest(spec, garment):
                seen = film_on_color.setdefault((film, garment.color), (_color_cell(job, garment), ratio, {}))
                seen[2][garment.row.source.row] = None
    for (film, color), (where, ratio, rows) in film_on_color.items():
        yield problem("contrast-low", where, color, rows=tuple(rows), film=film, ratio=f"{int(ratio * 10) / 10:.1f}")


def dye_stays_in_the_cloth(job: Job, garments: tuple[Garment, ...]) -> Iterator[Problem]:
    """Film on dark cloth whose dye comes through is not lighter than it, once for each garment and color."""
    by_cloth: dict[tuple[str, str], tuple[Where, dict[int, None]]] = {}
    for garment in garments:
        ground = shade(garment.color)
        dyed = any(fiber.dye_comes_through for fiber in fibers_in(garment.blank.fabric))
        if not dyed or ground is None or contrast(ground, WHITE) < DARK:
            continue
        shades = (shade(job.film_colors.get(spec.film.casefold(), "")) for spec in garment.to_do)
        if any(own and contrast(own, BLACK) > contrast(ground, BLACK) for own in shades):
            key = garment.blank.garment, garment.color
            by_cloth.setdefault(key, (_color_cell(job, garment), {}))[1][garment.row.source.row] = None
    for (name, color), (where, rows) in by_cloth.items():
        yield problem("dye-may-show", where, color, rows=tuple(rows), garment=name)


def _seen_on(spec: DecalSpec, garment: Garment, colors: Mapping[str, str]) -> tuple[str, float]:
    """The film a decal shows by on the garment: its own, or its outline where that shows better."""
    ground = shade(garment.color)
    films = [film for film in (spec.film, spec.outline_film) if film]
    shades = {film: shade(colors.get(film.casefold(), "")) for film in films}
    ratios = {film: contrast(ground, own) if ground and own else 21.0 for film, own in shades.items()}
    film = max(ratios, key=lambda name: ratios[name])
    return film, ratios[film]


def _is_lowest(spec: DecalSpec, garment: Garment) -> bool:
    """Whether a decal lies on the cloth itself: what lies on another film is seen against that."""
    return not any(o.position == spec.position and o.layer < spec.layer for o in garment.design)


def _color_cell(job: Job, garment: Garment) -> Where:
    if garment.row.color:
        return garment.row.source.at("Color")
    return job.setting_cells.get("Usual color", Where("Job"))
