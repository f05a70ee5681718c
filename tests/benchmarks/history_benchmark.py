"""Histories of a job, five drops each, held against a model; every fourth is saved by LibreOffice in between.

Run: python -m tests.benchmarks.history_benchmark [how many [first seed]]. Fails where plan and model part; prints what
was done in all of them together.
"""

import sys
from collections import Counter
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.kept.history import live


def main(count: int = 300, first: int = 0) -> int:
    told: Counter[str] = Counter()
    wrong = 0
    for seed in range(first, first + count):
        with TemporaryDirectory() as folder:
            try:
                told += live(seed, Path(folder), office=seed % 4 == 0)
            except AssertionError as parted:
                wrong += 1
                print(f"history {seed}: {parted}", flush=True)
    print(f"{count - wrong} of {count} histories agree with the model; {dict(told)}")
    return wrong


if __name__ == "__main__":
    sys.exit(main(*map(int, sys.argv[1:])))
