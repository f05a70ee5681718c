"""The rooms: imports point only at earlier rooms, and only the outermost modules print or exit."""

import ast
from pathlib import Path

import pytest

PACKAGE = Path(__file__).parents[1] / "xlbatch"
BASE = ("problems", "units", "resources", "patience", "trade")
STAGES = (
    "roster", "check", "art", "placement", "film", "press", "schedule", "shopping", "sheets", "cutfiles",
)  # fmt: skip
MODULES = sorted(PACKAGE.rglob("*.py"))


def imports(path: Path) -> set[str]:
    """The rooms a module imports from."""
    names: set[str] = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.ImportFrom) and node.module:
            names.add(node.module)
        elif isinstance(node, ast.Import):
            names |= {alias.name for alias in node.names}
    return {name.split(".")[1] for name in names if name.startswith("xlbatch.")}


def room(path: Path) -> str:
    return path.relative_to(PACKAGE).parts[0].removesuffix(".py")


@pytest.mark.parametrize("path", MODULES, ids=lambda path: str(path.relative_to(PACKAGE)))
def test_imports_point_downstream(path: Path) -> None:
    here = room(path)
    if here in BASE:
        assert imports(path) <= set(BASE)
    elif here in STAGES:
        earlier = set(STAGES[: STAGES.index(here) + 1])
        assert imports(path) <= earlier | set(BASE)


@pytest.mark.parametrize("path", MODULES, ids=lambda path: str(path.relative_to(PACKAGE)))
def test_only_the_outermost_modules_print_or_exit(path: Path) -> None:
    if room(path) in ("cli", "window", "__main__"):
        return
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Call):
            assert ast.unparse(node.func) not in ("print", "sys.exit", "exit")
