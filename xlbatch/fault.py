"""The report of a fault inside the program: what a maintainer needs, and nothing from the roster."""

from contextlib import suppress
from itertools import count
from pathlib import Path

from xlbatch import __version__
from xlbatch.problems.refusals import refusal


class Disagreement(Exception):
    """What was computed does not agree with itself. Its words hold nothing of the list."""


def report(fault: Exception, folder: Path) -> str:
    """Writes the report into `folder`; the sentence that says so, or holds the report where it can't be written."""
    import platform
    import traceback

    places = traceback.extract_tb(fault.__traceback__)
    words = [str(fault)] if isinstance(fault, Disagreement) else []
    lines = [f"{Path(place.filename).name}:{place.lineno} {place.name}" for place in places]
    text = "\n".join([f"xlbatch {__version__}", platform.platform(), type(fault).__name__, *words, *lines, ""])
    try:
        where = refusal("fault report", file=_write(folder, text))
    except OSError:
        where = text
    return refusal("disagreement", what=words[0], report=where) if words else refusal("fault", report=where)


def _write(folder: Path, text: str) -> Path:
    """Writes it into a new file, never over an earlier report, and gives the file. Raises OSError."""
    for number in count(1):
        file = folder / f"xlbatch fault report{f' {number}' if number > 1 else ''}.txt"
        with suppress(FileExistsError), file.open("x", encoding="utf-8") as made:
            made.write(text)
            return file
    raise AssertionError
