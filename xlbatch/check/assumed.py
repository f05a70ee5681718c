"""What was assumed: one note for each default in use."""

from collections.abc import Iterator

from xlbatch.check.garment import Garment
from xlbatch.check.heat import film_names
from xlbatch.job.job import Job
from xlbatch.problems import Problem, Where, problem


def assumptions(job: Job, garments: tuple[Garment, ...]) -> Iterator[Problem]:
    """The defaults this job uses, each once."""
    rows = tuple(garment.row for garment in garments)
    usual = (
        ("Usual garment", "Garment", job.settings.usual_garment, any(not row.garment for row in rows)),
        ("Usual color", "Color", job.settings.usual_color, any(not row.color for row in rows)),
        ("Usual design", "Design", job.settings.usual_design, any(not row.design for row in rows)),
        ("Font", "The font", job.settings.font, any(not s.font for g in garments for s in g.to_do)),
    )
    for setting, what, used, in_use in usual:
        if in_use and setting not in job.setting_cells:
            yield problem("assumed", Where("Job"), "", what=what, used=used, sheet="Job")
    yield from _built_in(job, garments)
    for name in dict.fromkeys(g.blank.garment for g in garments if g.blank.dots is None and g.blank.heat_limit is None):
        yield problem("label-not-checked", Where("Garments"), "not checked", garment=name)


def _built_in(job: Job, garments: tuple[Garment, ...]) -> Iterator[Problem]:
    """Rows of the built-in tables that stand in for the person's own."""
    used_films = {name for garment in garments for name in film_names(garment)}
    tables = (
        ("Designs", "The design", (g.design[0].design for g in garments if g.design[0].source.row == 0)),
        ("Garments", "The flat measures", (g.blank.garment for g in garments if g.blank.source.row == 0)),
        (
            "Film",
            "The press settings",
            (f.name for f in job.films if f.source.row == 0 and f.name.casefold() in used_films),
        ),
        ("Press", "The press", (press.name for press in job.presses[:1] if press.source.row == 0)),
    )
    for sheet, what, names in tables:
        listed = ", ".join(dict.fromkeys(names))
        if listed:
            yield problem("assumed", Where(sheet), "", what=what, used=f"the usual values of {listed}", sheet=sheet)
