"""A plan is written whole or not at all, and over nothing."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from xlbatch.claim import claim, release
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


def left_by_a_killed_run(folder: Path, name: str) -> Path:
    """The folder of a run that was killed while it held `name`."""
    held = claim(folder, name)
    assert held is not None
    held.mark.close()  # as the system does
    return held.folder


def test_where_there_are_no_locks_who_made_the_folder_holds_it(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """As on some network folders."""
    monkeypatch.setattr("xlbatch.claim._lock", lambda _mark: None)
    held = claim(tmp_path, "roster - plan.xlsx")
    assert held is not None
    assert claim(tmp_path, "roster - plan.xlsx") is None
    release(held)
    assert list(tmp_path.iterdir()) == []


def test_what_a_killed_run_left_goes_with_the_next(tmp_path: Path) -> None:
    left = left_by_a_killed_run(tmp_path, "roster - plan.xlsx")
    (left / "2.xlsx").write_text("half")
    save_plan(tmp_path, "roster", text("x"), {})
    assert sorted(path.name for path in tmp_path.iterdir()) == ["roster - plan - cut files", "roster - plan.xlsx"]


def test_half_a_plan_goes_with_the_next(tmp_path: Path) -> None:
    """Killed when the cut files were in place and the workbook was not."""
    left = left_by_a_killed_run(tmp_path, "roster - plan 2.xlsx")
    (left / "2.xlsx").write_text("whole, but not in place")
    (left / "moving").write_text("0 1.xlsx 2.xlsx")
    (tmp_path / "roster - plan 2 - cut files").mkdir()
    (tmp_path / "roster - to print 2.xlsx").write_text("old")
    for kept in ("roster - plan.xlsx", "roster - plan - cut files"):
        (tmp_path / kept).mkdir()
    save_plan(tmp_path, "roster", text("x"), {"01.svg": "new"}, lambda path, plan: path.write_text(plan))
    assert (tmp_path / "roster - plan 2 - cut files" / "01.svg").read_text() == "new"
    assert (tmp_path / "roster - to print 2.xlsx").read_text() == "roster - plan 2.xlsx"
    assert len(list(tmp_path.iterdir())) == 5


def test_scratch_names_are_short_and_a_path_too_long_is_said(tmp_path: Path) -> None:
    longest: list[int] = []
    name = "a list of people with quite a long name of its own"

    def write(path: Path) -> None:
        longest.append(max(len(str(each)) for each in tmp_path.rglob("*")))
        path.write_text("x")

    saved = save_plan(tmp_path, name, write, {"01 film - already mirrored.svg": "<svg/>"})
    assert longest[0] < len(str(saved.cut_files / "01 film - already mirrored.svg"))
    with pytest.raises(CannotSave, match="shorter name or folder"):
        save_plan(tmp_path, "n" * 250, text("x"), {})


def test_a_path_that_windows_finds_too_long_is_said(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Windows says that there is no such file; the folder that was made in vain is gone."""
    opened = Path.open

    def too_long(path: Path, *how: str, **more: str) -> object:
        if path.name == "in use":
            raise FileNotFoundError(2, "No such file or directory")
        return opened(path, *how, **more)  # type: ignore[call-overload]

    monkeypatch.setattr(Path, "open", too_long)
    monkeypatch.setattr("xlbatch.saving._LONGEST_PATH", 10)
    monkeypatch.setattr("sys.platform", "win32")
    with pytest.raises(CannotSave, match="shorter name or folder"):
        save_plan(tmp_path, "roster", text("x"), {})
    assert list(tmp_path.iterdir()) == []


@pytest.mark.skipif(sys.platform == "win32", reason="needs a privilege there")
def test_a_link_that_leads_nowhere_is_not_replaced(tmp_path: Path) -> None:
    for name in ("roster - plan.xlsx", "roster - problems.xlsx", "new.xlsx"):
        (tmp_path / name).symlink_to(tmp_path / "gone" / name)
    assert save_plan(tmp_path, "roster", text("x"), {}).plan.name == "roster - plan 2.xlsx"
    assert save_problems(tmp_path, "roster", text("x")).name == "roster - problems 2.xlsx"
    with pytest.raises(CannotSave, match="already exists"):
        save_new(tmp_path / "new.xlsx", text("x"))
    assert (tmp_path / "roster - plan.xlsx").is_symlink()


