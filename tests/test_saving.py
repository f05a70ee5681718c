"""A plan is written whole or not at all, and over nothing."""

import os
import subprocess
import sys
import time
from pathlib import Path
from random import Random

import pytest

from xlbatch.roster.read import blank_job
from xlbatch.saving import CannotSave, base_name, is_returned, save_new, save_plan, save_problems
from xlbatch.sheets.write import write_blank


def text(content: str):  # type: ignore[no-untyped-def]
    return lambda path: path.write_text(content, encoding="utf-8")


def fail(path: Path) -> None:
    path.write_text("half", encoding="utf-8")
    raise OSError(28, "No space left on device")


@pytest.mark.parametrize(
    ("file", "base"),
    [
        ("roster.xlsx", "roster"),
        ("roster - plan.xlsx", "roster"),
        ("roster - plan 12.xlsx", "roster"),
        ("roster - problems 2.xlsx", "roster"),
        ("our - plan for May.xlsx", "our - plan for May"),
    ],
)
def test_the_name_of_the_job(file: str, base: str) -> None:
    assert base_name(Path(file)) == base
    assert is_returned(Path(file)) == (base != Path(file).stem)


def test_each_plan_gets_the_next_free_number(tmp_path: Path) -> None:
    names = [save_plan(tmp_path, "roster", text("x"), {"01.svg": "<svg/>"})[0].name for _ in range(3)]
    assert names == ["roster - plan.xlsx", "roster - plan 2.xlsx", "roster - plan 3.xlsx"]
    assert (tmp_path / "roster - plan 2 - cut files" / "01.svg").read_text() == "<svg/>"
    assert save_problems(tmp_path, "roster", text("x")).name == "roster - problems.xlsx"


def test_a_number_is_free_only_when_both_names_are(tmp_path: Path) -> None:
    (tmp_path / "roster - plan - cut files").mkdir()
    assert save_plan(tmp_path, "roster", text("x"), {})[0].name == "roster - plan 2.xlsx"


def test_a_failed_write_leaves_nothing(tmp_path: Path) -> None:
    with pytest.raises(CannotSave, match=r"the disk is full\. Free some space on it"):
        save_plan(tmp_path, "roster", fail, {"01.svg": "<svg/>"})
    assert list(tmp_path.iterdir()) == []


def test_what_a_killed_run_left_goes_with_the_next(tmp_path: Path) -> None:
    (tmp_path / ".roster.unfinished").mkdir()
    (tmp_path / ".roster.unfinished" / "roster - plan.xlsx").write_text("half")
    save_plan(tmp_path, "roster", text("x"), {})
    assert sorted(path.name for path in tmp_path.iterdir()) == ["roster - plan - cut files", "roster - plan.xlsx"]


def test_half_a_plan_goes_with_the_next(tmp_path: Path) -> None:
    """Killed when the cut files were in place and the workbook was not."""
    (tmp_path / ".roster.unfinished").mkdir()
    (tmp_path / ".roster.unfinished" / "roster - plan 2.xlsx").write_text("whole, but not in place")
    (tmp_path / "roster - plan 2 - cut files").mkdir()
    for kept in ("roster - plan.xlsx", "roster - plan - cut files"):
        (tmp_path / kept).mkdir()
    save_plan(tmp_path, "roster", text("x"), {"01.svg": "new"})
    assert (tmp_path / "roster - plan 2 - cut files" / "01.svg").read_text() == "new"
    assert len(list(tmp_path.iterdir())) == 4


def test_two_runs_at_the_same_moment_take_a_number_each(tmp_path: Path) -> None:
    def write(path: Path) -> None:
        assert save_plan(tmp_path, "roster", text("second"), {"01.svg": "2"})[0].name == "roster - plan 2.xlsx"
        path.write_text("first", encoding="utf-8")

    assert save_plan(tmp_path, "roster", write, {"01.svg": "1"})[0].read_text() == "first"
    for name, content in (("roster - plan", "1"), ("roster - plan 2", "2")):
        assert (tmp_path / f"{name} - cut files" / "01.svg").read_text() == content
    assert len(list(tmp_path.iterdir())) == 4


