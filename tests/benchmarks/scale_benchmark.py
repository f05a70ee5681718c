"""How long a large job takes to be laid out and written as SVG, and how much memory all of it takes.

Run: scale_benchmark.py [garments [effort]]; a list of names and sizes, the usual design. Nothing is asserted.
"""

import random
import resource
import sys
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from xlbatch.art.draw import draw
from xlbatch.check.check import check
from xlbatch.cutfiles.run_svg import cut_files
from xlbatch.film.lay import lay
from xlbatch.film.unfit import unfit
from xlbatch.roster.read import Unreadable, read

SYLLABLES = ("an", "be", "chi", "do", "el", "fa", "gu", "ho", "is", "jo", "ka", "lu", "mi", "no", "or", "pe", "ri")
SIZES = ("S", "M", "L", "XL", "Youth M")


@contextmanager
def timed(what: str) -> Iterator[None]:
    began = time.perf_counter()
    yield
    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss // 1024
    print(f"{what:28} {time.perf_counter() - began:7.1f} s   {peak:5} MB so far", flush=True)


def roster(garments: int) -> str:
    dice = random.Random(garments)
    rows = (f"{_name(dice)} {_name(dice)},{dice.choice(SIZES)}" for _ in range(garments))
    return "\n".join(("Who,Size", *rows, ""))


def _name(dice: random.Random) -> str:
    return "".join(dice.choice(SYLLABLES) for _ in range(dice.randint(2, 4))).title()


def main(garments: int = 10_000, effort: int = 0) -> None:
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder, "large.csv")
        path.write_text(roster(garments), encoding="utf-8")
        reading = read(path)
        assert not isinstance(reading, Unreadable)
        job = reading.job
        with timed("read, checked and drawn"):
            made, _ = check(job, frozenset())
            decals, _ = draw(job, made)
            held = {row for found in unfit(job, made, decals) for row in found.rows}
            made = tuple(each for each in made if each.row.source.row not in held)
            numbers = {each.no for each in made}
            decals = tuple(each for each in decals if each.garment_no in numbers)
        with timed(f"{len(made)} garments laid out"):
            layout = lay(job, made, decals, effort)
        with timed("cut files written"):
            size = 0
            for file in cut_files(layout, job.settings):
                Path(folder, file.name).write_text(file.text, encoding="utf-8")
                size += len(file.text)
        film = sum(need.length for need in layout.needs) / 1000
        print(f"{len(layout.runs)} runs, {size / 1e6:.0f} MB of SVG, {film:.0f} m of film")


if __name__ == "__main__":
    main(*map(int, sys.argv[1:]))
