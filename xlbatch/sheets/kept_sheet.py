"""Kept by the program: the plan's memory in plain text cells, on a hidden sheet that stands last."""

from collections.abc import Iterable

from xlbatch.kept.memory import Memory
from xlbatch.kept.written import to_rows
from xlbatch.paper.cell import printable
from xlbatch.paper.page import Page
from xlbatch.plan import Plan
from xlbatch.tables.input_tables import MEMORY_TITLE

NAME = "Kept by the program"


def write(page: Page, plan: Plan) -> None:
    """The plan's memory."""
    write_memory(page, plan.memory)


def write_memory(page: Page, memory: Memory) -> None:
    """A memory, below the line that says what it is."""
    page.sheet.write_string(0, 0, MEMORY_TITLE)
    _write(page, 1, to_rows(memory))


def write_marks(page: Page, rows: Iterable[tuple[str, ...]]) -> None:
    """Below the memory: what stands on the plan's own sheets, in a few letters a cell."""
    _write(page, page.sheet.dim_rowmax + 1, rows)


def _write(page: Page, first: int, rows: Iterable[tuple[str, ...]]) -> None:
    for row, texts in enumerate(rows, first):
        for column, text in enumerate(texts):
            if text:
                page.sheet.write_string(row, column, printable(text))
