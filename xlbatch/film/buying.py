"""The rolls to buy for some strips, beside the pieces on hand, and what is cut from which.

Purchases are tried from the cheapest on that may hold the strips; the first that does is the cheapest, where every one
before it was proven not to. Of more strips than that is tried for, runs are made first and whole runs are cut from
rolls (rolls.py); of few kinds, the strips themselves. How much cheaper it might be done at most is told.
"""

import heapq
import math
from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import NamedTuple

from xlbatch.film.fit import Fit, Knife, Runs, StockPiece, StripCut, fewest_runs, filled, fit, taken
from xlbatch.film.rolls import Pattern, Scrap, Want, cheapest_rolls
from xlbatch.trade.spoilage import enough

EXACT = 60  # strips, up to which the purchase is proven the cheapest where the integer program can
PURCHASES = 4000  # that are looked at
KINDS = 60  # different strips, up to which they are cut from rolls without making runs of them first
MM = 1000  # µm


class RollOffer(NamedTuple):
    """A roll to buy: its length in µm, and its cost in small money, or in length where no price is known."""

    length: int
    cost: int


@dataclass(frozen=True)
class RollOrder:
    """What is asked for. Lengths in µm."""

    cuts: tuple[StripCut, ...]
    knife: Knife
    pieces: tuple[StockPiece, ...]
    offers: tuple[RollOffer, ...]
    usable: int  # the width of the rolls
    least_rest: int  # what is left of a roll or a piece as wide counts as spare film if it is so long
    spare: int = 0  # to be left over in all
    many_spare: int = 0  # the same where there are more strips than the cheapest purchase is proven for
    decals: int = 1
    spoil: float = 0.0  # the share of decals that go wrong
    second_order: float = 0.0  # what buying film once more costs beside the film, in the offers' money

    @property
    def a_decal(self) -> float:
        """The length that a decal takes on average, its share of the margins included."""
        length = sum(cut.length for cut in self.cuts)
        return (length + -(-length // self.knife.longest) * self.knife.margins) / self.decals

    def sure(self, rests: Sequence[int]) -> float:
        """The chance that what is left of the film is enough for the decals that go wrong."""
        room = sum(max(0, rest - self.knife.margins) for rest in rests)
        return enough(self.decals + int(room / self.a_decal), self.decals, self.spoil)


@dataclass(frozen=True)
class Purchase:
    """The rolls to buy, by their places among the offers; the runs of each piece and of each roll; and how much
    cheaper a purchase could be at most that was not ruled out."""

    rolls: tuple[int, ...]
    pieces: tuple[Runs, ...]
    cut: tuple[Runs, ...]
    cheaper: int = 0

    def rests(self, order: RollOrder) -> list[int]:
        """What is left of each roll, and of each piece that is as wide; of film of any length nothing is."""
        stocks = [*order.pieces, *(StockPiece(order.offers[offer].length, order.usable) for offer in self.rolls)]
        return [
            stock.length - taken(runs, order.cuts, order.knife)
            for stock, runs in zip(stocks, (*self.pieces, *self.cut), strict=False)
            if stock.usable >= order.usable
        ]

    def leaves(self, order: RollOrder) -> int:
        """The film left over."""
        return sum(rest for rest in self.rests(order) if rest >= order.least_rest)


def cheapest(order: RollOrder) -> Purchase:
    """The purchase of which least is to be expected to be paid. Where nothing is on offer, it has one roll as long as
    is needed."""
    if not order.offers:
        return _of_any_length(order)
    chosen = _first(order) if len(order.cuts) <= EXACT else None
    return _pieces_kept(order, chosen or _many(order))


def _first(order: RollOrder) -> Purchase | None:
    """The cheapest purchase that holds the strips, or one that is worth its higher price; None if none was found."""
    best: tuple[float, Purchase] | None = None
    doubtful: int | None = None  # the cost of the first purchase that might do
    for tried, (cost, rolls) in enumerate(_purchases(order)):
        if tried >= PURCHASES or (best and cost >= best[0]):
            break
        stocks = [*order.pieces, *(StockPiece(order.offers[offer].length, order.usable) for offer in rolls)]
        laid = fit(order.cuts, stocks, order.knife, exact=best is None)
        if laid is None and doubtful is None:
            doubtful = cost
        if laid is None or laid == "no":
            continue
        purchase = _purchase(order, rolls, laid)
        if purchase.leaves(order) >= order.spare:
            expected = cost + order.second_order * (1 - order.sure(purchase.rests(order)))
            if best is None or expected < best[0]:
                cheaper = cost - doubtful if doubtful is not None and doubtful < cost else 0
                best = expected, replace(purchase, cheaper=cheaper)
    return best[1] if best else None


def _purchases(order: RollOrder) -> Iterator[tuple[int, tuple[int, ...]]]:
    """Costs and rolls, the cheapest first and of equal ones the fewest rolls, from none on; only those that may hold
    all strips."""
    wanted = sum(cut.length for cut in order.cuts)
    on_hand = sum(order.knife.holds(piece) for piece in order.pieces)
    holds = [order.knife.holds(StockPiece(offer.length)) for offer in order.offers]
    waiting: list[tuple[int, int, tuple[int, ...], int]] = [(0, 0, (), on_hand)]
    while waiting:
        cost, count, rolls, room = heapq.heappop(waiting)
        if room >= wanted:
            yield cost, rolls
        for offer_no in range(rolls[-1] if rolls else 0, len(order.offers)):
            heapq.heappush(
                waiting, (cost + order.offers[offer_no].cost, count + 1, (*rolls, offer_no), room + holds[offer_no])
            )


def _purchase(order: RollOrder, rolls: tuple[int, ...], laid: Fit) -> Purchase:
    return Purchase(rolls, laid[: len(order.pieces)], laid[len(order.pieces) :])


def _pieces_kept(order: RollOrder, purchase: Purchase) -> Purchase:
    """The same rolls with the pieces left whole that are not needed, the longest first."""
    rolls = [StockPiece(order.offers[offer].length, order.usable) for offer in purchase.rolls]
    pieces = list(order.pieces)
    for place in sorted(range(len(pieces)), key=lambda place: -pieces[place].length):
        without = [*pieces[:place], StockPiece(0), *pieces[place + 1 :]]
        if not purchase.pieces[place] or len(order.cuts) > EXACT:
            pieces = without if not purchase.pieces[place] else pieces
            continue
        laid = fit(order.cuts, [*without, *rolls], order.knife, exact=False)
        if laid is not None and laid != "no":
            fewer = replace(_purchase(order, purchase.rolls, laid), cheaper=purchase.cheaper)
            if fewer.leaves(order) >= order.spare:
                purchase, pieces = fewer, without
    return purchase


def _of_any_length(order: RollOrder) -> Purchase:
    """The pieces on hand filled, the shortest first, and the rest in as few runs as were found."""
    laid, rest = filled(order.cuts, order.pieces, order.knife)
    runs = fewest_runs([order.cuts[cut] for cut in rest], order.knife, exact=len(rest) <= EXACT)
    more = tuple(tuple(rest[cut] for cut in run) for run in runs)
    length = taken(more, order.cuts, order.knife)
    offered = replace(order, offers=(RollOffer(length, length),) if more else ())
    purchase = Purchase((0,) if more else (), laid, (more,) if more else ())
    return purchase if not more else replace(_pieces_kept(offered, purchase), rolls=())


def _many(order: RollOrder) -> Purchase:
    """Runs as long as may be, or as long as a kind of roll is, cut from rolls and pieces; or, of few kinds of strips,
    these; whichever is cheapest."""
    order = replace(order, spare=order.many_spare)
    margins = order.knife.margins
    lengths = {min(order.knife.longest + margins, offer.length) for offer in order.offers}
    longest = max(cut.length for cut in order.cuts)
    knives = [Knife(length - margins, margins) for length in sorted(lengths, reverse=True)]
    choices = [_runs_bought(order, knife) for knife in knives if knife.longest >= longest]
    if len(set(order.cuts)) <= KINDS and not order.pieces:
        choices += [purchase for purchase in [_strips_bought(order)] if purchase]
    costs = [sum(order.offers[offer].cost for offer in purchase.rolls) for purchase in choices]
    best = min(range(len(choices)), key=lambda choice: (costs[choice], choice))
    return replace(choices[best], cheaper=max(0, costs[best] - _least_cost(order)))


def _least_cost(order: RollOrder) -> int:
    """What no purchase can cost less than, by length alone."""
    wanted = sum(cut.length for cut in order.cuts) - sum(order.knife.holds(piece) for piece in order.pieces)
    return max(
        0, math.ceil(wanted * min(o.cost / order.knife.holds(StockPiece(o.length)) for o in order.offers) - 1e-6)
    )


def _runs_bought(order: RollOrder, knife: Knife) -> Purchase:
    """Runs no longer than the knife's, and what whole runs are cut from."""
    waiting: dict[Want, list[tuple[int, ...]]] = defaultdict(list)
    for run in fewest_runs(order.cuts, knife, exact=False):
        length = taken((run,), order.cuts, knife)
        across = max(order.cuts[cut_no].across for cut_no in run)
        fits = (p for p, piece in enumerate(order.pieces) if piece.length >= length and piece.usable >= across)
        longest = max(offer.length for offer in order.offers) // MM
        waiting[Want(min(-(-length // MM), longest), tuple(fits))].append(run)
    wants = [want for want, runs in waiting.items() for _ in runs]
    full = [piece.usable >= order.usable for piece in order.pieces]
    scraps = [
        Scrap(piece.length // MM, -(-order.least_rest // MM) if wide else piece.length)
        for piece, wide in zip(order.pieces, full, strict=True)
    ]
    rolls = [(offer.length // MM, offer.cost) for offer in order.offers]
    patterns = cheapest_rolls(wants, rolls, -(-order.spare // MM), scraps)
    cut = [tuple(waiting[want].pop() for want in pattern.cut) for pattern in patterns]
    return _cut_so(order, patterns, cut)


def _strips_bought(order: RollOrder) -> Purchase | None:
    """Strips cut from rolls without making runs first; None where a roll's strips then make too many runs."""
    waiting: dict[Want, list[int]] = defaultdict(list)
    for cut_no, strip in enumerate(order.cuts):
        waiting[Want(-(-strip.length // MM))].append(cut_no)
    wants = [want for want, strips in waiting.items() for _ in strips]
    rolls = [(order.knife.holds(StockPiece(offer.length)) // MM, offer.cost) for offer in order.offers]
    patterns = cheapest_rolls(wants, rolls, -(-order.spare // MM))
    cut: list[Runs] = []
    for pattern in patterns:
        strips = [waiting[want].pop() for want in pattern.cut]
        runs = fewest_runs([order.cuts[number] for number in strips], order.knife, exact=True)
        cut.append(tuple(tuple(strips[number] for number in run) for run in runs))
        if taken(cut[-1], order.cuts, order.knife) > order.offers[pattern.at].length:
            return None
    return _cut_so(order, patterns, cut)


def _cut_so(order: RollOrder, patterns: Sequence[Pattern], cut: Sequence[Runs]) -> Purchase:
    pieces: list[Runs] = [()] * len(order.pieces)
    for pattern, runs in zip(patterns, cut, strict=True):
        if pattern.scrap:
            pieces[pattern.at] = runs
    bought = [(pattern.at, runs) for pattern, runs in zip(patterns, cut, strict=True) if not pattern.scrap]
    return Purchase(tuple(offer for offer, _ in bought), tuple(pieces), tuple(runs for _, runs in bought))
