"""Hand-out: who gets what and owes what, group by group, to tick and to sign."""

from collections.abc import Iterable, Sequence
from decimal import Decimal

from xlbatch.pages.leaf import ACROSS, Leaf, Span
from xlbatch.pages.page_looks import BAND, HAIRLINE, HEAD, KEY, PLAIN, STRONG, THICK, THIN, Look
from xlbatch.pages.work import Work
from xlbatch.paper.style import BOX
from xlbatch.shopping.lines import MoneyLine

NAME = "Hand-out"
TELLS = "Whoever hands out: one group at a time, tick each garment, take what is owed, have it signed."
NO, WHO, GARMENT, SIZE, GOT = 3, 12, 12, 7, 3
AMOUNT = 5  # columns of each of price, paid and owed
MONEY = "#,##0.00"
RULE = PLAIN.but(bottom=HAIRLINE)


def write(leaf: Leaf, work: Work) -> None:
    """The garments of this plan, group by group in alphabetical order; amounts only where some are known."""
    priced = any(work.money[no].price is not None for no in work.garments)
    amounts = ("Price", "Paid", "Owed") if priced else ()
    on_it = ACROSS - NO - WHO - GARMENT - SIZE - GOT - AMOUNT * len(amounts)
    words = ((NO, "No."), (WHO, "Who"), (GARMENT, "Garment"), (SIZE, "Size"), (on_it, "On it"))
    leaf.row(
        18,
        *(Span(width, text, HEAD) for width, text in words),
        *(Span(AMOUNT, text, HEAD.but(align="right")) for text in amounts),
        Span(GOT, "Got", HEAD.but(align="center")),
    )
    leaf.repeat()
    groups = sorted(dict.fromkeys(garment.group for garment in work.plan.garments), key=str.casefold)
    for group in groups:
        _write_group(leaf, work, group, on_it, priced=priced)
    if len(groups) > 1:
        _write_sums(leaf, [work.money[no] for no in work.garments], f"Everyone: {len(work.garments)}", priced=priced)


def _write_group(leaf: Leaf, work: Work, group: str, on_it: int, *, priced: bool) -> None:
    garments = sorted((g for g in work.plan.garments if g.group == group), key=lambda g: (g.who.casefold(), g.no))
    waiting = ", ".join(dict.fromkeys(row.who for row in work.plan.held if row.group == group))
    held = f"   (held back: {waiting})" if waiting else ""
    named = group or ("Without a group" if any(each.group for each in work.plan.garments) else "")
    count = f"{len(garments)} garment{'s' * (len(garments) != 1)}"
    leaf.line(f"{named}: {count}{held}".removeprefix(": "), Look(KEY, bold=True, fill=BAND, top=THIN), 18, joined=True)
    for garment in garments:
        line = work.money[garment.no]
        leaf.row(
            16,
            Span(NO, garment.no, RULE.but(bold=True)),
            Span(WHO, garment.who, RULE.but(bold=True)),
            Span(GARMENT, work.garment_text(garment), RULE),
            Span(SIZE, garment.blank.size, RULE),
            Span(on_it, work.on_it(garment.no), RULE),
            *(_amounts([line]) if priced else ()),
            Span(GOT, BOX, RULE.but(align="center")),
            joined=True,
        )
    _write_sums(leaf, [work.money[garment.no] for garment in garments], f"Received {len(garments)}, signed:",
                priced=priced, signed=True)  # fmt: skip


def _amounts(lines: Sequence[MoneyLine], look: Look = RULE) -> Iterable[Span]:
    """Price, paid and owed of some garments together; nothing where an amount is not known."""
    right = look.but(align="right", number=MONEY)
    owed = summed(line.owed for line in lines)
    yield Span(AMOUNT, summed(line.price for line in lines), right)
    yield Span(AMOUNT, sum((line.paid or Decimal(0) for line in lines), Decimal(0)), right)
    yield Span(AMOUNT, "paid" if owed == 0 else owed, right.but(bold=True))


def summed(amounts: Iterable[Decimal | None]) -> Decimal | None:
    """The sum, or None where an amount is not known."""
    known = list(amounts)
    return None if None in known else sum((amount for amount in known if amount is not None), Decimal(0))


def _write_sums(leaf: Leaf, lines: Sequence[MoneyLine], text: str, *, priced: bool, signed: bool = False) -> None:
    look = PLAIN.but(valign="bottom") if signed else Look(KEY, bold=True, top=THICK)
    line = PLAIN.but(bottom=THIN) if signed else look
    rest = ACROSS - 15 - 20 - (3 * AMOUNT if priced else 0) - GOT
    leaf.row(
        20,
        Span(15, text, look),
        Span(20, None, line),
        Span(rest, None, look),
        *(_amounts(lines, STRONG.but(top=THIN)) if priced else ()),
        Span(GOT, None, look),
    )
