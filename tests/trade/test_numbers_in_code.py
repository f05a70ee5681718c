"""What hands know stands in the tables: where decals are drawn, joined, laid, placed and pressed, the code holds only
the numbers of its own searches and of how closely it reckons, each named."""

import ast
import re
from collections.abc import Iterator, Mapping

import pytest

from tests.test_rooms import MODULES, room

ROOMS = ("art", "placement", "film", "press", "schedule")
PLAIN = {0, 1, 2, 3, 4, 0.5}  # none, one, both or half; the sides of a box, the rows of an array
EXACTLY = {90, 180, 270, 60, 100, 1000, 3600}  # quarter turns; minutes, percent, micrometers
CLOSE = 1e-3  # mm or s: less than anybody cuts, places or waits
NO_TRADE: Mapping[str, set[float]] = {  # in functions, and no one's practice: primes, formulas, progress bars
    "film.beam": {7_368_787, 7919}, "film.cutting": {16}, "film.lay": {70, 30}, "film.shape": {8},
    "art.number_size": {16}, "film.profile": {10**6}, "art.thin": {2000}, "placement.place": {0.01},
}  # fmt: skip
MEASURES = re.compile(r"\b(mm|cm|inch|inches|(?<!')s|seconds|minutes|garments|shirts|degrees|°C|°F)\b")
OF_A_SEARCH = {  # whose comments name a measure: how closely lengths are reckoned, and how much is searched
    "film.profile": {"COLUMN", "STEP, NEAR", "BALLS"}, "film.verify": {"SLACK", "STRAY"}, "film.cores": {"LOOK"},
    "film.batch_costs": {"MOST_APART"}, "film.batches": {"BLOCK"}, "film.enlarge": {"TOGETHER", "ROUNDS, FULL"},
    "film.drop": {"MUCH"}, "film.interlock": {"MUCH"}, "film.lay": {"MOST_TRIED"}, "film.join": {"SAMPLE, TRIES"},
    "art.size": {"_NEAR"}, "art.number_size": {"_SLACK"}, "art.thin": {"_ELSEWHERE", "_NEAR"},
    "placement.put": {"NEAR"}, "placement.clear_of_features": {"NEAR"}, "schedule.verify_time": {"NEAR"},
}  # fmt: skip


def numbers(node: ast.AST) -> Iterator[float]:
    """The numbers in a piece of code, but for digits that `round` keeps, bits, and a cache's room."""
    if isinstance(node, ast.Constant) and isinstance(node.value, int | float) and not isinstance(node.value, bool):
        yield node.value
    for child in ast.iter_child_nodes(node):
        if isinstance(node, ast.Call) and "round" in ast.unparse(node.func) and child in node.args[1:]:
            continue
        if isinstance(child, ast.keyword) and child.arg == "maxsize":
            continue
        if isinstance(node, ast.BinOp) and isinstance(node.op, ast.LShift) and child is node.right:
            continue
        yield from numbers(child)


def of_a_unit(node: ast.AST) -> bool:
    """Whether it reckons with so many inches, feet or centimeters."""
    sides = [node.left, node.right] if isinstance(node, ast.BinOp) else []
    typed = [ast.unparse(side) for side in sides]
    return any(re.fullmatch(r"mm_per\(['\"].*\)", text) for text in typed) and any(
        re.fullmatch(r"[\d.]+", text) for text in typed
    )


def named(tree: ast.Module) -> Mapping[str, ast.Assign]:
    """The module's constants that are numbers, or several, by name."""
    return {
        ast.unparse(node.targets[0]).strip("()"): node
        for node in tree.body
        if isinstance(node, ast.Assign) and "practice(" not in ast.unparse(node.value) and any(numbers(node.value))
    }


@pytest.mark.parametrize("module", [module for module in MODULES if room(module) in ROOMS])
def test_numbers_of_the_trade_are_in_the_tables(module: str) -> None:
    source = MODULES[module].read_text(encoding="utf-8")
    tree, lines = ast.parse(source), source.splitlines()
    constants = named(tree)
    nameless = {
        number
        for node in tree.body
        if node not in constants.values()
        for number in numbers(node)
        if abs(number) > CLOSE and number not in PLAIN | EXACTLY
    }
    assert nameless <= NO_TRADE.get(module, set())
    assert not [ast.unparse(node) for node in ast.walk(tree) if of_a_unit(node)]
    measured = {
        name
        for name, node in constants.items()
        if MEASURES.search(lines[(node.end_lineno or node.lineno) - 1].partition("#")[2])
    }
    assert measured <= OF_A_SEARCH.get(module, set())


def test_a_number_of_the_trade_in_the_code_is_seen() -> None:
    wrong = ast.parse('def gap(unit):\n    return max(mm_per("in") / 2, 12.7)\n\n\nHANDY = 300  # mm')
    assert {12.7} == {number for number in numbers(wrong.body[0]) if number not in PLAIN}
    assert any(of_a_unit(node) for node in ast.walk(wrong))
    assert list(named(wrong)) == ["HANDY"]
    assert MEASURES.search(" mm")
