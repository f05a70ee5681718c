"""Tries the program that bundle.py built: python3 build/try_bundle.py.

It is copied to a folder with a space and accents in its path and run on each example, without Python on the path. Its
plans must equal those made from the source, byte for byte but for the time of the run, and so must the cut files.
"""

# mypy: disable-error-code=import-not-found
# (the modules beside a script are found when it runs)

import os
import re
import shutil
import subprocess
import sys
import tempfile
import time
import zipfile
from pathlib import Path

import needs_python  # noqa: F401 - stops an older Python
from environment import BUNDLE_LOCK, ROOT, ready, run

TIME = re.compile(rb"\d{4}-\d\d-\d\d \d\d:\d\d")  # of the run
AS_DXF = """
import sys
from openpyxl import load_workbook
book = load_workbook(sys.argv[1])
book["Job"].append(["Cut file kind", "DXF"])
book.save(sys.argv[2])
"""
PATIENCE = 300  # s
MOST = {"": 165, ".zip": 70}  # MB of 10^6 bytes


def program(folder: Path) -> Path:
    """The program to start in a console, in the folder that people get."""
    if sys.platform == "darwin":
        return folder / "xlbatch.app" / "Contents" / "MacOS" / "xlbatch"
    return folder / ("xlbatch-console.exe" if os.name == "nt" else "xlbatch")


def parts(plan: Path) -> dict[str, bytes]:
    """A workbook's parts, without the time of the run."""
    with zipfile.ZipFile(plan) as book:
        return {name: TIME.sub(b"", book.read(name)) for name in book.namelist()}


def outputs(folder: Path) -> dict[str, bytes | dict[str, bytes]]:
    """What was written into a folder, by name: each workbook's parts, and the cut files."""
    made = {str(file.relative_to(folder)): file for file in folder.rglob("*") if file.is_file()}
    return {
        name: parts(file) if file.suffix == ".xlsx" else file.read_bytes()
        for name, file in made.items()
        if re.search(" - (plan|problems|to print)", name)
    }


def copy_examples(folder: Path) -> list[Path]:
    """Copies the example lists and their drawings into a new folder, one once more to be cut as DXF; the lists."""
    others = ("with_mistakes", "*.png", "*.md", "* - *")  # the last: plans made of the examples
    shutil.copytree(ROOT / "example_workbooks", folder, ignore=shutil.ignore_patterns(*others))
    if run(ready(BUNDLE_LOCK), "-c", AS_DXF, str(folder / "lantern walk.xlsx"), str(folder / "as DXF.xlsx")):
        raise AssertionError("There is no list to be cut as DXF.")
    return sorted(file for file in folder.iterdir() if file.suffix in (".csv", ".xlsx"))


def try_in(scratch: Path) -> None:
    """Plans with the program and from the source, and compares. Raises where they differ or one fails."""
    moved, ours, theirs = scratch / "Büro & Möbel", scratch / "from the source", scratch / "by the program"
    shutil.copytree(ROOT / "dist" / "xlbatch", moved, symlinks=True)
    bare = {name: os.environ[name] for name in ("SYSTEMROOT", "TEMP", "TMP") if name in os.environ}
    bare |= {"HOME": str(scratch), "PATH": str(scratch)}
    for example in copy_examples(theirs):
        started = time.monotonic()
        subprocess.run([program(moved), "--no-window", example], env=bare, check=True, timeout=PATIENCE)
        print(f"The bundled program planned {example.stem} in {time.monotonic() - started:.1f} s.")
    if run(ready(BUNDLE_LOCK), "-m", "xlbatch", "--no-window", *map(str, copy_examples(ours))):
        raise AssertionError("The source did not plan the examples.")
    if not outputs(ours) or outputs(theirs) != outputs(ours):
        raise AssertionError("The bundled program's plans are not the source's.")


def check_sizes() -> None:
    """Raises where the folder or the zipped file is larger than it may be."""
    for made in (ROOT / "dist").glob("xlbatch*"):
        files = [made] if made.is_file() else [file for file in made.rglob("*") if file.is_file()]
        size = sum(file.stat().st_size for file in files if not file.is_symlink()) / 1e6
        print(f"{made.name}: {size:.0f} MB")
        if size > MOST[made.suffix if made.is_file() else ""]:
            raise AssertionError(f"{made.name} has grown too large.")


if __name__ == "__main__":
    with tempfile.TemporaryDirectory() as folder:
        try_in(Path(folder))
    check_sizes()
