"""Writes a plan whole or not at all, and over nothing that exists."""

import errno
import re
import shutil
import sys
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from itertools import count
from pathlib import Path
from typing import BinaryIO

from xlbatch.patience import patiently

_RETURNED = re.compile(r" - (?:plan|problems)(?: \d+)?$")
_CUT_FILES = " - cut files"
_UNFINISHED, _IN_USE = ".unfinished", "in use"
_REASONS = {
    errno.ENOSPC: "the disk is full. Free some space on it, or choose another folder",
    errno.EDQUOT: "your share of the disk is full. Free some space on it, or choose another folder",
    errno.EACCES: "this folder may not be written to. Choose another folder",
    errno.EPERM: "this folder may not be written to. Choose another folder",
    errno.EROFS: "this folder may not be written to. Choose another folder",
    errno.ENAMETOOLONG: "the file's name is too long. Give the workbook a shorter one",
}


class CannotSave(Exception):
    """The output could not be written; the text is one or two plain sentences."""


def is_returned(path: Path) -> bool:
    """Whether a workbook's name is one that this program gives."""
    return _RETURNED.search(path.stem) is not None


def base_name(workbook: Path) -> str:
    """The job's file name: `roster` for `roster.xlsx`, `roster - plan.xlsx` and `roster - plan 2.xlsx`."""
    return _RETURNED.sub("", workbook.stem)


def save_plan(folder: Path, name: str, write: Callable[[Path], None], files: Mapping[str, str]) -> tuple[Path, Path]:
    """Writes `name - plan.xlsx` and its folder of cut files under the next free number. Raises CannotSave."""
    with _scratch(folder, name) as scratch:
        stem = _free(folder, f"{name} - plan", (".xlsx", _CUT_FILES))
        made, workbook, cut_files = scratch / f"{stem}.xlsx", folder / f"{stem}.xlsx", folder / f"{stem}{_CUT_FILES}"
        (scratch / cut_files.name).mkdir()  # before the workbook: see _clear
        for file, text in files.items():
            (scratch / cut_files.name / file).write_text(text, encoding="utf-8", newline="\n")
        write(made)
        patiently(lambda: (scratch / cut_files.name).rename(cut_files))
        try:
            patiently(lambda: made.rename(workbook))
        except BaseException:
            shutil.rmtree(cut_files, ignore_errors=True)
            raise
    return workbook, cut_files


def save_problems(folder: Path, name: str, write: Callable[[Path], None]) -> Path:
    """Writes `name - problems.xlsx` under the next free number. Raises CannotSave."""
    with _scratch(folder, name) as scratch:
        workbook = folder / f"{_free(folder, f'{name} - problems', ('.xlsx',))}.xlsx"
        write(scratch / workbook.name)
        patiently(lambda: (scratch / workbook.name).rename(workbook))
    return workbook


def save_new(path: Path, write: Callable[[Path], None]) -> None:
    """Writes one file that must not exist yet. Raises CannotSave."""
    if path.exists():
        raise CannotSave(f"{path} already exists. Choose another name; nothing was overwritten.")
    with _scratch(path.parent, path.stem) as scratch:
        write(scratch / path.name)
        patiently(lambda: (scratch / path.name).rename(path))


def _free(folder: Path, stem: str, endings: tuple[str, ...]) -> str:
    """`stem`, or it with the first number under which no file with one of the endings exists or is being written."""
    homes, name, number = [folder, *folder.glob(f".*{_UNFINISHED}*")], stem, 1
    while any((home / f"{name}{ending}").exists() for home in homes for ending in endings):
        number += 1
        name = f"{stem} {number}"
    return name


@contextmanager
def _scratch(folder: Path, name: str) -> Iterator[Path]:
    """A temporary folder beside the output, gone afterwards; what a killed run left under this name goes first."""
    try:
        folder.mkdir(parents=True, exist_ok=True)
        scratch = _unused(folder, f".{name}{_UNFINISHED}")
        try:
            with (scratch / _IN_USE).open("wb") as mark:
                _lock(mark)
                yield scratch
        finally:
            shutil.rmtree(scratch, ignore_errors=True)
    except OSError as error:
        reason = _REASONS.get(error.errno or 0, f"{error.strerror or error}. Choose another folder")
        raise CannotSave(f"Could not write to {folder}: {reason}.") from error


def _unused(folder: Path, stem: str) -> Path:
    """Makes the first folder of this name, or it with a number, in which no other run is writing."""
    named = (folder / (stem if number == 1 else f"{stem} {number}") for number in count(1))
    scratch = next(each for each in named if not _in_use(each))
    _clear(scratch)
    scratch.mkdir()
    return scratch


def _in_use(scratch: Path) -> bool:
    try:
        with (scratch / _IN_USE).open("r+b") as mark:
            return not _lock(mark)
    except OSError:
        return False


def _lock(mark: BinaryIO) -> bool:
    """Takes the lock that the system gives back however a program ends. False where another program has it."""
    try:
        if sys.platform == "win32":
            import msvcrt

            msvcrt.locking(mark.fileno(), msvcrt.LK_NBLCK, 1)
        else:
            import fcntl

            fcntl.flock(mark, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except (BlockingIOError, PermissionError):
        return False
    except OSError:  # some network folders have no locks
        return True
    return True


def _clear(scratch: Path) -> None:
    """Removes what a killed run left: a workbook whose cut files were already in place is half a plan."""
    for workbook in scratch.glob("*.xlsx"):
        cut_files = f"{workbook.stem}{_CUT_FILES}"
        if is_returned(workbook) and not (scratch / cut_files).exists():
            shutil.rmtree(scratch.parent / cut_files, ignore_errors=True)
    shutil.rmtree(scratch, ignore_errors=True)
