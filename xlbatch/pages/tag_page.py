"""Bag tags: one a garment, or one a group, to be cut apart along the dashed lines, sorted by group."""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from xlbatch.check.garment import Garment
from xlbatch.pages.hand_out import summed
from xlbatch.pages.leaf import COLUMN, Leaf, Span, columns_for
from xlbatch.pages.page_looks import DASHED, FINE, KEY, PLAIN, SMALL, TINY, Look
from xlbatch.pages.work import Work
from xlbatch.paper.measure import text_width
from xlbatch.paper.style import currency_sign
from xlbatch.paper.widths import PAD
from xlbatch.trade.tables import table

NAME = "Bag tags"
BESIDE = 3
FITTED = (13.0, 12.0, 11.0, 10.0)  # sizes of a name, so that most fit a line
EDGE, INSIDE = 1, 18  # columns: the clear edge at each side of a tag, and what is between
MARGIN = 3.0  # points clear of the cut above and below


@dataclass(frozen=True)
class TagLine:
    """A line of a tag: text at the left, and at the right where it is in two parts."""

    left: str
    right: str = ""
    look: Look = SMALL


Tag = Sequence[TagLine]


def tags(work: Work) -> Iterator[Tag]:
    """The tags in order of group and name, all with the same lines; lines that no tag needs are left out."""
    by_group = work.plan.job.settings.one_tag_for == "group"
    garments = sorted(work.plan.garments, key=lambda worn: (worn.group.casefold(), worn.who.casefold(), worn.no))
    size, seen = Counter(worn.group for worn in garments), Counter[str]()
    of: dict[tuple[str, int], list[Garment]] = {}  # those without a group have a tag each
    for garment in garments:
        of.setdefault((garment.group, 0 if by_group and garment.group else garment.no), []).append(garment)
    grouped = any(worn.group for worn in garments)
    says = any(work.on_it(worn.no).casefold() != worn.who.casefold() for worn in garments)
    foot = grouped or any(to_pay(work, them) for them in of.values())
    for (group, single), them in of.items():
        seen[group] += 1
        bag = f"bag {seen[group]} of {size[group]}" if grouped and single else ""
        top = _of_garment(work, them[0], says=says) if single else _of_group(work, group, them, says=says)
        tail = [TagLine(f"{group}, {bag}".strip(", "), to_pay(work, them), Look(TINY))] if foot else []
        yield (*top, TagLine(_care(), look=Look(TINY, valign="top")), *tail)


def _care() -> str:
    return " ".join(line["Line"] for line in table("wash_card"))


def _of_garment(work: Work, garment: Garment, *, says: bool) -> Iterator[TagLine]:
    yield TagLine(garment.who or f"No. {garment.no}", f"no. {garment.no}", Look(KEY, bold=True))
    yield TagLine(f"{garment.blank.size}  {work.garment_text(garment)}", look=SMALL.but(bold=True))
    if says:
        yield TagLine(work.on_it(garment.no))


def _of_group(work: Work, group: str, garments: Sequence[Garment], *, says: bool) -> Iterator[TagLine]:
    """A group, and whose garments of which sizes are in its bag."""
    yield TagLine(group, f"{len(garments)} garment{'s' * (len(garments) != 1)}", Look(KEY, bold=True))
    yield TagLine(", ".join(f"{garment.who or f'no. {garment.no}'} {garment.blank.size}" for garment in garments))
    if says:
        yield TagLine("; ".join(dict.fromkeys(work.what_differs(garment.no) for garment in garments)))


def to_pay(work: Work, garments: Sequence[Garment]) -> str:
    """`paid`, `to pay $12.00`, `credit $4.00`; nothing where it is not known, or no money is wanted on tags."""
    owed = summed(work.money[garment.no].owed for garment in garments)
    if owed is None or not work.plan.job.settings.money_on_tags:
        return ""
    amount = f"{currency_sign(work.plan.job.settings)}{abs(owed):,.2f}"
    return f"to pay {amount}" if owed > 0 else f"credit {amount}" if owed < 0 else "paid"


def write(leaf: Leaf, work: Work) -> None:
    """Tags three across, none split between pages."""
    leaf.cushion = 1.0  # what stands on a tag must fit it
    lines = list(tags(work))
    for first in range(0, len(lines), BESIDE):
        _write_row(leaf, lines[first : first + BESIDE])


def _write_row(leaf: Leaf, beside: Sequence[Tag]) -> None:
    """Tags side by side, line by line; the padding at their edges carries the dashed lines."""
    _edge(leaf, len(beside), "top")
    for lines in zip(*beside, strict=True):
        cells = []
        for line in lines:
            cells += [
                Span(EDGE, None, PLAIN.but(left=DASHED)),
                *_cells(line),
                Span(EDGE, None, PLAIN.but(right=DASHED)),
            ]
        leaf.row(0, *cells, joined=True)
    _edge(leaf, len(beside), "bottom")


def _edge(leaf: Leaf, count: int, edge: str) -> None:
    line = PLAIN.but(**{edge: DASHED})
    cells = (
        Span(EDGE, None, line.but(left=DASHED)),
        Span(INSIDE, None, line),
        Span(EDGE, None, line.but(right=DASHED)),
    )
    leaf.row(MARGIN, *cells * count, joined=edge == "top")


def _cells(line: TagLine) -> tuple[Span, ...]:
    if not line.right:
        return (Span(INSIDE, line.left, line.look),)
    wide = columns_for([line.right], FINE, bold=True)
    room = (INSIDE - wide) * COLUMN - PAD
    size = next((size for size in FITTED if text_width(line.left, size, True) <= room), FITTED[-1])
    look = line.look.but(size=size) if line.look.size == KEY else line.look
    right = line.look.but(size=FINE, bold=True, align="right")
    return Span(INSIDE - wide, line.left, look), Span(wide, line.right, right)
