"""The texts of a row, and a row with other texts in some of its cells."""

from dataclasses import replace

from xlbatch.files.broken_text import is_broken
from xlbatch.files.raw import Raw
from xlbatch.tables.cells import shown_value
from xlbatch.tables.line import Line

CANCELLED = "cancelled"


def text_of(line: Line, heading: str) -> str:
    """A cell's text, "" where there is none to be read."""
    cell = line.cells.get(heading)
    if cell is None or cell.fault or (isinstance(cell.value, str) and is_broken(cell.value)):
        return ""
    return shown_value(cell)


def with_texts(line: Line, **cells: str) -> Line:
    """The line with other texts in some cells ("" for none); a cell of its own is where the first one was."""
    named = {heading.replace("_", " "): text for heading, text in cells.items()}
    kept = {heading: cell for heading, cell in line.cells.items() if heading not in named}
    return replace(line, cells=kept | {heading: Raw(text) for heading, text in named.items() if text})


def pointed(line: Line, heading: str, like: str) -> Line:
    """The line, `heading` pointing at the cell of `like` where the list has no column for it."""
    refs = line.source.cells
    if heading in refs or like not in refs:
        return line
    return replace(line, source=replace(line.source, cells={**refs, heading: refs[like]}))


def noted(line: Line, remark: str) -> Line:
    note = text_of(line, "Note")
    return with_texts(line, Note="; ".join(filter(None, (note, remark)))) if remark and remark not in note else line


def not_made(line: Line, heading: str, typed: str) -> Line:
    """The line cancelled because of what stands under the heading, which stays there as typed."""
    if text_of(line, "Status") != CANCELLED:
        line.found("not-made", heading, typed)
    line.unclear[heading] = typed
    line = pointed(line, "Status", heading)
    kept = {name: cell for name, cell in line.cells.items() if name not in (heading, "Status")}
    return replace(line, cells=kept | {"Status": Raw(CANCELLED)})
