"""Spoils 5,000 workbooks at random and plans each: what does not hold is printed. Run it with -m from the top folder.

Every tenth is planned to the end, sheets and cut files too. Arguments: the first seed, and how many.
"""

import sys
import tempfile
import warnings
from pathlib import Path

from tests.mutations import faults, spoiled


def main(first: int, count: int) -> int:
    """The number of workbooks with a fault."""
    warnings.simplefilter("ignore")  # openpyxl warns while it writes odd workbooks
    bad = 0
    with tempfile.TemporaryDirectory() as folder:
        for seed in range(first, first + count):
            found = list(faults(seed, Path(folder), write=seed % 10 == 0))
            if found:
                bad += 1
                print(seed, spoiled(seed)[0], *found, sep="\n  ")
    print(f"{count} workbooks spoiled, {bad} with a fault")
    return bad


if __name__ == "__main__":
    sys.exit(bool(main(*map(int, [*sys.argv[1:], "0", "5000"][:2]))))
