"""Writes the workbook that holds only the pages to print, in the order of the work."""

from collections.abc import Sequence
from copy import deepcopy
from pathlib import Path

from xlbatch.files.printed_of import PAGES_OF
from xlbatch.how_far import counted
from xlbatch.pages import order_of_the_day
from xlbatch.pages.all_pages import KINDS, Kind
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
    content = LivingBytes()  # whole before the disk sees it
    workbook = LivingWorkbook(content, deepcopy(_OPTIONS))  # the writer adds to what it is given
    workbook.set_properties(
        {"title": job_name(plan), "subject": printable(f"{PAGES_OF}{plan_name}"), "created": CREATED}
    )
    workbook.set_size(1600, 1000)
    looks = Looks(workbook)
    for leaf in counted(leaves(plan, plan_name)):
        leaf.write(workbook, looks)
    workbook.close()
    path.write_bytes(content.getvalue())


def leaves(plan: Plan, plan_name: str) -> Sequence[Leaf]:
    """The sheets: the order of the day, which names the pages of the others, and these."""
    work = look_up(plan)
    found: list[Sequence[Leaf]] = []  # of each sheet the ways it can be made
    for kind in KINDS:
        if kind.wanted(work):
            made = [_made(kind, work, room) for room in kind.rooms]
            if kind.below and found and found[-1][0].name == kind.below:
                shortest = _shortest(found[-1]).printed + _shortest(made).printed
                both = [leaf.with_after(made[0]) for leaf in found[-1]]
                if _shortest(both).printed < shortest:
                    found[-1], made = both, []
            found += [made] if made else []
    others = [_shortest(ways) for ways in found]
    return (_first(work, others, plan_name), *others)


def _made(kind: Kind, work: Work, room: float) -> Leaf:
    leaf = _leaf(work.plan, kind.name)
    if kind.tells:
        leaf.title(kind.tells, _aside(work.plan))
    kind.write(leaf, work, room)
    return leaf


def _shortest(ways: Sequence[Leaf]) -> Leaf:
    """The one of fewest pages; of those the first."""
    return min(ways, key=lambda leaf: leaf.printed)


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
