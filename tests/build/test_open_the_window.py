"""What the Windows program without a console makes of what it is started with."""

import runpy
import sys
from multiprocessing.spawn import get_command_line, is_forking
from pathlib import Path

import pytest

SCRIPT = Path(__file__).resolve().parents[2] / "build" / "open_the_window.py"


def started_with(monkeypatch: pytest.MonkeyPatch, *arguments: str) -> list[str]:
    monkeypatch.setattr(sys, "argv", ["xlbatch.exe", *arguments])
    runpy.run_path(str(SCRIPT))
    return sys.argv


def test_a_list_dropped_on_it_opens_its_window(monkeypatch: pytest.MonkeyPatch) -> None:
    assert started_with(monkeypatch, "list.xlsx") == ["xlbatch.exe", "--window", "list.xlsx"]


def test_a_process_that_works_for_it_opens_none(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "frozen", True, raising=False)
    program, *arguments = get_command_line(parent_pid=1, pipe_handle=2)  # as Python starts one
    assert program
    assert is_forking(started_with(monkeypatch, *arguments))
