"""How boxes, strips and batches known by their sizes alone are laid, chosen and cut, kept as text: lengths in µm. What
is drawn by lot is the same each time. Where a change is meant, look at what got longer or dearer."""

import random
from collections.abc import Iterator, Sequence
from dataclasses import replace
from pathlib import Path

import numpy as np

from xlbatch.film.batch_costs import BatchCosts, FilmBoxes, Larger
from xlbatch.film.batches import choose_batches
from xlbatch.film.bound import Slices, least_length, worths
from xlbatch.film.box import Bed, Box, Packing
from xlbatch.film.buying import RollOffer, RollOrder, cheapest
from xlbatch.film.fit import Knife, StockPiece, StripCut, fewest_runs, fit
from xlbatch.film.free import pack, pack_each
from xlbatch.film.knapsack import fullest
from xlbatch.film.pack_sets import pack_sets
from xlbatch.film.rolls import Pattern, Scrap, Want, cheapest_rolls
from xlbatch.film.strip_lengths import least_lengths
from xlbatch.film.sweep import sweep

BED = Bed(296_001, 700_001, 6_000, turn=True)
UPRIGHT = replace(BED, turn=False)
YARD = 914_400


def packings_text(_folder: Path) -> Iterator[tuple[str, str]]:
    """Boxes laid freely and in strips, and what they take at least."""
    dice = random.Random(3)
    yield "packings.txt", "".join(f"{line}\n" for part in (_strips, _free) for line in part(dice))


def _strips(dice: random.Random) -> Iterator[str]:
    for bed, sets in ((BED, 9), (UPRIGHT, 9), (BED, 45)):
        strips = [_drawn(dice, 1 + number % 8) for number in range(sets)]
        yield f"\n== {sets} strips{'' if bed.turn else ', none turned'}"
        yield f"lengths {least_lengths(strips, bed, 60).tolist()}"
        yield from map(_packing, pack_sets(strips, bed, 60))


def _free(dice: random.Random) -> Iterator[str]:
    for count, tries, bed in ((7, 40, BED), (24, 36, BED), (24, 20, UPRIGHT), (40, 17, BED)):
        boxes = _drawn(dice, count)
        yield f"\n== {count} boxes{'' if bed.turn else ', none turned'}"
        yield f"least {least_length(boxes, bed)}, worth {worths(boxes, bed).round(2).tolist()}"
        yield f"swept {_packing(sweep(boxes, bed, 3))}"
        yield f"laid {_packing(pack(boxes, bed, tries))}"
    like = [box for box in _drawn(dice, 9) for _ in range(dice.randint(2, 8))]
    yield f"\n== {len(like)} boxes of 9 sizes"
    yield f"swept {_packing(sweep(like, BED, 4))}"
    yield f"laid {_packing(pack(like, BED, 8))}"
    yield "\n== four sets"
    several = [_drawn(dice, count) for count in (16, 5, 16, 18)]
    yield from map(_packing, pack_each(several, BED, 24))


def _drawn(dice: random.Random, count: int, wide: int = 200_000, long: int = 120_000) -> list[Box]:
    return [(dice.randint(20_000, wide), dice.randint(15_000, long)) for _ in range(count)]


def _packing(packing: Packing) -> str:
    spots = " ".join(f"{spot.across}/{spot.along}{'t' if spot.turned else ''}" for spot in packing.spots)
    return f"{packing.length}: {spots}"


def choices_text(_folder: Path) -> Iterator[tuple[str, str]]:
    """What fits side by side, how strips are cut, which rolls are bought, and which garments share a batch."""
    dice = random.Random(5)
    parts = (_knapsacks, _runs, _orders, _rolls, _batches)
    yield "film choices.txt", "".join(f"{line}\n" for part in parts for line in part(dice))


def _batches(dice: random.Random) -> Iterator[str]:
    for count, each, effort, most, larger, films in (
        (6, 2, 0, 3, None, 1), (8, 2, 1, 3, None, 2), (9, 1, 1, 4, None, 1), (5, 5, 1, 3, None, 1),
        (9, 1, 1, 3, Larger(6, 250_000), 1), (13, 1, 1, 2, Larger(4, 300_000), 2),
    ):  # fmt: skip
        of_films = [
            FilmBoxes(BED, tuple(tuple(_drawn(dice, each, 280_000, 150_000)) for _ in range(count)))
            for _ in range(films)
        ]
        places = dice.sample(range(count), count)
        chosen = choose_batches(of_films, most, effort, larger, places)
        costs = BatchCosts(of_films, larger, most, places)
        yield f"\n== {count} garments of {each} boxes in {films} films, effort {effort}, most {most}, {larger}"
        yield f"{chosen} cost {costs.of(chosen, 60).tolist()}"
        yield f"areas {costs.areas.round(1).tolist()}"
    whole = [tuple(range(first, min(first + size, count))) for size in (1, 2, 4) for first in range(0, count, size)]
    yield f"costs {costs.of(whole, 20).tolist()}"


