"""Roll layout: each run drawn to scale, its decals numbered, its strips marked."""

from xlbatch.film.layout import Run
from xlbatch.paper.cell import unbroken
from xlbatch.paper.page import Column, Page
from xlbatch.paper.widths import PAD
from xlbatch.pictures.run_picture import Part, parts, run_picture
from xlbatch.plan import Plan
from xlbatch.units import printed_text

ROW = 20.0  # points: the rows a picture lies over
MOST_DRAWN = 300  # garments: with more, decals are drawn as boxes alone, so that the workbook stays small
TALLEST = 0.84  # of a page: the rest is for titles and captions
ACROSS = 3  # parts of runs side by side
SCISSORS = " Thin lines: cut the decals apart with scissors once the strip is weeded."
COLUMNS = (Column("", 2.5, ("text", "strong", "caption")),) * ACROSS


def write(page: Page, plan: Plan) -> None:
    """Parts of runs side by side, with a caption above each."""
    page.lay_columns(COLUMNS, base="form")
    page.title(
        "Roll layout",
        "As it lies on the cutter, adhesive side up"
        + (", mirrored" if plan.job.settings.mirror else "")
        + ". On each decal its number and, in brackets, its garment no. Dashed lines: cut straight across to part the "
        "strips before weeding. A strip's number is its batch at the press."
        + (SCISSORS if plan.job.settings.interlock else ""),
    )
    width = page.widths[0] - 2 * PAD
    parts_of_runs = [(run, part) for run in plan.layout.runs for part in parts(run, width, page.paper.height * TALLEST)]
    shapes = len(plan.garments) <= MOST_DRAWN or plan.job.settings.interlock
    gap = plan.job.settings.gap if plan.job.settings.interlock else None
    starts = []
    for first in range(0, len(parts_of_runs), ACROSS):
        beside = parts_of_runs[first : first + ACROSS]
        starts.append(page.row)
        row = page.record([*(_caption(*part, plan) for part in beside), *[None] * ACROSS][:ACROSS], least=24)
        drawn = [run_picture(run, part, width, shapes=shapes, gap=gap) for run, part in beside]
        for column, (picture, _) in enumerate(drawn):
            page.picture(row + 1, column, picture, left=PAD)
        for _ in range(int(max(height for _, height in drawn) // ROW) + 1):
            page.gap(ROW)
        page.gap(10)
    page.break_pages(starts)
    page.sheet.print_area(0, 0, page.row - 1, page.last)


def _caption(run: Run, part: Part, plan: Plan) -> str:
    unit = plan.job.settings.length_unit
    word = "strip" if len(part) == 1 else "strips"
    some = f", {word} {', '.join(str(strip.batch) for strip in part)}" if len(part) < len(run.strips) else ""
    length = unbroken(printed_text(run.length, unit, up=True))
    return f"Run {run.no}{some}: {run.film.name}, {length} long, from {run.cut_from}"
