"""Writes sign-up workbooks: the form, its size chart, the same on paper, and the hidden choices."""

from collections.abc import Iterable
from dataclasses import replace
from functools import partial
from pathlib import Path

from xlbatch.file_names import names_apart
from xlbatch.files.raw import UnreadableFile
from xlbatch.job.job import Job, RosterRow
from xlbatch.paper.style import currency_sign
from xlbatch.paper.workbook import Book
from xlbatch.roster.read import blank_job, read
from xlbatch.saving import CannotSave, is_returned, save_new
from xlbatch.sheets.write import write_list
from xlbatch.sign_up.asked import asked
from xlbatch.sign_up.form import LISTS, NAME, write_choices, write_form
from xlbatch.sign_up.paper_form import NAME as PAPER
from xlbatch.sign_up.paper_form import write_paper_form
from xlbatch.sign_up.sample_shirt import sample_shirt
from xlbatch.sign_up.size_chart import HEIGHT, SAMPLE, write_size_chart
from xlbatch.sign_up.size_chart import NAME as SIZES


def write_sign_ups(path: Path, source: Path | None, *, metric: bool = False) -> tuple[Path, ...]:
    """A sign-up workbook at `path`, from a list or plan where one is given: then with its people, a workbook a group.

    A plan is last time's: its people are asked for a job named after `path`, whose list, with the film and blanks left
    over, is written too. Raises CannotSave."""
    reading = read(source) if source else None
    if isinstance(reading, UnreadableFile):
        raise CannotSave(reading.sentence)
    job = reading.job if reading else blank_job(path, metric=metric)
    again = source is not None and is_returned(source)
    if again:
        job = _next_time(job, path.stem)
    written = []
    groups = _groups(job.roster) or [("", ())]
    names = names_apart((group for group, _ in groups), NAME)
    for group, people in groups:
        to = path.with_name(f"{path.stem} - {names[group]}{path.suffix}") if group else path
        save_new(to, partial(write_sign_up, job=job, household=group, people=people))
        written.append(to)
    if again:
        written.append(path.with_name(f"{path.stem} - list{path.suffix}"))
        save_new(written[-1], partial(write_list, job=_without_sizes(job)))
    return tuple(written)


def _next_time(job: Job, event: str) -> Job:
    """The job of the next time: its people and what is left of last time's film and blanks, nothing done or paid."""
    people = tuple(
        replace(row, no=0, number="", paid=None, status="", done_so_far=(), note="", confirmed=False)
        for row in job.roster
        if row.who and row.status != "cancelled"
    )
    settings = replace(job.settings, job_name=event, needed_by="", answer_by="", order_by="", last_no=0)
    return replace(job, settings=settings, roster=people)


def _without_sizes(job: Job) -> Job:
    return replace(job, roster=tuple(replace(row, size="") for row in job.roster))


def write_sign_up(path: Path, job: Job, household: str = "", people: Iterable[RosterRow] = ()) -> None:
    """One workbook that asks people for their sizes; last year's people stand in it already. Raises OSError."""
    what = asked(job)
    price = f"{currency_sign(job.settings)}{what.price:.2f}" if what.price is not None else ""
    with Book(path, job) as book:
        write_form(book.page(NAME, landscape=True), what, price, job.settings.answer_by, household, tuple(people))
        write_size_chart(book.page(SIZES), what, sample_shirt(job, what, SAMPLE, HEIGHT))
        write_paper_form(book.page(PAPER, landscape=True), what, price, job.settings.answer_by)
        write_choices(book.page(LISTS), what)


def _groups(roster: Iterable[RosterRow]) -> list[tuple[str, tuple[RosterRow, ...]]]:
    """The people of each group, those without one last."""
    groups: dict[str, list[RosterRow]] = {}
    for row in roster:
        if row.who and row.status != "cancelled":
            groups.setdefault(row.group, []).append(row)
    return sorted(((group, tuple(rows)) for group, rows in groups.items()), key=lambda pair: (not pair[0], pair[0]))
