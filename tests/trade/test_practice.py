"""Numbers of the trade stand in the tables, not in the program: each with its source, each used."""

import ast
import tokenize
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.test_rooms import MODULES
from xlbatch.trade.tables import practice, table


def calls(name: str) -> Iterator[tuple[Path, ast.Call]]:
    """Every call of a function of that name in the program, and in which module."""
    for path in MODULES.values():
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call) and ast.unparse(node.func) == name:
                yield path, node


def test_every_practice_is_in_the_table_once_and_is_used() -> None:
    used = {ast.literal_eval(call.args[0]) for _, call in calls("practice")}
    listed = [line["Practice"] for line in table("practice")]
    assert sorted(listed) == sorted(used)


def test_a_length_comes_in_mm() -> None:
    """Source: NIST SP 811, 1 in = 25.4 mm."""
    with_inches = next(line for line in table("practice") if line["Unit"] == "in")
    assert practice(with_inches["Practice"]) == pytest.approx(float(with_inches["Value"]) * 25.4)


@pytest.mark.parametrize("path", MODULES.values(), ids=MODULES.keys())
def test_no_module_holds_a_number_by_common_practice(path: Path) -> None:
    with path.open("rb") as file:
        comments = [token.string for token in tokenize.tokenize(file.readline) if token.type == tokenize.COMMENT]
    assert [comment for comment in comments if "practice" in comment or "source" in comment] == []
