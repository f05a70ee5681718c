"""Runs tests in children of a process that has the libraries loaded already, so that a run takes as long as its tests.
Needs a system that can fork (Linux, macOS)."""

import importlib
import os
import resource
import signal
import sys
from collections.abc import Callable
from pathlib import Path

import hypothesis
import pytest

LIBRARIES = (
    "numpy", "pandas", "openpyxl", "xlsxwriter", "pint", "jinja2", "ezdxf", "uharfbuzz", "fontTools.ttLib", "pathops",
    "tinycss2", "cssselect2", "rapidfuzz", "shapely", "resvg_py", "PIL.Image", "pytest", "xlrd",
    "fontTools.svgLib.path", "fontTools.varLib.instancer", "charset_normalizer", "python_calamine",
)  # fmt: skip
QUIET = ("-q", "-p", "no:cacheprovider", "--no-header", "--tb=no", "-W", "ignore::pytest.PytestAssertRewriteWarning")


def load() -> None:
    """Loads the libraries."""
    for name in LIBRARIES:
        importlib.import_module(name)


def run_tests(tree: Path, arguments: list[str], heard: object) -> int:
    """Runs pytest on the program and tests of a copy of the tree; what it came to (0: all passed). In a child alone,
    as the program is loaded anew."""
    top = str(Path(__file__).parents[2])
    sys.path[:] = [str(tree), *(path for path in sys.path if path not in ("", top))]
    sys.dont_write_bytecode = True
    os.chdir(tree)
    for name in [name for name in sys.modules if name.split(".")[0] in ("tests", "xlbatch")]:
        del sys.modules[name]
    hypothesis.settings.register_profile("slow", deadline=None, database=None)
    hypothesis.settings.load_profile("slow")
    return pytest.main([*QUIET, *arguments], plugins=[heard])


def in_child(check: Callable[[], bool], most: float) -> bool | None:
    """What a check says in a child process; None where it fails, or takes more than so many seconds of the
    processor."""
    if child := os.fork():
        code = os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])
        return None if code not in (0, 1) else code == 1
    code = 2
    try:
        resource.setrlimit(resource.RLIMIT_CPU, (int(most), int(most) + 5))
        signal.alarm(20 * int(most))  # where it waits for ever
        quiet = os.open(os.devnull, os.O_RDWR)
        for stream in (0, 1, 2):
            os.dup2(quiet, stream)
        code = int(check())
    finally:
        os._exit(code)
