"""Random edits planted in a plan in the middle of the work: Changes must list exactly these, and ask where it must.

Run: python -m tests.benchmarks.changes_benchmark [how many [first seed]]. Fails where anything differs.
"""

import sys
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.kept.planted import differences, worked_on


def main(how_many: int = 100, first: int = 0) -> int:
    wrong = 0
    with TemporaryDirectory() as folder:
        plan = worked_on(Path(folder)).path
        for seed in range(first, first + how_many):
            found = list(differences(plan, seed))
            wrong += bool(found)
            for difference in found:
                print(f"case {seed}: {difference}", flush=True)
    print(f"{how_many - wrong} of {how_many} cases: exactly the planted edits, each asked about where it must be")
    return wrong


if __name__ == "__main__":
    sys.exit(main(*map(int, sys.argv[1:])))
