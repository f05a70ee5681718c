"""What came of a list in the window: in three lines, with its problems, and a button for all that can be done."""

import re
import tkinter
from pathlib import Path

import pytest

from tests.window.in_window import HEAD, buttons, planned, roster, wait_until, widgets, words
from tests.workbooks import write_workbook
from xlbatch import each_list
from xlbatch.run import Offer, Options, Outcome
from xlbatch.window.window import Window


def test_three_lines_say_what_it_comes_to(shown: Window, tmp_path: Path) -> None:
    planned(shown, roster(tmp_path, "M", "L"))
    text = next(each for each in widgets(shown.root) if isinstance(each, tkinter.Text))
    amounts, assumed, printing = text.get("1.0", "4.0").splitlines()
    assert re.fullmatch(r"2 garments, .+ of film in 1 run, .+, \d+ min of hand work\.", amounts)
    assert assumed.startswith("Assumed, each in a cell you can change: garment ")
    assert printing.startswith("To print: ")


def test_every_button_that_an_outcome_offers(shown: Window, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    tried: list[Options] = []
    other = Options(effort=7)

    def run(_path: Path, options: Options, *_: object) -> Outcome:
        tried.append(options)
        return Outcome(3, "There is a later plan.", offers=(Offer("Plan it anyway", other), Offer("What if", other)))

    monkeypatch.setattr(each_list, "run", run)
    planned(shown, roster(tmp_path, "M"))
    assert list(buttons(shown)) == ["Try again", "Plan it anyway", "What if", "Open my list", "Plan another list"]
    buttons(shown)["Plan it anyway"].invoke()
    wait_until(shown, lambda: len(tried) == 2 and "Plan another list" in buttons(shown))
    assert tried == [Options(effort=0), other]
    buttons(shown)["Try again"].invoke()
    wait_until(shown, lambda: len(tried) == 3)
    assert tried[2] == Options(effort=0)


def test_problems_name_the_person_and_like_ones_are_one_line(shown: Window, tmp_path: Path) -> None:
    rows = [["Ana", None, "Mediun"], ["Ivo", None, "Mediun"], ["Mei", None, "M"]]
    planned(shown, write_workbook(tmp_path / "roster.xlsx", {"Roster": [HEAD, *rows]}))
    said = words(shown)
    assert "Held back (2)" in said
    assert "Roster C2 (Ana): " in said
    assert "Likewise Roster C3 (Ivo)." in said


def test_what_is_said_can_be_copied(shown: Window, tmp_path: Path) -> None:
    planned(shown, roster(tmp_path, "M"))
    shown.root.update()
    text = next(each for each in widgets(shown.root) if isinstance(each, tkinter.Text))
    text.event_generate("<Button-1>", x=5, y=5)
    shown.root.update()
    assert shown.root.focus_lastfor() is text
    text.tag_add("sel", "1.0", "1.9")
    text.event_generate("<<Copy>>")
    assert shown.root.clipboard_get() == text.get("1.0", "1.9") != ""


def test_rows_held_back_are_counted_and_the_reason_is_read_in_the_window(shown: Window, tmp_path: Path) -> None:
    planned(shown, roster(tmp_path, "M", "Mediun"))
    assert "1 garment planned, 1 held back." in words(shown)
    assert "Held back (1)" in words(shown)
    assert "Roster C3 (Ana): " in words(shown)
    assert "Did you mean M?" in words(shown)
    assert shown.code == 1


def test_nothing_planned_opens_the_problems(shown: Window, opened: list[Path], tmp_path: Path) -> None:
    planned(shown, roster(tmp_path, "Mediun"))
    buttons(shown)["Open the problems"].invoke()
    assert opened == [tmp_path / "roster - problems.xlsx"]
    assert "Try again" in buttons(shown)


def test_many_lists_have_a_line_each_and_one_failure_stops_none(shown: Window, tmp_path: Path) -> None:
    (tmp_path / "b.xlsx").write_bytes(b"no workbook")
    roster(tmp_path, "M", name="a.xlsx")
    roster(tmp_path, "L", "?", name="c.xlsx")
    planned(shown, tmp_path)
    said = words(shown)
    assert "a.xlsx: 1 garment planned." in said
    assert "b.xlsx: No plan was made." in said
    assert "c.xlsx: 1 garment planned, 1 held back." in said
    choices = next(each for each in widgets(shown.root) if isinstance(each, tkinter.Listbox))
    shown.root.update()  # on the screen, so that it hears
    assert choices.curselection() == (1,)  # type: ignore[no-untyped-call]  # the first with trouble
    assert "Open the plan" not in buttons(shown)
    assert len({str(choices.itemcget(at, "foreground")) for at in range(3)}) == 3
    choices.focus_force()
    shown.root.update()
    choices.event_generate("<Down>")
    assert "Open the plan" in buttons(shown)
    assert shown.root.focus_get() is choices  # the arrow keys stay in the list
    assert shown.code == 3


def test_where_the_folder_may_not_be_written_to_another_is_offered(
    shown: Window, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path, elsewhere = roster(tmp_path, "M"), tmp_path / "elsewhere"

    def run(_path: Path, options: Options, *_: object) -> Outcome:
        if options.folder is None:
            return Outcome(3, "Could not write to it.", unsaved=True)
        return Outcome(0, f"Written to {options.folder}.", options.folder / "plan.xlsx")

    monkeypatch.setattr(each_list, "run", run)
    monkeypatch.setattr("tkinter.filedialog.askdirectory", lambda **_: str(elsewhere))
    planned(shown, path)
    assert "Could not write to it." in words(shown)
    buttons(shown)["Choose another folder …"].invoke()
    wait_until(shown, lambda: f"Written to {elsewhere}." in words(shown))


def test_a_long_name_leaves_room_for_what_came_of_it(shown: Window, tmp_path: Path) -> None:
    (tmp_path / f"The list {'of people ' * 9}in May.csv").write_text("")
    (tmp_path / "b.csv").write_text("")
    planned(shown, tmp_path)
    assert "The list of people of people … e in May.csv: No plan was made." in words(shown)
