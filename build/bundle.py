"""Builds the program people double-click: python3 build/bundle.py. It lies in dist/ then, as a folder and zipped.

It is made for the system and the processor it is built on. The first use sets up what it needs.
"""

# mypy: disable-error-code=import-not-found
# (the modules beside a script are found when it runs)

import importlib.util
import shutil
import sys
import tempfile

import needs_python  # noqa: F401 - stops an older Python
from environment import BUNDLE_LOCK, FAILED, ROOT, ready, run

if not importlib.util.find_spec("_tkinter"):
    print("This Python lacks its window part: install it (on Debian: apt install python3-tk).", file=sys.stderr)
    sys.exit(FAILED)
if sys.platform == "linux" and not shutil.which("objdump"):
    print("This system lacks objdump: install it (on Debian: apt install binutils).", file=sys.stderr)
    sys.exit(FAILED)
python = ready(BUNDLE_LOCK)
with tempfile.TemporaryDirectory() as scratch:
    sys.exit(run(python, str(ROOT / "build" / "bundle_pack.py"), scratch, cwd=ROOT))
