"""Writes a sign-up workbook: the form, its size chart, the same on paper, and the hidden choices."""

from pathlib import Path

from xlbatch.job.job import Job
from xlbatch.paper.style import currency_sign
from xlbatch.paper.workbook import Book
from xlbatch.sign_up.asked import asked
from xlbatch.sign_up.form import LISTS, NAME, write_choices, write_form
from xlbatch.sign_up.paper_form import NAME as PAPER
from xlbatch.sign_up.paper_form import write_paper_form
from xlbatch.sign_up.size_chart import NAME as SIZES
from xlbatch.sign_up.size_chart import write_size_chart


def write_sign_up(path: Path, job: Job) -> None:
    """Turns a job into the workbook that asks people for their sizes. Raises OSError."""
    what = asked(job)
    price = f"{currency_sign(job.settings)}{what.price:.2f}" if what.price is not None else ""
    with Book(path, job) as book:
        write_form(book.page(NAME, landscape=True), what, price, "")
        write_size_chart(book.page(SIZES), what)
        write_paper_form(book.page(PAPER, landscape=True), what, price, "")
        write_choices(book.page(LISTS), what)