RUNS, ROUNDS = 4, 8
SAVER = """
import sys
from pathlib import Path
from xlbatch.saving import save_plan, save_problems
sys.stdin.readline()
for turn in range(int(sys.argv[3])):
    words = f"{sys.argv[2]} {turn}"
    write = lambda path: path.write_text(words)
    save_plan(Path(sys.argv[1]), "roster", write, {"01.svg": words}, lambda path, name: path.write_text(words))
    save_problems(Path(sys.argv[1]), "roster", write)
"""


def test_runs_on_one_list_at_once_each_get_a_whole_plan(tmp_path: Path) -> None:
    command = [sys.executable, "-S", "-c", SAVER, str(tmp_path)]
    savers = [
        subprocess.Popen([*command, str(no), str(ROUNDS)], stdin=subprocess.PIPE, env=os.environ | {"PYTHONPATH": "."})
        for no in range(RUNS)
    ]
    for saver in savers:
        assert saver.stdin is not None
        saver.stdin.write(b"go\n")
        saver.stdin.flush()
    assert [saver.wait() for saver in savers] == [0] * RUNS
    for saver in savers:
        saver.stdin.close()  # type: ignore[union-attr]
    expected = sorted(f"{no} {turn}" for no in range(RUNS) for turn in range(ROUNDS))
    plans = list(tmp_path.glob("* - plan*.xlsx"))
    assert sorted(plan.read_text() for plan in plans) == expected
    for plan in plans:
        assert (tmp_path / f"{plan.stem} - cut files" / "01.svg").read_text() == plan.read_text()
        assert (tmp_path / plan.name.replace("- plan", "- to print")).read_text() == plan.read_text()
    assert sorted(each.read_text() for each in tmp_path.glob("* - problems*.xlsx")) == expected
    assert list(tmp_path.glob(".*")) == []


def test_two_runs_at_the_same_moment_take_a_number_each(tmp_path: Path) -> None:
    def write(path: Path) -> None:
        assert save_plan(tmp_path, "roster", text("second"), {"01.svg": "2"})[0].name == "roster - plan 2.xlsx"
        path.write_text("first", encoding="utf-8")

    assert save_plan(tmp_path, "roster", write, {"01.svg": "1"})[0].read_text() == "first"
    for name, content in (("roster - plan", "1"), ("roster - plan 2", "2")):
        assert (tmp_path / f"{name} - cut files" / "01.svg").read_text() == content
    assert len(list(tmp_path.iterdir())) == 4


CHUNKS, CUT_FILES = 20, 5
SLOW_SAVER = f"""
import sys
from pathlib import Path
from xlbatch.saving import save_plan

def write(path):
    with path.open("wb") as file:
        for _ in range({CHUNKS}):
            file.write(b"x" * 1000)
            file.flush()
            print("a piece", flush=True)

print("ready", flush=True)
save_plan(Path(sys.argv[1]), "roster", write, {{f"{{n}}.svg": "<svg/>" for n in range({CUT_FILES})}})
print("done", flush=True)
"""


def test_killed_at_any_moment_there_is_a_whole_plan_or_none(tmp_path: Path) -> None:
    (tmp_path / "roster.xlsx").write_text("mine")
    whole = 0
    for lines in range(1, CHUNKS + 3):
        command = [sys.executable, "-S", "-c", SLOW_SAVER, str(tmp_path)]
        with subprocess.Popen(command, stdout=subprocess.PIPE, env=os.environ | {"PYTHONPATH": os.curdir}) as saver:
            assert saver.stdout is not None
            for _ in range(lines):
                saver.stdout.readline()
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
        (tmp_path.parent / str(lines)).mkdir()
        for path in tmp_path.glob("* - plan*"):
            path.rename(tmp_path.parent / str(lines) / path.name)
    assert 0 < whole < CHUNKS + 2  # some were killed before the end, some after
    assert (tmp_path / "roster.xlsx").read_text() == "mine"


@pytest.mark.skipif(not hasattr(os, "fork"), reason="needs fork")
def test_killed_at_each_step_and_again_at_each_of_the_next_run_the_third_leaves_whole_plans(tmp_path: Path) -> None:
    command = [sys.executable, "-S", "tests/kill_at_each_step.py", str(tmp_path)]
    done = subprocess.run(
        command, env=os.environ | {"PYTHONPATH": os.curdir}, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr
    steps, kills = map(int, done.stdout.split())
    assert steps > 15
    assert kills > 15 * steps


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


def test_a_new_file_never_replaces_one(tmp_path: Path) -> None:
    (tmp_path / "roster.xlsx").write_text("mine")
    with pytest.raises(CannotSave, match="already exists"):
        save_new(tmp_path / "roster.xlsx", text("x"))
    assert (tmp_path / "roster.xlsx").read_text() == "mine"
