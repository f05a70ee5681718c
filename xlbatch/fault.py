"""The report of a fault inside the program: what a maintainer needs, and nothing from the roster."""

from pathlib import Path

from xlbatch import __version__


def report(fault: Exception, folder: Path) -> str:
    """Writes the report into `folder`; the sentence that says so, or holds the report where it can't be written."""
    import platform
    import traceback

    places = traceback.extract_tb(fault.__traceback__)
    lines = [f"{Path(place.filename).name}:{place.lineno} {place.name}" for place in places]
    text = "\n".join([f"xlbatch {__version__}", platform.platform(), type(fault).__name__, *lines, ""])
    file = folder / "xlbatch fault report.txt"
    try:
        file.write_text(text, encoding="utf-8")
        where = f"A short report without your list is in {file}."
    except OSError:
        where = text
    return f"Something went wrong inside the program; your workbook is unchanged. {where}"
