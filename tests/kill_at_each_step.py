"""Kills a run at each step of writing a plan, and the next run at each of its own; the third must leave whole plans.

Run by test_saving.py: python kill_at_each_step.py FOLDER. Prints how many steps a run has and how many pairs of kills
were tried. A step is a system call on a file that Python tells of before it makes it.
"""

import os
import sys
from itertools import count
from pathlib import Path
from shutil import rmtree

from xlbatch.saving import save_plan

STEPS = {"open", "os.mkdir", "os.rename", "os.remove", "os.rmdir"}
KILLED = 9
CUT_FILES = {"1.svg": "1", "a/2.svg": "2"}


class Kill:
    """Ends the process, as if it were killed, when so many steps are made."""

    left: int | None = None

    def __call__(self, event: str, _: object) -> None:
        if event in STEPS and self.left is not None:
            self.left -= 1
            if self.left < 0:
                os._exit(KILLED)


def save(folder: Path) -> None:
    def write(path: Path) -> None:
        path.write_text("plan", encoding="utf-8")

    def to_print(path: Path, plan: str) -> None:
        path.write_text(plan, encoding="utf-8")

    save_plan(folder, "roster", write, dict(CUT_FILES), to_print)


def killed(folder: Path, kill: Kill, steps: int) -> bool:
    """Saves in a process that is killed after so many steps; whether it had not ended before."""
    child = os.fork()
    if not child:
        kill.left = steps
        save(folder)
        os._exit(0)
    return os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]) == KILLED


def whole_plans(folder: Path) -> int:
    """How many plans there are. Raises where one is not whole."""
    plans = list(folder.glob("roster - plan*.xlsx"))
    for plan in plans:
        cut_files = folder / f"{plan.stem} - cut files"
        assert plan.read_text() == "plan"
        assert (folder / plan.name.replace("plan", "to print")).read_text() == plan.name
        assert {name: (cut_files / name).read_text() for name in CUT_FILES} == CUT_FILES
    return len(plans)


def try_pair(folder: Path, kill: Kill, first: int, second: int) -> tuple[bool, bool]:
    """Whether the first and the second run were killed."""
    for path in folder.iterdir():
        rmtree(path) if path.is_dir() else path.unlink()
    (folder / "roster.xlsx").write_text("mine")
    both = killed(folder, kill, first), killed(folder, kill, second)
    plans = whole_plans(folder)
    save(folder)
    assert whole_plans(folder) == plans + 1
    assert (folder / "roster.xlsx").read_text() == "mine"
    names = sorted(path.name for path in folder.iterdir())
    assert len(names) == 3 * (plans + 1) + 1, f"Killed at {first} and {second}: {names}"
    return both


def main(folder: Path) -> None:
    kill, pairs = Kill(), 0
    sys.addaudithook(kill)
    for first in count():
        for second in count():
            both = try_pair(folder, kill, first, second)
            if not both[1]:
                break
            pairs += 1
        if not both[0]:
            break
    print(first, pairs)


if __name__ == "__main__":
    main(Path(sys.argv[1]))
