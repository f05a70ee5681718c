"""Writes a plan whole or not at all, and over nothing that exists."""

import re
import shutil
import time
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path

_RETURNED = re.compile(r" - (?:plan|problems)(?: \d+)?$")
LOCKED_TRIES = 5  # a cloud-synced folder may lock a file for a moment
LOCKED_WAIT = 0.2  # s


class CannotSave(Exception):
    """The output could not be written; the text is one plain sentence."""


def is_returned(path: Path) -> bool:
    """Whether a workbook's name is one that this program gives."""
    return _RETURNED.search(path.stem) is not None


def base_name(workbook: Path) -> str:
    """The job's file name: `roster` for `roster.xlsx`, `roster - plan.xlsx` and `roster - plan 2.xlsx`."""
    return _RETURNED.sub("", workbook.stem)


def save_plan(folder: Path, name: str, write: Callable[[Path], None], files: Mapping[str, str]) -> tuple[Path, Path]:
    """Writes `name - plan.xlsx` and its folder of cut files under the next free number. Raises CannotSave."""
    workbook, cut_files = next(
        (book, folder / f"{stem} - cut files")
        for stem in _numbered(f"{name} - plan")
        if not (book := folder / f"{stem}.xlsx").exists() and not (folder / f"{stem} - cut files").exists()
    )
    with _scratch(folder, name) as scratch:
        write(scratch / workbook.name)
        made = scratch / cut_files.name
        made.mkdir()
        for file, text in files.items():
            (made / file).write_text(text, encoding="utf-8", newline="\n")
        _move(made, cut_files)
        try:
            _move(scratch / workbook.name, workbook)
        except OSError:
            shutil.rmtree(cut_files, ignore_errors=True)
            raise
    return workbook, cut_files


def save_problems(folder: Path, name: str, write: Callable[[Path], None]) -> Path:
    """Writes `name - problems.xlsx` under the next free number. Raises CannotSave."""
    workbook = next(book for stem in _numbered(f"{name} - problems") if not (book := folder / f"{stem}.xlsx").exists())
    with _scratch(folder, name) as scratch:
        write(scratch / workbook.name)
        _move(scratch / workbook.name, workbook)
    return workbook


def save_new(path: Path, write: Callable[[Path], None]) -> None:
    """Writes one file that must not exist yet. Raises CannotSave."""
    if path.exists():
        raise CannotSave(f"{path} already exists. Choose another name; nothing was overwritten.")
    with _scratch(path.parent, path.stem) as scratch:
        write(scratch / path.name)
        _move(scratch / path.name, path)


def _numbered(stem: str) -> Iterator[str]:
    yield stem
    number = 2
    while True:
        yield f"{stem} {number}"
        number += 1


@contextmanager
def _scratch(folder: Path, name: str) -> Iterator[Path]:
    """A temporary folder beside the output, gone afterwards; what a killed run left under this name goes first."""
    scratch = folder / f".{name}.unfinished"
    try:
        folder.mkdir(parents=True, exist_ok=True)
        shutil.rmtree(scratch, ignore_errors=True)
        scratch.mkdir()
        yield scratch
    except OSError as error:
        raise CannotSave(f"Could not write to {folder}: {error.strerror or error}. Choose another folder.") from error
    finally:
        shutil.rmtree(scratch, ignore_errors=True)


def _move(made: Path, final: Path) -> None:
    for tries_left in reversed(range(LOCKED_TRIES)):
        try:
            made.rename(final)
            return
        except PermissionError:
            if not tries_left:
                raise
            time.sleep(LOCKED_WAIT)
