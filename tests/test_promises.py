"""What DEVELOPERS.md promises about the code, held against it: a sheet is a module and a line, a garment and a fiber
are lines in a table, and texts about bad input stand in problems/ alone."""

import ast
import csv
import re
import shutil
import subprocess
import sys
from collections.abc import Iterator
from fnmatch import fnmatch
from pathlib import Path

import pytest
from openpyxl import load_workbook

from tests.test_rooms import MODULES, PACKAGE, imports, room
from tests.workbooks import heading_at, write_workbook

NEW_SHEET = '''"""Birthdays: a sheet of its own."""

from xlbatch.paper.page import Column, Page, tabled
from xlbatch.plan import Plan

COLUMNS = (Column("Who", 2.0), Column("Birthday", 1.5))


def write(page: Page, plan: Plan) -> None:
    """A row a person."""
    frame = tabled(COLUMNS, ((garment.who, "") for garment in plan.garments))
    page.lay_columns(COLUMNS, frame)
    page.title("Birthdays", "Write them in.")
    page.table(frame)
'''
NEW_LINE = '    Sheet("Birthdays", __import__("xlbatch.sheets.birthdays", fromlist=["write"]).write),\n'
LIST = (("Who", "Size", "Garment"), ("Ana", "M", "Sailing smock"), ("Bo", "L", None))


