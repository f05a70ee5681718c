"""Opens a file or a folder with the program this computer uses for it."""

import os
import subprocess
import sys
from pathlib import Path

_LIBRARY_PATHS = ("LD_LIBRARY_PATH", "DYLD_LIBRARY_PATH", "TCL_LIBRARY", "TK_LIBRARY")


def open_with_its_program(path: Path) -> bool:
    """Opens `path`; False where nothing here can."""
    try:
        if sys.platform == "win32":
            os.startfile(path)
        else:
            opener = "open" if sys.platform == "darwin" else "xdg-open"
            subprocess.Popen([opener, str(path)], env=surroundings(), stdin=subprocess.DEVNULL)
    except OSError:
        return False
    return True


def surroundings() -> dict[str, str]:
    """The environment for another program: without the bundle's own libraries, which it must not load."""
    inside = dict(os.environ)
    if getattr(sys, "frozen", False):
        for name in _LIBRARY_PATHS:
            inside.pop(name, None)
            before = inside.pop(f"{name}_ORIG", None)  # as it was before the bundle started
            if before is not None:
                inside[name] = before
    return inside
