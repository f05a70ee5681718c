"""Garments and film needs → the shopping list."""

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from functools import partial
from typing import Literal, cast

from xlbatch.check.garment import Garment
from xlbatch.film.layout import Layout
from xlbatch.job.job import Blank, Film, Job, Roll, Settings
from xlbatch.job.marks import OrderKey, Stock
from xlbatch.problems import Problem, Where, problem
from xlbatch.shopping.lines import BuyLine, SpareChoice
from xlbatch.shopping.spares import (
    Lot,
    cost_of,
    price_for,
    spares_for_sureness,
    spares_worth_having,
    sure_of,
)
from xlbatch.trade.tables import color_name, table
from xlbatch.units import LengthUnit, long_text, printed_text

Kind = tuple[str, str, str]  # garment, size, color by its usual name


def shopping_list(job: Job, garments: tuple[Garment, ...], layout: Layout) -> tuple[BuyLine, ...]:
    """Blanks in the order of the Garments sheet, film by the roll, supplies."""
    lines = (*_blanks(job, garments), *_film(job, layout), *_supplies(job, len(garments)))
    return tuple(sorted((*map(partial(_with_orders, job), lines), *_on_the_way(job, lines)), key=_kind_first))


def _kind_first(line: BuyLine) -> int:
    return ("blank", "film", "supply").index(line.kind)


def _with_orders(job: Job, line: BuyLine) -> BuyLine:
    """The line with what is on the way, which film is needed beside, and supplies with what is there."""
    stock = job.orders.get(_same(line.key), Stock(0, 0))
    line = replace(line, on_the_way=stock.on_the_way, note=stock.note)
    if line.kind == "film":
        return replace(line, needed=line.needed + stock.on_the_way)
    return replace(line, on_hand=stock.on_hand) if line.kind == "supply" else line


def _on_the_way(job: Job, lines: Iterable[BuyLine]) -> Iterator[BuyLine]:
    """What is on the way and no longer needed: it still has to be ticked off."""
    listed = {_same(line.key) for line in lines}
    for key, stock in job.orders.items():
        if stock.on_the_way and key not in listed:
            kind = cast(Literal["blank", "film", "supply"], key.kind)
            needed = stock.on_the_way if kind == "film" else 0
            own = next((film.color for film in job.films if key.item.startswith(f"{film.name}, ")), "")
            color = own if kind == "film" else key.color
            yield BuyLine(
                kind,
                key.item,
                key.garment,
                key.size,
                color,
                needed,
                0,
                stock.on_hand,
                None,
                stock.on_the_way,
                stock.note,
            )


def _same(key: OrderKey) -> OrderKey:
    """The key as orders are kept: a film's color is the film's own."""
    return key._replace(color=color_name(key.color)) if key.kind == "blank" else key._replace(color="")


def shopping_problems(job: Job, lines: tuple[BuyLine, ...], garments: tuple[Garment, ...]) -> tuple[Problem, ...]:
    """Prices that are missing, and stock that does not say its color."""
    sheets = (("blank", "Garments", "garment"), ("film", "Film", "item"))
    missing = {
        sheet: dict.fromkeys(getattr(x, field) for x in lines if x.kind == kind and x.price is None and x.buy)
        for kind, sheet, field in sheets
    }
    unpriced = {sheet: ", ".join(names) for sheet, names in missing.items() if names}
    note = (
        problem(
            "price-missing",
            Where(next(iter(unpriced))),
            what="; ".join(unpriced.values()),
            sheet=" and ".join(unpriced),
        )
        if unpriced
        else None
    )
    return (*((note,) if note else ()), *_unclear_stock(job, garments))


def spare_choices(job: Job, garments: tuple[Garment, ...]) -> tuple[SpareChoice, ...]:
    """No spare blanks, those proposed, and as many as make 95 jobs in 100 finish without a second order."""
    lots = list(_lots(job, garments).values())
    spoil = job.settings.spoiled_blanks_per_100 / 100
    nothing = (0,) * len(lots)
    choices = (
        ("none", nothing),
        ("as proposed", _spares(job.settings, lots)),
        ("95 in 100 sure", spares_for_sureness(lots, spoil, 0.95)),
    )
    without = cost_of(lots, nothing)
    return tuple(
        SpareChoice(name, sum(spares), None if cost is None or without is None else cost - without, sure)
        for name, spares in choices
        for cost, sure in [(cost_of(lots, spares), sure_of(lots, spares, spoil))]
        if lots
    )


