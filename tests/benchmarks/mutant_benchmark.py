"""Do the tests notice? Changes one place of the program at a time and runs the tests that run it: a change none of
them notices is printed. Run it with -m from the top folder; arguments: how many (200), the seed (1), rooms (all), and
`on` to go on where it stopped, or `again` to try those not noticed once more.

The places are drawn by seed, three quarters of them the same number in every room, the others in proportion to its
code. A change is made in a copy of the tree. First come the tests of the few files nearest to the module, then those of
all other files that were measured by now; 0 changes measures all. The cheapest come first, to the first that fails with
the change and not without it; a run that takes many times the processor's time it takes without is noticed too.
Each change and what noticed it are written to dist/mutants.txt; what each test runs is kept in dist/covering. What is
stopped half-way has tried a part of the places drawn by chance.
"""

import compileall
import os
import py_compile
import shutil
import sys
import tempfile
from collections import Counter
from pathlib import Path

import pytest

from tests.benchmarks import warm
from tests.benchmarks.covering import Covering, Map, mark
from tests.benchmarks.mutants import PACKAGE, Mutant, drawn

REPOSITORY = PACKAGE.parent
LOG = REPOSITORY / "dist" / "mutants.txt"
OVERALL, ANY_ROOM = 0.85, 0.75  # the least part that must be noticed
ALWAYS = ("tests/test_as_written.py",)  # small jobs, line by line
MOST = 25.0  # s that the tests of one change take without it
TIMES_LONGER, START = 6, 20  # so many times that, and s for loading, before a run counts as one that never ends


class _Chosen:
    """Told to pytest: which tests to run, in which order; it remembers the first that failed."""

    def __init__(self, tests: list[str], failing: Path) -> None:
        self._place = {test: place for place, test in enumerate(tests)}
        self._failing = failing

    def pytest_collection_modifyitems(self, items: list[pytest.Item]) -> None:
        items[:] = sorted(
            (item for item in items if item.nodeid in self._place), key=lambda item: self._place[item.nodeid]
        )

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        if report.failed and not self._failing.exists():
            self._failing.write_text(report.nodeid, encoding="utf-8")


def copied(folder: Path) -> Path:
    """A copy of the tree, compiled so that a changed module is known by what it says, not by its date."""
    tree = folder / "tree"
    shutil.copytree(REPOSITORY, tree, ignore=shutil.ignore_patterns(".*", "dist", "__pycache__"))
    checked = py_compile.PycInvalidationMode.CHECKED_HASH
    compileall.compile_dir(tree / "xlbatch", quiet=1, invalidation_mode=checked)
    return tree


def chosen(tree: Path, mutant: Mutant, covering: list[Covering]) -> tuple[list[str], float]:
    """The tests that run the place, and their seconds: the cheapest, file by file."""
    own = mark(tree / "xlbatch" / mutant.module)
    known: list[tuple[float, str, Covering]] = []
    for of_file in covering:
        running = of_file.running(mutant, own)
        for test, contexts in of_file.contexts.items():
            if running.intersection(contexts):
                known.append((sum(of_file.seconds.get(context, 0) for context in contexts), test, of_file))
    taken: dict[str, list[str]] = {}
    done, seconds = set[tuple[str, str]](), 0.0
    for _cost, test, of_file in sorted(known, key=lambda test: test[:2]):
        new = {(of_file.file, context) for context in of_file.contexts[test]} - done
        more = sum(of_file.seconds.get(context, 0) for _file, context in new)
        if seconds + more <= MOST or not taken:
            taken.setdefault(of_file.file, []).append(test)
            done |= new
            seconds += more
    return [test for tests in taken.values() for test in tests], seconds


def failing_test(tree: Path, tests: list[str], seconds: float) -> str:
    """The first of the tests that fails; "" where none does."""
    failing = tree.parent / "failing.txt"
    failing.unlink(missing_ok=True)
    files = list(dict.fromkeys(test.split("::")[0] for test in tests))
    fails = warm.in_child(
        lambda: warm.run_tests(tree, ["-x", *files], _Chosen(tests, failing)) not in (0, 5),
        START + TIMES_LONGER * seconds,
    )
    if failing.exists():
        return failing.read_text(encoding="utf-8")
    return "" if fails is False else "loading" if fails else "time"


def noticed_by(mutant: Mutant, covering: Map, sound: dict[str, bool]) -> str:
    """What notices the change: a test of the files near its module, else of all that are in the map; "" where nothing
    does."""
    near = covering.near(mutant)
    return _noticed(mutant, covering.tree, near, sound) or _noticed(
        mutant, covering.tree, [of_file for of_file in covering.known() if of_file not in near], sound
    )


def _noticed(mutant: Mutant, tree: Path, covering: list[Covering], sound: dict[str, bool]) -> str:
    """The test that notices the change, made in the copy of the tree and put back after. A test that fails without it
    too is not sound, and says nothing."""
    module = tree / "xlbatch" / mutant.module
    tests, seconds = chosen(tree, mutant, covering)
    before = module.read_bytes()
    while tests := [test for test in tests if sound.get(test, True)]:
        module.write_bytes(mutant.applied(before))
        try:
            failing = failing_test(tree, tests, seconds)
        finally:
            module.write_bytes(before)
        if failing in tests and failing not in sound:
            sound[failing] = not failing_test(tree, [failing], seconds)
        if sound.get(failing, True):
            return failing
    return ""


def main(count: int, seed: int, words: list[str]) -> bool:
    """Prints what was not noticed and the part noticed, by room; whether that is enough."""
    tried, seen = Counter[str](), Counter[str]()
    known: dict[str, str] = {}
    if {"on", "again"} & set(words) and LOG.exists():
        known = dict(line.split("\t")[:2] for line in LOG.read_text(encoding="utf-8").splitlines())
    if "again" in words:
        known = {change: by for change, by in known.items() if by}
    rooms = [word for word in words if word not in ("on", "again")]
    with tempfile.TemporaryDirectory() as folder:
        tree = copied(Path(folder))
        warm.load()
        covering, sound = Map(tree), dict[str, bool]()
        for file in ALWAYS if count else covering.texts:
            covering.of(file)
        with LOG.open("w", encoding="utf-8") as log:
            for mutant in drawn(count, seed, rooms):
                change = f"xlbatch/{mutant.module}:{mutant.line}: {mutant.text}"
                by = known[change] if change in known else noticed_by(mutant, covering, sound)
                tried[mutant.room] += 1
                seen[mutant.room] += bool(by)
                print(f"{change}\t{by}", file=log, flush=True)
                print("." if by else f"\n{change}\n", end="", flush=True)
    print()
    for room in sorted(tried):
        print(f"{room:12} {seen[room]:4} of {tried[room]:4}  {seen[room] / tried[room]:.0%}")
    overall = seen.total() / max(tried.total(), 1)
    print(f"{seen.total()} of {tried.total()} noticed, {overall:.0%}")
    return overall >= OVERALL and all(seen[room] / tried[room] >= ANY_ROOM for room in tried)


if __name__ == "__main__":
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
    numbers = [int(word) for word in sys.argv[1:] if word.isdigit()]
    count, seed = (*numbers, *(200, 1)[len(numbers) :])
    sys.exit(not main(count, seed, [word for word in sys.argv[1:] if not word.isdigit()]))
