"""Planning in the window: lists dropped on it, the stages as they begin, stopping and closing."""

import sys
import threading
from pathlib import Path

import pytest

from tests.window.in_window import PATIENCE, buttons, planned, roster, wait_until, words
from xlbatch import each_list
from xlbatch.outcome import DRAWING, READING
from xlbatch.run import Options, Outcome, Progress, Step
from xlbatch.window.window import Window


@pytest.mark.skipif(sys.platform != "linux", reason="speaks the X protocol")
def test_lists_dropped_on_the_open_window_are_planned(shown: Window, tmp_path: Path) -> None:
    from tests.file_drop import Source

    lists = [roster(tmp_path, "M", name="a b, 100% é.xlsx"), roster(tmp_path, "L", name="日 {x} 🎈.xlsx")]
    shown.root.update()
    middle = [shown.root.winfo_rootx() + 200, shown.root.winfo_rooty() + 200]
    source, before = Source(lists, *middle), shown.root["highlightbackground"]

    def drag() -> None:
        source.over()
        seen.append(shown.root["highlightbackground"])
        source.drop()

    seen: list[str] = []
    threading.Thread(target=drag).start()
    wait_until(shown, lambda: "Plan another list" in buttons(shown))
    assert [f"{path.name}: 1 garment planned." in words(shown) for path in lists] == [True, True]
    assert seen[0] != before == shown.root["highlightbackground"]


AS_ON_MACOS = """
rename ::tk ::other_tk
proc ::tk {args} {expr {$args eq "windowingsystem" ? "aqua" : [::other_tk {*}$args]}}
"""


def test_lists_dropped_on_the_program_s_icon_are_planned(shown: Window, tmp_path: Path) -> None:
    """macOS calls Tk's command OpenDocument for them (Tcl/Tk manual, `tk_mac`)."""
    lists = [roster(tmp_path, "M", name="a b.xlsx"), roster(tmp_path, "L", name="日.xlsx")]
    shown.root.tk.eval(AS_ON_MACOS)
    window = Window(shown.root, Options(effort=0))
    shown.root.tk.call("::tk::mac::OpenDocument", *map(str, lists))
    wait_until(window, lambda: "Plan another list" in buttons(window))
    assert [f"{path.name}: 1 garment planned." in words(window) for path in lists] == [True, True]


def test_a_list_is_planned_and_what_came_of_it_opened(shown: Window, opened: list[Path], tmp_path: Path) -> None:
    planned(shown, roster(tmp_path, "M"))
    assert "1 garment planned." in words(shown)
    does = {"Open the plan": tmp_path / "roster - plan.xlsx", "Open the folder": tmp_path}
    does["Open my list"] = tmp_path / "roster.xlsx"
    if (tmp_path / "roster - to print.xlsx").exists():
        does = {"Open the pages to print": tmp_path / "roster - to print.xlsx", **does}
    assert list(buttons(shown)) == [*does, "Plan it again", "What if", "Plan another list"]
    for name in does:
        buttons(shown)[name].invoke()
    assert opened == list(does.values())
    assert shown.code == 0
    buttons(shown)["Plan it again"].invoke()
    wait_until(shown, lambda: "roster - plan 2.xlsx" in words(shown))


def test_the_stages_are_shown_as_they_begin(shown: Window, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    begun, seen = threading.Event(), threading.Event()

    def run(_path: Path, _options: Options, progress: Progress, _now: object) -> Outcome:
        begun.wait(PATIENCE / 1000)
        progress(Step(DRAWING, 412, 1000))
        seen.wait(PATIENCE / 1000)
        return Outcome(0, "20 garments planned.")

    monkeypatch.setattr(each_list, "run", run)
    assert shown.root.title() == "xlbatch"
    shown.plan([tmp_path / "roster.xlsx"])
    assert f"►\n{READING} …" in words(shown)
    assert shown.root.title() == "Planning roster.xlsx - xlbatch"
    begun.set()
    wait_until(shown, lambda: f"►\n{DRAWING} 412 of 1,000 drawn" in words(shown))
    assert f"✓\n{READING}" in words(shown)
    assert shown.root.title() == "17% roster.xlsx - xlbatch"
    seen.set()
    wait_until(shown, lambda: "Plan another list" in buttons(shown))
    assert shown.root.title() == "20 garments planned. - xlbatch"


def test_stopping_leaves_nothing(shown: Window, tmp_path: Path) -> None:
    path = roster(tmp_path, "M")
    shown.plan([path])
    buttons(shown)["Stop"].invoke()
    assert "Stopping …" in buttons(shown)
    wait_until(shown, lambda: "Stopped. Nothing was written." in words(shown))
    assert list(tmp_path.glob("[!s]*")) == [path]  # and the settings


def test_closing_stops_first(shown: Window, tmp_path: Path) -> None:
    path = roster(tmp_path, "M")
    shown.plan([path])
    shown.close()
    shown.root.mainloop()  # ends when the window is gone
    assert list(tmp_path.glob("*.xlsx")) == [path]


def test_a_list_dropped_while_another_is_planned_comes_next(shown: Window, tmp_path: Path) -> None:
    shown.plan([roster(tmp_path, "M", name="first.xlsx")])
    shown._dropped(str(roster(tmp_path, "M", name="second.xlsx")))
    wait_until(shown, lambda: "1 more dropped, planned next." in words(shown))
    wait_until(shown, lambda: "second.xlsx: 1 garment planned." in words(shown))
    assert "first.xlsx: 1 garment planned." in words(shown)
