"""Kills the program that bundle.py built while it writes: python3 build/kill_bundle.py [TIMES].

Each time at another moment between the first thing it writes and the last, drawn from a fixed seed. There must be no
plan then or a whole one, and the list as it was. The next run must leave the whole plan and nothing else.
"""

# mypy: disable-error-code=import-not-found
# (the modules beside a script are found when it runs)

import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path
from random import Random

import needs_python  # noqa: F401 - stops an older Python
from environment import ROOT
from try_bundle import outputs, program

TIMES = 50
LIST = "pottery class"
SOURCE = ROOT / "example_workbooks" / f"{LIST}.csv"
LOOK = 0.001  # s
LATE_MOST = 5  # kills too late, for each that is wanted


class Folder:
    """A folder with a list in it, and how the program is started that plans it."""

    def __init__(self, path: Path, start: Callable[[Path], "subprocess.Popen[bytes]"]) -> None:
        self.list = path / SOURCE.name
        self.plan = path / f"{LIST} - plan.xlsx"
        self.path, self._start = path, start
        shutil.copy(SOURCE, self.list)

    def start(self) -> "subprocess.Popen[bytes]":
        """Starts the program, and returns when it begins to write."""
        running = self._start(self.list)
        while not self.being_written() and running.poll() is None:
            time.sleep(LOOK)
        return running

    def being_written(self) -> bool:
        """Whether there is a run's hidden folder."""
        return any(self.path.glob(".*"))

    def writing(self) -> float:
        """Plans the list; how long the program wrote, in s."""
        running = self.start()
        began = time.monotonic()
        if running.wait():
            raise AssertionError("The program did not plan the list.")
        return time.monotonic() - began

    def kill(self, after: float) -> bool:
        """Kills the program so many seconds after it begins to write; whether it was still writing."""
        running = self.start()
        time.sleep(after)
        running.kill()
        running.wait()
        return self.being_written()

    def written(self) -> set[Path]:
        """What lies beside the list."""
        return set(self.path.iterdir()) - {self.list}

    def clear(self) -> None:
        """Takes away all but the list."""
        for path in self.written():
            shutil.rmtree(path) if path.is_dir() else path.unlink()


def check(folder: Folder, whole: object) -> bool:
    """Whether there is a plan. Raises where it is half a one, or the list is not as it was."""
    if folder.list.read_bytes() != SOURCE.read_bytes():
        raise AssertionError("The list was changed.")
    if folder.plan.exists() and outputs(folder.path) != whole:
        raise AssertionError("Half a plan was left.")
    return folder.plan.exists()


def check_next_run(folder: Folder, whole: object, parts: set[Path]) -> None:
    """Plans the list again. Raises where that leaves anything but the whole plan, in its `parts`."""
    folder.writing()
    if not check(folder, whole) or folder.written() != parts:
        raise AssertionError(f"Beside the list lie {sorted(path.name for path in folder.written())}.")
    folder.clear()


def kill_often(folder: Folder, times: int) -> tuple[int, int]:
    """Kills the program `times` times while it writes; how often a plan was there then, and how often it had ended."""
    span = folder.writing()
    whole, parts, random = outputs(folder.path), folder.written(), Random(times)
    folder.clear()
    killed = plans = late = 0
    while killed < times and late < LATE_MOST * times:
        in_time = folder.kill(random.uniform(0, span))
        there = check(folder, whole)
        killed, late, plans = killed + in_time, late + (not in_time), plans + (there and in_time)
        if there:
            folder.clear()
        check_next_run(folder, whole, parts)
    if killed < times:
        raise AssertionError(f"Only {killed} kills fell into the writing.")
    return plans, late


def start(path: Path) -> "subprocess.Popen[bytes]":
    """Starts the program that bundle.py built."""
    command = [program(ROOT / "dist" / "xlbatch"), "--no-window", path]
    return subprocess.Popen(command, stdout=subprocess.DEVNULL)


if __name__ == "__main__":
    times = int(sys.argv[1]) if len(sys.argv) > 1 else TIMES
    with tempfile.TemporaryDirectory() as scratch:
        plans, late = kill_often(Folder(Path(scratch), start), times)
    print(f"Killed {times} times while writing: {plans} times the whole plan was there, {times - plans} times none.")
    print(f"{late} more kills came too late. The next run each time left the whole plan and nothing else.")
