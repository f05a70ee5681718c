"""Which spare blanks are worth having: each lowers the chance of a second order, and costs its price.

A second order serves all sizes at once, so what counts is the chance that any kind of blank runs short.
"""

import math
from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import NamedTuple

from xlbatch.job.job import PriceBreak
from xlbatch.trade.spoilage import enough

NO_GAIN = 1e-9  # of a chance or an amount of money: no difference


@dataclass(frozen=True)
class Lot:
    """One kind of blank: how many good ones are needed, how many are there or on the way, and its price by count,
    which goes by all blanks bought of the garment together."""

    garment: str
    needed: int
    stock: int
    prices: tuple[PriceBreak, ...]

    @property
    def to_buy(self) -> int:
        """How many to buy without spares."""
        return max(0, self.needed - self.stock)

    def sure(self, spares: int, spoil: float) -> float:
        """The chance that it does not run short with so many more bought than are needed or there."""
        return enough(max(self.needed, self.stock) + spares, self.needed, spoil)


class Way(NamedTuple):
    """A number of spares of each lot, by its place; what all blanks then cost; the chance that they are enough."""

    cost: Decimal
    sure: float
    spares: tuple[tuple[int, int], ...] = ()

    def expected(self, second_order: Decimal) -> float:
        """What is to be expected to be paid, a second order included."""
        return float(self.cost) + float(second_order) * (1 - self.sure)


NOTHING = Way(Decimal(), 1.0)


def price_for(prices: tuple[PriceBreak, ...], count: int) -> Decimal | None:
    """The price of each when `count` of a garment are bought, all sizes and colors together; None without prices."""
    reached = [price_break for price_break in prices if price_break.count <= max(count, 1)]
    best = max(reached or prices[:1], key=lambda price_break: price_break.count, default=None)
    return best.price if best else None


def cost_of(lots: Sequence[Lot], spares: Sequence[int]) -> Decimal | None:
    """What the blanks to buy cost, spares included; None where a price is missing."""
    buy = [lot.to_buy + more for lot, more in zip(lots, spares, strict=True)]
    count: dict[str, int] = defaultdict(int)
    for lot, number in zip(lots, buy, strict=True):
        count[lot.garment] += number
    total = Decimal(0)
    for lot, number in zip(lots, buy, strict=True):
        price = price_for(lot.prices, count[lot.garment])
        if price is None:
            return None
        total += price * number
    return total


def sure_of(lots: Sequence[Lot], spares: Sequence[int], spoil: float) -> float:
    """The chance that no lot runs short."""
    return math.prod(lot.sure(more, spoil) for lot, more in zip(lots, spares, strict=True))


def spares_for_sureness(lots: Sequence[Lot], spoil: float, sureness: float) -> tuple[int, ...]:
    """The fewest spares of each lot so that none runs short with a chance of `sureness`.

    `spoil` is the share of pieces that go wrong and `sureness` a probability, both 0 to 1. Each next spare goes
    to the lot whose chance of being enough gains most; for one lot alone it is the binomial least buy."""
    spares = [0] * len(lots)
    for lot_no, sure in _one_by_one(lots, spoil):
        if sure >= sureness:
            break
        spares[lot_no] += 1
    return tuple(spares)


def spares_worth_having(lots: Sequence[Lot], spoil: float, second_order: Decimal) -> tuple[int, ...]:
    """The spares of each lot for which blanks and `second_order` times the chance of one cost least; none where a
    price is missing. Exact: within a price the spares go where they help most, which is best as the chances'
    logarithms are concave, and every number of them at every price is compared."""
    spares = [0] * len(lots)
    if any(not lot.prices for lot in lots):
        return tuple(spares)
    ways = [NOTHING]
    for garment in dict.fromkeys(lot.garment for lot in lots):
        own = {lot_no: lot for lot_no, lot in enumerate(lots) if lot.garment == garment}
        ways = _best(_both(way, other) for way in ways for other in _ways(own, spoil, second_order))
    best = min(ways, key=lambda way: (round(way.expected(second_order), 6), way.cost))
    for lot_no, more in best.spares:
        spares[lot_no] = more
    return tuple(spares)