@pytest.fixture(scope="module")
def planned(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A plan made by a copy of the program with one more sheet, garment and fiber."""
    top = tmp_path_factory.mktemp("tree")
    for folder in ("xlbatch", "templates"):
        shutil.copytree(PACKAGE.parent / folder, top / folder, ignore=shutil.ignore_patterns("__pycache__"))
    (top / "xlbatch/sheets/birthdays.py").write_text(NEW_SHEET, encoding="utf-8")
    sheets = top / "xlbatch/sheets/all_sheets.py"
    before, line, after = sheets.read_text(encoding="utf-8").partition('    Sheet("Money", money.write),\n')
    sheets.write_text(before + line + NEW_LINE + after, encoding="utf-8")
    tee = _lines(top / "xlbatch/trade/garments.csv", "Crew-neck tee", "M")
    _add(top / "xlbatch/trade/garments.csv", {**tee, "Garment": "Sailing smock", "Fabric": "ramie"})
    cotton = _lines(top / "xlbatch/trade/fibers.csv", "cotton")
    _add(top / "xlbatch/trade/fibers.csv", {**cotton, "Fiber": "ramie", "Usual iron dots": "1"})
    roster = write_workbook(top / "list.xlsx", {"Roster": LIST})
    command = [sys.executable, "-m", "xlbatch", str(roster), "--no-window", "--effort", "0"]
    done = subprocess.run(command, cwd=top, env={"PYTHONPATH": str(top)}, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    return top / "list - plan.xlsx"


def _lines(path: Path, *cells: str) -> dict[str, str]:
    with path.open(encoding="utf-8", newline="") as file:
        return next(line for line in csv.DictReader(file) if set(cells) <= set(line.values()))


def _add(path: Path, line: dict[str, str]) -> None:
    with path.open("a", encoding="utf-8", newline="") as file:
        csv.DictWriter(file, line).writerow(line)


def test_a_returned_sheet_is_a_module_and_a_line(planned: Path) -> None:
    book = load_workbook(planned)
    names = book.sheetnames
    assert names[names.index("Money") + 1] == "Birthdays"
    sheet = book["Birthdays"]
    row, column = heading_at(sheet, "Who")
    assert [sheet.cell(row + down, column).value for down in (1, 2)] == ["Ana", "Bo"]


def test_a_garment_is_a_line(planned: Path) -> None:
    """The smock is bought and placed like any other garment, by its own measures."""
    book = load_workbook(planned)
    assert "Sailing smock" in {cell.value for cell in book["Shopping list"]["C"]}
    assert "Sailing smock" in {cell.value for cell in book["Placement"]["C"]}


def test_a_fiber_is_a_line(planned: Path) -> None:
    """One dot is 110 °C (ISO 3758), 230 °F: cooler than the usual film, and the label was not checked."""
    wrong = [str(cell.value) for row in load_workbook(planned)["Problems"].iter_rows() for cell in row]
    assert any("ramie often bears only 230\N{NO-BREAK SPACE}°F" in text for text in wrong)


# Rooms whose texts are no bad input: what a sheet, a page, a picture, a message or the window says.
SPEAKING = {
    "problems", "trade", "sheets", "pages", "paper", "pictures", "messages", "window", "cli", "outcome", "in_short",
    "what_if", "sign_up", "run", "__main__",
}  # fmt: skip
OTHERS_WORDS = {  # texts that are read or written, not said
    "each_list": ("failed to map segment", "paging file is too small"),  # what a system says where memory is full
    "files.printed_of": ("Pages to print of ",),  # a property of the file
    "kept.changes": None,  # Changes says what follows from a change, with how much
    "kept.notes": None,  # likewise
    "roster.people": ("example row: write over it",),  # what stands in a blank roster's first row
    "schedule.at_press": None,  # the work, as Time plan lists it
    "shopping.arrivals": None,  # what to look for when a parcel comes
    "tables.input_table": None,  # Job sheet says what became of each heading
    "tables.typed_over": ("Name for the cell Font",),  # a heading
    "tables.input_tables": (  # sheets' names and titles
        "Fonts to choose from",
        "Kept by the program: this plan's memory. Leave it as it is.",
    ),
    "agreement": None,  # what a judge of the program itself finds, like the next
    "film.verify": None,  # what a verifier of the program itself finds
}


def sentences(module: str) -> Iterator[str]:
    """Texts of four words or more that a module holds beside its docstrings, its errors and keys of trade tables."""
    tree = ast.parse(MODULES[module].read_text(encoding="utf-8"))
    passed = {id(part) for root in _not_said(tree) for part in ast.walk(root)}
    for node in ast.walk(tree):
        if id(node) in passed:
            continue
        if isinstance(node, ast.JoinedStr):
            passed |= {id(part) for part in ast.walk(node)}
            text = " ".join(str(part.value) if isinstance(part, ast.Constant) else "…" for part in node.values)
        elif isinstance(node, ast.Constant) and isinstance(node.value, str):
            text = node.value
        else:
            continue
        words = [word for word in text.split() if re.fullmatch(r"[^\W\d_]{2,}[.,:;]?", word)]
        if len(words) >= 4 and not re.search(r"[<\\|]", text):
            yield text


def _not_said(tree: ast.Module) -> Iterator[ast.AST]:
    for node in ast.walk(tree):
        if isinstance(node, ast.Module | ast.ClassDef | ast.FunctionDef) and ast.get_docstring(node):
            yield node.body[0]
        elif isinstance(node, ast.Raise | ast.Assert):
            yield node
        elif isinstance(node, ast.Call) and ast.unparse(node.func) in ("practice", "phrase", "refusal"):
            yield from node.args


@pytest.mark.parametrize("module", [module for module in MODULES if room(module) not in SPEAKING])
def test_texts_about_bad_input_stand_in_problems(module: str) -> None:
    left_out = OTHERS_WORDS.get(module, ())
    tables = (row for path in (PACKAGE / "trade").glob("*.csv") for row in _rows(path))
    cells = {part.strip() for row in tables for cell in row for part in cell.split(";")}
    said = [text for text in sentences(module) if text not in cells and text not in (left_out or ())]
    assert said == [] or left_out is None


def _rows(path: Path) -> list[list[str]]:
    with path.open(encoding="utf-8", newline="") as file:
        return list(csv.reader(file))


ADAPTERS = {  # the one module each that knows another package from within
    "files.openpyxl_parts": "openpyxl", "paper.living_workbook": "XlsxWriter", "film.solver": "highspy",
    "unit_registry": "pint",
}  # fmt: skip
OF_TUPLES = ("_replace", "_asdict", "_fields", "_make")  # public, whatever their name


@pytest.mark.parametrize("module", [module for module in MODULES if module not in ADAPTERS])
def test_only_adapters_look_inside_other_packages(module: str) -> None:
    inside = []
    for node in ast.walk(ast.parse(MODULES[module].read_text(encoding="utf-8"))):
        if isinstance(node, ast.Attribute) and node.attr.startswith("_") and not node.attr.startswith("__"):
            own = isinstance(node.value, ast.Name) and node.value.id in ("self", "cls", "other", "memory")
            inside += [node.attr] if not own and node.attr not in OF_TUPLES else []
        if isinstance(node, ast.Call) and ast.unparse(node.func) in ("getattr", "setattr"):
            inside += [name for name in map(ast.unparse, node.args) if name.startswith("'_")]
    assert inside == []


def test_the_judge_of_layouts_shares_no_geometry_with_what_lays_them_out() -> None:
    """Only records: a layout, an outline. What lays decals out: all of film/ but its judge and its cutting order."""
    judges, records = {"film.verify", "film.shape"}, {"film.layout", "geometry.outline"}
    lays_out = {module for module in MODULES if room(module) == "film"} - judges - records - {"film.cutting", "film"}
    used = set().union(*(imports(MODULES[module]) for module in lays_out))
    assert "geometry.flat" in used
    for judge in judges:
        shared = {
            module for module in imports(MODULES[judge]) & (used | lays_out) if room(module) in ("film", "geometry")
        }
        assert shared <= records | judges


def test_no_folder_of_tests_is_left_out(pytestconfig: pytest.Config) -> None:
    """Unless told otherwise pytest looks into no folder called build."""
    top = Path(__file__).parent
    folders = {part for path in top.rglob("test_*.py") for part in path.relative_to(top).parent.parts}
    patterns = pytestconfig.getini("norecursedirs")
    assert not [folder for folder in folders for pattern in patterns if fnmatch(folder, pattern)]


def test_every_file_is_read_in_one_sitting() -> None:
    top = PACKAGE.parent
    files = (path for folder in ("xlbatch", "build", "tests") for path in (top / folder).rglob("*.py"))
    long = {path.relative_to(top).as_posix() for path in files if len(path.read_text("utf-8").splitlines()) > 300}
    assert not long


@pytest.mark.parametrize("module", MODULES)
def test_a_frozen_record_adds_to_nothing_of_its_own(module: str) -> None:
    for record in ast.walk(ast.parse(MODULES[module].read_text(encoding="utf-8"))):
        if isinstance(record, ast.ClassDef) and "frozen=True" in "".join(map(ast.unparse, record.decorator_list)):
            calls = (ast.unparse(node.func) for node in ast.walk(record) if isinstance(node, ast.Call))
            assert not [
                call for call in calls if re.fullmatch(r"self\.\w+\.(append|extend|add|update|setdefault)", call)
            ]
            stored = (node for node in ast.walk(record) if isinstance(node, ast.Subscript))
            assert not [node for node in stored if isinstance(node.ctx, ast.Store) and "self." in ast.unparse(node)]


@pytest.mark.parametrize("module", MODULES)
def test_variables_say_what_they_hold(module: str) -> None:
    """But for what a person typed, which texts about bad input call {found}."""
    silent = {"at", "each", "one", "said", "odd", *["found"] * (module != "problems.problem")}
    for function in ast.walk(ast.parse(MODULES[module].read_text(encoding="utf-8"))):
        if isinstance(function, ast.FunctionDef):
            names = {node.id for node in ast.walk(function) if isinstance(node, ast.Name)}
            names |= {node.arg for node in ast.walk(function) if isinstance(node, ast.arg)}
            assert not names & silent, function.name
