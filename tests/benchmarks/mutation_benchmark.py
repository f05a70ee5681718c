"""Spoils 5,000 workbooks at random and plans each: what does not hold is printed. Run it with -m from the top folder.

Every tenth is planned to the end, sheets and cut files too. Arguments: the first seed, how many, and `further` for the
further ways of spoiling.
"""

import sys
import tempfile
import traceback
import warnings
from pathlib import Path

from tests.further_mutations import further_faults
from tests.mutations import faults


def main(first: int, count: int, *, further: bool) -> int:
    """The number of workbooks with a fault."""
    warnings.simplefilter("ignore")  # openpyxl warns while it writes odd workbooks
    judge = further_faults if further else faults
    bad = 0
    with tempfile.TemporaryDirectory() as folder:
        for seed in range(first, first + count):
            try:
                found = list(judge(seed, Path(folder), write=seed % 10 == 0))
            except Exception:  # the others go on
                found = [traceback.format_exc()]
            if found:
                bad += 1
                print(seed, *found, sep="\n  ", flush=True)
    print(f"{count} workbooks spoiled, {bad} with a fault")
    return bad


if __name__ == "__main__":
    numbers = [int(each) for each in sys.argv[1:] if each.isdigit()]
    first, count = (*numbers, *(0, 5000)[len(numbers) :])
    sys.exit(bool(main(first, count, further="further" in sys.argv)))
