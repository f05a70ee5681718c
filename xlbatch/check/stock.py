"""Brings the blanks on hand up to date: what the shopping list says has come, less what was used at the press.

Film is not: it is cut before it is pressed, so what a press log says of it is less than what is gone.
"""

from collections import Counter
from collections.abc import Mapping
from dataclasses import replace

from xlbatch.job.job import Blank, Job, RosterRow
from xlbatch.job.marks import Delivery
from xlbatch.problems import Problem, problem
from xlbatch.trade.tables import color_name

BlankKind = tuple[str, str, str]  # garment without regard to case, size, color by its usual name


def blanks_left(job: Job, used: Counter[BlankKind]) -> tuple[tuple[Blank, ...], tuple[Problem, ...]]:
    """The job's blanks with what is on hand now, and a question where more were used than were said to be there.

    A line of the shopping list marked as arrived wins over the Garments sheet."""
    lists = {blank_kind(line.garment, line.size, line.color): line for line in job.deliveries}
    blanks, unmarked = list(job.blanks), []
    for kind in dict.fromkeys((*lists, *used)):
        place = listed(blanks, kind)
        if place is None:
            continue
        line = lists.get(kind)
        if line and line.came is not None:
            alone = sum(other[:2] == kind[:2] for other in lists) == 1
            stock = _arrived(blanks[place].on_hand, kind[2], line.on_hand + line.came, alone=alone)
        else:
            stock = blanks[place].on_hand
        color = color_in(stock, kind[2])
        if line and used[kind] > stock.get(color, 0):
            unmarked.append(line)
        left = max(0, stock.get(color, 0) - used[kind])
        blanks[place] = replace(blanks[place], on_hand={**stock, color: left} if color in stock else stock)
    return tuple(blanks), _question(unmarked)


def film_to_measure(job: Job) -> tuple[Problem, ...]:
    """A question for each film that came, or of which there was some when pressing began: how much is there now."""
    names = {name.casefold() for spec in job.designs for name in (spec.film, spec.outline_film)}
    return tuple(
        problem("film-not-counted", film.source.at("On hand"), film.name)
        for film in job.films
        if film.name.casefold() in names
        and (any(item.startswith(f"{film.name}, ") for item in job.film_came) or (film.on_hand and job.results))
    )


def used_blanks(job: Job, rows: tuple[RosterRow, ...]) -> Counter[BlankKind]:
    """The blanks that were put under the press, well or badly, since the plan with this press log."""
    spoiled = {result.garment_no for result in job.results if result.result == "redo garment"}
    usual = job.settings
    return Counter(
        blank_kind(old.garment or usual.usual_garment, old.size, old.color or usual.usual_color)
        for old, new in zip(job.roster, rows, strict=True)
        if old.no in job.in_log
        and not old.done_so_far  # else its blank was taken off before
        and old.status != "cancelled"
        and (new.status == "done" or new.done_so_far or old.status == "redo garment" or old.no in spoiled)
    )


def blank_kind(garment: str, size: str, color: str) -> BlankKind:
    """A kind of blank, however its garment and color are written."""
    return garment.casefold(), size, color_name(color)


def listed(blanks: list[Blank], kind: BlankKind) -> int | None:
    """Where a kind of blank stands: the row that lists its color, else the first of that garment and size."""
    alike = [place for place, blank in enumerate(blanks) if (blank.garment.casefold(), blank.size) == kind[:2]]
    return next(
        (place for place in alike if kind[2] in map(color_name, blanks[place].colors)), alike[0] if alike else None
    )


def _arrived(stock: Mapping[str, int], color: str, count: int, *, alone: bool) -> Mapping[str, int]:
    """The stock with `count` of a color. A number without a color was counted in, where the color stood `alone`."""
    kept = {name: have for name, have in stock.items() if name or not alone}
    return {**kept, (color_in(kept, color) or color): count}


def color_in(stock: Mapping[str, int], color: str) -> str:
    """The stock's own word for a color; "" where it has none."""
    return next((name for name in stock if name and color_name(name) == color), "")


def _question(unmarked: list[Delivery]) -> tuple[Problem, ...]:
    """One question for all lines whose blanks were used though they are not marked as arrived, at the first."""
    if not unmarked:
        return ()
    kinds = ", ".join(f"{line.garment} {line.size} {line.color}" for line in unmarked)
    return (problem("arrived-unmarked", unmarked[0].source.at("Arrived"), kinds=kinds),)
