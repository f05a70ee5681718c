"""How near the layout comes to the proven least film, and how long it takes. Run this file to see.

Jobs as they occur: each garment has a front in one of eight sizes 200 to 300 mm wide, a name 60 to 300 by 40 to 60 mm
and a number of one or two digits, all in one film of 290 mm with a gap of 6 mm, laid in strips of up to three garments
and freely. Lengths are stated over the slice bound, end margins apart. Then the published instances of Hopper and
Turton (C1 to C7, known optimum), 20,000 boxes laid at most for each.
"""

import importlib
import random
import time
from collections.abc import Sequence

from xlbatch.film.batches import FilmBoxes, choose_batches
from xlbatch.film.bound import least_length
from xlbatch.film.box import UM, Bed, Box
from xlbatch.film.drop import least_lengths
from xlbatch.film.free import pack

GARMENTS = (12, 60, 300, 2000)
WIDTH, GAP, SHIRTS = 290, 6, 3
FRONTS = (200, 214, 229, 243, 257, 271, 286, 300)
TRIES = {0: 50, 1: 1500}  # for a strip of a chosen batch
FREE_TRIES = 15_000  # boxes laid in the free search, by effort
OPTIMUM = {"C1": 20, "C2": 15, "C3": 30, "C4": 60, "C5": 90, "C6": 120, "C7": 240}


def garment(dice: random.Random) -> tuple[Box, ...]:
    """A front, a name and a number, the gap added, in µm."""
    front = dice.choice(FRONTS)
    sizes = (
        (front, front * 4 // 5),
        (dice.randint(60, 300), dice.randint(40, 60)),
        (95 * dice.choice((1, 2)), 200),
    )
    return tuple(((across + GAP) * UM, (along + GAP) * UM) for across, along in sizes)


def strips(garments: Sequence[tuple[Box, ...]], bed: Bed, effort: int) -> int:
    """The length of all strips, one after another."""
    batches = choose_batches([FilmBoxes(bed, tuple(garments))], SHIRTS, effort)
    sets = [[box for at in batch for box in garments[at]] for batch in batches]
    return int(least_lengths(sets, bed, TRIES[effort]).sum())


def jobs() -> None:
    bed = Bed((WIDTH + GAP) * UM, 10**9, GAP * UM, True)
    print("garments  effort  strips / bound  seconds   free / bound  seconds   bound m  seconds")
    for count in GARMENTS:
        dice = random.Random(count)
        garments = [garment(dice) for _ in range(count)]
        boxes = [box for each in garments for box in each]
        began = time.perf_counter()
        least = least_length(boxes, bed)
        proved = time.perf_counter() - began
        for effort in (0, 1):
            began = time.perf_counter()
            in_strips = strips(garments, bed, effort)
            stripped = time.perf_counter() - began
            began = time.perf_counter()
            free = pack(boxes, bed, effort * FREE_TRIES // len(boxes)).length
            freed = time.perf_counter() - began
            line = f"{count:8}  {effort:6}  {in_strips / least:14.4f}  {stripped:7.1f}   {free / least:12.4f}"
            print(f"{line}  {freed:7.1f}   {least / UM / 1000:7.1f}  {proved:7.1f}", flush=True)


def published() -> None:
    gaps = []
    began = time.perf_counter()
    for name, optimum in OPTIMUM.items():
        data = importlib.import_module(f"hyperpack.benchmarks.datasets.hopper_and_turton_2000.{name}")
        for letter in "abc":
            boxes = [(item["w"], item["l"]) for item in getattr(data, f"items_{letter}").values()]
            width = round(sum(w * h for w, h in boxes) / optimum)
            length = pack(boxes, Bed(width, 10**9, 0, True), 20_000 // len(boxes)).length
            gaps.append(length / optimum - 1)
            print(f"{name}_{letter}: {length} of {optimum}", flush=True)
    print(f"mean gap {sum(gaps) / len(gaps):.2%} in {time.perf_counter() - began:.0f} s")


if __name__ == "__main__":
    jobs()
    published()
