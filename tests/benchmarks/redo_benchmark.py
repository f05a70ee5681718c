"""A plan of many garments, all done but some redos, against the first run: the time of the later plan.

Run: python -m tests.benchmarks.redo_benchmark [garments [redos]]. CPU seconds of this process, one run after the other.
Fails where the later plan takes more than a third of the first one's.
"""

import sys
from pathlib import Path
from tempfile import TemporaryDirectory
from time import process_time

from tests.plan_book import drop, written
from tests.workbooks import Rows, write_workbook

SIZES = ("S", "M", "L", "XL", "2XL", "Youth M", "Youth L")
DESIGNS = [
    ["Design", "Decal", "What", "Film", "Position", "Height"],
    ["Name", "Front", "print name", "Black smooth", "full front", "1 in"],
    ["Name", "Number", "number", "Red smooth", "back number", "4 in"],
]


def main(garments: int = 1000, redos: int = 30) -> int:
    names = (f"Person {at:04d}" for at in range(garments))
    people: Rows = [["Who", "Size", "Number"], *([who, SIZES[at % 7], str(at % 100)] for at, who in enumerate(names))]
    with TemporaryDirectory() as folder:
        roster = write_workbook(Path(folder) / "many.xlsx", {"Roster": people, "Designs": DESIGNS})
        start = process_time()
        outcome = drop(roster)
        first = process_time() - start
        book = written(outcome)
        book.cut("x", "Weeded")
        step = max(1, garments // redos)
        wrong = {no for at, no in enumerate(range(1, garments + 1)) if at % step == 0 and at // step < redos}
        book.result("ok", lambda row: row["Garment no."] not in wrong)
        book.result("redo garment", lambda row: row["Garment no."] in wrong and row["Piece"] == "Front")
        book.book.save(book.path)
        start = process_time()
        outcome = drop(book.path)
        second = process_time() - start
        later = written(outcome)
    left = {row["Garment no."] for _, row in later.steps()}
    assert left == wrong, f"{len(left)} garments are left to make"
    share = second / first
    print(f"{garments} garments: first {first:.1f} s; {redos} redos: {second:.1f} s, {share:.2f} of it (limit 0.33)")
    return int(second > first / 3)


if __name__ == "__main__":
    sys.exit(main(*map(int, sys.argv[1:])))