def _one_by_one(lots: Sequence[Lot], spoil: float) -> Iterable[tuple[int, float]]:
    """The lot to get the next spare, and the chance of enough of all before it, without end."""
    spares, lately = [0] * len(lots), [lot.sure(0, spoil) for lot in lots]
    with_one_more = [lot.sure(1, spoil) for lot in lots]
    while lots:
        lot_no = max(range(len(lots)), key=lambda lot_no: (with_one_more[lot_no] / lately[lot_no], -lot_no))
        yield lot_no, math.prod(lately)
        spares[lot_no] += 1
        lately[lot_no], with_one_more[lot_no] = with_one_more[lot_no], lots[lot_no].sure(spares[lot_no] + 1, spoil)


def _ways(lots: dict[int, Lot], spoil: float, second_order: Decimal) -> list[Way]:
    """The ways worth looking at to buy one garment's lots: at every price its number reaches, the fewest blanks that
    reach it and more."""
    least = sum(lot.to_buy for lot in lots.values())
    steps = sorted({step.count for lot in lots.values() for step in lot.prices if step.count > least})
    ways: list[Way] = []
    for first, beyond in zip([least, *steps], [*steps, None], strict=True):
        if first > least and not _may_pay(lots.values(), least, first, second_order):
            continue
        at_price: dict[int, list[Way]] = {0: [NOTHING]}  # by how many spares
        for price, alike in _alike(lots, first).items():
            more = _class_ways(alike, price, spoil, second_order, first - least)
            merged: dict[int, list[Way]] = defaultdict(list)
            for count, some in at_price.items():
                for extra, way in enumerate(more):
                    merged[count + extra] += (_both(without, way) for without in some)
            at_price = {count: _best(some) for count, some in merged.items()}
        ways += (
            way
            for count, some in at_price.items()
            if first <= least + count and (beyond is None or least + count < beyond)
            for way in some
        )
    return _best(ways)


def _may_pay(lots: Iterable[Lot], least: int, count: int, second_order: Decimal) -> bool:
    """Whether buying `count` at the price for so many may cost no more than buying the least and ordering again."""
    lots = list(lots)
    now = cost_of(lots, [0] * len(lots)) or Decimal(0)
    bought = [(lot.to_buy, price_for(lot.prices, count) or Decimal(0)) for lot in lots]
    then = sum((number * price for number, price in bought), Decimal(0))
    return then + (count - least) * min(price for _, price in bought) < now + second_order


def _alike(lots: dict[int, Lot], count: int) -> dict[Decimal, dict[int, Lot]]:
    """The lots by what they cost when `count` are bought."""
    by_price: dict[Decimal, dict[int, Lot]] = defaultdict(dict)
    for lot_no, lot in lots.items():
        by_price[price_for(lot.prices, count) or Decimal(0)][lot_no] = lot
    return by_price


def _class_ways(lots: dict[int, Lot], price: Decimal, spoil: float, second_order: Decimal, least: int) -> list[Way]:
    """The best way to spread 0, 1, 2 … spares over lots of one price; on until at least `least`, and until all further
    ones together would save less than one costs."""
    places = list(lots)
    number = sum(lot.to_buy for lot in lots.values())
    spares: dict[int, int] = defaultdict(int)
    ways: list[Way] = []
    for lot_no, sure in _one_by_one(list(lots.values()), spoil):
        ways.append(Way(price * (number + len(ways)), sure, tuple(sorted(spares.items()))))
        left = float(second_order) * (1 - sure)
        if len(ways) > least and left <= max(float(price) - NO_GAIN, NO_GAIN):
            break
        spares[places[lot_no]] += 1
    return ways


def _both(way: Way, further: Way) -> Way:
    return Way(way.cost + further.cost, way.sure * further.sure, way.spares + further.spares)


def _best(ways: Iterable[Way]) -> list[Way]:
    """Those that no other beats in both cost and chance."""
    kept: list[Way] = []
    for way in sorted(ways, key=lambda way: (way.cost, -way.sure)):
        if not kept or way.sure > kept[-1].sure + NO_GAIN / 1000:
            kept.append(way)
    return kept
