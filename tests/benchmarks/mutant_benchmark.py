"""Do the tests notice? Changes one place of the program at a time and runs the tests: a change none of them notices is
printed. Run it with -m from the top folder; arguments: how many (200), the seed (1), and rooms (all).

The places are drawn by seed, three quarters of them the same number in every room, the others in proportion to its
code. A change is made in a copy of the tree. First small jobs are planned and compared line by line, then the tests
that run the changed line are run, those of its room first, to the first that fails. What is stopped half-way has tried
a part of the places drawn by chance. Each change and what noticed it are written to dist/mutants.txt.
"""

import compileall
import py_compile
import shutil
import sys
import tempfile
from collections import Counter
from pathlib import Path

from tests.benchmarks import warm
from tests.benchmarks.covering import Covering, coverings, tests_of
from tests.benchmarks.mutants import PACKAGE, Mutant, drawn

REPOSITORY = PACKAGE.parent
OVERALL, ANY_ROOM = 0.85, 0.75  # the least part that must be noticed
LINES = "tests/test_as_written.py"


def copied(folder: Path) -> Path:
    """A copy of the tree, compiled so that a changed module is known by what it says, not by its date."""
    tree = folder / "tree"
    shutil.copytree(REPOSITORY, tree, ignore=shutil.ignore_patterns(".*", "dist", "__pycache__"))
    checked = py_compile.PycInvalidationMode.CHECKED_HASH
    compileall.compile_dir(tree / "xlbatch", quiet=1, invalidation_mode=checked)
    return tree


def noticed_by(mutant: Mutant, tree: Path, known: list[Covering]) -> str:
    """What notices the change, made in the copy of the tree and put back after; "" where nothing does."""
    module = tree / "xlbatch" / mutant.module
    before = module.read_bytes()
    changed = mutant.applied(before)
    covering = {covering.file: covering for covering in known}
    if covering[LINES].runs(mutant) and warm.lines_change(mutant, changed):
        return "lines"
    tests, seconds = tests_of(mutant, known)
    if not tests:
        return ""
    module.write_bytes(changed)
    name = tree.parent / "failed.txt"
    try:
        return name.read_text(encoding="utf-8") if warm.fails(tree, tests, seconds, name) else ""
    finally:
        module.write_bytes(before)


def main(count: int, seed: int, rooms: list[str]) -> bool:
    """Prints what was not noticed and the part noticed, by room; whether that is enough."""
    tried, seen = Counter[str](), Counter[str]()
    with tempfile.TemporaryDirectory() as folder, (REPOSITORY / "dist" / "mutants.txt").open("w") as log:
        tree = copied(Path(folder))
        warm.load(tree)
        known = coverings(tree)
        for mutant in drawn(count, seed, rooms):
            tried[mutant.room] += 1
            by = noticed_by(mutant, tree, known)
            seen[mutant.room] += bool(by)
            print(f"xlbatch/{mutant.module}:{mutant.line}: {mutant.text}\t{by}", file=log, flush=True)
            print("." if by else f"\nxlbatch/{mutant.module}:{mutant.line}: {mutant.text}\n", end="", flush=True)
    print()
    for room in sorted(tried):
        print(f"{room:12} {seen[room]:4} of {tried[room]:4}  {seen[room] / tried[room]:.0%}")
    overall = seen.total() / max(tried.total(), 1)
    print(f"{seen.total()} of {tried.total()} noticed, {overall:.0%}")
    return overall >= OVERALL and all(seen[room] / tried[room] >= ANY_ROOM for room in tried)


if __name__ == "__main__":
    numbers = [int(word) for word in sys.argv[1:] if word.isdigit()]
    count, seed = (*numbers, *(200, 1)[len(numbers) :])
    sys.exit(not main(count, seed, [word for word in sys.argv[1:] if not word.isdigit()]))
