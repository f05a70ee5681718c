"""Writes the returned workbooks: a plan, the problems of a list that could not be planned, a blank roster.

Each is written whole to the path given. The same plan gives the same bytes, but for the one cell of the job
sheet that holds the time of the run.
"""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from datetime import datetime
from pathlib import Path

from xlbatch.how_far import counted
from xlbatch.job.job import Job
from xlbatch.kept.memory import NO_MEMORY, Memory
from xlbatch.paper.page import Page
from xlbatch.paper.workbook import Book
from xlbatch.plan import Plan
from xlbatch.problems import Problem
from xlbatch.sheets import blank, fonts_sheet, inputs, job_sheet, kept_sheet, problems_sheet
from xlbatch.sheets.all_sheets import INPUT_SHEETS, INPUTS, JOB_SHEET, SHEETS
from xlbatch.tables.typed_over import WATCHED, marked, placed


def write_plan(path: Path, plan: Plan) -> None:
    """Turns a plan into its workbook."""
    with Book(path, plan.job) as book:
        job_page = book.page(JOB_SHEET, form=True)
        printed: dict[str, int] = {}
        pages = {JOB_SHEET: job_page}
        for sheet in counted([sheet_ for sheet_ in SHEETS if sheet_.needed(plan)]):
            page = book.page(sheet.name, landscape=sheet.landscape, form=sheet.form)
            sheet.write(page, plan)
            printed[sheet.name] = page.printed
            pages[sheet.name] = page
            if sheet.hidden:
                page.sheet.hide()
        job_sheet.write(job_page, plan, printed)
        kept_sheet.write_marks(pages[kept_sheet.NAME], _watched(pages, job_sheet.run_at(plan)))


def _watched(pages: Mapping[str, Page], run_at: str) -> Iterator[tuple[str, ...]]:
    """What stands on the plan's own sheets."""
    for name, page in pages.items():
        if name in WATCHED:
            yield from placed(name, page.placed, page.head + 1, run_at)
            if page.head and page.records:  # people's own columns stand beyond those written
                headings = [column.heading for column in page.columns[: len(page.records[0])]]
                yield from marked(name, headings, page.records)


def write_problems(
    path: Path, job: Job, problems: tuple[Problem, ...], run_at: datetime, memory: Memory = NO_MEMORY
) -> None:
    """Turns a list that could not be planned, or was only checked, into a workbook to put right and drop again."""
    with Book(path, job) as book:
        todo = (
            "Put right the colored cells on the sheets of this workbook, save it and drop it again. "
            f"Checked at {run_at:%Y-%m-%d %H:%M}."
        )
        problems_sheet.write(book.page("Problems", landscape=True), job, problems, INPUTS, todo)
        for sheet in INPUT_SHEETS:
            sheet.write(book.page(sheet.name, landscape=sheet.landscape), job, problems)
        if memory.decals:
            page = book.page(kept_sheet.NAME)
            kept_sheet.write_memory(page, memory)
            page.sheet.hide()


def write_list(path: Path, job: Job) -> None:
    """Turns a job of which only the people are known into a workbook whose Roster waits for their sizes."""
    with Book(path, job) as book:
        inputs.write(blank.BLANK_ROSTER, book.page("Roster", landscape=True), job, ())
        for sheet in INPUT_SHEETS[1:]:
            sheet.write(book.page(sheet.name, landscape=sheet.landscape), job, ())


def write_blank(path: Path, job: Job) -> None:
    """Turns the built-in defaults (a job read from an empty list) into a roster workbook to fill in."""
    nameless = replace(job, settings=replace(job.settings, job_name=""))  # the job is named after its file
    with Book(path, nameless) as book:
        blank.write_start(book.page("Start here", form=True))
        blank.write_roster(book.page("Roster", landscape=True), nameless)
        for sheet in INPUT_SHEETS[1:]:
            sheet.write(book.page(sheet.name, landscape=sheet.landscape), nameless, ())
        fonts_sheet.write_fonts(book.page(fonts_sheet.NAME, landscape=True), nameless.settings, ())
