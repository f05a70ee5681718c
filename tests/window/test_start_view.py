"""The first view: what can be chosen, lists planned lately, new lists and examples."""

import shutil
import sys
import tkinter
from pathlib import Path
from tkinter import ttk

import pytest
from openpyxl import load_workbook

from tests.window.in_window import KEPT, buttons, planned, roster, wait_until, widgets, words
from xlbatch.run import Options
from xlbatch.window import remembered
from xlbatch.window.window import Window


def test_the_first_view_offers_three_choices_and_says_where_to_drop(shown: Window) -> None:
    assert set(buttons(shown)) == {
        "Plan a list …",
        "Make a blank list …",
        "Make a sign-up sheet …",
        "Open the examples",
    }
    shown.root.update()
    assert shown.root.focus_lastfor() is buttons(shown)["Plan a list …"]
    assert "Drop your list here, or choose it:\n" in words(shown)


@pytest.mark.usefixtures("display")
def test_where_the_window_can_take_no_drops_the_icon_is_named(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "tkinterdnd2", None)
    root = tkinter.Tk(className="xlbatch")
    KEPT.append(Window(root, Options()))
    assert "Drop your list on the program's icon" in words(KEPT[-1])
    root.destroy()


def test_lists_planned_lately_can_be_planned_again(shown: Window, tmp_path: Path) -> None:
    path = roster(tmp_path, "M", name="mine.xlsx")
    planned(shown, path)
    buttons(shown)["Plan another list"].invoke()
    shown.root.update()
    recent = next(each for each in widgets(shown.root) if isinstance(each, tkinter.Listbox))
    assert recent.get(0).startswith("mine.xlsx")
    recent.focus_force()
    shown.root.update()
    recent.event_generate("<Return>")
    wait_until(shown, lambda: "Plan another list" in buttons(shown))
    assert (tmp_path / "mine - plan 2.xlsx").exists()


@pytest.mark.parametrize(("choice", "unit"), [("in inches", "in"), ("in centimeters", "cm")])
def test_a_blank_list_is_made_and_opened_and_the_units_remembered(
    shown: Window, opened: list[Path], tmp_path: Path, monkeypatch: pytest.MonkeyPatch, choice: str, unit: str
) -> None:
    path, button = tmp_path / "new.xlsx", "Make a blank list …"
    next(each for each in widgets(shown.root) if isinstance(each, ttk.Radiobutton) and each["text"] == choice).invoke()
    monkeypatch.setattr("tkinter.filedialog.asksaveasfilename", lambda **_: str(path))
    buttons(shown)[button].invoke()
    wait_until(shown, lambda: opened == [path])
    job = [row[:2] for row in load_workbook(path)["Job"].iter_rows(values_only=True)]
    assert ("Length unit", unit) in job
    assert remembered.metric() == (unit == "cm")
    buttons(shown)[button].invoke()  # never over one that exists
    wait_until(shown, lambda: "already exists" in words(shown))


def test_a_sign_up_sheet_is_made_and_opened(
    shown: Window, opened: list[Path], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "sign up.xlsx"
    monkeypatch.setattr("tkinter.filedialog.asksaveasfilename", lambda **_: str(path))
    buttons(shown)["Make a sign-up sheet …"].invoke()
    wait_until(shown, lambda: opened == [path])
    assert "Send it round" in words(shown)
    assert load_workbook(path).sheetnames


def test_the_examples_are_copied_to_where_they_can_be_planned(shown: Window, opened: list[Path]) -> None:
    buttons(shown)["Open the examples"].invoke()
    assert opened == [Path.home() / "xlbatch examples"]
    assert (opened[0] / "relay squad.xlsx").exists()
    buttons(shown)["Open the examples"].invoke()
    assert opened[1] == opened[0]


def test_what_is_remembered_never_fails(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    settings, path = tmp_path / "settings", roster(tmp_path, "M")
    for name in ("XDG_CONFIG_HOME", "APPDATA", "HOME"):
        monkeypatch.setenv(name, str(settings))
    assert remembered.last_folder() == Path.home()
    remembered.remember_lists([path])
    remembered.remember_lists([tmp_path])
    assert (remembered.last_folder(), remembered.recent_lists()) == (tmp_path, (tmp_path, path))
    remembered.remember_folder(tmp_path / "gone")
    path.unlink()
    assert (remembered.last_folder(), remembered.recent_lists()) == (Path.home(), (tmp_path,))
    for damaged in ("", "[]", '{"folder": 3, "recent": [3, "\\u0000"], "metric": 1}', '{"recent": 1}', "\0"):
        remembered._file().write_text(damaged)
        assert (remembered.last_folder(), remembered.recent_lists(), remembered.metric()) == (Path.home(), (), False)
    shutil.rmtree(settings)
    settings.write_text("a file where the folder should be")
    remembered.remember_units(metric=True)
    assert not remembered.metric()
