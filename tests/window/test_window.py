"""The window: drop or choose a list, see it planned, open what came of it."""

import os
import re
import shutil
import subprocess
import sys
import threading
import tkinter
from collections.abc import Callable, Iterator
from pathlib import Path
from tkinter import ttk

import pytest
from openpyxl import load_workbook

from tests.workbooks import write_workbook
from xlbatch import each_list
from xlbatch.outcome import DRAWING, READING
from xlbatch.run import Offer, Options, Outcome, Progress, Step
from xlbatch.window import open_file, remembered, window
from xlbatch.window.window import Window, open_window

PATIENCE, LOOK = 60_000, 20  # ms
KEPT: list[Window] = []  # what belongs to a screen must not be cleared away by the thread that plans
HEAD = ["Who", "Garment", "Size"]


@pytest.fixture(scope="module")
def display() -> Iterator[None]:
    """A screen: the one there is, or one in memory."""
    if sys.platform != "linux" or os.environ.get("DISPLAY"):
        yield
        return
    if not shutil.which("Xvfb"):
        pytest.skip("needs a display, or Xvfb")
    command = ["Xvfb", "-displayfd", "1", "-screen", "0", "1280x1024x24"]
    with subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True) as screen:
        assert screen.stdout is not None
        os.environ["DISPLAY"] = f":{screen.stdout.readline().strip()}"
        yield
        del os.environ["DISPLAY"]
        screen.terminate()


@pytest.fixture
def opened(monkeypatch: pytest.MonkeyPatch) -> list[Path]:
    """What the window has opened with other programs."""
    paths: list[Path] = []

    def note(path: Path) -> bool:
        paths.append(path)
        return True

    monkeypatch.setattr(window, "open_with_its_program", note)
    return paths


@pytest.fixture
def shown(display: None, opened: list[Path], tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Window]:  # noqa: ARG001
    monkeypatch.setenv("HOME", str(tmp_path / "home"))
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / "settings"))
    root = tkinter.Tk(className="xlbatch")
    KEPT.append(Window(root, Options(effort=0)))
    yield KEPT[-1]
    if root.tk.call("info", "commands", "."):  # else the test has closed it
        root.destroy()


def roster(folder: Path, *sizes: str, name: str = "roster.xlsx") -> Path:
    return write_workbook(folder / name, {"Roster": [HEAD, *(["Ana", None, size] for size in sizes)]})


def widgets(inside: tkinter.Misc) -> Iterator[tkinter.Misc]:
    for each in inside.winfo_children():
        yield each
        yield from widgets(each)


def words(shown: Window) -> str:
    """All that can be read in the window."""
    said = []
    for each in widgets(shown.root):
        if isinstance(each, tkinter.Text):
            said.append(each.get("1.0", "end"))
        elif isinstance(each, tkinter.Listbox):
            said += each.get(0, "end")
        elif isinstance(each, ttk.Label | ttk.Button):
            said.append(str(each["text"]))
    return "\n".join(said)


def buttons(shown: Window) -> dict[str, ttk.Button]:
    return {str(each["text"]): each for each in widgets(shown.root) if isinstance(each, ttk.Button)}


def wait_until(shown: Window, true: Callable[[], bool]) -> None:
    """Lets the window live until something is true in it."""
    looks_left = PATIENCE // LOOK

    def look() -> None:
        nonlocal looks_left
        looks_left -= 1
        if true() or not looks_left:
            shown.root.quit()
        else:
            shown.root.after(LOOK, look)

    shown.root.after(0, look)
    shown.root.mainloop()
    assert true(), words(shown)


def planned(shown: Window, *paths: Path) -> None:
    shown.plan(paths)
    wait_until(shown, lambda: "Plan another list" in buttons(shown))


def test_the_first_view_offers_three_choices_and_says_where_to_drop(shown: Window) -> None:
    assert set(buttons(shown)) == {
        "Plan a list …",
        "Make a blank list …",
        "Make a sign-up sheet …",
        "Open the examples",
    }
    shown.root.update()
    assert shown.root.focus_lastfor() is buttons(shown)["Plan a list …"]
    assert "Drop your list here, or choose it: " in words(shown)


@pytest.mark.usefixtures("display")
def test_where_the_window_can_take_no_drops_the_icon_is_named(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "tkinterdnd2", None)
    root = tkinter.Tk(className="xlbatch")
    KEPT.append(Window(root, Options()))
    assert "Drop your list on the program's icon" in words(KEPT[-1])
    root.destroy()


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


@pytest.mark.parametrize("larger", [0, 12])
@pytest.mark.parametrize(
    ("wide", "high", "dpi"), [(1024, 768, 96), (1366, 768, 120), (1920, 1080, 192), (1280, 720, 96)]
)
def test_all_buttons_can_be_reached_on_small_and_dense_screens(
    tmp_path: Path, wide: int, high: int, dpi: int, larger: int
) -> None:
    if sys.platform != "linux" or not shutil.which("Xvfb"):
        pytest.skip("needs Xvfb")
    command = ["Xvfb", "-displayfd", "1", "-screen", "0", f"{wide}x{high}x24", "-dpi", str(dpi)]
    env = os.environ | {"XDG_CONFIG_HOME": str(tmp_path), "PYTHONPATH": str(Path(__file__).parents[2])}
    shots = os.environ.get("XLBATCH_SHOTS", "")  # a folder for pictures of all states, to be looked at
    show: list[str | Path] = [sys.executable, Path(__file__).with_name("show_states.py"), str(dpi), str(larger)]
    with subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True) as screen:
        assert screen.stdout is not None
        env["DISPLAY"] = f":{screen.stdout.readline().strip()}"
        try:
            done = subprocess.run([*show, tmp_path, shots], env=env, capture_output=True, text=True, check=False)
        finally:
            screen.terminate()
    assert done.returncode == 0, done.stdout + done.stderr
    assert done.stdout.splitlines() == [f"{state}: all seen" for state in ("start", "progress", "results", "failure")]


