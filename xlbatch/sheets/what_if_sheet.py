"""What if: the same job planned anew with single changes, and what each saves."""

from collections.abc import Iterator

import pandas as pd

from xlbatch.paper.cell import Value
from xlbatch.paper.page import Column, Page, tabled
from xlbatch.plan import Figures, Plan
from xlbatch.units import printed_length

NAME = "What if"
AS_PLANNED = "As planned"


def columns(unit: str) -> tuple[Column, ...]:
    return (
        Column("Change", 1.9, ("text", "strong")),
        Column("How to set it", 2.9),
        Column("To buy", 0.8, ("money",)),
        Column(f"Film ({unit})", 0.75, ("length",)),
        Column("Minutes", 0.7, ("minutes", "center")),
        Column("Saves", 0.8, ("money", "strong")),
        Column(f"Film saved ({unit})", 0.75, ("length", "strong")),
        Column("Minutes saved", 0.75, ("minutes", "center", "strong")),
    )


def table(plan: Plan) -> pd.DataFrame:
    """The plan as it is, then a row a change; what is saved is less than nothing where it takes more."""
    return tabled(columns(plan.job.settings.length_unit), _rows(plan))


def _rows(plan: Plan) -> Iterator[tuple[Value, ...]]:
    unit = plan.job.settings.length_unit
    own = plan.as_planned
    if own is None:
        return
    yield (AS_PLANNED, "", *_figures(own, unit), None, None, None)
    for change in plan.what_if:
        yield (change.name, change.how, *_figures(change.figures, unit), *_saved(own, change.figures, unit))


def _figures(figures: Figures, unit: str) -> tuple[Value, ...]:
    return figures.money, printed_length(figures.film, unit), figures.minutes


def _saved(own: Figures, other: Figures, unit: str) -> tuple[Value, ...]:
    money = None if own.money is None or other.money is None else own.money - other.money
    return money, printed_length(own.film - other.film, unit), round(own.minutes - other.minutes, 3)


def write(page: Page, plan: Plan) -> None:
    """Only changes that save something; each was planned really, at the same effort."""
    frame = table(plan)
    page.lay_columns(columns(plan.job.settings.length_unit), frame)
    page.title(
        NAME,
        "Each line is this job planned anew with one change, and only changes that save something are listed. To have "
        "it so, set it as it says and drop the workbook again. A figure with a minus costs more. Savings of two "
        "changes do not simply add up.",
    )
    page.table(frame, least=20)
    if not plan.what_if:
        page.line("No single change that was tried saves money, film or minutes.", "strong", least=18)
        page.sheet.print_area(0, 0, page.row - 1, page.last)
