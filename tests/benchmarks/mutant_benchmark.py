"""Do the tests notice? Changes one place of the program at a time and runs the tests that run it: a change none of
them notices is printed. Run it with -m from the top folder; arguments: how many (200), the seed (1), rooms (all), and
`on` to go on where it stopped, or `again` to try those not noticed once more.

The places are drawn by seed, three quarters of them the same number in every room, the others in proportion to its
code. A change is made in a copy of the tree. First come the tests of the few files nearest to the module, then those of
the other files in the map of what tests run (dist/covering), which 0 changes makes whole; of these only the tests that
run the place, the cheapest first, to the first that fails with the change and not without it. A test that takes many
times the processor's time it takes without is noticed too. Each change and what noticed it are written to
dist/mutants.txt, with the reason from no_difference.csv where it is none for anybody. What is stopped half-way has
tried a part of the places drawn by chance.
"""

import compileall
import csv
import os
import py_compile
import shutil
import signal
import sys
import tempfile
from collections import Counter
from collections.abc import Iterable, Mapping
from math import inf
from pathlib import Path

import pytest

from tests.benchmarks import warm
from tests.benchmarks.covering import ALWAYS, Covering, Map, mark
from tests.benchmarks.mutants import PACKAGE, Mutant, drawn

REPOSITORY = PACKAGE.parent
LOG = REPOSITORY / "dist" / "mutants.txt"
NO_DIFFERENCE = Path(__file__).with_name("no_difference.csv")  # changes looked at that are none for anybody
OVERALL, ANY_ROOM = 0.85, 0.75  # the least part that must be noticed
MOST = 25.0  # s that the tests of one change take without it, but for small jobs kept as text
TIMES_LONGER, START = 6, 5.0  # so many times its own time, and s more, before a test counts as one that never ends
BRIEF = 20.0  # s for the files near a module that are not in the map
LONG = 60.0  # s for a test that failed, without the change
TIME = "time"  # a run that would not end


class _Chosen:
    """Told to pytest: which tests, or whole files of tests, to run, in which order; it remembers the first to fail."""

    def __init__(self, tests: Mapping[str, float], failing: Path) -> None:
        self._tests, self._failing = tests, failing
        self._places = {test: place for place, test in enumerate(tests)}

    def pytest_collection_modifyitems(self, items: list[pytest.Item]) -> None:
        placed = [(self._place(item.nodeid), item) for item in items]
        items[:] = [item for place, item in sorted(placed, key=lambda it: it[0] or 0) if place is not None]

    def _place(self, test: str) -> int | None:
        return self._places.get(test, self._places.get(test.split("::")[0]))

    def pytest_runtest_protocol(self, item: pytest.Item) -> None:
        signal.setitimer(signal.ITIMER_PROF, self._tests.get(item.nodeid, 0.0))  # then it ends the process; 0: never

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


def chosen(tree: Path, mutant: Mutant, covering: list[Covering], most: float = MOST) -> Mapping[str, float]:
    """The tests that run the place, the cheapest, file by file; each with the seconds it may take."""
    own = mark(tree / "xlbatch" / mutant.module)
    known: list[tuple[float, str, Covering]] = []
    for of_file in covering:
        running = of_file.running(mutant, own)
        for test, contexts in of_file.contexts.items():
            if running.intersection(contexts):
                known.append((sum(of_file.seconds.get(context, 0) for context in contexts), test, of_file))
    taken: dict[str, dict[str, float]] = {}
    done, seconds = set[tuple[str, str]](), 0.0
    for cost, test, of_file in sorted(known, key=lambda test: test[:2]):
        new = {(of_file.file, context) for context in of_file.contexts[test]} - done
        more = sum(of_file.seconds.get(context, 0) for _file, context in new)
        if seconds + more <= most or not taken:
            taken.setdefault(of_file.file, {})[test] = START + TIMES_LONGER * cost
            done |= new
            seconds += more
    return {test: limit for tests in taken.values() for test, limit in tests.items()}


def failing_test(tree: Path, tests: Mapping[str, float], left_out: Iterable[str] = ()) -> str:
    """The first that fails of the tests, or of whole files of tests; "" where none does. Each test has its seconds,
    all have the sum of them."""
    failing = tree.parent / "failing.txt"
    failing.unlink(missing_ok=True)
    arguments = ["-x", *(f"--deselect={test}" for test in left_out), *dict.fromkeys(t.split("::")[0] for t in tests)]
    fails = warm.in_child(
        lambda: warm.run_tests(tree, arguments, _Chosen(tests, failing)) not in (0, 5), START + sum(tests.values())
    )
    if failing.exists():
        return failing.read_text(encoding="utf-8")
    return "" if fails is False else "loading" if fails else TIME


