"""What film to take from the pieces on hand, and what to buy: the strips decide with the rolls which runs there are."""

import math
from collections import Counter
from collections.abc import Sequence
from dataclasses import replace
from decimal import Decimal as Money

from xlbatch.art.decal import Decal
from xlbatch.film.bound import least_length
from xlbatch.film.box import ROUNDING, UM, bed_of, box_of, um
from xlbatch.film.buying import Purchase, RollOffer, RollOrder, cheapest
from xlbatch.film.fit import Knife, StockPiece, StripCut, taken
from xlbatch.film.free import FEW, pack
from xlbatch.film.layout import FilmNeed, Run, Strip
from xlbatch.film.run_of_strips import run_of
from xlbatch.film.sweep import sweep
from xlbatch.job.job import Film, FilmPiece, Roll, Settings
from xlbatch.trade.spoilage import least_buy
from xlbatch.trade.tables import practice
from xlbatch.units import length_text

FREE_TRIES = 2000  # over the boxes: how long is searched for what the strips cost
PARTS = 10_000  # of the money unit: prices are counted in whole ones


def film_need(
    film: Film, strips: Sequence[Strip], settings: Settings, first_no: int
) -> tuple[tuple[Run, ...], FilmNeed]:
    """The runs of one film, numbered from `first_no`, with what each is cut from; and what the film comes to."""
    offered = _on_offer(film, max(strip.length for strip in strips) + 2 * settings.end_margin)
    order = _order(film, strips, offered, settings)
    purchase = cheapest(order)
    runs = _runs(film, strips, purchase, settings, first_no)
    return runs, _need(film, runs, order, purchase, offered, settings)


def _order(film: Film, strips: Sequence[Strip], offered: Sequence[Roll], settings: Settings) -> RollOrder:
    margins = max(0, um(2 * settings.end_margin) - um(settings.gap))
    longest = um(settings.longest_cut) - um(2 * settings.end_margin) + um(settings.gap) + ROUNDING
    cuts = tuple(StripCut(um(strip.length) + um(settings.gap), _across(strip)) for strip in strips)
    priced = bool(offered) and all(roll.price is not None for roll in offered)
    order = RollOrder(
        cuts=cuts,
        knife=Knife(longest, margins),
        pieces=tuple(StockPiece(_down(piece.length), _down(_usable(film, piece))) for piece in film.on_hand),
        offers=tuple(RollOffer(_down(roll.length) + ROUNDING, _cost(roll, priced=priced)) for roll in offered),
        usable=_down(film.usable_width),
        least_rest=um(_least_kept(settings)) + 1,
        decals=sum(len(strip.lying) for strip in strips),
        spoil=settings.spoiled_film_per_100 / 100,
    )
    likely = math.ceil(math.ceil(order.decals * order.spoil) * order.a_decal)
    if settings.sureness is not None:
        extra = least_buy(order.decals, order.spoil, settings.sureness / 100) - order.decals
        asked = math.ceil(extra * order.a_decal)
        return replace(order, spare=asked, many_spare=asked)
    if not priced:
        return replace(order, spare=likely, many_spare=likely)
    return replace(order, many_spare=likely, second_order=float(settings.second_order_costs) * PARTS)


def _across(strip: Strip) -> int:
    """How wide a film it needs: a strip may be laid wider than its film by what is rounded."""
    return um(max(lying.across + lying.width for lying in strip.lying)) - ROUNDING


def _down(mm: float) -> int:
    """A measured length in whole µm, never more than it is."""
    return math.floor(mm * UM + 1e-6)


def _runs(
    film: Film, strips: Sequence[Strip], purchase: Purchase, settings: Settings, first_no: int
) -> tuple[Run, ...]:
    """The runs in the order of their first batches, their strips in the order of theirs."""
    called = [_called(piece, settings) for piece in film.on_hand] + ["roll"] * len(purchase.cut)
    runs = [
        (sorted((strips[strip_no] for strip_no in run), key=lambda strip: strip.batch), source)
        for source, runs in zip(called, (*purchase.pieces, *purchase.cut), strict=True)
        for run in runs
    ]
    runs.sort(key=lambda run: run[0][0].batch)
    return tuple(
        replace(run_of(film, own, settings, first_no + run_no), cut_from=source)
        for run_no, (own, source) in enumerate(runs)
    )


