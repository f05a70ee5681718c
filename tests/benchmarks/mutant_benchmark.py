"""Do the tests notice? Changes one place of the program at a time and runs the tests: a change none of them notices is
printed. Run it with -m from the top folder; arguments: how many (200), the seed (1), and rooms (all).

The places are drawn by seed over the rooms, in proportion to their code. A change is made in a copy of the tree. First
small jobs are planned and compared line by line, then the tests of the room run; with `all` among the arguments then
all other tests but for the window and the bundle, which takes far longer. What is stopped half-way has tried a part of
the places drawn by chance.
"""

import compileall
import py_compile
import shutil
import sys
import tempfile
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

from tests.benchmarks import warm
from tests.benchmarks.mutants import PACKAGE, Mutant, drawn

TOP = PACKAGE.parent
OVERALL, ANY_ROOM = 0.85, 0.75  # the least part that must be noticed
LEFT_OUT = ("tests/window/", "tests/build/", "tests/benchmarks/", "tests/sheets/test_print.py",
            "tests/test_mutations.py")  # fmt: skip


def copied(folder: Path) -> Path:
    """A copy of the tree, compiled so that a changed module is known by what it says, not by its date."""
    tree = folder / "tree"
    shutil.copytree(TOP, tree, ignore=shutil.ignore_patterns(".*", "dist", "__pycache__"))
    checked = py_compile.PycInvalidationMode.CHECKED_HASH
    compileall.compile_dir(tree / "xlbatch", quiet=1, invalidation_mode=checked)
    return tree


def test_files(tree: Path, mutant: Mutant, every: bool) -> Iterator[list[str]]:
    """The tests that may notice a change: its room's, first those that name its module; where asked the others."""
    room, module = mutant.room, Path(mutant.module).stem
    files = sorted(path.relative_to(tree).as_posix() for path in (tree / "tests").rglob("test_*.py"))
    files = [file for file in files if not file.startswith(LEFT_OUT)]
    of_room = [file for file in files if file.startswith((f"tests/{room}/", f"tests/test_{room}"))]
    if of_room:
        yield sorted(of_room, key=lambda file: module not in (tree / file).read_text(encoding="utf-8"))
    if every:
        yield from ([file] for file in files if file not in of_room)


def noticed(mutant: Mutant, tree: Path, every: bool) -> bool:
    """Whether the tests fail with the change made in the copy of the tree, which is put back after."""
    module = tree / "xlbatch" / mutant.module
    before = module.read_bytes()
    changed = mutant.applied(before)
    if warm.lines_change(mutant, changed):
        return True
    module.write_bytes(changed)
    try:
        return any(warm.fails(tree, files) for files in test_files(tree, mutant, every))
    finally:
        module.write_bytes(before)


def main(count: int, seed: int, words: list[str]) -> bool:
    """Prints what was not noticed and the part noticed, by room; whether that is enough."""
    rooms = [word for word in words if word != "all"]
    tried, seen = Counter[str](), Counter[str]()
    with tempfile.TemporaryDirectory() as folder:
        tree = copied(Path(folder))
        warm.load(tree)
        for mutant in drawn(count, seed, rooms):
            tried[mutant.room] += 1
            if noticed(mutant, tree, "all" in words):
                seen[mutant.room] += 1
                print(".", end="", flush=True)
            else:
                print(f"\nxlbatch/{mutant.module}:{mutant.line}: {mutant.text}", flush=True)
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
