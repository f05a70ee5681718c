"""The documents say what the program does."""

import importlib
import re
from pathlib import Path

import pytest

from xlbatch.cli import _parser
from xlbatch.trade.columns import columns

TOP = Path(__file__).parents[1]
README = (TOP / "README.md").read_text(encoding="utf-8")
DEVELOPERS = (TOP / "DEVELOPERS.md").read_text(encoding="utf-8")
STAGES = re.findall(r"^\| `(\w+)/` \|.*\|(.*)\|$", DEVELOPERS, re.MULTILINE)


def test_the_readme_is_read_in_a_few_minutes() -> None:
    assert len(README.split()) <= 900


def test_the_readme_names_every_option() -> None:
    options = {word for action in _parser()._actions for word in action.option_strings if word.startswith("--")}
    assert [option for option in sorted(options) if option not in README] == []


def test_the_readme_names_every_column_of_the_roster() -> None:
    ours = ("Garment no.", "First name", "Last name", "Done so far")  # kept by the program, or another way to give Who
    assert [c.heading for c in columns("Roster") if c.heading not in ours and f"`{c.heading}`" not in README] == []


def test_the_readme_names_every_returned_sheet() -> None:
    from xlbatch.sheets.all_sheets import SHEETS

    assert [sheet.name for sheet in SHEETS if not sheet.hidden and sheet.name not in README] == []


@pytest.mark.parametrize(("room", "entries"), STAGES)
def test_the_flow_table_names_entries_that_exist(room: str, entries: str) -> None:
    named = re.findall(r"`(\w+)\.(\w+)`", entries)
    assert named
    for module, name in named:
        assert callable(getattr(importlib.import_module(f"xlbatch.{room}.{module}"), name))


def test_every_file_the_documents_name_exists() -> None:
    for text in (README, DEVELOPERS):
        for name in re.findall(r"(?:build|tests|xlbatch|example_workbooks)/[\w./]+\.(?:py|png|csv|md|toml)", text):
            assert (TOP / name).exists(), name


ASKED = re.findall(r"^\| ([^|]+\?) \| `([^`]+)` \| (.+) \|$", DEVELOPERS, re.MULTILINE)


def test_the_eight_questions_of_a_newcomer_are_answered_by_files_that_exist() -> None:
    assert len(ASKED) == 8
    assert [path for _, path, _ in ASKED if not (TOP / path).exists()] == []


def test_the_readme_begins_with_what_it_is_for_and_its_commands_exist() -> None:
    assert README.splitlines()[2].startswith("You make personalized shirts")
    commands = re.findall(r"^python3 (build/\w+\.py)", README, re.MULTILINE)
    assert commands[:2] == ["build/plan.py", "build/test.py"]
    assert all((TOP / command).is_file() for command in commands)


def test_the_list_of_sheets_names_the_module_of_each() -> None:
    from xlbatch.sheets.all_sheets import SHEETS

    listed = (TOP / "xlbatch/sheets/all_sheets.py").read_text(encoding="utf-8")
    for sheet in SHEETS:
        module = sheet.write.__module__.rpartition(".")[2]
        assert module == "all_sheets" or f"{module}.write" in listed or f"import {module}" in listed, sheet.name


def test_each_problem_code_stands_in_one_file() -> None:
    from xlbatch.problems import KINDS

    texts = [path.read_text(encoding="utf-8") for path in (TOP / "xlbatch/problems").glob("*.py")]
    assert [kind.code for kind in KINDS if sum(f'Kind("{kind.code}"' in text for text in texts) != 1] == []


def test_the_tests_of_a_room_lie_in_the_folder_of_its_name() -> None:
    rooms = {path.parent.name for path in (TOP / "xlbatch").glob("*/__init__.py")}
    elsewhere = {"benchmarks", "build", "data", "lists", "as_written"}
    assert {path.name for path in (TOP / "tests").iterdir() if path.is_dir()} - elsewhere - {"__pycache__"} <= rooms


def test_the_map_names_every_room_and_module_beside_the_rooms() -> None:
    package = TOP / "xlbatch"
    rooms = [f"{path.parent.name}/" for path in package.glob("*/__init__.py")]
    modules = [path.name for path in package.glob("*.py") if path.stem not in ("__init__", "__main__", "plan")]
    assert [name for name in sorted(rooms) if f"`{name}" not in DEVELOPERS and f"/{name}" not in DEVELOPERS] == []
    assert [name for name in sorted(modules) if f"`{name}" not in DEVELOPERS and f"/{name}" not in DEVELOPERS] == []
