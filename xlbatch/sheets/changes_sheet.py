"""Changes: what was changed since the plan before, and before that, newest first, and what follows from it."""

from xlbatch.paper.page import Column, Page, tabled
from xlbatch.plan import Plan

NAME = "Changes"
COLUMNS = (
    Column("Plan", 0.4, ("count", "top")),
    Column("Sheet", 0.8, ("text", "top")),
    Column("Cell", 0.5, ("text", "top")),
    Column("Whose", 1.5, ("text", "strong", "top")),
    Column("What", 0.9, ("text", "top")),
    Column("Before", 1.6, ("text", "top")),
    Column("Now", 1.6, ("text", "top")),
    Column("What follows", 2.3, ("text", "top")),
)


def write(page: Page, plan: Plan) -> None:
    """The changes the plan knows of."""
    frame = tabled(
        COLUMNS, ((c.plan, c.sheet, c.cell, c.who, c.what, c.before, c.now, c.follows) for c in plan.memory.changes)
    )
    page.lay_columns(COLUMNS, frame)
    page.title(
        NAME,
        "Newest first. Plan: the plan a change came in; Cell: where it stood in the workbook that was dropped. "
        "What follows is counted in that plan.",
    )
    page.table(frame)


def needed(plan: Plan) -> bool:
    """Whether there is anything to tell; a first plan has no such sheet."""
    return bool(plan.memory.changes)
