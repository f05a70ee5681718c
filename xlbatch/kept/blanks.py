"""The blanks on hand now: those of the plan, and what has come since, less what was put under the press."""

from collections import Counter
from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass, replace

from xlbatch.check.stock import BlankKind, blank_kind, color_in, listed
from xlbatch.job.job import Blank
from xlbatch.job.marks import OrderKey
from xlbatch.kept.memory import KeptGarment
from xlbatch.kept.on_the_way import Ordered
from xlbatch.problems import Problem, Where, problem


@dataclass(frozen=True)
class Shelf:
    """The blanks with what is on hand, and of each kind how many more were used than are known to have come."""

    blanks: tuple[Blank, ...]
    short: Mapping[BlankKind, int]
    problems: tuple[Problem, ...]


def used_since(used: Mapping[int, int], garments: Iterable[KeptGarment]) -> Counter[BlankKind]:
    """The blanks used since the plan, by what was pressed, not by what the Roster says now."""
    planned = {garment.no: garment for garment in garments}
    counts: Counter[BlankKind] = Counter()
    for number, count in used.items():
        counts[blank_kind(planned[number].garment, planned[number].size, planned[number].color)] += count
    return counts


def shelf(
    blanks: tuple[Blank, ...],
    orders: Mapping[OrderKey, Ordered],
    used: Counter[BlankKind],
    short: Mapping[BlankKind, int],
    counted: Collection[tuple[str, str]],
) -> Shelf:
    """`counted`: garment and size, in lower case, of the rows whose On hand a person changed: it is as of now."""
    came = {blank_kind(*key[2:]): order for key, order in orders.items() if key.kind == "blank"}
    kinds = dict.fromkeys((*came, *used, *short))
    now, left = list(blanks), Counter[BlankKind]()
    for kind in kinds:
        blank_no = listed(now, kind)
        if blank_no is None or kind[:2] in counted:
            continue
        stock = now[blank_no].on_hand
        alone = sum(other[:2] == kind[:2] for other in kinds) == 1
        color = color_in(stock, kind[2]) or ("" if alone and "" in stock else kind[2])
        had = came[kind].came if kind in came else 0
        have = stock.get(color, 0) + had - used[kind] - short.get(kind, 0)
        if have < 0:
            left[kind] = -have
        if color in stock or have > 0:
            now[blank_no] = replace(now[blank_no], on_hand={**stock, color: max(0, have)})
    return Shelf(tuple(now), left, _asked(left, came))


def _asked(short: Counter[BlankKind], came: Mapping[BlankKind, Ordered]) -> tuple[Problem, ...]:
    """One question for all kinds of which more were used than have come, at the first one's line."""
    if not short:
        return ()
    marks = [came[kind].mark for kind in short if kind in came]
    where = next((mark.source.at("Arrived") for mark in marks if mark), Where("Shopping list"))
    return (problem("arrived-unmarked", where, kinds=", ".join(" ".join(kind) for kind in short)),)
