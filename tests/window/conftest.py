"""A screen, and the window on it."""

import os
import shutil
import subprocess
import sys
import tkinter
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.window.in_window import KEPT
from xlbatch.run import Options
from xlbatch.window import window
from xlbatch.window.window import Window


@pytest.fixture(scope="session")  # the process ends with a screen on which it had windows
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
