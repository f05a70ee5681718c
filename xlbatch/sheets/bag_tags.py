"""Bag tags: one tag a garment, to be cut apart, sorted by group and then by who."""

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence

from xlbatch.paper.cell import Formula, Value
from xlbatch.paper.measure import text_height
from xlbatch.paper.page import Column, Page
from xlbatch.paper.style import INDENT, currency_sign
from xlbatch.paper.widths import PAD
from xlbatch.placement.group import Group, groups
from xlbatch.plan import Plan
from xlbatch.sheets import money
from xlbatch.sheets.proof import decals_of, texts
from xlbatch.trade.tables import table

ACROSS = 3  # tags side by side, two cells wide each
COLUMNS = (Column("", 1.55), Column("", 0.95)) * ACROSS
SIGNATURE = "Received: ____________________"

Tag = Sequence[tuple[Value, Value]]  # rows of two cells; the first takes both where the second is None
# the looks of the first and of the second cell, and the least height in points
ROWS: Sequence[tuple[tuple[str, ...], tuple[str, ...], float]] = (
    (("body large", "strong"), ("garment no",), 20),
    (("text",), ("right",), 13),
    (("text",), ("right", "strong"), 13),
    (("strong", "top"), ("small", "strong", "right", "top"), 13),
    (("small", "top"), (), 13),
    (("tiny", "quiet", "top"), (), 28),
    (("small",), (), 19),
)


def tags(plan: Plan) -> Iterator[Tag]:
    """The tags in order: who, group, garment, what is on it, `2 of 5` within the group, care, a line to sign."""
    care = " ".join(line["Line"] for line in table("wash_card"))
    decals, owed = decals_of(plan), _to_pay(plan)
    ordered = sorted(plan.garments, key=lambda worn: (worn.group.casefold(), worn.who.casefold(), worn.no))
    size, seen = Counter(worn.group for worn in ordered), Counter[str]()
    for garment in ordered:
        seen[garment.group] += 1
        yield (
            (garment.who, garment.no),
            (garment.group, f"{seen[garment.group]} of {size[garment.group]}"),
            (f"{garment.blank.garment}, {garment.color}", garment.blank.size),
            (" · ".join(texts(decals[garment.no])), owed.get(garment.no)),
            (" · ".join(_piece(group) for group in groups(decals[garment.no])), None),
            (care, None),
            (SIGNATURE, None),
        )


def _to_pay(plan: Plan) -> Mapping[int, Value]:
    """What is still owed by garment number, following the Money sheet; none where it is not known or not wanted."""
    if not plan.job.settings.money_on_tags:
        return {}
    sign = currency_sign(plan.job.settings)
    texts = {}
    for line_no, line in enumerate(plan.money):
        if line.owed is not None:
            owed = money.owed_cell(line_no)
            says = f"to pay {sign}{line.owed:,.2f}" if line.owed > 0 else ""
            texts[line.no] = Formula(f'IF(N({owed})>0,"to pay {sign}"&FIXED({owed},2),"")', says)
    return texts


def _piece(group: Group) -> str:
    """`Bird, full front`, or just `Back name` where that says it."""
    names = " + ".join(dict.fromkeys(spec.decal for decal in group.decals for spec in decal.specs))
    where = group.decals[0].spec.position
    return names if where.casefold() == names.casefold() else f"{names}, {where}"


def write(page: Page, plan: Plan) -> None:
    """Tags three across, none split between pages."""
    page.lay_columns(COLUMNS, base="form")
    page.line("Bag tags: cut apart along the dashed lines. One tag goes into the bag with each garment.", "lead")
    bag_tags = list(tags(plan))
    starts = []
    for first in range(0, len(bag_tags), ACROSS):
        starts.append(page.row)
        _write_row(page, bag_tags[first : first + ACROSS])
    page.break_pages(starts)
    page.sheet.print_area(0, 0, page.row - 1, page.last)


def _write_row(page: Page, beside: Sequence[Tag]) -> None:
    """Tags side by side, line by line."""
    for line, (first, second, least) in enumerate(ROWS):
        edges = ("cut above",) * (line == 0) + ("cut below",) * (line == len(ROWS) - 1)
        heights = [_height(page, tag[line], first) for tag in beside]
        row = page.gap(max(least, *heights))
        for side, tag in enumerate(beside):
            left, two = tag[line]
            column = side * 2
            if two is None:
                page.write(row, column, left, "form", *first, "cut both sides", *edges, across=2)
            else:
                page.write(row, column, left, "form", *first, "cut left", *edges)
                page.write(row, column + 1, two, "form", *second, "cut right", *edges)


def _height(page: Page, values: tuple[Value, Value], looks: tuple[str, ...]) -> float:
    room = page.widths[0] + (page.widths[1] if values[1] is None else 0)
    strong = "strong" in looks
    return text_height(page.formats.shown(values[0]), room - PAD - INDENT, page.formats.size(*looks), strong) + 1
