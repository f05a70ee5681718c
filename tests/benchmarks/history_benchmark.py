"""Histories of a job, five drops each, held against a model of it.

Run: python -m tests.benchmarks.history_benchmark [how many [first seed [office]]]. With `office`, plans are saved by
LibreOffice as .xlsx or .ods in between. The plans' workbooks alone are written, without their sheets of pictures. Fails
where plan and model part; prints what was done in all of them together.
"""

import sys
from collections import Counter
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.kept.history import live
from tests.plan_book import drop_for_workbook


def main(how_many: int = 300, first: int = 0, *, office: bool = False) -> int:
    told: Counter[str] = Counter()
    wrong = 0
    for seed in range(first, first + how_many):
        with TemporaryDirectory() as folder:
            try:
                told += live(seed, Path(folder), office=office, drop=drop_for_workbook)
            except AssertionError as parted:
                wrong += 1
                print(f"history {seed}: {parted}", flush=True)
    print(f"{how_many - wrong} of {how_many} histories agree with the model; {dict(told)}")
    return wrong


if __name__ == "__main__":
    numbers = [int(word) for word in sys.argv[1:] if word.isdecimal()]
    sys.exit(main(*numbers, office="office" in sys.argv))