def test_the_pointer_over_a_button_does_not_make_it_look_chosen(shown: Window) -> None:
    style = ttk.Style(shown.root)
    over = {name: style.lookup(name, "background", ["active"]) for name in ("TButton", "Main.TButton")}
    plain = {name: style.lookup(name, "background") for name in ("TButton", "Main.TButton")}
    assert len({*over.values(), *plain.values()}) == 4


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


def test_the_stages_are_shown_as_they_begin(shown: Window, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    seen = threading.Event()

    def run(_path: Path, _options: Options, progress: Progress, _now: object) -> Outcome:
        progress(Step(DRAWING, 412, 1000))
        seen.wait(PATIENCE / 1000)
        return Outcome(0, "")

    monkeypatch.setattr(each_list, "run", run)
    shown.plan([tmp_path / "roster.xlsx"])
    wait_until(shown, lambda: f"▸ {DRAWING} 412 of 1,000 drawn" in words(shown))
    assert f"✓ {READING}" in words(shown)
    seen.set()
    wait_until(shown, lambda: "Plan another list" in buttons(shown))


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


def test_a_list_dropped_while_another_is_planned_comes_next(shown: Window, tmp_path: Path) -> None:
    shown.plan([roster(tmp_path, "M", name="first.xlsx")])
    shown._dropped(str(roster(tmp_path, "M", name="second.xlsx")))
    wait_until(shown, lambda: "1 more dropped, planned next." in words(shown))
    wait_until(shown, lambda: "second.xlsx: 1 garment planned." in words(shown))
    assert "first.xlsx: 1 garment planned." in words(shown)


def test_the_keyboard_does_all(shown: Window, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("tkinter.filedialog.askopenfilenames", lambda **_: (str(roster(tmp_path, "M")),))
    shown.root.update()
    focused = shown.root.focus_lastfor()
    assert focused is buttons(shown)["Plan a list …"]
    focused.focus_force()
    focused.event_generate("<Return>")
    assert "Stop" in buttons(shown)
    shown.root.event_generate("<Escape>")
    wait_until(shown, lambda: "Stopped. Nothing was written." in words(shown))


def test_a_long_name_leaves_room_for_what_came_of_it(shown: Window, tmp_path: Path) -> None:
    (tmp_path / f"The list {'of people ' * 9}in May.csv").write_text("")
    (tmp_path / "b.csv").write_text("")
    planned(shown, tmp_path)
    assert "The list of people of people … e in May.csv: No plan was made." in words(shown)


def test_type_is_large_and_can_be_made_larger(shown: Window) -> None:
    before = shown.look.fonts["text"].actual("size")
    assert before >= 14
    shown.look.enlarge(3)
    assert shown.look.fonts["text"].actual("size") == before + 3


def test_the_window_grows_with_its_letters_as_far_as_the_screen_allows(shown: Window) -> None:
    def size() -> tuple[int, int]:
        shown.root.update()
        return shown.root.winfo_width(), shown.root.winfo_height()

    before = size()
    shown.look.enlarge(3)
    grown = size()
    assert grown[0] > before[0]
    assert grown[1] > before[1]
    shown.look.enlarge(-6)
    assert size() == grown  # what a person sees is not taken away
    shown.look.enlarge(30)
    assert size()[0] <= shown.root.winfo_screenwidth() * 0.901


@pytest.mark.usefixtures("display")
def test_a_dense_screen_has_more_dots_a_point(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    if sys.platform != "linux":
        pytest.skip("the other systems tell Tk themselves")
    tool = tmp_path / "xrdb"
    tool.write_text("#!/bin/sh\necho 'Xft.dpi:\t192'\n")
    tool.chmod(0o755)
    monkeypatch.setenv("PATH", str(tmp_path), prepend=os.pathsep)
    root = tkinter.Tk()
    KEPT.append(Window(root, Options()))
    assert root.winfo_fpixels("72p") == pytest.approx(192, abs=0.5)
    root.destroy()


def test_without_a_display_there_is_no_window(monkeypatch: pytest.MonkeyPatch) -> None:
    def no_display(**_: object) -> None:
        raise tkinter.TclError

    monkeypatch.setattr("tkinter.Tk", no_display)
    assert open_window([], Options()) is None


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


def test_another_program_does_not_load_the_bundle_s_libraries(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("LD_LIBRARY_PATH", "/bundle")
    assert open_file.surroundings()["LD_LIBRARY_PATH"] == "/bundle"
    monkeypatch.setattr(sys, "frozen", True, raising=False)
    assert "LD_LIBRARY_PATH" not in open_file.surroundings()
    monkeypatch.setenv("LD_LIBRARY_PATH_ORIG", "/mine")
    assert open_file.surroundings()["LD_LIBRARY_PATH"] == "/mine"


def test_a_file_nothing_opens_is_said_where_it_lies(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setenv("PATH", str(tmp_path))
    if sys.platform == "linux":
        assert not open_file.open_with_its_program(tmp_path / "plan.xlsx")
