"""One failure at each file operation: never a damaged list, part of a plan, or a fault report."""

import errno
import gc
import shutil
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from datetime import datetime
from functools import cache
from pathlib import Path

import pytest

from tests.workbooks import write_workbook
from xlbatch.plan import Plan
from xlbatch.resources import examples
from xlbatch.run import Options, Outcome, make_plan, run
from xlbatch.saving import CannotSave, save_new

EVENTS = frozenset({"open", "os.mkdir", "os.rename", "os.remove", "os.rmdir", "os.listdir", "os.scandir"})
FAULTS = (errno.ENOSPC, errno.EACCES, errno.EIO, errno.EINTR, errno.EBUSY)


class Trap:
    """Lets one file operation in a folder fail: the one after `after` others. Counts all of them."""

    folder = ""
    after, seen, fault = 0, 0, 0

    def hook(self, event: str, arguments: tuple[object, ...]) -> None:
        if self.folder and event in EVENTS and str(arguments[0]).startswith(self.folder):
            self.seen += 1
            if self.seen == self.after + 1:
                raise OSError(self.fault, "made to fail", str(arguments[0]))


TRAP = Trap()
sys.addaudithook(TRAP.hook)


@contextmanager
def failing(folder: Path, after: int, fault: int) -> Iterator[None]:
    TRAP.folder, TRAP.after, TRAP.seen, TRAP.fault = str(folder), after, 0, fault
    try:
        yield
    finally:
        TRAP.folder = ""


@cache
def plan_of(folder: Path) -> Plan:
    from xlbatch.roster.read import Reading, read

    reading = read(folder / "roster.xlsx")
    assert isinstance(reading, Reading)
    return make_plan(reading, 0, lambda _stage: None, datetime(2026, 1, 1))


def list_with_artwork(folder: Path) -> Path:
    """A list whose design is a drawing and a picture beside it."""
    (folder / "sun.svg").write_text('<svg xmlns="http://www.w3.org/2000/svg"><circle cx="9" cy="9" r="9"/></svg>')
    shutil.copy(examples() / "with_mistakes" / "coarse.png", folder / "coarse.png")
    headings = ["Design", "Decal", "What", "Artwork", "Film", "Position", "Height"]
    designs = [
        headings,
        ["Name", "Sun", "artwork", "sun.svg", "Black smooth", "full front", "4 in"],
        ["Name", "Dots", "artwork", "coarse.png", "Black smooth", "full back", "4 in"],
    ]
    people = [["Who", "Size"], ["Ana", "M"]]
    return write_workbook(folder / "roster.xlsx", {"Roster": people, "Designs": designs})


def roster(folder: Path) -> Path:
    return write_workbook(folder / "roster.xlsx", {"Roster": [["Who", "Size"], ["Ana", "M"], ["Ivo", "?"]]})


def try_each(folder: Path, fault: int, do: Callable[[], Outcome], whole: set[str]) -> list[Outcome]:
    """What came of each run with one failure, until one meets none; the folder is looked at and cleared after each."""
    given, outcomes, after = {path.name for path in folder.iterdir()}, [], 0
    before = (folder / "roster.xlsx").read_bytes()
    while True:
        with failing(folder, after, fault):
            outcomes.append(do())
        assert (folder / "roster.xlsx").read_bytes() == before
        visible = {path.name for path in folder.iterdir() if not path.name.startswith(".")} - given
        assert visible in (set(), whole), (after, outcomes[-1])
        assert bool(visible) == (outcomes[-1].written is not None)
        if TRAP.seen <= after:
            return outcomes
        run(folder / "roster.xlsx", Options(effort=0, check_only="problems" in str(whole)), lambda _stage: None, NOW)
        assert not list(folder.glob(".*")), after  # what a failure left goes with the next run
        clear(folder, given)
        after += 1


def clear(folder: Path, given: set[str]) -> None:
    from xlbatch.claim import remove

    for path in folder.iterdir():
        if path.name not in given:
            remove(path)


NOW = datetime(2026, 1, 1)


