"""Shopping list: what to buy, with live sums."""

from decimal import Decimal

import pandas as pd

from xlbatch.job.job import Settings
from xlbatch.paper.cell import Formula
from xlbatch.paper.page import Column, Page, tabled
from xlbatch.paper.style import BOX, currency_sign
from xlbatch.plan import Plan
from xlbatch.sheets.beside_rows import write_beside
from xlbatch.shopping.arrivals import first_pieces
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
    Column("On the way", 0.5, ("count",)),
    Column("Buy", 0.55, ("count", "strong")),
    Column("Price", 0.8, ("money", "change")),
    Column("Cost", 0.9, ("money",)),
    Column("Ordered", 0.75, ("box",)),
    Column("Arrived", 0.72, ("box",)),
    Column("Note", 1.6, outside=True),
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
        line.on_the_way,
        Formula("MAX(0,{Needed}+{Spares}-{On hand}-{On the way})", line.buy),
        line.price,
        Formula('IF({Price}="","",ROUND({Buy}*{Price},2))', "" if line.cost is None else line.cost),
        BOX,
        BOX,
        line.note or None,
    )


def total(plan: Plan) -> Decimal | str:
    """What everything with a price comes to; blank where nothing has one."""
    costs = [line.cost for line in plan.shopping if line.cost is not None]
    return sum(costs, Decimal(0)) if costs else ""


def blanks_to_buy(plan: Plan) -> int:
    """How many blanks to buy, spares included."""
    return sum(line.buy for line in plan.shopping if line.kind == "blank")


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
        "Write yes or how many into Ordered and Arrived: the next plan has them On the way or On hand, less the blanks "
        "pressed and the film cut; -2 takes two back. Measure film all the same, and write what is left into On hand "
        "on the sheet Film.",
        *filter(None, [_spares(plan), _on_arrival(plan)]),
    )
    row = page.gap(16)
    page.table(frame)
    write_beside(page, "Shopping list", frame, plan.memory.notes)
    page.write(row, 0, "All lines that have a price", "sum")
    blanks, buy = page.below("Kind"), page.below("Buy")
    page.write(row, page.at("On hand"), "Blanks", "sum", "right")
    page.write(row, page.at("Buy"), Formula(f'SUMIF({blanks},"blank",{buy})', blanks_to_buy(plan)), "sum", "count")
    cells = page.below("Cost")
    page.write(row, page.at("Cost"), Formula(f'IF(COUNT({cells})=0,"",SUM({cells}))', total(plan)), "sum", "money")
    page.name_cell(TOTAL, row, page.at("Cost"))


def _spares(plan: Plan) -> str:
    """How many spares to choose among: what each choice costs, and how sure it makes the job."""
    settings = plan.job.settings
    if not plan.spare_choices:
        return ""
    spoiled = f"Spare blanks, where {settings.spoiled_blanks_per_100:g} in 100 garments are spoiled"
    second = f"a second order costs {currency_sign(settings)}{settings.second_order_costs:,.2f}"
    choices = "; ".join(
        f"{choice.name} {choice.count}{_signed(choice.cost, settings)}, {choice.sure * 100:.0f} jobs in 100 without one"
        for choice in plan.spare_choices
    )
    return f"{spoiled} and {second}: {choices}."


def _on_arrival(plan: Plan) -> str:
    """What to look at before anything is cut."""
    pieces = first_pieces(plan.garments)
    if not pieces:
        return ""
    dots = ", ".join(f"{piece.garment} {'not known' if piece.dots is None else piece.dots}" for piece in pieces)
    return (
        f"When they arrive, look at the first of each: size label, color, dots on the care label ({dots}), chest from "
        "armpit to armpit. What is not as on the sheet Garments, write there, and drop the plan again before cutting. "
        "Into Arrived goes how many are good."
    )


def _signed(cost: Decimal | None, settings: Settings) -> str:
    """What spares add to the cost; where they reach a lower price, what they save."""
    if not cost:
        return ""
    amount = f"{currency_sign(settings)}{abs(cost):,.2f}"
    return f", {amount} less by the price for so many" if cost < 0 else f", {amount} more"
