"""Do the tests notice? Changes one place of the program at a time and runs the tests: a change none of them notices is
printed. Run it with -m from the top folder; arguments: how many (200), the seed (1), and rooms (all).

The places are drawn by seed, three quarters of them the same number in every room, the others in proportion to its
code. A change is made in a copy of the tree. First the small jobs that run the line are planned and compared line by
line, then the test files that import the module and those of its room are run, to the first test that fails with the
change and not without it. What is stopped half-way has tried a part of the places drawn by chance. Each change and
what noticed it are written to dist/mutants.txt.
"""

import compileall
import py_compile
import shutil
import sys
import tempfile
from collections import Counter
from collections.abc import Mapping
from pathlib import Path

from tests.benchmarks import warm
from tests.benchmarks.mutants import PACKAGE, Mutant, drawn

REPOSITORY = PACKAGE.parent
LOG = REPOSITORY / "dist" / "mutants.txt"
OVERALL, ANY_ROOM = 0.85, 0.75  # the least part that must be noticed
MOST_FILES = 3  # of tests for one change
LEFT_OUT = ("tests/window/", "tests/build/", "tests/benchmarks/", "tests/sheets/test_print.py",
            "tests/test_mutations.py", "tests/test_fuzz.py", "tests/test_as_written.py")  # fmt: skip


def copied(folder: Path) -> Path:
    """A copy of the tree, compiled so that a changed module is known by what it says, not by its date."""
    tree = folder / "tree"
    shutil.copytree(REPOSITORY, tree, ignore=shutil.ignore_patterns(".*", "dist", "__pycache__"))
    checked = py_compile.PycInvalidationMode.CHECKED_HASH
    compileall.compile_dir(tree / "xlbatch", quiet=1, invalidation_mode=checked)
    return tree


def test_files(tree: Path, mutant: Mutant) -> list[str]:
    """The tests that may notice a change: those named after its module, those that import it, those of its room."""
    name = "xlbatch." + mutant.module.removesuffix(".py").replace("/", ".")
    files = [path.relative_to(tree).as_posix() for path in sorted((tree / "tests").rglob("test_*.py"))]
    texts = {file: (tree / file).read_text(encoding="utf-8") for file in files if not file.startswith(LEFT_OUT)}
    of_room = [file for file in texts if file.startswith(f"tests/{mutant.room}/")]
    named = [file for file, text in texts.items() if f"from {name} import" in text]
    own = f"/test_{Path(mutant.module).stem}.py"
    ranked = sorted(dict.fromkeys([*named, *of_room]), key=lambda file: (own not in file, file not in named))
    return ranked[:MOST_FILES]


def noticed_by(mutant: Mutant, tree: Path, lines: Mapping[str, frozenset[tuple[str, int]]], broken: set[str]) -> str:
    """What notices the change, made in the copy of the tree and put back after; "" where nothing does. A test that
    fails without it too is `broken`, and says nothing."""
    module = tree / "xlbatch" / mutant.module
    before = module.read_bytes()
    changed = mutant.applied(before)
    own = {(mutant.module, number) for number in range(mutant.first, mutant.last + 1)}
    jobs = [job for job, run in lines.items() if own & run or not mutant.in_function]
    if jobs and warm.lines_change(mutant, changed, jobs):
        return "lines"
    for file in test_files(tree, mutant):
        module.write_bytes(changed)
        failing = warm.failing_test(tree, file, broken)
        module.write_bytes(before)
        while failing and warm.failing_test(tree, failing, broken):
            broken.add(failing)
            module.write_bytes(changed)
            failing = warm.failing_test(tree, file, broken)
            module.write_bytes(before)
        if failing:
            return failing
    return ""


def main(count: int, seed: int, words: list[str]) -> bool:
    """Prints what was not noticed and the part noticed, by room; whether that is enough."""
    tried, seen = Counter[str](), Counter[str]()
    known = dict(line.split("\t") for line in LOG.read_text(encoding="utf-8").splitlines()) if "on" in words else {}
    with tempfile.TemporaryDirectory() as folder, LOG.open("w", encoding="utf-8") as log:
        tree = copied(Path(folder))
        lines, broken = warm.load(tree), set[str]()
        for mutant in drawn(count, seed, [word for word in words if word != "on"]):
            tried[mutant.room] += 1
            change = f"xlbatch/{mutant.module}:{mutant.line}: {mutant.text}"
            by = known[change] if change in known else noticed_by(mutant, tree, lines, broken)
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
    numbers = [int(word) for word in sys.argv[1:] if word.isdigit()]
    count, seed = (*numbers, *(200, 1)[len(numbers) :])
    sys.exit(not main(count, seed, [word for word in sys.argv[1:] if not word.isdigit()]))