KILLED = 50
CHUNKS, CUT_FILES = 20, 5
SLOW_SAVER = f"""
import sys, time
from pathlib import Path
from xlbatch.saving import save_plan

def write(path):
    with path.open("wb") as file:
        for _ in range({CHUNKS}):
            file.write(b"x" * 1000)
            file.flush()
            time.sleep(0.0005)

print("ready", flush=True)
save_plan(Path(sys.argv[1]), "roster", write, {{f"{{n}}.svg": "<svg/>" for n in range({CUT_FILES})}})
"""


def test_killed_at_any_moment_there_is_a_whole_plan_or_none(tmp_path: Path) -> None:
    (tmp_path / "roster.xlsx").write_text("mine")
    random, whole = Random(7), 0
    for at in range(KILLED):
        command = [sys.executable, "-S", "-c", SLOW_SAVER, str(tmp_path)]
        with subprocess.Popen(command, stdout=subprocess.PIPE, env=os.environ | {"PYTHONPATH": os.curdir}) as saver:
            assert saver.stdout is not None
            saver.stdout.readline()
            time.sleep(random.uniform(0, 0.03))
            saver.kill()
        plans = list(tmp_path.glob("*.xlsx"))
        for plan in plans:
            if plan.name != "roster.xlsx":
                assert plan.stat().st_size == 1000 * CHUNKS
                assert len(list((tmp_path / f"{plan.stem} - cut files").iterdir())) == CUT_FILES
        whole += len(plans) > 1
        save_plan(tmp_path, "roster", text("x" * 1000 * CHUNKS), {"01.svg": ""})
        left = {path.name.removesuffix(".xlsx").removesuffix(" - cut files") for path in tmp_path.iterdir()}
        assert len(list(tmp_path.iterdir())) == 2 * len(left) - 1  # the roster, and each plan with its cut files
        (tmp_path.parent / str(at)).mkdir()
        for path in tmp_path.glob("* - plan*"):
            path.rename(tmp_path.parent / str(at) / path.name)
    assert 0 < whole < KILLED  # some were killed before the end, some after
    assert (tmp_path / "roster.xlsx").read_text() == "mine"


def test_a_file_locked_for_a_moment_is_tried_again(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    waits: list[float] = []
    monkeypatch.setattr("time.sleep", waits.append)
    rename, refused = Path.rename, iter([True, True, False, False])

    def locked(path: Path, to: Path) -> Path:
        if next(refused):
            raise PermissionError(13, "The file is in use")
        return rename(path, to)

    monkeypatch.setattr(Path, "rename", locked)
    assert save_plan(tmp_path, "roster", text("x"), {})[0].exists()
    assert waits == [0.1, 0.2]


def test_a_file_locked_for_good_leaves_nothing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("time.sleep", lambda _: None)
    rename = Path.rename

    def locked(path: Path, to: Path) -> Path:
        if to.suffix == ".xlsx":
            raise PermissionError(13, "The file is in use")
        return rename(path, to)

    monkeypatch.setattr(Path, "rename", locked)
    with pytest.raises(CannotSave, match=r"may not be written to\. Choose another folder"):
        save_plan(tmp_path, "roster", text("x"), {"01.svg": "<svg/>"})
    assert list(tmp_path.iterdir()) == []


def test_a_disk_that_fills_up_while_a_workbook_is_written_is_said(tmp_path: Path) -> None:
    if not Path("/dev/full").exists():
        pytest.skip("needs the device that is always full")

    def write(path: Path) -> None:
        path.symlink_to("/dev/full")
        write_blank(path, blank_job(path))

    with pytest.raises(CannotSave, match="the disk is full"):
        save_plan(tmp_path, "roster", write, {})
    assert list(tmp_path.iterdir()) == []


def test_a_name_too_long_is_said(tmp_path: Path) -> None:
    with pytest.raises(CannotSave, match=r"name is too long\. Give the workbook a shorter one"):
        save_plan(tmp_path, "r" * 250, text("x"), {})


def test_a_new_file_never_replaces_one(tmp_path: Path) -> None:
    (tmp_path / "roster.xlsx").write_text("mine")
    with pytest.raises(CannotSave, match="already exists"):
        save_new(tmp_path / "roster.xlsx", text("x"))
    assert (tmp_path / "roster.xlsx").read_text() == "mine"
