"""The sign-up sheet on paper: one page for twelve people, to hang up or to fill in by pen."""

from collections.abc import Iterator, Mapping

from xlbatch.job.job import Blank, Class
from xlbatch.paper.page import Column, Page
from xlbatch.sign_up.asked import Asked
from xlbatch.sign_up.form import HOUSEHOLD, leads

NAME = "Paper form"
ROWS = 12
ROW = 25.0  # points: room to write by hand


def write_paper_form(page: Page, asked: Asked, price: str, answer_by: str) -> None:
    """Rows to write in, the sizes to choose from above them, and a line to sign below."""
    shown = tuple(column for column, wanted in _columns(asked) if wanted)
    page.lay_columns(shown)
    first, _ = leads(asked, price, answer_by)
    page.title(f"{asked.event}: sign up")
    for lead in (first, *_sizes(asked.sizes())):
        page.line(lead, "body large", "wrapped")
    if len(asked.colors) > 1:
        page.line(f"Colors: {', '.join(asked.colors)}", "lead")
    page.line(f"{HOUSEHOLD}: {'_' * 44}", "body large", least=30)
    page.heading()
    for _ in range(ROWS):
        page.record([None] * len(shown), least=ROW)
    for line in _to_sign(asked):
        page.line(line, "body large", least=30)
    page.sheet.print_area(0, 0, page.row - 1, page.last)


def _columns(asked: Asked) -> Iterator[tuple[Column, bool]]:
    yield Column("Name", 2.2), True
    yield Column("Garment", 1.3), len(asked.garments) > 1
    yield Column("Size", 1.2), True
    yield Column("Color", 1.0), len(asked.colors) > 1
    yield Column("Name to print, exactly", 1.9), asked.prints_name
    yield Column("Number", 0.7), asked.prints_number
    yield Column("How many", 0.6), True
    yield Column("Paid", 0.7), True
    yield Column("How to reach you", 1.6), True


def _sizes(by_class: Mapping[Class, tuple[Blank, ...]]) -> Iterator[str]:
    listed = "; ".join(f"{for_}: {', '.join(blank.size for blank in blanks)}" for for_, blanks in by_class.items())
    yield f"Sizes: {listed}. How to measure: see the sheet of sizes."


def _to_sign(asked: Asked) -> Iterator[str]:
    if asked.for_children:
        yield (
            "A child's name on the outside of a shirt can be read by strangers. "
            f"Our children's names may be printed:  ☐ yes  ☐ no     Parent: {'_' * 16}"
        )
    yield f"Date: {'_' * 14}     Signature: {'_' * 34}"
