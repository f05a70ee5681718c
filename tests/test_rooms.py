"""The rooms: imports point only at earlier rooms, no module imports in a circle, no two modules and no two classes
share a name, and only the outermost modules print or exit."""

import ast
from collections import Counter
from collections.abc import Iterator
from graphlib import TopologicalSorter
from pathlib import Path

import pytest

PACKAGE = Path(__file__).parents[1] / "xlbatch"
ROOMS = (
    "__init__", "unit_registry", "units", "problems", "resources", "file_names", "patience", "how_far",
    "seldom_searched", "trade", "job", "geometry", "fault", "claim", "saving", "files", "tables", "roster", "check",
    "lettering", "svg", "tracing", "parts", "art", "placement", "film", "press", "schedule", "shopping", "cutfiles",
    "kept", "plan", "agreement", "paper", "pictures", "sheets", "pages", "messages", "what_if", "sign_up",
    "blank_workbook", "in_short", "outcome", "two_workbooks", "run", "each_list", "window", "cli", "__main__",
)  # fmt: skip
MODULES = {
    ".".join(path.relative_to(PACKAGE).with_suffix("").parts).removesuffix(".__init__"): path
    for path in sorted(PACKAGE.rglob("*.py"))
}


def imports(path: Path) -> set[str]:
    """The modules of the package that a module imports, wherever in it."""
    names: set[str] = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.ImportFrom) and node.module and node.module.split(".")[0] == "xlbatch":
            base = node.module.removeprefix("xlbatch").removeprefix(".")
            within = {f"{base}.{alias.name}".removeprefix(".") for alias in node.names}
            names |= {name if name in MODULES else base or "__init__" for name in within}
        elif isinstance(node, ast.Import):
            names |= {alias.name.removeprefix("xlbatch.") for alias in node.names if alias.name.startswith("xlbatch.")}
    return names


def all_nodes() -> Iterator[ast.AST]:
    for path in MODULES.values():
        yield from ast.walk(ast.parse(path.read_text(encoding="utf-8")))


def room(module: str) -> str:
    return module.split(".")[0]


@pytest.mark.parametrize("module", MODULES)
def test_imports_point_at_earlier_rooms(module: str) -> None:
    earlier = ROOMS[: ROOMS.index(room(module)) + 1]
    assert {room(name) for name in imports(MODULES[module])} <= set(earlier)


def test_no_module_imports_in_a_circle() -> None:
    graph = {module: imports(path) - {module} for module, path in MODULES.items()}
    assert list(TopologicalSorter(graph).static_order())


def test_no_two_modules_share_a_name() -> None:
    names = Counter(path.stem for path in MODULES.values() if path.stem != "__init__")
    assert [name for name, count in names.items() if count > 1] == []


def test_no_class_name_means_two_things() -> None:
    names = Counter(node.name for node in all_nodes() if isinstance(node, ast.ClassDef))
    assert [name for name, count in names.items() if count > 1] == []


@pytest.mark.parametrize("module", MODULES)
def test_only_the_outermost_modules_print_or_exit(module: str) -> None:
    if room(module) in ("cli", "window", "__main__"):
        return
    for node in ast.walk(ast.parse(MODULES[module].read_text(encoding="utf-8"))):
        if isinstance(node, ast.Call):
            assert ast.unparse(node.func) not in ("print", "sys.exit", "exit")


@pytest.mark.parametrize("module", MODULES)
def test_only_the_outermost_modules_take_every_fault(module: str) -> None:
    """Everywhere else a fault of ours passes through, and is told as what it is. What cleans up raises it again."""
    if module in ("cli", "each_list", "window.worker"):
        return
    for node in ast.walk(ast.parse(MODULES[module].read_text(encoding="utf-8"))):
        if isinstance(node, ast.ExceptHandler):
            names = set(ast.unparse(node.type).strip("()").split(", ")) if node.type else {"BaseException"}
            passed_on = isinstance(node.body[-1], ast.Raise) and node.body[-1].exc is None
            assert passed_on or not names & {"Exception", "BaseException"}, ast.unparse(node)