@pytest.mark.parametrize("fault", FAULTS)
@pytest.mark.parametrize("check_only", [False, True])
def test_one_failure_anywhere(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, fault: int, check_only: bool) -> None:
    path = roster(tmp_path)
    monkeypatch.setattr("time.sleep", lambda _: None)
    plan = plan_of(tmp_path)
    monkeypatch.setattr("xlbatch.run.make_plan", lambda *_: plan)
    # the sheets' own files: see the disk that fills up
    for writer in ("sheets.write.write_plan", "sheets.write.write_problems", "pages.write_pages.write_pages"):
        monkeypatch.setattr(f"xlbatch.{writer}", lambda path, *_: path.write_text("sheets"))
    parts = ("problems.xlsx",) if check_only else ("plan.xlsx", "plan - cut files", "to print.xlsx")
    whole = {f"roster - {part}" for part in parts}
    options = Options(check_only=check_only)
    outcomes = try_each(tmp_path, fault, lambda: run(path, options, lambda _stage: None, NOW), whole)
    assert len(outcomes) > 8
    assert {outcome.code for outcome in outcomes[:-1]} <= {1, 3}
    assert outcomes[-1].code == 1
    for outcome in outcomes[:-1]:
        if outcome.code == 3:
            assert outcome.message.endswith((".", "again."))
            assert "Errno" not in outcome.message


@pytest.mark.parametrize("fault", [errno.EACCES, errno.EIO])
def test_one_failure_while_the_list_and_its_artwork_are_read(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, fault: int
) -> None:
    monkeypatch.setattr("time.sleep", lambda _: None)
    monkeypatch.setattr("xlbatch.run._write", lambda plan, *_: Outcome(1, "read", problems=plan.problems))
    outcomes: list[Outcome] = []
    while TRAP.seen >= len(outcomes):
        folder = tmp_path / str(len(outcomes))  # a drawing is remembered by its path
        folder.mkdir()
        path = list_with_artwork(folder)
        with failing(folder, len(outcomes), fault):
            outcomes.append(run(path, Options(effort=0), lambda _stage: None, NOW))
    codes = [[problem.code for problem in outcome.problems] for outcome in outcomes]
    assert len(outcomes) > 4, codes
    assert all(outcome.code in (1, 3) for outcome in outcomes)
    assert sum("artwork-unreadable" in read for read in codes) >= 2
    assert "artwork-unreadable" not in codes[-1]


@pytest.mark.parametrize("fault", FAULTS)
def test_one_failure_while_a_new_file_is_written(tmp_path: Path, fault: int, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("time.sleep", lambda _: None)
    after = 0
    while True:
        with failing(tmp_path, after, fault), suppress(CannotSave):
            save_new(tmp_path / "new.xlsx", lambda path: path.write_text("whole"))
        new = tmp_path / "new.xlsx"
        assert not new.exists() or new.read_text() == "whole"
        if TRAP.seen <= after:
            break
        new.unlink(missing_ok=True)
        after += 1
    assert after > 3


@pytest.mark.skipif(sys.platform != "linux", reason="limits a file's size as only this system does")
@pytest.mark.filterwarnings("ignore::ResourceWarning")  # the sheet writer leaves its file open then
@pytest.mark.parametrize("most", [0, 1000, 6000, 20_000])
def test_a_disk_that_fills_up_at_any_moment(tmp_path: Path, most: int) -> None:
    """Every write beyond `most` bytes of a file fails, in the sheet writer's own files too."""
    import resource
    import signal

    path = roster(tmp_path)
    before = signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
    soft, hard = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (most, hard))
    try:
        outcome = run(path, Options(effort=0), lambda _stage: None, NOW)
    finally:
        gc.collect()
        resource.setrlimit(resource.RLIMIT_FSIZE, (soft, hard))
        signal.signal(signal.SIGXFSZ, before)
    assert outcome.code == 3
    assert outcome.message.startswith(f"Could not write to {tmp_path}: ")
    assert [each.name for each in tmp_path.iterdir()] == ["roster.xlsx"]
