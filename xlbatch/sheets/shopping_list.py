"""Shopping list: what to buy, with live sums."""

from decimal import Decimal

import pandas as pd

from xlbatch.paper.cell import Formula
from xlbatch.paper.page import Column, Page, tabled
from xlbatch.paper.style import BOX
from xlbatch.plan import Plan
from xlbatch.shopping.lines import BuyLine

TOTAL = "Shopping_total"  # the name of the cell with the sum, used on the job sheet
COLUMNS = (
    Column("Kind", 0.55),
    Column("Item", 2.6, ("text", "strong")),
    Column("Garment", 0.6, whole=True),
    Column("Size", 0.6, whole=True),
    Column("Color", 0.8),
    Column("Needed", 0.7, ("count",)),
    Column("Spares", 0.68, ("count", "change")),
    Column("On hand", 0.68, ("count", "change")),
    Column("Buy", 0.55, ("count", "strong")),
    Column("Price", 0.8, ("money", "change")),
    Column("Cost", 0.9, ("money",)),
    Column("Ordered", 0.75, ("box",)),
    Column("Arrived", 0.72, ("box",)),
)


def table(plan: Plan) -> pd.DataFrame:
    """One row a line to buy; Buy and Cost follow the cells a person may change."""
    return tabled(COLUMNS, map(_row, plan.shopping))


def _row(line: BuyLine) -> tuple[str | int | Decimal | Formula | None, ...]:
    return (
        line.kind,
        line.item,
        line.garment,
        line.size,
        line.color,
        line.needed,
        line.spares,
        line.on_hand,
        Formula("MAX(0,{Needed}+{Spares}-{On hand})", line.buy),
        line.price,
        Formula('IF({Price}="","",{Buy}*{Price})', "" if line.cost is None else line.cost),
        BOX,
        BOX,
    )


def total(plan: Plan) -> Decimal | str:
    """What everything with a price comes to; blank where nothing has one."""
    costs = [line.cost for line in plan.shopping if line.cost is not None]
    return sum(costs, Decimal(0)) if costs else ""


def unpriced(plan: Plan) -> int:
    """How many lines to buy have no price."""
    return sum(line.price is None and line.buy > 0 for line in plan.shopping)


def write(page: Page, plan: Plan) -> None:
    """The shopping list; its sum stands in the line above it."""
    frame = table(plan)
    page.lay_columns(COLUMNS, frame)
    page.title(
        "Shopping list",
        "The tinted cells (Spares, On hand, Price) may be changed, for this list alone: Buy, Cost and the sum follow. "
        "Write yes or how many came into Arrived: the next plan then counts the blanks as on hand, less those pressed. "
        f"Film it does not count: measure what is left and write it into On hand on the sheet Film. {_spares(plan)}",
    )
    row = page.gap(16)
    page.table(frame)
    page.write(row, 0, "All lines that have a price", "sum")
    cells = page.below("Cost")
    page.write(row, page.at("Cost"), Formula(f'IF(COUNT({cells})=0,"",SUM({cells}))', total(plan)), "sum", "money")
    page.name_cell(TOTAL, row, page.at("Cost"))


def _spares(plan: Plan) -> str:
    """What the spares are for, so that a person can choose fewer."""
    settings, count = plan.job.settings, sum(line.spares for line in plan.shopping if line.kind == "blank")
    return (
        f"With the {count} spare blanks {settings.sureness:g} jobs in 100 finish without a second order, where "
        f"{settings.spoiled_per_100:g} pieces in 100 are spoiled."
    )
