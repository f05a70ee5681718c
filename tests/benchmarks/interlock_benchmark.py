"""How much film interlocking saves on the examples, and how a public library fares with the same shapes at equal time.

Run: -m tests.benchmarks.interlock_benchmark [--effort N] [--seconds N]

For every run of the two larger examples, laid in strips of boxes: its strips of boxes, the same strips interlocked, and
all its decals interlocked as if they were one strip, each beside what `spyrrow` finds for the same shapes, where it is
installed. It runs on one core as long as the search here took, but at least `--seconds`. Its shapes may lie between the
words of a line and beside parts that stand apart, which is not allowed here. Lengths in mm without end margins;
seconds are those of the processor.
"""

import argparse
import importlib
import time
from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime
from pathlib import Path
from typing import Any

import shapely

from xlbatch.film.box import bed_of
from xlbatch.film.interlock import interlock
from xlbatch.film.layout import Lying, Run, Strip
from xlbatch.film.shape import upright
from xlbatch.job.job import Settings
from xlbatch.roster.read import Reading, read
from xlbatch.run import make_plan

EXAMPLES = Path(__file__).parents[2] / "example_workbooks"


def here(strips: Sequence[Strip], run: Run, settings: Settings, effort: int) -> tuple[float, float]:
    """The length of the strips interlocked, with a gap between them, and the seconds it took."""
    began = time.process_time()
    found = interlock(strips, bed_of(run.film, settings), effort, mirrored=True)
    return sum(strip.length + settings.gap for strip in found) - settings.gap, time.process_time() - began


def peer(strips: Sequence[Strip], run: Run, settings: Settings, seconds: float) -> float | None:
    """The same with the library, each strip in its share of the seconds; None where it is missing."""
    try:
        library: Any = importlib.import_module("spyrrow")
    except ImportError:
        return None
    width, total = run.film.usable_width + settings.gap, -settings.gap
    for strip in strips:
        items = [
            library.Item(str(at), [(y, x) for x, y in around(lying, settings.gap)], 1, [0, 90, 180, 270])
            for at, lying in enumerate(strip.lying)
        ]
        config = library.StripPackingConfig(
            total_computation_time=max(2, round(seconds / len(strips))),
            min_items_separation=settings.gap,
            num_workers=1,
            seed=0,
        )
        total += float(library.StripPackingInstance("", width, items).solve(config).width)
    return total


def around(lying: Lying, gap: float) -> Sequence[tuple[float, float]]:
    """The outline closed just as far as makes it one piece, which is what the library takes."""
    if lying.decal.outline is None:
        return [(0, 0), (lying.width, 0), (lying.width, lying.length), (0, lying.length)]
    shape, ball = upright(lying.decal.outline), gap / 2
    while len(parts := shapely.get_parts(shape.buffer(ball).buffer(-ball))) > 1:
        ball *= 1.4
    return list(shapely.get_coordinates(shapely.get_exterior_ring(parts[0]).simplify(0.05)).tolist())[:-1]


def main(effort: int, least: float) -> None:
    """Prints a line a run, and the sums."""
    print(f"{'':28}  decals   boxes | strips       s  spyrrow | one strip       s  spyrrow")
    for path in (EXAMPLES / "lantern walk.xlsx", EXAMPLES / "relay squad.xlsx"):
        reading = read(path)
        assert isinstance(reading, Reading)
        plan = make_plan(reading, 1, lambda _: None, datetime(2026, 5, 4))
        settings = plan.job.settings
        for run in plan.layout.runs:
            boxes = run.length - 2 * settings.end_margin
            line = f"{path.stem}, {run.film.name:14}".ljust(28) + f"  {len(run.lying):6}  {boxes:6.0f}"
            whole = replace(run.strips[0], length=boxes, lying=run.lying)
            for strips in (run.strips, (whole,)):
                length, took = here(strips, run, settings, effort)
                other = peer(strips, run, settings, max(took, least))
                line += f" | {length:6.0f}  {took:6.1f}  " + ("      -" if other is None else f"{other:7.0f}")
            print(line, flush=True)


if __name__ == "__main__":
    options = argparse.ArgumentParser()
    options.add_argument("--effort", type=int, default=1)
    options.add_argument("--seconds", type=float, default=2)
    chosen = options.parse_args()
    main(chosen.effort, chosen.seconds)
