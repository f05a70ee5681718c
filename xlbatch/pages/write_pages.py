"""Writes the workbook that holds only the pages to print, in the order of the work."""

from bisect import bisect_left
from collections import deque
from collections.abc import Callable, Sequence
from copy import deepcopy
from dataclasses import dataclass, field
from functools import partial
from pathlib import Path

from xlbatch.files.printed_of import PAGES_OF
from xlbatch.how_far import counted
from xlbatch.pages import order_of_the_day
from xlbatch.pages.all_pages import KINDS, PageKind
from xlbatch.pages.leaf import Leaf
from xlbatch.pages.page_looks import TINY, Looks
from xlbatch.pages.work import Work, look_up
from xlbatch.paper.cell import printable
from xlbatch.paper.living_workbook import LivingBytes, LivingWorkbook
from xlbatch.paper.style import FONT
from xlbatch.paper.workbook import CREATED
from xlbatch.plan import Plan

# a digit of Arial 8 is whole dots wide, so that columns are as wide as asked in every program
_OPTIONS = {
    "in_memory": True,
    "strings_to_numbers": False,
    "strings_to_formulas": False,
    "strings_to_urls": False,
    "default_format_properties": {"font_name": FONT, "font_size": TINY},
    "default_row_height": 15,  # pixels, for Arial 8
    "default_column_width": 56,
}


def write_pages(path: Path, plan: Plan, plan_name: str) -> None:
    """Turns a plan into its pages. `plan_name`: the file of the plan, where results are typed."""
    path.write_bytes(pages_of(plan, plan_name))  # whole before the disk sees it


def pages_of(plan: Plan, plan_name: str) -> bytes:
    """The workbook with a plan's pages."""
    content = LivingBytes()
    workbook = LivingWorkbook(content, deepcopy(_OPTIONS))  # the writer adds to what it is given
    workbook.set_properties(
        {"title": job_name(plan), "subject": printable(f"{PAGES_OF}{plan_name}"), "created": CREATED}
    )
    workbook.set_size(1600, 1000)
    looks = Looks(workbook)
    sheets = deque(leaves(plan, plan_name))
    for _ in counted(range(len(sheets))):
        sheets.popleft().write(workbook, looks)  # each is given free once it is written
    workbook.close()
    return content.getvalue()


def leaves(plan: Plan, plan_name: str) -> Sequence[Leaf]:
    """The sheets: the order of the day, which names the pages of the others, and these."""
    work = look_up(plan)
    made: list[Ways] = []
    for kind in KINDS:
        if kind.wanted(work):
            ways = _ways(kind, work)
            if kind.below and made and made[-1].name == kind.below:
                both = made[-1].with_below(ways)
                if both.fewest < made[-1].fewest + ways.fewest:
                    made[-1] = both
                    continue
            made.append(ways)
    others = [ways.best() for ways in made]
    return (_first(work, others, plan_name), *others)


@dataclass
class Ways:
    """A sheet in the ways it can be made, the roomiest first; each is made when it is asked for, and once."""

    name: str
    make: Sequence[Callable[[], Leaf]]
    made: dict[int, Leaf] = field(default_factory=dict)

    def __getitem__(self, way: int) -> Leaf:
        if way not in self.made:
            self.made[way] = self.make[way]()
        return self.made[way]

    @property
    def fewest(self) -> int:
        """The pages of the tightest way."""
        return self[len(self.make) - 1].printed

    def best(self) -> Leaf:
        """The roomiest of those that take the fewest pages, whole batches on each if it can be; a tighter one never
        takes more pages."""
        ways = range(len(self.make))
        roomiest = bisect_left(ways, True, key=lambda way: self[way].printed <= self.fewest)
        return self[next((way for way in ways[roomiest:] if self[way].parts_whole), roomiest)]

    def with_below(self, other: "Ways") -> "Ways":
        """This sheet with the rows of another, at its roomiest, below its own."""
        return Ways(self.name, [partial(_below, self, way, other) for way in range(len(self.make))])


def _below(upper: Ways, way: int, lower: Ways) -> Leaf:
    return upper[way].with_after(lower[0])


def _ways(kind: PageKind, work: Work) -> Ways:
    return Ways(kind.name, [partial(_made, kind, work, room) for room in kind.rooms])


def _made(kind: PageKind, work: Work, room: float) -> Leaf:
    leaf = _leaf(work.plan, kind.name)
    if kind.tells:
        leaf.title(kind.tells, _aside(work.plan))
    kind.write(leaf, work, room)
    return leaf


def _first(work: Work, others: Sequence[Leaf], plan_name: str) -> Leaf:
    """The order of the day; written anew where it takes more pages than was thought when it counted the others'."""
    pages = 1
    while True:
        leaf = _leaf(work.plan, order_of_the_day.NAME)
        leaf.title(order_of_the_day.TELLS, _aside(work.plan))
        numbers, first = {}, pages + 1
        for other in others:
            numbers[other.name] = (first, first + other.printed - 1)
            first += other.printed
        order_of_the_day.write(leaf, work, numbers, plan_name)
        if leaf.printed <= pages:
            return leaf
        pages = leaf.printed


def _leaf(plan: Plan, name: str) -> Leaf:
    return Leaf(name, job=job_name(plan), paper=plan.job.settings.paper)


def job_name(plan: Plan) -> str:
    return plan.job.settings.job_name or plan.job.path.stem


def _aside(plan: Plan) -> str:
    needed = plan.job.settings.needed_by
    return job_name(plan) + (f"\nneeded {needed}" if needed else "")
