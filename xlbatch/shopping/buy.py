"""Garments and film needs → the shopping list."""

from collections import Counter
from collections.abc import Mapping
from decimal import Decimal

from xlbatch.check.garment import Garment
from xlbatch.film.layout import Layout
from xlbatch.job.job import Blank, Job, PriceBreak
from xlbatch.problems import Problem, Where, problem
from xlbatch.shopping.lines import BuyLine
from xlbatch.shopping.spares import spares
from xlbatch.trade.tables import color_name, table
from xlbatch.units import long_text, printed_text


def shopping_list(job: Job, garments: tuple[Garment, ...], layout: Layout) -> tuple[BuyLine, ...]:
    """Blanks in the order of the Garments sheet, film by the roll, supplies."""
    return (*_blanks(job, garments), *_film(job, layout), *_supplies(job, len(garments)))


def shopping_problems(job: Job, lines: tuple[BuyLine, ...], garments: tuple[Garment, ...]) -> tuple[Problem, ...]:
    """Prices that are missing, and stock that does not say its color."""
    sheets = (("blank", "Garments", "garment"), ("film", "Film", "item"))
    missing = tuple(
        problem("price-missing", Where(sheet), what=", ".join(names), sheet=sheet)
        for kind, sheet, field in sheets
        if (names := dict.fromkeys(getattr(x, field) for x in lines if x.kind == kind and x.price is None and x.buy))
    )
    return (*missing, *_unclear_stock(job, garments))


def _blanks(job: Job, garments: tuple[Garment, ...]) -> tuple[BuyLine, ...]:
    needed = Counter((g.blank.garment, g.blank.size, color_name(g.color)) for g in garments if g.needs_blank)
    blanks = {(g.blank.garment, g.blank.size, color_name(g.color)): g.blank for g in garments}
    order = {(blank.garment, blank.size): at for at, blank in reversed(list(enumerate(job.blanks)))}
    kinds = sorted(needed, key=lambda kind: (order[kind[:2]], kind[2]))
    settings = job.settings
    extra = spares([needed[kind] for kind in kinds], settings.spoiled_per_100 / 100, settings.sureness / 100)
    stock = [_on_hand(blanks[kind], kind, kinds) for kind in kinds]
    bought: Counter[str] = Counter()
    for kind, more, have in zip(kinds, extra, stock, strict=True):
        bought[kind[0]] += max(0, needed[kind] + more - have)
    return tuple(
        BuyLine("blank", kind[0], *kind, needed[kind], more, have, price_for(blanks[kind].prices, bought[kind[0]]))
        for kind, more, have in zip(kinds, extra, stock, strict=True)
    )


def price_for(prices: tuple[PriceBreak, ...], count: int) -> Decimal | None:
    """The price of each when `count` of a garment are bought, all sizes and colors together; None without prices."""
    reached = [each for each in prices if each.count <= max(count, 1)]
    best = max(reached or prices[:1], key=lambda each: each.count, default=None)
    return best.price if best else None


def _on_hand(blank: Blank, kind: tuple[str, str, str], kinds: list[tuple[str, str, str]]) -> int:
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


def _film(job: Job, layout: Layout) -> tuple[BuyLine, ...]:
    unit = job.settings.length_unit
    return tuple(
        BuyLine(
            kind="film",
            item=f"{need.film.name}, {printed_text(need.film.roll_width, unit)} × {long_text(roll.length, unit)} roll",
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
