"""Runs tests in children of a process that has everything loaded already, so that a run takes as long as its tests.
Needs a system that can fork (Linux, macOS)."""

import importlib
import json
import os
import resource
import signal
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

import hypothesis
import pytest

from tests.benchmarks.in_place import put
from tests.benchmarks.mutants import Mutant

LIBRARIES = (
    "numpy", "pandas", "openpyxl", "xlsxwriter", "pint", "jinja2", "ezdxf", "uharfbuzz", "fontTools.ttLib", "pathops",
    "tinycss2", "cssselect2", "rapidfuzz", "shapely", "resvg_py", "PIL.Image", "pytest", "xlrd",
    "fontTools.svgLib.path", "fontTools.varLib.instancer", "charset_normalizer", "python_calamine",
)  # fmt: skip
LONGEST = 90  # s of the processor to learn what a test file runs


def load(tree: Path) -> None:
    """Loads the libraries, and from the copy of the tree the program: its small jobs are planned once."""
    for name in LIBRARIES:
        importlib.import_module(name)
    _from(tree)
    assert _lines_are_kept(), "the small jobs are not planned as they are kept: python -m tests.plan_texts"


def lines_change(mutant: Mutant, source: bytes) -> bool:
    """Whether a small job's lines are others, or it fails, with the changed source in the place of its module."""
    name = "xlbatch." + mutant.module.removesuffix(".py").removesuffix("/__init__").replace("/", ".")

    def differ() -> bool:
        put(importlib.import_module(name), source)
        return not _lines_are_kept()

    return _in_child(differ, 60)


def covers(tree: Path, file: str, kept: Path) -> bool:
    """Writes what a test file of the copy runs, as JSON: its seconds, the tests that fail, the lines of each module.
    False where that takes too long."""
    import coverage

    def not_known() -> bool:
        program = f"{tree.resolve()}/xlbatch/"
        lines = coverage.Coverage(data_file=None, config_file=False, include=[f"{program}*"])
        lines.start()
        start = time.process_time()
        failing = _failing(tree, [file])
        seconds = time.process_time() - start
        lines.stop()
        data = lines.get_data()
        by_module = {path.removeprefix(program): data.lines(path) for path in data.measured_files()}
        kept.write_text(json.dumps({"seconds": seconds, "failing": failing, "lines": by_module}), encoding="utf-8")
        return False

    return not _in_child(not_known, LONGEST)


def fails(tree: Path, tests: list[str], seconds: float, name: Path) -> bool:
    """Whether a test of these of the copy of the tree fails, or they take far longer than so many seconds. The test
    that failed is written into the file."""

    def failed() -> bool:
        failing = _failing(tree, ["-x", *tests])
        name.write_text("\n".join(failing), encoding="utf-8")
        return bool(failing)

    name.write_text("never ended", encoding="utf-8")
    return _in_child(failed, round(3 * seconds) + 30)


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
    hypothesis.settings.register_profile("slow", deadline=None, derandomize=True, database=None)
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
    return heard.failed or [f"pytest ends with {ended}"] * (ended not in (0, 5))


def _from(tree: Path) -> None:
    """Has the program and its tests be those of the copy."""
    top = str(Path(__file__).parents[2])
    sys.path[:] = [str(tree), *(path for path in sys.path if path not in ("", top))]
    sys.dont_write_bytecode = True


def _lines_are_kept() -> bool:
    from tests.plan_texts import FOLDER, JOBS, texts

    for name in JOBS:
        with tempfile.TemporaryDirectory() as folder:
            for file, text in texts(name, Path(folder)).items():
                if text != (FOLDER / file).read_text(encoding="utf-8"):
                    return False
    return True


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