def _knapsacks(dice: random.Random) -> Iterator[str]:
    yield "\n== knapsacks"
    for room in (90, 400, 700):
        sizes = np.array(sorted(dice.randint(room // 12, room // 2) for _ in range(24)))
        worth = np.array([size * dice.uniform(0.8, 1.2) for size in sizes.tolist()])
        counts = np.array([dice.randint(0, 4) for _ in range(24)])
        yield f"{room}: {sorted(fullest(room, sizes, worth, counts).items())}"
    boxes = [(dice.randint(155_000, 290_000), dice.randint(150_000, 250_000)) for _ in range(12)]
    boxes += [(40_000, 15_000), (136_000, 90_000)]
    for bed in (BED, UPRIGHT):
        ways = [bed.ways(box) for box in boxes]
        slices, widths = Slices(ways, bed.width, (60, 30)), np.array(sorted({way[0] for of in ways for way in of}))
        for amounts in ([3] * 14, [0, 1] * 6 + [5, 4], [0] * 12 + [9, 2]):
            prices = slices.prices_of(widths, np.array(amounts))
            most = prices.most.tolist() if prices.grid > 1 else int(prices.most.sum())
            yield f"prices {prices.of.tolist()}, most {most}, grid {prices.grid}, by area {slices.by_area}"
            yield f"proof {slices.proof(amounts):.2f}, worth {slices.worth.round(2).tolist()}"


def _cuts(dice: random.Random, count: int) -> list[StripCut]:
    return [StripCut(dice.randint(60_000, 420_000), dice.choice((290_000, 150_000))) for _ in range(count)]


def _runs(dice: random.Random) -> Iterator[str]:
    yield "\n== runs"
    knife = Knife(650_000, 44_000)
    for count, spare in ((6, 0), (9, 0), (9, 9_000), (12, 3_000), (12, 40_000), (18, 5_000)):
        cuts = _cuts(dice, count)
        stocks = [
            StockPiece(
                min(sum(cut.length for cut in three), 650_000) + 44_000 + spare, max(cut.across for cut in three)
            )
            for three in (cuts[first : first + 3] for first in range(0, count, 3))
        ]
        stocks.append(StockPiece(dice.randint(700_000, 2_000_000), dice.choice((290_000, 140_000))))
        for exact in (True, False):
            yield f"{[knife.holds(stock) for stock in stocks]}: {fit(cuts, stocks, knife, exact=exact)}"
            yield f"fewest {fewest_runs(cuts, knife, exact=exact)}"


def _rolls(dice: random.Random) -> Iterator[str]:
    yield "\n== rolls"
    for spare, pieces, sold in ((0, 0, 2), (120, 2, 1), (700, 3, 2), (0, 4, 1)):
        wants = [Want(dice.randint(100, 800), tuple(range(dice.randint(0, pieces)))) for _ in range(14)]
        wants += [Want(250)] * 5
        scraps = [Scrap(dice.randint(200, 1200), dice.choice((60, 200))) for _ in range(pieces)]
        yield "; ".join(map(_pattern, cheapest_rolls(wants, [(914, 625), (4572, 2400)][:sold], spare, scraps)))


def _pattern(pattern: Pattern) -> str:
    cut = " ".join(str(want.length) for want in pattern.cut)
    return f"{'piece' if pattern.scrap else 'roll'} {pattern.at}: {cut}"


def _orders(dice: random.Random) -> Iterator[str]:
    offers = (RollOffer(YARD, 62_500), RollOffer(5 * YARD, 240_000))
    held = (StockPiece(700_000, 290_000), StockPiece(1_100_000, 290_000), StockPiece(900_000, 150_000))
    for count, sold, pieces, spare in (
        (6, offers, (), 0), (9, offers, held, 0), (9, (), held, 0), (5, (), (), 0), (12, offers, held[1:], 400_000),
        (70, offers, (), 300_000), (70, offers, held, 0), (64, offers[:1], held, 500_000),
    ):  # fmt: skip
        cuts = _cuts(dice, count)
        order = RollOrder(
            tuple(cuts), Knife(860_000, 44_000), pieces, sold, 290_000, 56_001, spare, spare // 2, 3 * count, 0.04, 9e4
        )
        yield f"\n== {count} strips, {len(sold)} rolls sold, {len(pieces)} on hand, spare {spare}"
        yield _purchase(order)


def _purchase(order: RollOrder) -> str:
    bought = cheapest(order)
    runs: Sequence[object] = (bought.rolls, bought.pieces, bought.cut)
    return f"{runs} cheaper {bought.cheaper}, rests {bought.rests(order)}, sure {order.sure(bought.rests(order)):.5f}"
