"""Problems: what was found in the workbook, worst first, each with a link to its cell."""

from collections.abc import Iterable, Mapping

import pandas as pd

from xlbatch.job.job import Job
from xlbatch.kept.memory import KeptAnswer, KeptNote
from xlbatch.paper.cell import Link, unbroken
from xlbatch.paper.page import Column, Page, tabled
from xlbatch.problems import Problem, Where
from xlbatch.sheets import job_input as job_sheet
from xlbatch.sheets.beside_rows import write_beside
from xlbatch.sheets.inputs import Input, spots

COLUMNS = (
    Column("Level", 0.65, ("text", "strong", "top")),
    Column("Sheet", 0.95, ("text", "top")),
    Column("Cell", 0.6, ("text", "top")),
    Column("Who", 1.1, ("text", "top")),
    Column("Found", 1.3, ("text", "top")),
    Column("What is wrong", 2.4, ("text", "top")),
    Column("What to do", 2.4, ("text", "top")),
    Column("Suggestion", 1.1, ("text", "top")),
    Column("Answer", 0.9, ("text", "top")),
    Column("Code", 1.2, ("text", "small", "top"), outside=True),
    Column("Garment no.", 0.9, ("text", "top"), outside=True),
)
LEVELS = ("stop", "check", "note")

Places = Mapping[Where, Link]


def places(job: Job, inputs: Iterable[Input]) -> Places:
    """The link from each cell of the input to the same cell of the returned workbook."""
    links: dict[Where, Link] = {}
    sheets = [(sheet.name, spots(sheet, job)) for sheet in inputs]
    for name, cells in [*sheets, (job_sheet.NAME, job_sheet.spots(job))]:
        for where, (first, *_) in cells.items():
            links.setdefault(where, Link(where.cell, name, *first))
    return links


def table(problems: Iterable[Problem], links: Places, job: Job, answers: Iterable[KeptAnswer] = ()) -> pd.DataFrame:
    """One row a problem, stops first."""
    answer_of = {(answer.code, answer.garment, answer.found): answer.answer for answer in answers}
    garments = {row.source.row: str(row.no) for row in reversed(job.roster)}
    ordered = sorted(problems, key=lambda problem_: LEVELS.index(problem_.level))
    rows = (
        (
            problem_.level,
            problem_.where.sheet,
            links.get(problem_.where, problem_.where.cell),
            problem_.who,
            problem_.found,
            unbroken(problem_.wrong),
            unbroken(problem_.todo),
            problem_.suggestion,
            answer_of.get((problem_.code, garment, problem_.found)),
            problem_.code,
            garment or None,
        )
        for problem_ in ordered
        for garment in [garments.get(problem_.rows[0], "") if len(problem_.rows) == 1 else ""]
    )
    return tabled(COLUMNS, rows)


def write(
    page: Page,
    job: Job,
    problems: tuple[Problem, ...],
    inputs: Iterable[Input],
    *leads: str,
    answers: Iterable[KeptAnswer] = (),
    notes: Iterable[KeptNote] = (),
) -> None:
    """The list of problems; `leads` are further lines above it."""
    frame = table(problems, places(job, inputs), job, answers)
    page.lay_columns(COLUMNS, frame)
    counts = [sum(problem_.level == level for problem_ in problems) for level in LEVELS]
    page.title(
        "Problems",
        f"{counts[0]} stop (the row is held back), {counts[1]} check (planned all the same; have a look), "
        f"{counts[2]} note. Sheet and Cell are those of the list you dropped; the link leads to the cell here. "
        "Write ok into Answer, and a check or note is not asked again until its cell changes; a stop must be put "
        "right in its cell.",
        *leads,
    )
    page.heading()
    for values in frame.itertuples(index=False, name=None):
        page.record(values, also={"Level": values[0]} | ({"Cell": "link"} if isinstance(values[2], Link) else {}))
    page.end_table()
    write_beside(page, "Problems", frame, notes)
