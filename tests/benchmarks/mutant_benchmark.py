"""Do the tests notice? Changes one place of the program at a time and runs the tests that run that line: a change none
of them notices is printed. Run it with -m from the top folder; arguments: how many (200), the seed (1), rooms (all).

The places are drawn by seed over the rooms, in proportion to their code. A change is made in a copy of the tree.
First the tests of the room run, then the others, quickest first, until one fails or the time for one change is up
(BUDGET): what was not noticed by then counts as not noticed. Which tests run a line is found once, by running each
test file under coverage, and kept in dist/touched.json; `anew` finds it again.
"""

import compileall
import json
import py_compile
import shutil
import sys
import tempfile
from collections import Counter
from pathlib import Path
from typing import NamedTuple

from tests.benchmarks import warm
from tests.benchmarks.mutants import PACKAGE, Mutant, drawn

TOP = PACKAGE.parent
KEPT = TOP / "dist" / "touched.json"
OVERALL, ANY_ROOM = 0.85, 0.75  # the least part that must be noticed
BUDGET = 200  # s of the processor, as they take under coverage, for the tests of one change
LONGEST = 600  # s for one test file
LEFT_OUT = (
    "tests/window/",
    "tests/build/",
    "tests/benchmarks/",
    "tests/sheets/test_print.py",
    "tests/test_mutations.py",
)


class Touched(NamedTuple):
    """How long a test file takes (s), and which lines it runs, by module."""

    seconds: float
    lines: dict[str, list[int]]


def copied(folder: Path) -> Path:
    """A copy of the tree, compiled so that a changed module is noticed by what it says, not by its date."""
    tree = folder / "tree"
    shutil.copytree(TOP, tree, ignore=shutil.ignore_patterns(".*", "dist", "__pycache__"))
    checked = py_compile.PycInvalidationMode.CHECKED_HASH
    compileall.compile_dir(tree / "xlbatch", quiet=1, invalidation_mode=checked)
    return tree


def touched(tree: Path, anew: bool) -> dict[str, Touched]:
    """What each test file runs."""
    kept = json.loads(KEPT.read_text()) if KEPT.exists() and not anew else {}
    files = sorted(path.relative_to(tree).as_posix() for path in (tree / "tests").rglob("test_*.py"))
    for file in files:
        if file in kept or file.startswith(LEFT_OUT):
            continue
        came = warm.run_tests(tree, [file], LONGEST, lines=True)
        print(f"{file}: {came.seconds:.0f} s{'' if came.code == 0 else f', FAILS ({came.code})'}", flush=True)
        if came.code == 0:
            kept[file] = Touched(came.seconds, came.lines)
            KEPT.parent.mkdir(exist_ok=True)
            KEPT.write_text(json.dumps(kept))
    return {file: Touched(*kept[file]) for file in files if file in kept}


def tests_of(mutant: Mutant, known: dict[str, Touched]) -> list[str]:
    """The test files that run a mutant's lines: its room's first, then the quickest."""
    lines = set(range(mutant.line, mutant.last + 1))
    own = f"tests/{mutant.room}/"
    running = [file for file, its in known.items() if lines & set(its.lines.get(mutant.module, ()))]
    return sorted(running, key=lambda file: (not file.startswith(own), known[file].seconds))


def noticed(mutant: Mutant, tree: Path, known: dict[str, Touched]) -> bool:
    """Whether the tests fail with the change made in the copy of the tree, which is put back after."""
    module = tree / "xlbatch" / mutant.module
    before = module.read_bytes()
    module.write_bytes(mutant.applied(before))
    left = float(BUDGET)
    try:
        for file in tests_of(mutant, known):
            usual = known[file].seconds
            if left < usual:
                continue
            left -= usual
            if warm.run_tests(tree, [file], int(3 * usual) + 10).code:
                return True
        return False
    finally:
        module.write_bytes(before)


def main(count: int, seed: int, words: list[str]) -> bool:
    """Prints what was not noticed and the part noticed, by room; whether that is enough."""
    warm.load()
    tried, seen = Counter[str](), Counter[str]()
    with tempfile.TemporaryDirectory() as folder:
        tree = copied(Path(folder))
        known = touched(tree, "anew" in words)
        for mutant in drawn(count, seed, [word for word in words if word != "anew"]):
            tried[mutant.room] += 1
            if noticed(mutant, tree, known):
                seen[mutant.room] += 1
            else:
                print(f"xlbatch/{mutant.module}:{mutant.line}: {mutant.text}", flush=True)
    for room in sorted(tried):
        print(f"{room:12} {seen[room]:4} of {tried[room]:4}  {seen[room] / tried[room]:.0%}")
    overall = seen.total() / max(tried.total(), 1)
    print(f"{seen.total()} of {tried.total()} noticed, {overall:.0%}")
    return overall >= OVERALL and all(seen[room] / tried[room] >= ANY_ROOM for room in tried)


if __name__ == "__main__":
    numbers = [int(word) for word in sys.argv[1:] if word.isdigit()]
    count, seed = (*numbers, *(200, 1)[len(numbers) :])
    sys.exit(not main(count, seed, [word for word in sys.argv[1:] if not word.isdigit()]))
