"""The lists given, each planned by itself: one that fails stops none of the others."""

from collections.abc import Iterable, Iterator
from dataclasses import replace
from datetime import datetime
from pathlib import Path

from xlbatch.fault import report
from xlbatch.how_far import Stopped
from xlbatch.problems.refusals import refusal
from xlbatch.run import Options, Outcome, Progress, run
from xlbatch.saving import is_returned

FORMS = (".xlsx", ".ods")  # what a sign-up workbook may be saved as
NO_MEMORY = ("failed to map segment", "annot allocate memory", "paging file is too small")  # loading a part of itself
WORKBOOKS = (".xlsx", ".xlsm", ".xls", ".ods", ".csv")


def lists_in(given: Iterable[Path]) -> Iterator[Path]:
    """Each workbook; of a folder its rosters, not the plans and problems this program wrote there.

    A folder without any, or that may not be looked into, is given back itself."""
    for path in given:
        yield from _rosters(path) or (path,)


def jobs_in(given: Iterable[Path], options: Options) -> tuple[tuple[Path, Options], ...]:
    """Each list and how to plan it; filled sign-up workbooks of one event go together, with its list if it is here."""
    lists = tuple(lists_in(given))
    if not any(path.suffix.lower() in FORMS for path in lists):
        return tuple((path, options) for path in lists)
    from xlbatch.sign_up.together import together

    return tuple((path, replace(options, forms=forms)) for path, forms in together(lists))


def _rosters(folder: Path) -> list[Path]:
    try:
        inside = sorted(file for file in folder.iterdir() if file.suffix.lower() in WORKBOOKS)
    except OSError:  # a file, or nothing
        return []
    return [file for file in inside if not is_returned(file) and not file.name.startswith(("~$", "."))]


def plan_list(path: Path, options: Options, progress: Progress) -> Outcome:
    """Plans one list, whatever happens. Raises only Stopped."""
    if path.is_dir():
        return Outcome(3, refusal("no list", name=path.name))
    try:
        return run(path, options, progress, datetime.now())
    except Stopped:
        raise
    except Exception as fault:
        if isinstance(fault, MemoryError) or any(words in str(fault) for words in NO_MEMORY):
            return Outcome(3, refusal("no memory", name=path.name))
        return Outcome(70, report(fault, options.folder or path.parent))
