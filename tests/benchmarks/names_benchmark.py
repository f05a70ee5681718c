"""How much film a list of names alone takes, end margins included, over the proven least; fails where a goal is missed.

Run: -m tests.benchmarks.names_benchmark [--most PEOPLE]
"""

import argparse
import random
import sys
import tempfile
import time
from datetime import datetime
from pathlib import Path

from tests.workbooks import write_workbook
from xlbatch.roster.read import Reading, read
from xlbatch.run import make_plan

FIRST = (
    "Ana Ivo Mei Tung Bart Lu Joan Carl Petra Sam Nils Rosa Ola Kim Dora Jo Theodora Uri Zoe Max Agnes Bela Cleo Dan "
    "Edith Finn Greta Hugo Iris Jack"
)
LAST = (
    "Novak Lund Chen Tran Ashgrove Xi Wren Otte Ilves Oak Berg Diaz Moe Rae Finch Ek Vandermolen Baz Lark Rook Hill "
    "Quist Sable Tamm Urban Vale Winter York Zeller Amsel"
)
SIZES = ("S", "M", "L", "XL", "2XL", "Youth S", "Youth M", "Youth L", "Ladies M", "Ladies L")
GOALS = {12: 1.25, 60: 1.13, 300: 1.10}  # people: film over the least


def ratio(people: int, effort: int = 1) -> float:
    """Film over the proven least for so many invented people with the built-in design."""
    dice = random.Random(people)
    first, last = FIRST.split(), LAST.split()
    rows = [[f"{dice.choice(first)} {dice.choice(last)}", dice.choice(SIZES)] for _ in range(people)]
    with tempfile.TemporaryDirectory() as folder:
        path = write_workbook(Path(folder) / "names.xlsx", {"Roster": [["Who", "Size"], *rows]})
        reading = read(path)
        assert isinstance(reading, Reading)
        needs = make_plan(reading, effort, lambda _: None, datetime(2026, 5, 4)).layout.needs
    return sum(need.length for need in needs) / sum(need.least for need in needs)


if __name__ == "__main__":
    options = argparse.ArgumentParser()
    options.add_argument("--most", type=int, default=max(GOALS))
    most = options.parse_args().most
    missed = False
    for people, goal in GOALS.items():
        if people <= most:
            began = time.process_time()
            reached = ratio(people)
            missed |= reached > goal
            print(f"{people:4} names: {reached:.3f}, goal {goal:.2f}, {time.process_time() - began:.1f} s")
    sys.exit(missed)
