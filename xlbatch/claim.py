"""A short-named folder beside the output, in which one run writes. While it is held, no other run takes its name.

Whoever has the lock of the mark inside holds the folder; the system gives the lock back however a program ends, so
what a killed run left is taken over by the next that wants the same name.
"""

import os
import shutil
import sys
import zlib
from contextlib import suppress
from pathlib import Path
from typing import BinaryIO, NamedTuple

_MARK = "in use"
TRIES = 100


class Claim(NamedTuple):
    """The folder, and its mark, open and locked."""

    folder: Path
    mark: BinaryIO


def claim(folder: Path, name: str) -> Claim | None:
    """Makes or takes over the folder in `folder` that stands for `name`, and empties nothing. None where it is held.

    Raises OSError where the folder can't be written to."""
    inside = folder / f".xlbatch-{zlib.crc32(os.fsencode(name.casefold())):08x}"  # short: Windows counts the path
    for tries_left in range(TRIES, -1, -1):
        made = _make(inside)
        try:
            mark = (inside / _MARK).open("a+b")
        except FileNotFoundError:  # cleared by its holder at this moment; or Windows finds the path too long
            if tries_left:
                continue
            with suppress(OSError):
                inside.rmdir()
            raise
        locked = _lock(mark)
        if locked is None:  # some network folders have no locks: there who made the folder holds it
            locked = made
        if not locked:
            mark.close()
            return None
        if _is_there(mark, inside / _MARK):
            return Claim(inside, mark)
        mark.close()
    return None


def release(held: Claim) -> None:
    """Removes the folder with all that is in it, as far as that can be, and gives it up."""
    with suppress(OSError):
        empty(held)
    if sys.platform == "win32":  # there an open file can't be removed, by its holder or by another
        held.mark.close()
    with suppress(OSError):
        (held.folder / _MARK).unlink()
        held.folder.rmdir()
    held.mark.close()


def empty(held: Claim) -> None:
    """Removes what lies in the folder, its mark apart."""
    for path in held.folder.iterdir():
        if path.name != _MARK:
            remove(path)


def remove(path: Path) -> None:
    """Removes a file, or a folder with all in it, as far as it lets itself be removed."""
    if path.is_dir() and not path.is_symlink():
        shutil.rmtree(path, ignore_errors=True)
    else:
        with suppress(OSError):
            path.unlink()


def _make(folder: Path) -> bool:
    try:
        folder.mkdir()
    except FileExistsError:
        return False
    return True


def _is_there(mark: BinaryIO, path: Path) -> bool:
    """Whether the mark that was locked is still the one in the folder."""
    try:
        return os.path.samestat(os.fstat(mark.fileno()), path.stat())
    except FileNotFoundError:
        return False


def _lock(mark: BinaryIO) -> bool | None:
    """Takes the lock. False where another program has it, None where there are no locks."""
    try:
        if sys.platform == "win32":
            import msvcrt

            msvcrt.locking(mark.fileno(), msvcrt.LK_NBLCK, 1)
        else:
            import fcntl

            fcntl.flock(mark, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except (BlockingIOError, PermissionError):
        return False
    except OSError:
        return None
    return True