def _need(
    film: Film, runs: Sequence[Run], order: RollOrder, purchase: Purchase, offered: Sequence[Roll], settings: Settings
) -> FilmNeed:
    length = sum(run.length for run in runs)
    on_hand = sum(run.length for run in runs if run.cut_from != "roll")
    rolls = [offered[offer] for offer in purchase.rolls] if offered else []
    counts = Counter(rolls)
    left = _left(film, order, purchase, offered, settings)
    kept = sum(rest for piece, rest in left if piece in film.on_hand and _usable(film, piece) >= film.usable_width)
    decals = [lying.decal for run in runs for lying in run.lying]
    spare = round(order.spare / UM, 3)
    buy = round(length - on_hand + max(0.0, spare - kept), 3)
    priced = all(roll.price is not None for roll in rolls)
    return FilmNeed(
        film=film,
        decals=len(decals),
        runs=len(runs),
        length=round(length, 3),
        least=_least(film, runs, settings),
        free=_free(film, runs, settings),
        used=sum(_area(decal, settings) for decal in decals) / (length * film.usable_width),
        on_hand=round(on_hand, 3),
        spare=spare,
        buy=buy,
        rolls=tuple((counts[roll], roll) for roll in sorted(counts, key=lambda roll: -roll.length)),
        left=tuple(replace(piece, length=rest) for piece, rest in left),
        cost=_cost_of(rolls) if film.rolls or not buy else None,
        sure=order.sure(purchase.rests(order)),
        cheaper=Money(purchase.cheaper) / (PARTS if priced else UM),
    )


def _left(
    film: Film, order: RollOrder, purchase: Purchase, offered: Sequence[Roll], settings: Settings
) -> list[tuple[FilmPiece, float]]:
    """The pieces on hand and the rolls of which something worth keeping is left, and how much of them."""
    stocks = [*film.on_hand, *(FilmPiece(film.roll_width, offered[offer].length) for offer in purchase.rolls)]
    rests = [
        (piece, math.floor(piece.length * UM - taken(runs, order.cuts, order.knife) + 1e-6) / UM)
        for piece, runs in zip(stocks, (*purchase.pieces, *(purchase.cut if purchase.rolls else ())), strict=True)
    ]
    return [(piece, rest) for piece, rest in rests if rest > _least_kept(settings)]


def _usable(film: Film, piece: FilmPiece) -> float:
    """The usable width of a piece: as much narrower than the piece as the film's is than its roll."""
    return piece.width - (film.roll_width - film.usable_width)


def _called(piece: FilmPiece | None, settings: Settings) -> str:
    if piece is None:
        return "roll"
    unit = settings.length_unit
    return f"piece {length_text(piece.width, unit)} × {length_text(piece.length, unit)}"


def _least_kept(settings: Settings) -> float:
    """How long a piece must be for anything to be cut from it besides its two end margins."""
    return 2 * settings.end_margin + settings.gap


def _least(film: Film, runs: Sequence[Run], settings: Settings) -> float:
    """The slice bound in mm, or the area bound of interlocked shapes, margins apart. Where the margins hold less than a
    gap, each run may save one."""
    bed = bed_of(film, settings)
    pieces = 1 if 2 * settings.end_margin >= settings.gap else len(runs)
    decals = [lying.decal for run in runs for lying in run.lying]
    if settings.interlock:
        from xlbatch.film.shape import least_area

        area = sum(least_area(decal, settings.gap) for decal in decals)
        least = math.floor(area / (film.usable_width + settings.gap) * UM)
    else:
        least = least_length([box_of(decal, bed.gap) for decal in decals], bed)
    return max(0, least - pieces * bed.gap) / UM


def _free(film: Film, runs: Sequence[Run], settings: Settings) -> float:
    """The length in mm, margins apart, that the same boxes take laid freely; no longer than they do in strips."""
    bed = bed_of(film, settings)
    boxes = [box_of(lying.decal, bed.gap) for run in runs for lying in run.lying]
    packing = pack(boxes, bed, max(1, FREE_TRIES // len(boxes))) if len(boxes) <= FEW else sweep(boxes, bed, 1)
    end = packing.length - bed.gap
    if settings.interlock:
        return end / UM
    return min(end / UM, round(sum(run.length - 2 * settings.end_margin for run in runs), 3))


def _area(decal: Decal, settings: Settings) -> float:
    """The film a decal's box takes in mm²; interlocked, its shape."""
    return decal.outline.area if settings.interlock and decal.outline else decal.width * decal.height


def _on_offer(film: Film, longest: float) -> list[Roll]:
    """The rolls with a price, if they hold the longest run; else all."""
    priced = [roll for roll in film.rolls if roll.price is not None]
    return priced if any(roll.length >= longest for roll in priced) else list(film.rolls)


def _cost(roll: Roll, *, priced: bool) -> int:
    """What a roll counts for: its price, or its length where prices are not known and so much more for each roll."""
    if priced and roll.price is not None:
        return int(roll.price * PARTS)
    return um(roll.length + practice("what one roll more counts for in film without prices"))


def _cost_of(rolls: Sequence[Roll]) -> Money | None:
    known = [roll.price for roll in rolls if roll.price is not None]
    return sum(known, Money(0)) if len(known) == len(rolls) else None
