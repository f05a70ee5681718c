"""Hand-out: who gets what and owes what, group by group, to tick and to sign."""

from collections.abc import Iterable, Iterator, Sequence
from decimal import Decimal

from xlbatch.pages.leaf import ACROSS, Leaf, Span, Value, columns_for
from xlbatch.pages.page_looks import BAND, HAIRLINE, HEAD, KEY, PLAIN, STRONG, THICK, THIN, WORK, Look, Text
from xlbatch.pages.work import Work
from xlbatch.paper.style import BOX
from xlbatch.shopping.lines import MoneyLine

NAME = "Hand-out"
TELLS = "Whoever hands out: one group at a time, tick each garment, take what is owed, have it signed."
NO, GOT = 3, 3
SIGNED = 12  # columns for a signature, in a group's own row
MONEY = "#,##0.00"
RULE = PLAIN.but(bottom=HAIRLINE)


def write(leaf: Leaf, work: Work, high: float) -> None:
    """The garments of this plan in lines of `high` points, group by group in alphabetical order; amounts only where
    some are known."""
    leaf.cushion = 1.25
    lines = [work.money[no] for no in work.garments]
    amount = 0 if all(line.price is None for line in lines) else _amount_columns(lines)
    garment = columns_for((work.garment_text(worn) for worn in work.plan.garments), WORK, most=11)
    size = columns_for((worn.blank.size for worn in work.plan.garments), WORK, least=4)
    who = columns_for((worn.who for worn in work.plan.garments), WORK, bold=True, least=9, most=14)
    on_it = ACROSS - NO - who - garment - size - GOT - 2 * amount
    widths = (NO, who, garment, size, on_it)
    words = zip(widths, ("No.", "Who", "Garment", "Size", "On it"), strict=True)
    leaf.row(
        18,
        *(Span(width, text, HEAD) for width, text in words),
        *(Span(amount, text, HEAD.but(align="right")) for text in ("Paid", "Owed") if amount),
        Span(GOT, "Got", HEAD.but(align="center")),
    )
    leaf.repeat()
    groups = sorted(dict.fromkeys(garment.group for garment in work.plan.garments), key=str.casefold)
    for group in groups:
        _write_group(leaf, work, group, widths, amount, high)
    if len(groups) > 1:
        look = Look(KEY, bold=True, top=THICK)
        everyone = Span(ACROSS - GOT - 2 * amount, f"Everyone: {len(work.garments)}", look)
        leaf.row(20, everyone, *_amounts(lines, amount, STRONG.but(top=THICK)), Span(GOT, None, look))


def _amount_columns(lines: Sequence[MoneyLine]) -> int:
    """The columns of an amount: as many as the largest sum needs."""
    most = summed(line.price for line in lines if line.price is not None) or Decimal(0)
    credits = [str(_owed_text(line.owed)) for line in lines if line.owed is not None and line.owed < 0]
    return columns_for([f"{most:,.2f}", "Owed", "paid", *credits], WORK, bold=True)


def _write_group(leaf: Leaf, work: Work, group: str, widths: Sequence[int], amount: int, high: float) -> None:
    garments = sorted((g for g in work.plan.garments if g.group == group), key=lambda g: (g.who.casefold(), g.no))
    waiting = ", ".join(dict.fromkeys(row.who for row in work.plan.held if row.group == group))
    named = group or ("Without a group" if any(worn.group for worn in work.plan.garments) else "")
    count = f"{len(garments)} garment{'s' * (len(garments) != 1)}{f'; held back: {waiting}' if waiting else ''}"
    title = (Text(f"{named}:  ", KEY, bold=True), Text(count)) if named else count
    lines = [work.money[garment.no] for garment in garments]
    band = Look(bold=True, fill=BAND, top=THIN)
    rest = ACROSS - SIGNED - 7 - GOT - 2 * amount
    leaf.row(
        19,
        Span(rest, title, band.but(bold=False)),
        Span(7, "signed:", band.but(bold=False, align="right")),
        Span(SIGNED, None, band.but(fill="", bottom=THIN)),
        *_amounts(lines, amount, band),
        Span(GOT, None, band),
        joined=True,
    )
    for garment_no, garment in enumerate(garments):
        words = (garment.who, work.garment_text(garment), garment.blank.size, work.what_differs(garment.no))
        texts: tuple[Value, ...] = (garment.no, *words)
        looks = (RULE.but(bold=True), RULE.but(bold=True), RULE, RULE, RULE)
        leaf.row(
            high,
            *map(Span, widths, texts, looks),
            *_amounts([work.money[garment.no]], amount, RULE),
            Span(GOT, BOX, RULE.but(align="center")),
            joined=garment_no + 1 < len(garments),
        )


def _amounts(lines: Sequence[MoneyLine], columns: int, look: Look) -> Iterator[Span]:
    """Paid and owed of some garments together; nothing where an amount is not known."""
    if columns:
        right = look.but(align="right", number=MONEY)
        owed = summed(line.owed for line in lines)
        yield Span(columns, sum((line.paid or Decimal(0) for line in lines), Decimal(0)), right)
        yield Span(columns, _owed_text(owed), right.but(bold=True))


def _owed_text(owed: Decimal | None) -> Value:
    if owed is None or owed > 0:
        return owed
    return f"credit {-owed:,.2f}" if owed else "paid"


def summed(amounts: Iterable[Decimal | None]) -> Decimal | None:
    """The sum, or None where an amount is not known."""
    known = list(amounts)
    return None if None in known else sum((amount for amount in known if amount is not None), Decimal(0))
