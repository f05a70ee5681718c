"""Runs test files in a child of a process that has the libraries loaded already, so that a run takes as long as its
tests. Needs a system that can fork (Linux, macOS)."""

import importlib
import os
import resource
import signal
import sys
from pathlib import Path

LIBRARIES = (
    "numpy", "pandas", "openpyxl", "xlsxwriter", "pint", "jinja2", "ezdxf", "uharfbuzz", "fontTools.ttLib", "pathops",
    "tinycss2", "cssselect2", "rapidfuzz", "shapely", "resvg_py", "PIL.Image", "pytest", "xlrd",
    "fontTools.svgLib.path", "fontTools.varLib.instancer", "charset_normalizer", "python_calamine",
)  # fmt: skip


def load() -> None:
    """Loads what the tests need but the program itself and its tests."""
    for name in LIBRARIES:
        importlib.import_module(name)


def fails(tree: Path, files: list[str], most: int) -> bool:
    """Whether a test of these files of a copy of the tree fails, or they take more than so many processor seconds."""
    if not (child := os.fork()):
        _child(tree, files, most)
    return os.waitpid(child, 0)[1] != 0


def _child(tree: Path, files: list[str], most: int) -> None:
    """Never returns."""
    import pytest

    code = 70
    try:
        resource.setrlimit(resource.RLIMIT_CPU, (most, most + 5))
        signal.alarm(20 * most)  # where it waits for ever
        quiet = os.open(os.devnull, os.O_RDWR)
        for stream in (0, 1, 2):
            os.dup2(quiet, stream)
        os.chdir(tree)
        top = str(Path(__file__).parents[2])
        sys.path[:] = [str(tree), *(path for path in sys.path if path not in ("", top))]
        for name in [name for name in sys.modules if name.split(".")[0] in ("tests", "xlbatch")]:
            del sys.modules[name]  # the copy's are meant
        sys.dont_write_bytecode = True
        code = int(pytest.main(["-q", "-x", "-p", "no:cacheprovider", "--no-header", "--tb=no", *files]))
    finally:
        os._exit(code)
