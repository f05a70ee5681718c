"""Money: what each garment costs and who owes what, then the same by group."""

from collections.abc import Iterator, Sequence
from decimal import Decimal

import pandas as pd
from xlsxwriter.utility import xl_rowcol_to_cell

from xlbatch.job.job import Settings
from xlbatch.paper.cell import Formula, Value
from xlbatch.paper.page import Column, Page, tabled
from xlbatch.plan import Plan
from xlbatch.roster.payments import BEFORE, EVERYONE, NO_GROUP
from xlbatch.sheets.beside_rows import write_beside
from xlbatch.shopping.lines import MoneyLine
from xlbatch.shopping.prices import account

OWED = "Money_owed"  # the name of the cell with all that is owed, used on the job sheet
ROUNDING = "Rounding and late changes"
FIRST = 3  # the table's first row (from 0): title, one line of advice, headings
SUMS = ("Blank", "Film", "Supplies", "Labor", "Price", "Paid", "Owed")
LOOKS = {"Price": ("money", "change"), "Paid": ("money", "change"), "Owed": ("owed",)}
COLUMNS = (
    Column("Garment no.", 0.75, ("count", "strong")),
    Column("Who", 1.5, ("text", "strong")),
    Column("Group", 1.3),
    *(Column(name, 0.8, LOOKS.get(name, ("money",))) for name in SUMS),
    Column(BEFORE, 0.9, ("money", "quiet"), outside=True),
    Column("Told", 0.6, ("text", "quiet"), outside=True),  # whether the price stands
)


def table(plan: Plan) -> pd.DataFrame:
    """One row a garment; Owed follows Price and Paid."""
    return tabled(COLUMNS, map(_row, plan.money))


def _row(line: MoneyLine) -> tuple[Value, ...]:
    owed = Formula('IF({Price}="","",{Price}-{Paid})', "" if line.owed is None else line.owed)
    in_full = Formula('IF({Price}="","",{Price})', "" if line.price is None else line.price)
    paid = in_full if line.in_roster == "yes" else line.paid
    costs = (line.blank, line.film, line.supplies, line.labor)
    return (line.no, line.who, line.group, *costs, line.price, paid, owed, line.in_roster, "yes" if line.told else None)


def owed_cell(line_no: int) -> str:
    """The cell with what is owed for the garment of the line at this place (from 0)."""
    return f"Money!{xl_rowcol_to_cell(FIRST + line_no, [column.heading for column in COLUMNS].index('Owed'))}"


def owed(plan: Plan) -> Decimal | str:
    """All that is owed; blank where a price is missing."""
    return _total(plan.money, "Owed")


def _total(lines: Sequence[MoneyLine], name: str) -> Decimal | str:
    """The sum under a heading, or "" where an amount is not known: a part is not the whole. Not paid is nothing."""
    amounts = [getattr(line, name.lower()) for line in lines]
    known = [amount for amount in amounts if amount is not None]
    return sum(known, Decimal(0)) if known and (name == "Paid" or len(known) == len(amounts)) else ""


def write(page: Page, plan: Plan) -> None:
    """The money table, and below it a row a group and one for all. An amount not known stays blank, and so do
    the sums it would be part of; what was not paid counts as nothing."""
    frame = table(plan)
    totals = (None, None, None, *(_total(plan.money, name) for name in SUMS), None, None)
    page.lay_columns(COLUMNS, pd.concat([frame, tabled(COLUMNS, [totals])]))
    page.title(
        "Money",
        "Blank, Film, Supplies and Labor are this garment's share of the cost. Owed and the sums follow the "
        "tinted cells; what was paid too much is a credit. Write all that was paid so far for a garment into Paid, "
        "here or on Roster: the next plan has it on both. Once something has come or was pressed, the prices here "
        "stand in the next plan, also for late joiners and redos of the same thing. An amount not known is left blank, "
        f"and so is a sum it belongs to. {_how(plan.job.settings)}",
    )
    page.table(frame, least=17)
    page.gap()
    for group in sorted(dict.fromkeys(line.group for line in plan.money), key=str.casefold):
        own = xl_rowcol_to_cell(page.row, page.at("Group")) if group else '""'
        theirs = f"EXACT({page.below('Group')},{own})"
        lines = [line for line in plan.money if line.group == group]
        page.record(
            (None, None, group or NO_GROUP, *_sums(page, lines, theirs), None, None), "strong", "summed", least=18
        )
    row = page.record((None, EVERYONE, None, *_sums(page, plan.money, "1"), None, None), "strong", "summed", least=18)
    page.name_cell(OWED, row, page.at("Owed"))
    _explained(page, plan, row)
    write_beside(page, "Money", frame, plan.memory.notes)
    page.sheet.print_area(0, 0, page.row - 1, page.last)


def _how(settings: Settings) -> str:
    """How prices are made."""
    if settings.fixed_price is not None:
        return "Every garment has the one price set on the sheet Job."
    return {
        "class": "The same garment, class and design has one price; film, supplies, labor and spares are shared.",
        "job": "All garments have one price.",
        "own cost": "Each garment has its own cost's price: its blank, its film by area, its labor by pieces.",
    }[settings.price_by] + " Change that under Price by on the sheet Job."


def _explained(page: Page, plan: Plan, everyone: int) -> None:
    """What the sum of all prices is made of, in its column, under the row of `everyone`."""
    settings, sums = plan.job.settings, account(plan.money, plan.job.settings)
    if sums is None:
        return
    price = page.at("Price")
    costs = ",".join(xl_rowcol_to_cell(everyone, page.at(name)) for name in ("Blank", "Film", "Supplies", "Labor"))
    cost, margin = (xl_rowcol_to_cell(everyone + down, price) for down in (1, 2))
    if settings.fixed_price is not None:
        of_margin = f"{settings.fixed_price}*COUNT({page.below('Garment no.')})-{cost}"
    else:
        of_margin = f"ROUND({cost}*{settings.margin or 0},2)"
    for label, formula in (
        ("Cost", Formula(f"SUM({costs})", sums.cost)),
        ("Margin", Formula(of_margin, sums.margin)),
        (ROUNDING, Formula(f"{xl_rowcol_to_cell(everyone, price)}-{cost}-{margin}", sums.rounding)),
    ):
        values = [None] * len(COLUMNS)
        row = page.record(values, least=17)
        page.write(row, page.at("Who"), label, "cell", "text", across=2)
        page.write(row, price, formula, "cell", "money")


def _sums(page: Page, lines: Sequence[MoneyLine], theirs: str) -> Iterator[Formula]:
    """The sums over some garments; `theirs` is the formula that is true for these."""
    for name in SUMS:
        cells = page.below(name)
        known = f"({theirs})*ISNUMBER({cells})"
        enough = ">0" if name == "Paid" else f"={len(lines)}"
        yield Formula(f'IF(SUMPRODUCT({known}){enough},SUMPRODUCT({known},{cells}),"")', _total(lines, name))
