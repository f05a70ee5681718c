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