def _blanks(job: Job, garments: tuple[Garment, ...]) -> Iterator[BuyLine]:
    lots = _lots(job, garments)
    spares = _spares(job.settings, list(lots.values()))
    bought: Counter[str] = Counter()
    for lot, more in zip(lots.values(), spares, strict=True):
        bought[lot.garment] += lot.to_buy + more
    for (kind, lot), more in zip(lots.items(), spares, strict=True):
        listed = more + max(0, lot.stock - lot.needed) if more else 0  # beyond those that are there already
        price = price_for(lot.prices, bought[lot.garment])
        yield BuyLine("blank", kind[0], *kind, lot.needed, listed, lot.stock - _coming(job, kind), price)


def _spares(settings: Settings, lots: list[Lot]) -> tuple[int, ...]:
    """The spares of each lot: as sure as was asked for, else those that pay."""
    spoil = settings.spoiled_blanks_per_100 / 100
    if settings.sureness is not None:
        return spares_for_sureness(lots, spoil, settings.sureness / 100)
    return spares_worth_having(lots, spoil, settings.second_order_costs)


def _lots(job: Job, garments: tuple[Garment, ...]) -> dict[Kind, Lot]:
    """The blanks needed, in the order of the Garments sheet."""
    needed = Counter(_kind(garment) for garment in garments if garment.needs_blank)
    blanks = {_kind(garment): garment.blank for garment in garments}
    order = {(blank.garment, blank.size): row for row, blank in reversed(list(enumerate(job.blanks)))}
    kinds = sorted(needed, key=lambda kind: (order[kind[:2]], kind[2]))
    return {
        kind: Lot(kind[0], needed[kind], _on_hand(blanks[kind], kind, kinds) + _coming(job, kind), blanks[kind].prices)
        for kind in kinds
    }


def _coming(job: Job, kind: Kind) -> int:
    stock = job.orders.get(OrderKey("blank", kind[0], *kind))
    return stock.on_the_way if stock else 0


def _kind(garment: Garment) -> Kind:
    return garment.blank.garment, garment.blank.size, color_name(garment.color)


def _on_hand(blank: Blank, kind: Kind, kinds: list[Kind]) -> int:
    """Blanks on hand of a color; a number without a color counts where only one color is needed."""
    by_color: Mapping[str, int] = {color_name(color): count for color, count in blank.on_hand.items()}
    one_color = sum(other[:2] == kind[:2] for other in kinds) == 1
    return by_color.get(kind[2], 0) + (by_color.get("", 0) if one_color else 0)


def _unclear_stock(job: Job, garments: tuple[Garment, ...]) -> tuple[Problem, ...]:
    colors: dict[tuple[str, str], set[str]] = {}
    for garment in garments:
        colors.setdefault((garment.blank.garment, garment.blank.size), set()).add(color_name(garment.color))
    return tuple(
        problem(
            "on-hand-which-color",
            blank.source.at("On hand"),
            blank.on_hand[""],
            garment=blank.garment,
            size=blank.size,
        )
        for blank in job.blanks
        if blank.on_hand.get("") and len(colors.get((blank.garment, blank.size), ())) > 1
    )


def roll_item(film: Film, roll: Roll, unit: LengthUnit) -> str:
    """What a roll is called on the list."""
    return f"{film.name}, {printed_text(film.roll_width, unit)} × {long_text(roll.length, unit)} roll"


def _film(job: Job, layout: Layout) -> tuple[BuyLine, ...]:
    unit = job.settings.length_unit
    return tuple(
        BuyLine(
            kind="film",
            item=roll_item(need.film, roll, unit),
            garment="",
            size="",
            color=need.film.color,
            needed=count,
            spares=0,
            on_hand=0,
            price=roll.price,
        )
        for need in layout.needs
        for count, roll in need.rolls
    )


def _supplies(job: Job, garments: int) -> tuple[BuyLine, ...]:
    """Supplies for each garment carry the price set on the sheet Job; those used again carry none."""
    return tuple(
        BuyLine(
            kind="supply",
            item=line["Item"],
            garment="",
            size="",
            color="",
            needed=int(line["How many"]) * (garments if line["For each"] == "garment" else 1),
            spares=0,
            on_hand=0,
            price=job.settings.supplies_per_garment if line["For each"] == "garment" else None,
        )
        for line in table("supplies")
    )
