"""What was assumed: one note that names every default in use and where it stands."""

from collections.abc import Iterator

from xlbatch.check.garment import Garment
from xlbatch.check.heat import film_names
from xlbatch.job.job import Job
from xlbatch.problems import Problem, Where, problem
from xlbatch.problems.phrases import phrase


def assumptions(job: Job, garments: tuple[Garment, ...]) -> Iterator[Problem]:
    """One note of the defaults this job uses, and one of the care labels that were not checked."""
    used = tuple(_usual(job, garments)) + tuple(_built_in(garments, job))
    if used:
        sheets = dict.fromkeys(sheet for _, sheet in used)
        listed = ", ".join(sheets)
        yield problem(
            "assumed",
            Where(used[0][1]),
            "",
            what=phrase("left open"),
            used="; ".join(what for what, _ in used),
            sheet=listed,
        )
    unread = dict.fromkeys(g.blank.garment for g in garments if g.blank.dots is None and g.blank.heat_limit is None)
    if unread:
        yield problem("label-not-checked", Where("Garments"), "not checked", garment=", ".join(unread))


def _usual(job: Job, garments: tuple[Garment, ...]) -> Iterator[tuple[str, str]]:
    """Each usual setting that stands in for a blank, in words, and the sheet it stands on."""
    rows = tuple(garment.row for garment in garments)
    usual = (
        ("Usual garment", "garment", job.settings.usual_garment, any(not row.garment for row in rows)),
        ("Usual color", "color", job.settings.usual_color, any(not row.color for row in rows)),
        ("Usual design", "design", job.settings.usual_design, any(not row.design for row in rows)),
        ("Font", "font", job.settings.font, any(not s.font for g in garments for s in g.to_do)),
    )
    for setting, what, used, in_use in usual:
        if in_use and setting not in job.setting_cells:
            yield f"{what} {used}", "Job"


def _built_in(garments: tuple[Garment, ...], job: Job) -> Iterator[tuple[str, str]]:
    """Rows of the built-in tables that stand in for the person's own, in words, and the sheet they stand on."""
    used_films = {name for garment in garments for name in film_names(garment)}
    tables = (
        ("Designs", "design", (g.design[0].design for g in garments if g.design[0].source.built_in)),
        ("Garments", "measures", (g.blank.garment for g in garments if g.blank.source.built_in)),
        (
            "Film",
            "press settings",
            (f.name for f in job.films if f.source.built_in and f.name.casefold() in used_films),
        ),
        ("Press", "press", (press.name for press in job.presses[:1] if press.source.built_in)),
    )
    for sheet, what, names in tables:
        listed = ", ".join(dict.fromkeys(names))
        if listed:
            yield f"{what} of {listed}", sheet
