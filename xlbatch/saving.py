"""Writes a plan whole or not at all, and over nothing that exists."""

import errno
import os
import re
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from itertools import count
from pathlib import Path
from typing import NamedTuple

from xlbatch.claim import Claim, claim, empty, release, remove
from xlbatch.patience import patiently
from xlbatch.problems.refusals import refusal

Write = Callable[[Path], object]
_RETURNED = re.compile(r"(?: - (?:plan|problems|to print)(?: \d+)?)+$")
_PLAN = ("{name} - plan{no} - cut files", "{name} - to print{no}.xlsx", "{name} - plan{no}.xlsx")
_PROBLEMS = ("{name} - problems{no}.xlsx",)
_MOVING = "moving"  # the list of parts that are being put in place
_NAMELESS = "list"  # the job's name where the file is called .csv
_LONGEST_PATH = 259  # characters that a path may have on Windows (MAX_PATH less its end mark)
_REASONS = {
    errno.ENOSPC: "disk full",
    errno.EDQUOT: "share full",
    errno.EACCES: "not allowed",
    errno.EPERM: "not allowed",
    errno.EROFS: "not allowed",
    errno.EEXIST: "taken",
    errno.ENAMETOOLONG: "path too long",
}


class CannotSave(Exception):
    """The output could not be written; the text is one or two plain sentences."""


class Saved(NamedTuple):
    """Where the parts of a plan lie."""

    plan: Path
    to_print: Path | None
    cut_files: Path


def is_returned(path: Path) -> bool:
    """Whether a workbook's name is one that this program gives."""
    return _RETURNED.search(path.stem) is not None


def base_name(workbook: Path) -> str:
    """The job's file name: `roster` for `roster.xlsx`, `roster - plan.xlsx` and `roster - to print 2.xlsx`."""
    return _RETURNED.sub("", workbook.stem).lstrip(".") if workbook.suffix else _NAMELESS


def save_plan(
    folder: Path,
    name: str,
    write: Write,
    files: dict[str, str | bytes],
    to_print: Callable[[Path, str], object] | None = None,
) -> Saved:
    """Writes `name - plan.xlsx`, its folder of cut files and, where given, its pages to print under the next free
    number. `to_print` is told where to write and the plan's file name. `files` is empty afterwards: what is on the disk
    takes no memory while the rest is written. Raises CannotSave."""
    with _parts(folder, name, _PLAN) as parts:
        cut_files, pages, plan = parts
        cut_files.made.mkdir()
        for file in tuple(files):
            content = files.pop(file)
            (cut_files.made / file).parent.mkdir(exist_ok=True, parents=True)
            (cut_files.made / file).write_bytes(content.encode() if isinstance(content, str) else content)
        if to_print:
            to_print(pages.made, plan.target.name)
        write(plan.made)
        _put([cut_files, pages, plan] if to_print else [cut_files, plan])
    return Saved(plan.target, pages.target if to_print else None, cut_files.target)


def save_problems(folder: Path, name: str, write: Write) -> Path:
    """Writes `name - problems.xlsx` under the next free number. Raises CannotSave."""
    with _parts(folder, name, _PROBLEMS) as parts:
        write(parts[0].made)
        _put(parts)
    return parts[0].target


def save_new(path: Path, write: Write) -> None:
    """Writes one file that must not exist yet. Raises CannotSave."""
    with _saving(path.parent, [path]):
        held = None if _exists(path) else claim(path.parent, path.name)
        if held is None:
            raise CannotSave(refusal("exists", path=path))
        try:
            empty(held)
            part = _Output(held.folder / f"0{path.suffix}", path)
            write(part.made)
            _put([part])
        finally:
            release(held)


class _Output(NamedTuple):
    """A file or folder of the output: where it is made, and where it is put in the end."""

    made: Path
    target: Path


@contextmanager
def _parts(folder: Path, name: str, templates: tuple[str, ...]) -> Iterator[list[_Output]]:
    """The parts to make under the first number free for all of them; what was made and not put in place is gone
    afterwards."""
    targets: list[Path] = []
    with _saving(folder, targets):
        for number in count(1):
            no = "" if number == 1 else f" {number}"
            targets[:] = (folder / template.format(name=name, no=no) for template in templates)
            held = claim(folder, targets[-1].name)
            if held is None:
                continue
            try:
                parts = [_Output(held.folder / f"{place}{path.suffix}", path) for place, path in enumerate(targets)]
                _clear(held, parts)
                if not any(_exists(target) for target in targets):
                    yield parts
                    return
            finally:
                release(held)


def _clear(held: Claim, parts: list[_Output]) -> None:
    """Removes what a killed run left: where it had put some parts in place but not the last, those too."""
    try:
        moving = (held.folder / _MOVING).read_text(encoding="utf-8").split()
    except FileNotFoundError:
        moving = []
    if moving and parts[-1].made.exists():
        for part in parts[:-1]:
            if part.made.name in moving and not part.made.exists():
                remove(part.target)
    empty(held)


def _put(parts: list[_Output]) -> None:
    """Moves the parts to their places, over nothing, and the last one last. Where one can't be, none is."""
    (parts[0].made.parent / _MOVING).write_text(" ".join(part.made.name for part in parts), encoding="utf-8")
    moved: list[_Output] = []
    try:
        for part in parts:
            patiently(lambda part=part: _move(part))  # type: ignore[misc]
            moved.append(part)
    except BaseException:
        for part in moved:
            remove(part.target)
        raise


def _move(part: _Output) -> None:
    if _exists(part.target):
        raise FileExistsError(errno.EEXIST, os.strerror(errno.EEXIST), str(part.target))
    part.made.rename(part.target)


def _exists(path: Path) -> bool:
    """Whether there is anything of this name, even a link that leads nowhere."""
    return os.path.lexists(path)


@contextmanager
def _saving(folder: Path, targets: list[Path]) -> Iterator[None]:
    try:
        folder.mkdir(parents=True, exist_ok=True)
        yield
    except OSError as error:
        raise CannotSave(refusal("not saved", folder=folder, reason=_reason(error, targets))) from error


def _reason(error: OSError, targets: list[Path]) -> str:
    if sys.platform == "win32" and max((len(str(path.absolute())) for path in targets), default=0) > _LONGEST_PATH:
        return refusal("path too long")  # Windows says that there is no such file
    why = _REASONS.get(error.errno or 0, "other reason")
    return refusal(why, reason=error.strerror or error)
