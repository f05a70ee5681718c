"""Every kind of page, in the order of the work. To add one: one module, and one line here."""

from collections.abc import Callable
from dataclasses import dataclass

from xlbatch.pages import buy_and_check_in, cut_and_weed, hand_out, placement_page, press_cards, proof_page, tag_page
from xlbatch.pages.leaf import Leaf
from xlbatch.pages.work import Work


@dataclass(frozen=True)
class PageKind:
    """A kind of page: its sheet, what whoever holds it does, and whether a plan has work for it.

    `rooms`: how roomy it may be made, the roomiest first; the first that takes no more pages than any is used.
    `below`: it stands below the sheet of that name where that saves a page."""

    name: str
    tells: str  # "": the page has no title
    write: Callable[[Leaf, Work, float], None]
    wanted: Callable[[Work], bool]
    rooms: tuple[float, ...] = (0.0,)
    below: str = ""


def _in_one_size(write: Callable[[Leaf, Work], None]) -> Callable[[Leaf, Work, float], None]:
    return lambda leaf, work, _: write(leaf, work)


def _runs(work: Work) -> bool:
    return bool(work.plan.layout.runs)


def _strips(work: Work) -> bool:
    return bool(work.plan.layout.runs or work.to_weed)


def _steps(work: Work) -> bool:
    return bool(work.plan.pressing.steps)


def _buying(work: Work) -> bool:
    return any(line.buy for line in work.plan.shopping)


def _grouped_or_priced(work: Work) -> bool:
    lines = [work.money[no] for no in work.garments]
    return any(line.group or line.price is not None for line in lines)


def _garments(work: Work) -> bool:
    return bool(work.garments)


KINDS: tuple[PageKind, ...] = (
    PageKind(
        proof_page.NAME,
        proof_page.TELLS,
        proof_page.write,
        _runs,
        (200.0, 180.0, 160.0, 146.0, 132.0, 120.0, 110.0, 102.0, 94.0, 86.0, 78.0, 70.0, 64.0, 56.0),
    ),
    PageKind(buy_and_check_in.NAME, buy_and_check_in.TELLS, buy_and_check_in.write, _buying, (22.0, 20.0, 18.0, 16.0)),
    PageKind(
        cut_and_weed.NAME, cut_and_weed.TELLS, cut_and_weed.write, _strips, (96.0, 84.0, 72.0, 62.0, 52.0, 42.0, 0.0)
    ),
    PageKind(
        press_cards.NAME,
        press_cards.TELLS,
        press_cards.write,
        _steps,
        (48.0, 42.0, 37.0, 32.0, 28.0, 25.0, 22.0, 20.0, 18.0, 16.5, 15.0),
    ),
    PageKind(
        placement_page.NAME, placement_page.TELLS, _in_one_size(placement_page.write), _steps, below=press_cards.NAME
    ),
    PageKind(hand_out.NAME, hand_out.TELLS, hand_out.write, _grouped_or_priced, (22.0, 19.0, 16.0, 14.5)),
    PageKind(tag_page.NAME, "", _in_one_size(tag_page.write), _garments),
)
