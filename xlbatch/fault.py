"""The report of a fault inside the program: what a maintainer needs, and nothing from the roster."""

from contextlib import suppress
from itertools import count
from pathlib import Path

from xlbatch import __version__

WRONG = "Something went wrong inside the program."


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
        where = f"A short report without your list is in {_write(folder, text)}."
    except OSError:
        where = text
    what = f"The plan was not written, as it does not agree with itself: {words[0]}." if words else WRONG
    return f"{what} Your workbook is unchanged. {where}"


def _write(folder: Path, text: str) -> Path:
    """Writes it into a new file, never over an earlier report, and gives the file. Raises OSError."""
    for number in count(1):
        file = folder / f"xlbatch fault report{f' {number}' if number > 1 else ''}.txt"
        with suppress(FileExistsError), file.open("x", encoding="utf-8") as made:
            made.write(text)
            return file
    raise AssertionError