def noticed_by(mutant: Mutant, covering: Map, broken: set[str]) -> str:
    """What notices the change: a test of the files near its module, a small job kept as text, a test of the other files
    in the map, or of its room; "" where nothing does. Files that are not in the map are run for a short while, and the
    time they take says nothing."""
    tree, near, known = covering.tree, covering.near(mutant), covering.known()
    measured = {of_file.file for of_file in known}

    def of(files: list[Covering], most: float = MOST) -> str:
        return _noticed(mutant, tree, chosen(tree, mutant, files, most), broken)

    def whole(files: list[str]) -> str:
        files = [file for file in files if file not in measured]
        return _noticed(mutant, tree, {file: BRIEF / len(files) for file in files}, broken).removeprefix(TIME)

    return (
        of([of_file for of_file in known if of_file.file in near])
        or whole(near)
        or of([of_file for of_file in known if of_file.file in ALWAYS], inf)
        or of([of_file for of_file in known if of_file.file not in near])
        or whole(covering.of_room(mutant))
    )


def _noticed(mutant: Mutant, tree: Path, tests: Mapping[str, float], broken: set[str]) -> str:
    """The test that notices the change, made in the copy of the tree and put back after. A test that fails without it
    too is `broken`, and says nothing."""
    module = tree / "xlbatch" / mutant.module
    before = module.read_bytes()
    while tests:
        module.write_bytes(mutant.applied(before))
        try:
            failing = failing_test(tree, tests, broken)
        finally:
            module.write_bytes(before)
        if "::" not in failing or not failing_test(tree, {failing: LONG}):
            return failing
        broken.add(failing)
    return ""


def _code(mutant: Mutant) -> str:
    """The line of code that is changed."""
    return (PACKAGE / mutant.module).read_text(encoding="utf-8").splitlines()[mutant.line - 1].strip()


def known_before(words: list[str]) -> dict[str, str]:
    """What is known of changes from the run before: all with `on`, those noticed with `again`."""
    if not {"on", "again"} & set(words) or not LOG.exists():
        return {}
    known = dict(line.split("\t")[:2] for line in LOG.read_text(encoding="utf-8").splitlines())
    return {change: by for change, by in known.items() if by or "again" not in words}


def main(count: int, seed: int, words: list[str]) -> bool:
    """Prints what was not noticed and the part noticed, by room; whether that is enough."""
    tried, seen, known = Counter[str](), Counter[str](), known_before(words)
    with NO_DIFFERENCE.open(encoding="utf-8", newline="") as file:
        same = {(line["Module"], line["Change"], line["Code"]): line["Why it is none"] for line in csv.DictReader(file)}
    with tempfile.TemporaryDirectory() as folder:
        tree = copied(Path(folder))
        warm.load()
        covering, broken = Map(tree), set[str]()
        for test_file in ALWAYS if count else covering.texts:
            covering.of(test_file)
        with LOG.open("w", encoding="utf-8") as log:
            for mutant in drawn(count, seed, [word for word in words if word not in ("on", "again")]):
                change = f"xlbatch/{mutant.module}:{mutant.line}: {mutant.text}"
                why = same.get((mutant.module, mutant.text, _code(mutant)), "")
                by = "" if why else known[change] if change in known else noticed_by(mutant, covering, broken)
                print(f"{change}\t{by}\t{why}", file=log, flush=True)
                print("." if by or why else f"\n{change}\n", end="", flush=True)
                tried[mutant.room] += not why
                seen[mutant.room] += bool(by)
    print()
    for room in sorted(tried):
        print(f"{room:12} {seen[room]:4} of {tried[room]:4}  {seen[room] / max(tried[room], 1):.0%}")
    overall = seen.total() / max(tried.total(), 1)
    print(f"{seen.total()} of {tried.total()} noticed, {overall:.0%}")
    return overall >= OVERALL and all(seen[room] >= ANY_ROOM * tried[room] for room in tried)


if __name__ == "__main__":
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
    numbers = [int(word) for word in sys.argv[1:] if word.isdigit()]
    count, seed = (*numbers, *(200, 1)[len(numbers) :])
    sys.exit(not main(count, seed, [word for word in sys.argv[1:] if not word.isdigit()]))
