"""What the bundle goes without: parts of packages that planning a job never reaches, and debugging symbols."""

import re
import shutil
import subprocess
from pathlib import Path

_COMPILED = (
    "bezier3p", "bezier4p", "bspline", "construct", "linetypes", "mapbox_earcut", "matrix44", "np_support", "vector",
)  # fmt: skip
MODULES = (
    *("_hashlib", "_ssl", "ssl"),  # nothing goes over a network; hashing has its own code without them
    *("_sqlite3", "sqlite3", "asyncio", "readline", "curses", "xmlrpc", "ftplib"),
    *("doctest", "pdb", "pydoc", "pydoc_data", "lib2to3", "ensurepip", "pip", "setuptools"),
    *("numpy.f2py", "numpy.distutils", "numpy.fft", "pandas.tests", "matplotlib", "lxml", "scipy", "pytest"),
    *(f"ezdxf.acc.{part}" for part in _COMPILED),  # quicker code for what is read; only a little is written
    *("ezdxf.addons", "ezdxf.acis"),  # other kinds of drawings
    *("PIL._avif", "PIL._imagingft", "PIL._imagingcms", "PIL.ImageTk", "PIL.ImageQt", "PIL.ImageGrab"),
)
_FILES = re.compile(
    r"^_tcl_data/(tzdata|msgs)/|^_tk_data/(images|msgs)/"  # clocks and words of a toolkit that shows our own words
    r"|_avx2\."  # the same comparison once more, for newer processors
    r"|^numpy/random/lib/|/_multiarray_tests\.|/_simd\.|^numpy-[\d.]+\.dist-info/"
)
_WITH_SYMBOLS = (  # numpy's break when stripped
    *("libpython*.so*", "python3*/lib-dynload/*.so", "fontTools/*/*.so"),
    *("pathops/*.so", "uharfbuzz/*.so", "shapely/*.so", "shapely.libs/*.so*", "PIL/_imaging.*.so"),
)


def is_left_out(name: str, kind: str) -> bool:
    """Whether a file, by its path in the bundle and PyInstaller's word for its kind, is left out.

    On Linux the links that would lie beside the program go too: each library finds its own by itself, and not every
    unzipper restores a link."""
    name = name.replace("\\", "/")
    return _FILES.search(name) is not None or (kind == "SYMLINK" and ".so" in name)


def strip_symbols(inside: Path) -> None:
    """Takes the debugging symbols out of the libraries that allow it, where there is a tool for it (Linux)."""
    tool = shutil.which("strip")
    if tool:
        libraries = [file for pattern in _WITH_SYMBOLS for file in inside.glob(pattern)]
        subprocess.run([tool, "--strip-unneeded", *libraries], check=True)
