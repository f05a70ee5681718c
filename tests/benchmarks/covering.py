"""Which test files run which lines of the program, how long they take, and which of their tests fail as it is: each
file is run once, and what was learned is kept in dist/ until the file or the program changes."""

import hashlib
import json
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import NamedTuple

from tests.benchmarks import warm
from tests.benchmarks.mutants import PACKAGE, Mutant

KEPT = PACKAGE.parent / "dist" / "covering"
LEFT_OUT = ("tests/window/", "tests/build/", "tests/benchmarks/", "tests/sheets/test_print.py",
            "tests/test_mutations.py", "tests/test_fuzz.py")  # fmt: skip
LONGEST = 200  # s of the processor for the tests of one change, as long as they took without it; quick files first


class Covering(NamedTuple):
    """A test file: `lines` of each module that it runs; `failing` tests say nothing and are left out."""

    file: str
    seconds: float
    failing: tuple[str, ...]
    lines: Mapping[str, frozenset[int]]

    def runs(self, mutant: Mutant) -> bool:
        return not self.lines.get(mutant.module, frozenset()).isdisjoint(range(mutant.first, mutant.last + 1))


def coverings(tree: Path) -> list[Covering]:
    """What every test file of the tree runs; what takes longer than all tests of a change may is not there."""
    program = _hash(*sorted((tree / "xlbatch").rglob("*.py")))
    files = (path.relative_to(tree).as_posix() for path in sorted((tree / "tests").rglob("test_*.py")))
    return list(_each(tree, [file for file in files if not file.startswith(LEFT_OUT)], program))


def _each(tree: Path, files: list[str], program: str) -> Iterator[Covering]:
    KEPT.mkdir(parents=True, exist_ok=True)
    for file in files:
        kept = KEPT / f"{file.replace('/', '.')}.{program}.{_hash(tree / file)}.json"
        if kept.exists() or warm.covers(tree, file, kept):
            told = json.loads(kept.read_text(encoding="utf-8"))
            lines = {module: frozenset(numbers) for module, numbers in told["lines"].items()}
            yield Covering(file, told["seconds"], tuple(told["failing"]), lines)
            for test in told["failing"]:
                print(f"fails as it is: {test}", flush=True)
        else:
            print(f"takes too long: {file}", flush=True)


def tests_of(mutant: Mutant, known: list[Covering]) -> tuple[list[str], float]:
    """The arguments of pytest for a change, and the seconds that its tests take: those of its room, then the quickest,
    for as long as tests may take."""
    own = f"tests/{mutant.room}/", f"tests/test_{mutant.room}"
    files: list[str] = []
    failing: list[str] = []
    seconds = 0.0
    those = [covering for covering in known if covering.runs(mutant)]
    for covering in sorted(those, key=lambda covering: (not covering.file.startswith(own), covering.seconds)):
        if seconds + covering.seconds <= LONGEST:
            seconds += covering.seconds
            files.append(covering.file)
            failing += [f"--deselect={test}" for test in covering.failing]
    return [*files, *failing] if files else [], seconds


def _hash(*paths: Path) -> str:
    digest = hashlib.sha256()
    for path in paths:
        digest.update(path.read_bytes())
    return digest.hexdigest()[:12]
