"""Runs tests in children of a process that has everything loaded already, so that a run takes as long as its tests.
Needs a system that can fork (Linux, macOS)."""

import importlib
import os
import resource
import signal
import sys
import tempfile
from collections.abc import Callable, Iterable, Mapping
from functools import partial
from pathlib import Path
from types import FrameType
from typing import Any

import hypothesis
import pytest

from tests.benchmarks.in_place import put
from tests.benchmarks.mutants import Mutant

LIBRARIES = (
    "numpy", "openpyxl", "xlsxwriter", "jinja2", "ezdxf", "uharfbuzz", "fontTools.ttLib", "pathops",
    "tinycss2", "cssselect2", "rapidfuzz", "shapely", "resvg_py", "PIL.Image", "pytest", "xlrd",
    "fontTools.svgLib.path", "fontTools.varLib.instancer", "charset_normalizer", "python_calamine",
)  # fmt: skip
LONGEST = 20  # s of the processor for the tests of one file: what takes longer has noticed nothing


def load(tree: Path) -> Mapping[str, frozenset[tuple[str, int]]]:
    """Loads the libraries, and from the copy of the tree the program: its small jobs are planned once. Returns the
    lines of the program that each job runs, by module."""
    for name in LIBRARIES:
        importlib.import_module(name)
    _from(tree)
    from tests.plan_texts import NAMES

    lines = {name: _lines_run(f"{tree}/xlbatch/", partial(_is_as_kept, name)) for name in NAMES}
    assert all(map(_is_as_kept, NAMES)), "the small jobs are not planned as they are kept: python -m tests.plan_texts"
    return lines


def _lines_run(program: str, run: Callable[[], object]) -> frozenset[tuple[str, int]]:
    lines: set[tuple[str, int]] = set()

    def line(frame: FrameType, _event: str, _arg: object) -> Any:
        lines.add((frame.f_code.co_filename, frame.f_lineno))
        return line

    sys.settrace(lambda frame, event, arg: line(frame, event, arg) if program in frame.f_code.co_filename else None)
    try:
        run()
    finally:
        sys.settrace(None)
    return frozenset((path.removeprefix(program), number) for path, number in lines)


def lines_change(mutant: Mutant, source: bytes, jobs: Iterable[str]) -> bool:
    """Whether the lines of a small job are others, or it fails, with the changed source in the place of its module."""
    name = "xlbatch." + mutant.module.removesuffix(".py").removesuffix("/__init__").replace("/", ".")

    def differ() -> bool:
        put(importlib.import_module(name), source)
        return not all(map(_is_as_kept, jobs))

    return _in_child(differ, 90)


def failing_test(tree: Path, file: str, left_out: Iterable[str]) -> str:
    """The first test of a file of the copy of the tree that fails, but for those left out; "" where none does."""
    name = tree.parent / "failing.txt"
    name.write_text("", encoding="utf-8")

    def fails() -> bool:
        failing = _failing(tree, ["-x", *(f"--deselect={test}" for test in left_out), file])
        name.write_text("\n".join(failing), encoding="utf-8")
        return bool(failing)

    _in_child(fails, LONGEST)
    return name.read_text(encoding="utf-8")


class _Heard:
    """The tests that failed, and the files that could not be read."""

    def __init__(self) -> None:
        self.failed: list[str] = []

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        if report.failed:
            self.failed.append(report.nodeid)

    def pytest_collectreport(self, report: pytest.CollectReport) -> None:
        if report.failed:
            self.failed.append(report.nodeid)


def _failing(tree: Path, arguments: list[str]) -> list[str]:
    """The tests that fail: in a child alone, as the program is loaded anew."""
    os.chdir(tree)
    for name in [name for name in sys.modules if name.split(".")[0] in ("tests", "xlbatch")]:
        del sys.modules[name]
    hypothesis.settings.register_profile("slow", deadline=None, database=None)
    hypothesis.settings.load_profile("slow")
    heard = _Heard()
    quiet = [
        "-q",
        "-p",
        "no:cacheprovider",
        "--no-header",
        "--tb=no",
        "-W",
        "ignore::pytest.PytestAssertRewriteWarning",
    ]
    ended = pytest.main([*quiet, *arguments], plugins=[heard])
    return heard.failed or [arguments[-1]] * (ended not in (0, 5))


def _from(tree: Path) -> None:
    """Has the program and its tests be those of the copy."""
    top = str(Path(__file__).parents[2])
    sys.path[:] = [str(tree), *(path for path in sys.path if path not in ("", top))]
    sys.dont_write_bytecode = True


def _is_as_kept(name: str) -> bool:
    from tests.plan_texts import FOLDER, texts

    with tempfile.TemporaryDirectory() as folder:
        kept = texts(name, Path(folder))
        return all(text == (FOLDER / file).read_text(encoding="utf-8") for file, text in kept)


def _in_child(check: Callable[[], bool], most: int) -> bool:
    """What a check says in a child process; True where it fails, or takes more than so many seconds."""
    if child := os.fork():
        return os.waitpid(child, 0)[1] != 0
    wrong = True
    try:
        resource.setrlimit(resource.RLIMIT_CPU, (most, most + 5))
        signal.alarm(20 * most)  # where it waits for ever
        quiet = os.open(os.devnull, os.O_RDWR)
        for stream in (0, 1, 2):
            os.dup2(quiet, stream)
        wrong = check()
    finally:
        os._exit(int(wrong))
