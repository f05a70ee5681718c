"""Do the tests notice? Changes one place of the program at a time and runs the tests: a change none of them notices
is printed. Run it with -m from the top folder; arguments: how many (200), the seed (1), and rooms (all).

The places are drawn by seed, room by room in proportion to their code. A change is made in a copy of the tree. First
the room's own tests run, then those of the whole job, then the others but for the window and the bundle.
"""

import ast
import random
import shutil
import subprocess
import sys
import tempfile
from collections import Counter
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

TOP = Path(__file__).parents[2]
OVERALL, ANY_ROOM = 0.85, 0.75  # the least part that must be noticed
LONGEST = 900  # s for one run of tests: a change that never ends is noticed
WHOLE_JOB = ("tests/test_whole_job.py", "tests/test_nothing_lost.py", "tests/sheets")
LEFT_OUT = ("tests/window", "tests/build", "tests/benchmarks", "tests/sheets/test_print.py", "tests/test_mutations.py")
OTHER: dict[type, type] = {
    ast.Lt: ast.LtE, ast.LtE: ast.Lt, ast.Gt: ast.GtE, ast.GtE: ast.Gt, ast.Eq: ast.NotEq, ast.NotEq: ast.Eq,
    ast.In: ast.NotIn, ast.NotIn: ast.In, ast.Is: ast.IsNot, ast.IsNot: ast.Is, ast.And: ast.Or, ast.Or: ast.And,
    ast.Add: ast.Sub, ast.Sub: ast.Add, ast.Mult: ast.Div, ast.Div: ast.Mult, ast.FloorDiv: ast.Mult,
}  # fmt: skip


class Change(NamedTuple):
    """One place to change: the text between two offsets becomes another."""

    path: Path
    start: int
    end: int
    text: str
    line: int


def changes(path: Path) -> Iterator[Change]:
    """Every change this script knows for a module."""
    source = path.read_text(encoding="utf-8")
    starts = [0]
    for line in source.encode().splitlines(keepends=True):
        starts.append(starts[-1] + len(line))
    tree = ast.parse(source)
    # Python 3.11 does not say where within a text the parts of an f-string stand
    worded = {id(part) for node in ast.walk(tree) if isinstance(node, ast.JoinedStr) for part in ast.walk(node)}
    for node in ast.walk(tree):
        if isinstance(node, ast.expr) and id(node) not in worded and (other := _other(node)) is not None:
            start, end = starts[node.lineno - 1] + node.col_offset, starts[node.end_lineno - 1] + node.end_col_offset  # type: ignore[operator]
            yield Change(path, start, end, other, node.lineno)


def _other(node: ast.expr) -> str | None:
    """What the expression becomes, or None where it stays."""
    match node:
        case ast.Compare(ops=[op, *_]) if type(op) in OTHER:
            node = ast.Compare(node.left, [OTHER[type(op)](), *node.ops[1:]], node.comparators)
        case ast.BoolOp(op, values) if type(op) in OTHER:
            node = ast.BoolOp(OTHER[type(op)](), values)
        case ast.BinOp(left, op, right) if type(op) in OTHER:
            node = ast.BinOp(left, OTHER[type(op)](), right)
        case ast.UnaryOp(ast.Not(), operand):
            node = operand
        case ast.IfExp(test, body, orelse):
            node = ast.IfExp(test, orelse, body)
        case ast.Constant(bool() as value):
            node = ast.Constant(not value)
        case ast.Constant(int() | float() as value):
            node = ast.Constant(value + 1)
        case _:
            return None
    return f"({ast.unparse(node)})"


def drawn(count: int, seed: int, rooms: list[str]) -> list[Change]:
    """`count` changes, drawn by seed over the modules of the rooms."""
    modules = [path for path in sorted((TOP / "xlbatch").rglob("*.py")) if not rooms or room(path) in rooms]
    places = [change for path in modules if room(path) not in ("window", "cli") for change in changes(path)]
    return sorted(random.Random(seed).sample(places, min(count, len(places))))


def room(path: Path) -> str:
    return path.relative_to(TOP / "xlbatch").parts[0].removesuffix(".py")


def noticed(change: Change, copy: Path) -> bool:
    """Whether the tests fail with the change made in a copy of the tree, which is put back after."""
    file = copy / change.path.relative_to(TOP)
    before = file.read_bytes()
    file.write_bytes(before[: change.start] + change.text.encode() + before[change.end :])
    try:
        own = copy / "tests" / room(change.path)
        stages = (*((f"tests/{own.name}",) for _ in range(own.is_dir())), WHOLE_JOB, ("tests",))
        return any(_fails(copy, stage) for stage in stages)
    finally:
        file.write_bytes(before)


def _fails(copy: Path, tests: tuple[str, ...]) -> bool:
    without = [f"--ignore={path}" for path in LEFT_OUT]
    command = [sys.executable, "-m", "pytest", "-q", "-x", "-p", "no:cacheprovider", *without, *tests]
    try:
        return subprocess.run(command, cwd=copy, capture_output=True, timeout=LONGEST, check=False).returncode != 0
    except subprocess.TimeoutExpired:
        return True


def main(count: int, seed: int, rooms: list[str]) -> bool:
    """Prints what was not noticed and the part noticed, by room; whether that is enough."""
    tried, seen = Counter[str](), Counter[str]()
    with tempfile.TemporaryDirectory() as folder:
        copy = Path(folder) / "tree"
        shutil.copytree(TOP, copy, ignore=shutil.ignore_patterns(".*", "dist", "__pycache__"))
        for change in drawn(count, seed, rooms):
            here = room(change.path)
            tried[here] += 1
            if noticed(change, copy):
                seen[here] += 1
            else:
                print(f"{change.path.relative_to(TOP)}:{change.line}: {change.text}", flush=True)
    for here in sorted(tried):
        print(f"{here:12} {seen[here]:4} of {tried[here]:4}  {seen[here] / tried[here]:.0%}")
    overall = seen.total() / max(tried.total(), 1)
    print(f"{seen.total()} of {tried.total()} noticed, {overall:.0%}")
    return overall >= OVERALL and all(seen[here] / tried[here] >= ANY_ROOM for here in tried)


if __name__ == "__main__":
    numbers = [int(word) for word in sys.argv[1:] if word.isdigit()]
    count, seed = (*numbers, *(200, 1)[len(numbers) :])
    sys.exit(not main(count, seed, [word for word in sys.argv[1:] if not word.isdigit()]))
