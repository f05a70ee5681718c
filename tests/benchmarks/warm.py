"""Runs test files in a child of a process that has the libraries loaded already, so that a run takes as long as its
tests. Needs a system that can fork (Linux, macOS)."""

import importlib
import json
import os
import resource
import signal
import sys
from pathlib import Path
from typing import Any, NamedTuple

LIBRARIES = (
    "numpy", "pandas", "openpyxl", "xlsxwriter", "pint", "jinja2", "ezdxf", "uharfbuzz", "fontTools.ttLib", "pathops",
    "tinycss2", "cssselect2", "rapidfuzz", "shapely", "resvg_py", "PIL.Image", "pytest", "xlrd",
    "fontTools.svgLib.path", "fontTools.varLib.instancer", "charset_normalizer", "python_calamine", "coverage",
)  # fmt: skip
STOPPED = 99  # the answer of tests that took more than their time


class Ran(NamedTuple):
    """What came of a test file: pytest's exit code, the processor's seconds, the lines run by module."""

    code: int
    seconds: float
    lines: dict[str, list[int]]


def load() -> None:
    """Loads what the tests need but the program itself and its tests."""
    for name in LIBRARIES:
        importlib.import_module(name)


def run_tests(tree: Path, files: list[str], most: int, lines: bool = False) -> Ran:
    """Runs test files of a copy of the tree, up to the first failure, with at most so many seconds of the processor;
    where asked, says which lines of the program they run."""
    answer = tree / ".answer.json"
    answer.unlink(missing_ok=True)
    if not (child := os.fork()):
        _child(tree, files, most, answer if lines else None)
    _, status, used = os.wait4(child, 0)
    code = STOPPED if os.WIFSIGNALED(status) else os.WEXITSTATUS(status)
    said = json.loads(answer.read_text()) if answer.exists() else {}
    return Ran(code, used.ru_utime + used.ru_stime, said)


def _child(tree: Path, files: list[str], most: int, answer: Path | None) -> None:
    """Never returns."""
    import coverage
    import pytest

    code = 70
    try:
        resource.setrlimit(resource.RLIMIT_CPU, (most, most + 5))
        signal.alarm(10 * most)  # where it waits for ever
        quiet = os.open(os.devnull, os.O_RDWR)
        for stream in (0, 1, 2):
            os.dup2(quiet, stream)
        os.chdir(tree)
        top = str(Path(__file__).parents[2])
        sys.path[:] = [str(tree), *(path for path in sys.path if path not in ("", top))]
        for name in [name for name in sys.modules if name.split(".")[0] in ("tests", "xlbatch")]:
            del sys.modules[name]  # the copy's are meant
        sys.dont_write_bytecode = True
        watch: Any = coverage.Coverage(source=[str(tree / "xlbatch")], data_file=None) if answer else None
        if watch:
            watch.start()
        code = int(pytest.main(["-q", "-x", "-p", "no:cacheprovider", "--no-header", "--tb=no", *files]))
        if watch and answer:
            watch.stop()
            data, package = watch.get_data(), str(tree / "xlbatch") + os.sep
            run = {name.removeprefix(package): data.lines(name) for name in data.measured_files()}
            answer.write_text(json.dumps(run))
    finally:
        os._exit(code)
