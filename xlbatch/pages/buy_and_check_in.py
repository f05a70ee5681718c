"""Buy and check in: what to order, with totals, and how many arrived good."""

from collections.abc import Sequence
from decimal import Decimal

from xlbatch.pages.leaf import ACROSS, Leaf, Span
from xlbatch.pages.page_looks import (
    BAND,
    FINE,
    HAIRLINE,
    HEAD,
    KEY,
    PLAIN,
    SMALL,
    STRONG,
    THICK,
    THIN,
    TICK,
    WORK,
    Look,
)
from xlbatch.pages.work import Work
from xlbatch.paper.style import BOX, currency_sign
from xlbatch.shopping.arrivals import first_pieces
from xlbatch.shopping.lines import BuyLine

NAME = "Buy and check in"
TELLS = "Buyer: order the number under Buy. Whoever unpacks: write how many good ones arrived."
KINDS = {"blank": "Garments", "film": "Film", "supply": "Supplies"}
HEADS = ("Item", "Size", "Color", "Needed", "Spare", "Have", "Buy", "Cost", "Ordered", "Arrived, good")
WIDTHS = (13, 7, 7, 5, 4, 4, 4, 6, 5, 5)
WORDS = sum(WIDTHS[:3])  # columns of item, size and color
MANY = 3  # lines of a garment, on average, that are worth a title
ROOMY = 20.0  # points of a line: what to buy is then in larger numbers
RULE = PLAIN.but(bottom=HAIRLINE)
NUMBER = RULE.but(align="center")
SUM = STRONG.but(bottom=THIN, align="center")


def write(leaf: Leaf, work: Work, high: float) -> None:
    """The shopping list by kind, each kind with its totals; lines of `high` points."""
    leaf.cushion = 1.5
    aligned = [HEAD.but(size=FINE, align="left" if column < 3 else "center") for column in range(len(HEADS))]
    leaf.row(18, *map(Span, WIDTHS, HEADS, aligned))
    leaf.repeat()
    for kind, title in KINDS.items():
        if lines := [line for line in work.plan.shopping if line.kind == kind]:
            _write_kind(leaf, lines, title, high)
    leaf.end_part()
    _write_sum(leaf, work)
    leaf.line("Look at each garment for holes, stains and the right size before you count it. Type what arrived good "
              "into the plan’s Shopping list. Look at the first of each garment before anything is cut; what is not "
              "so, write on the plan’s sheet Garments and drop the plan again:", joined=True)  # fmt: skip
    for piece in first_pieces(work.plan.garments):
        leaf.line(f"{BOX} {piece.text(work.plan.job.settings.length_unit)}", joined=True)
    leaf.row(24, joined=True)
    signed = SMALL.but(top=THIN, valign="top")
    leaf.row(14, Span(18, "Ordered by, date", signed), Span(2), Span(18, "Order number", signed), Span(2),
             Span(19, "Checked in by, date", signed))  # fmt: skip


def _write_kind(leaf: Leaf, lines: Sequence[BuyLine], title: str, high: float) -> None:
    """A kind with its total; garments under their name and color where they are several of many sizes."""
    by_ware: dict[tuple[str, str], list[BuyLine]] = {}
    for line in lines:
        by_ware.setdefault((line.garment, line.color), []).append(line)
    several = lines[0].garment and len(lines) >= MANY * len(by_ware)
    wares = list(by_ware.values()) if several else [list(lines)]
    written = 0
    for them in wares:
        ware = f"{title}: {them[0].garment}, {them[0].color}" if len(wares) > 1 else title
        leaf.row(18, Span(ACROSS, ware, Look(bold=True, fill=BAND)), joined=True, begins=True)
        for line in them:
            written += 1
            last = written + 1 >= len(lines) > 1  # with the total
            leaf.row(high, *_cells(line, KEY if high >= ROOMY else WORK), joined=last)
    counted = title != KINDS["supply"]
    if len(lines) > 1 and (counted or total(lines) is not None):
        leaf.row(
            high,
            Span(WORDS, f"{title}: total", STRONG.but(bottom=THIN)),
            *(Span(width, sum(getattr(line, name) for line in lines) if counted else None, SUM)
              for width, name in zip(WIDTHS[3:7], ("needed", "spares", "on_hand", "buy"), strict=True)),
            Span(WIDTHS[7], total(lines), SUM.but(align="right", number="#,##0.00")),
            Span(WIDTHS[8] + WIDTHS[9], None, SUM),
        )  # fmt: skip


def _cells(line: BuyLine, size: float) -> tuple[Span, ...]:
    garment = line.kind == "blank"
    words = (
        (Span(WIDTHS[0], line.garment, RULE), Span(WIDTHS[1], line.size, RULE.but(bold=True)))
        if garment
        else (Span(WIDTHS[0] + WIDTHS[1], line.item, RULE),)
    )
    counts = (line.needed, line.spares or "–", line.on_hand or "–")
    cost = "ask" if line.price is None and line.buy else (line.cost or 0)
    return (
        *words,
        Span(WIDTHS[2], line.color, RULE),
        *(Span(width, count, NUMBER) for width, count in zip(WIDTHS[3:6], counts, strict=True)),
        Span(WIDTHS[6], line.buy, NUMBER.but(bold=True, size=size, left=THIN, right=THIN)),
        Span(WIDTHS[7], cost, RULE.but(align="right", number="#,##0.00")),
        Span(WIDTHS[8], BOX if line.buy else None, TICK.but(size=size, bottom=HAIRLINE)),
        Span(WIDTHS[9], None, PLAIN.but(left=THIN, right=THIN, bottom=THIN)),
    )


def total(lines: Sequence[BuyLine]) -> Decimal | None:
    """What the lines with a price cost; None where none has one."""
    costs = [line.cost for line in lines if line.cost is not None]
    return sum(costs, Decimal(0)) if costs else None


def _write_sum(leaf: Leaf, work: Work) -> None:
    cost = total(work.plan.shopping)
    missing = any(line.price is None and line.buy for line in work.plan.shopping)
    text = "All together" if not missing else "No prices given" if cost is None else "All that has a price"
    sign = currency_sign(work.plan.job.settings)
    amount = "" if cost is None else f"{sign}{cost:,.2f}"
    top = Look(KEY, bold=True, top=THICK)
    leaf.row(24, Span(38, text, top), Span(12, amount, top.but(align="right")), Span(10, None, top), joined=True)
