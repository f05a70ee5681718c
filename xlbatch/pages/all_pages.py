"""Every kind of page, in the order of the work. To add one: one module, and one line here."""

from collections.abc import Callable
from dataclasses import dataclass

from xlbatch.pages import buy_and_check_in, cut_and_weed, hand_out, placement_page, press_cards, proof_page, tag_page
from xlbatch.pages.leaf import Leaf
from xlbatch.pages.work import Work


@dataclass(frozen=True)
class Kind:
    """A kind of page: its sheet, what whoever holds it does, and whether a plan has work for it."""

    name: str
    tells: str  # "": the page has no title
    write: Callable[[Leaf, Work], None]
    wanted: Callable[[Work], bool]


def _grouped_or_owed(work: Work) -> bool:
    lines = [work.money[no] for no in work.garments]
    return any(line.group or line.price is not None for line in lines)


KINDS: tuple[Kind, ...] = (
    Kind(proof_page.NAME, proof_page.TELLS, proof_page.write, lambda work: bool(work.plan.layout.runs)),
    Kind(
        buy_and_check_in.NAME, buy_and_check_in.TELLS, buy_and_check_in.write,
        lambda work: any(line.buy for line in work.plan.shopping),
    ),
    Kind(cut_and_weed.NAME, cut_and_weed.TELLS, cut_and_weed.write, lambda work: bool(work.plan.layout.runs)),
    Kind(press_cards.NAME, press_cards.TELLS, press_cards.write, lambda work: bool(work.plan.pressing.steps)),
    Kind(
        placement_page.NAME, placement_page.TELLS, placement_page.write, lambda work: bool(work.plan.pressing.steps)
    ),
    Kind(hand_out.NAME, hand_out.TELLS, hand_out.write, _grouped_or_owed),
    Kind(tag_page.NAME, "", tag_page.write, lambda work: bool(work.plan.garments)),
)  # fmt: skip
