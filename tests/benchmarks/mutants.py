"""Small changes of the program, one place each, as a slip of the hand makes them: + for -, and for or, a number one
more, yes for no; < for <= where a whole number is compared, else < for >, as two measures are hardly ever equal.
Annotations, texts, what only names a type, digits of rounding and tolerances are left alone."""

import ast
from collections import Counter
from collections.abc import Iterable, Iterator
from hashlib import sha256
from pathlib import Path
from typing import NamedTuple

PACKAGE = Path(__file__).parents[2] / "xlbatch"
TOP = "(top)"  # the modules that stand in no room
NOT_CHANGED = ("window/", "cli.py", "__main__.py")  # tried by hand and by the tests of the window
OTHER: dict[type, type] = {
    ast.Eq: ast.NotEq, ast.NotEq: ast.Eq,
    ast.In: ast.NotIn, ast.NotIn: ast.In, ast.Is: ast.IsNot, ast.IsNot: ast.Is, ast.And: ast.Or, ast.Or: ast.And,
    ast.Add: ast.Sub, ast.Sub: ast.Add, ast.Mult: ast.Div, ast.Div: ast.Mult, ast.FloorDiv: ast.Mult,
}  # fmt: skip
LIMIT: dict[type, type] = {ast.Lt: ast.LtE, ast.LtE: ast.Lt, ast.Gt: ast.GtE, ast.GtE: ast.Gt}
TURNED: dict[type, type] = {ast.Lt: ast.Gt, ast.LtE: ast.GtE, ast.Gt: ast.Lt, ast.GtE: ast.LtE}


class Mutant(NamedTuple):
    """One place to change: the bytes of a module (its path below the package) between two offsets become another
    text. A job runs it where it runs one of its lines, from the statement's `first` on; any job does where it is not
    `in_function`."""

    module: str
    start: int
    end: int
    text: str
    line: int
    first: int
    last: int
    in_function: bool

    @property
    def room(self) -> str:
        return self.module.split("/")[0] if "/" in self.module else TOP

    def applied(self, source: bytes) -> bytes:
        return source[: self.start] + self.text.encode() + source[self.end :]


def mutants(path: Path) -> Iterator[Mutant]:
    """Every change known for a module."""
    source = path.read_bytes()
    starts = [0]
    for line in source.splitlines(keepends=True):
        starts.append(starts[-1] + len(line))
    tree = ast.parse(source)
    left_alone = {id(part) for root in _not_code(tree) for part in ast.walk(root)}
    for node, first, in_function in _expressions(tree, 1, False):
        if id(node) not in left_alone and (other := _other(node)) is not None:
            last = node.end_lineno or node.lineno
            start, end = starts[node.lineno - 1] + node.col_offset, starts[last - 1] + (node.end_col_offset or 0)
            yield Mutant(path.relative_to(PACKAGE).as_posix(), start, end, other, node.lineno, first, last, in_function)


def _expressions(node: ast.AST, first: int, inside: bool) -> Iterator[tuple[ast.expr, int, bool]]:
    """Every expression below a node, with the first line of its statement, and whether that is in a function."""
    for part in ast.iter_child_nodes(node):
        if isinstance(part, ast.expr):
            yield part, first, inside
        if isinstance(part, ast.stmt):
            yield from _expressions(part, part.lineno, isinstance(node, ast.FunctionDef) or inside)
        else:
            yield from _expressions(part, first, inside)


def _not_code(tree: ast.Module) -> Iterator[ast.AST]:
    """Annotations, f-strings (Python 3.11 does not say where within a text the parts of one stand), and what only
    another system runs."""
    for node in ast.walk(tree):
        if isinstance(node, ast.If | ast.IfExp) and "sys.platform" in ast.unparse(node.test):
            yield node
        if isinstance(node, ast.JoinedStr):
            yield node
        elif isinstance(node, ast.AnnAssign | ast.arg) and node.annotation:
            yield node.annotation
        elif isinstance(node, ast.FunctionDef) and node.returns:
            yield node.returns
        elif isinstance(node, ast.Call) and ast.unparse(node.func) in ("cast", "TypeVar"):
            yield node.args[0]
        elif isinstance(node, ast.Call) and ast.unparse(node.func) == "round":
            yield from node.args[1:]
        elif isinstance(node, ast.Constant) and isinstance(node.value, float) and 0 < node.value < 1e-3:
            yield node
        elif isinstance(node, ast.Call):  # to the checker of types, to the reader and to cells: nothing is computed
            yield from (word for word in node.keywords if word.arg in ("strict", "eq", "frozen", "maxsize", "encoding"))
        elif isinstance(node, ast.Subscript) and ast.unparse(node.value) == "Literal":
            yield node


def _other(node: ast.expr) -> str | None:
    """What the expression becomes, or None where it stays."""
    match node:
        case ast.Compare(left, [op, *ops], [right, *_]):
            other = OTHER | (LIMIT if _is_whole(left) or _is_whole(right) else TURNED)
            node = ast.Compare(left, [other[type(op)](), *ops], node.comparators)
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


def _is_whole(node: ast.expr) -> bool:
    match node:
        case ast.Constant(value):
            return isinstance(value, int)
        case ast.Call(ast.Name("len" | "int" | "round")):
            return True
        case ast.BinOp(left, _, right):
            return _is_whole(left) or _is_whole(right)
    return False


def drawn(count: int, seed: int, rooms: Iterable[str]) -> list[Mutant]:
    """`count` mutants drawn by seed over the modules of the rooms (all where none is named), in no order: the same
    few in each room, so that each can be judged, and a quarter in proportion to its code. A change of the program draws
    anew only what it changed."""
    wanted = set(rooms)
    known = [mutant for path in sorted(PACKAGE.rglob("*.py")) for mutant in mutants(path)]
    known = [m for m in known if not m.module.startswith(NOT_CHANGED) and (not wanted or m.room in wanted)]
    alike = Counter[tuple[str, str]]()
    lots: dict[Mutant, bytes] = {}
    for mutant in known:
        alike[mutant.module, mutant.text] += 1
        words = (seed, mutant.module, mutant.text, alike[mutant.module, mutant.text])
        lots[mutant] = sha256(" ".join(map(str, words)).encode()).digest()
    known.sort(key=lots.__getitem__)
    by_room: dict[str, list[Mutant]] = {}
    for mutant in known:
        by_room.setdefault(mutant.room, []).append(mutant)
    few = 3 * count // (4 * max(len(by_room), 1))
    of_each = [mutant for of_room in by_room.values() for mutant in of_room[:few]]
    taken = set(of_each)
    mixed = [*of_each, *[mutant for mutant in known if mutant not in taken][: count - len(of_each)]]
    return sorted(mixed, key=lots.__getitem__)
