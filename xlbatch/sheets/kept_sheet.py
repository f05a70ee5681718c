"""Kept by the program: the plan's memory in plain text cells, on a hidden sheet that stands last."""

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
    sheet = page.sheet
    sheet.write_string(0, 0, MEMORY_TITLE)
    for row, texts in enumerate(to_rows(memory), 1):
        for column, text in enumerate(texts):
            if text:
                sheet.write_string(row, column, printable(text))
