"""How near the layout comes to the proven least film, how long it takes, and how public libraries fare at equal time.

Run: film_benchmark.py [--python312 PATH] [--zdf FOLDER] [--most GARMENTS] [--seconds N]

- Jobs as they occur: each garment has a front in one of eight sizes 200 to 300 mm wide, a name 60 to 300 by 40 to 60 mm
  and a number of one or two digits, all in one film of 290 mm with a gap of 6 mm, laid in strips of up to three
  garments, and freely. Lengths are stated over the slice bound, end margins apart.
- Hopper and Turton's instances C1 to C7 (known optimum), which the package `hyperpack` carries.
- The ZDF instances (Zhang, Wei, Leung and Chen, 2013), where a folder with them is given: length over the area bound.

Libraries run in processes of their own, as long as the search here took but at least `--seconds`; packingsolver needs
Python 3.12 or later: `--python312` names one that has it. A library that is missing, or finds nothing, is a dash.
"""

import argparse
import importlib
import json
import random
import subprocess
import sys
import time
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path

from xlbatch.film.batches import FilmBoxes, choose_batches
from xlbatch.film.bound import least_length
from xlbatch.film.box import UM, Bed, Box
from xlbatch.film.drop import least_lengths
from xlbatch.film.free import pack

GARMENTS = (12, 60, 300, 2000, 10_000)
WIDTH, GAP, SHIRTS = 290, 6, 3
FRONTS = (200, 214, 229, 243, 257, 271, 286, 300)
TRIES = {0: 50, 1: 1500}  # for a strip of a chosen batch
FREE_TRIES = 3000  # of the free search: so many in all, over blocks of 60 boxes, at least 16
PEERS = ("rectpack", "rectangle-packer", "spyrrow", "packingsolver")  # as peers.py knows them
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


def tries(boxes: Sequence[Box]) -> int:
    return max(16, FREE_TRIES * 60 // max(60, len(boxes)) // 10)


def timed(work: Callable[[], int]) -> tuple[int, float]:
    began = time.perf_counter()
    return work(), time.perf_counter() - began


def others(boxes: Sequence[Box], width: int, seconds: float, python312: str) -> Iterator[float | None]:
    """The length each library finds in the time, in the order of `PEERS`."""
    asked = json.dumps({"width": width, "boxes": boxes})
    for name in PEERS:
        python = python312 if name == "packingsolver" and python312 else sys.executable
        command = [python, str(Path(__file__).with_name("peers.py")), name, f"{seconds:.1f}"]
        try:
            said = subprocess.run(command, input=asked, capture_output=True, text=True, timeout=2 * seconds + 20).stdout
        except subprocess.TimeoutExpired as late:
            said = (late.stdout or b"").decode()
        lines = [line for line in said.splitlines() if line.replace(".", "", 1).isdigit()]
        yield float(lines[-1]) if lines else None


def told(lengths: Sequence[float | None], least: float) -> str:
    return "  ".join(f"{'-':>16}" if length is None else f"{length / least:16.4f}" for length in lengths)


def jobs(most: int, seconds: float, python312: str) -> None:
    bed = Bed((WIDTH + GAP) * UM, 10**9, GAP * UM, True)
    names = "  ".join(f"{name:>16}" for name in PEERS)
    print(f"garments  effort  strips       s     free       s   bound m       s  {names}")
    for count in (each for each in GARMENTS if each <= most):
        dice = random.Random(count)
        garments = [garment(dice) for _ in range(count)]
        boxes = [box for each in garments for box in each]
        least, proved = timed(lambda boxes=boxes: least_length(boxes, bed))  # type: ignore[misc]
        for effort in (0, 1):
            in_strips, stripped = timed(lambda e=effort, g=garments: strips(g, bed, e))  # type: ignore[misc]
            free, freed = timed(lambda e=effort, b=boxes: pack(b, bed, tries(b) if e else 1).length)  # type: ignore[misc]
            line = (
                f"{count:8}  {effort:6}  {in_strips / least:6.4f}  {stripped:6.1f}   {free / least:6.4f}  {freed:6.1f}"
            )
            small = [(w // UM, h // UM) for w, h in boxes]
            found = others(small, bed.width // UM, max(freed, seconds), python312) if effort else ()
            bound = f"   {least / UM / 1000:7.1f}  {proved:6.1f}"
            print(f"{line}  {freed:6.1f}{bound}  {told(list(found), least / UM)}", flush=True)


def hopper_and_turton(seconds: float, python312: str) -> None:
    gaps: list[list[float | None]] = []
    print(f"\n{'instance':10}  optimum    here       s  " + "  ".join(f"{name:>16}" for name in PEERS))
    for name, optimum in OPTIMUM.items():
        data = importlib.import_module(f"hyperpack.benchmarks.datasets.hopper_and_turton_2000.{name}")
        for letter in "abc":
            boxes = [(item["w"], item["l"]) for item in getattr(data, f"items_{letter}").values()]
            width = round(sum(w * h for w, h in boxes) / optimum)
            work = lambda b=boxes, w=width: pack(b, Bed(w, 10**9, 0, True), tries(b)).length  # noqa: E731
            length, took = timed(work)
            found = list(others(boxes, width, max(took, seconds), python312))
            gaps.append([each and each / optimum - 1 for each in (length, *found)])
            print(f"{name + letter:10}  {optimum:7}  {length:6}  {took:6.1f}  {told(found, optimum)}", flush=True)
    means = [[gap for gap in column if gap is not None] for column in zip(*gaps, strict=True)]
    said = (f"{sum(each) / len(each):.2%} ({len(each)})" if each else "-" for each in means)
    print("mean gap (of so many): " + ", ".join(f"{n} {m}" for n, m in zip(("here", *PEERS), said, strict=True)))


def zdf(folder: Path, seconds: float, python312: str) -> None:
    print(f"\n{'instance':10}   items  one pass       s    here       s  " + "  ".join(f"{n:>16}" for n in PEERS))
    for path in sorted(folder.glob("zdf*.txt"), key=lambda path: int(path.stem[3:])):
        count, width, *rest = map(int, path.read_text().split())
        boxes = [(rest[at + 1], rest[at + 2]) for at in range(0, 3 * count, 3)]
        area = sum(w * h for w, h in boxes) / width
        bed = Bed(width, 10**9, 0, True)
        once, quick = timed(lambda b=boxes, bed=bed: pack(b, bed, 1).length)  # type: ignore[misc]
        length, took = timed(lambda b=boxes, bed=bed: pack(b, bed, 16).length)  # type: ignore[misc]
        found = told(list(others(boxes, width, max(took, seconds), python312)), area)
        line = f"{path.stem:10}  {count:6}    {once / area:6.4f}  {quick:6.1f}  {length / area:6.4f}  {took:6.1f}"
        print(f"{line}  {found}", flush=True)


if __name__ == "__main__":
    options = argparse.ArgumentParser()
    options.add_argument("--python312", default="")
    options.add_argument("--zdf", type=Path)
    options.add_argument("--most", type=int, default=GARMENTS[-1])
    options.add_argument("--seconds", type=float, default=5)
    chosen = options.parse_args()
    jobs(chosen.most, chosen.seconds, chosen.python312)
    hopper_and_turton(chosen.seconds, chosen.python312)
    if chosen.zdf:
        zdf(chosen.zdf, chosen.seconds, chosen.python312)
