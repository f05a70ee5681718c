"""Which of the dropped files belong together: the filled sign-up workbooks of one event, and the list they join."""

import zipfile
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

from xlbatch.file_names import whole_name
from xlbatch.files.book import open_book
from xlbatch.files.raw import RawSheet, UnreadableFile
from xlbatch.roster.read import Reading, read_sheets
from xlbatch.saving import base_name
from xlbatch.sign_up.answers import Answers, answers, by_event
from xlbatch.sign_up.form import LISTS, NAME
from xlbatch.sign_up.joined_list import joined
from xlbatch.tables.cells import shown_value
from xlbatch.tables.input_tables import IGNORED

SHEET_NAMES = ("xl/workbook.xml", "content.xml")  # where the two kinds of workbook say what their sheets are called
MOST = 50_000_000  # bytes of that part; a form is far smaller

Together = tuple[Path, tuple[Path, ...]]  # a list, or a file that would be one, and the forms that join it


def together(paths: Sequence[Path]) -> tuple[Together, ...]:
    """Each list with its forms. The forms of an event without a list make one, named after the event."""
    forms = [form for path in paths if may_be_form(path) and (form := _answers(path))]
    filled = {form.path for form in forms}
    lists = [path for path in paths if path not in filled]
    forms_of: dict[Path, tuple[Path, ...]] = dict.fromkeys(lists, ())
    for event, of_event in by_event(forms):
        alone = len(lists) == 1 and len({form.event for form in forms}) == 1
        own = lists if alone else [path for path in lists if _names(path, event)]
        place = own[0] if own else of_event[0].path.with_name(f"{whole_name(event, NAME)}.xlsx")
        forms_of[place] = tuple(form.path for form in of_event)
    return tuple(forms_of.items())


def may_be_form(path: Path) -> bool:
    """Whether a file has the sheet by which a form is known; quick, as most have not."""
    try:
        with zipfile.ZipFile(path) as archive:
            parts = [part for part in SHEET_NAMES if part in archive.namelist()]
            return any(
                f'"{LISTS}"'.encode() in archive.read(part) for part in parts if archive.getinfo(part).file_size < MOST
            )
    except (OSError, zipfile.BadZipFile, NotImplementedError, RuntimeError, EOFError):
        return False


def read_together(path: Path, forms: Sequence[Path]) -> Reading | UnreadableFile:
    """The job of a list, where there is one at `path`, with the answers of forms; or why one of them cannot be read."""
    base: tuple[RawSheet, ...] | UnreadableFile = ()
    if path.exists() and not may_be_form(path):  # a blank form may lie where the event's list would
        base = open_book(path, IGNORED)
    if isinstance(base, UnreadableFile):
        return base
    filled = tuple(form for form in map(_answers, forms) if form)
    whole = joined(base, filled)
    reading = read_sheets(path, whole.sheets)
    return replace(reading, problems=whole.problems + reading.problems)


def _answers(path: Path) -> Answers | None:
    sheets = open_book(path)
    return None if isinstance(sheets, UnreadableFile) else answers(path, sheets)


def _names(path: Path, event: str) -> bool:
    """Whether a list is one of an event: by its Job name, else by its file's."""
    sheets = open_book(path, IGNORED) if path.is_file() else ()
    cells = [] if isinstance(sheets, UnreadableFile) else [row for sheet in sheets for row in sheet.rows.values()]
    named = [shown_value(row[2]) for row in cells if 1 in row and 2 in row and shown_value(row[1]) == "Job name"]
    return event.casefold() in {name.casefold() for name in (*named, base_name(path))}
