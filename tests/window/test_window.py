"""The window itself: on any screen, by keyboard, in larger type, and where there is none."""

import os
import shutil
import subprocess
import sys
import tkinter
from pathlib import Path
from tkinter import ttk

import pytest

from tests.window.in_window import KEPT, buttons, roster, wait_until, words
from xlbatch.run import Options
from xlbatch.window import open_file
from xlbatch.window.window import Window, open_window


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
