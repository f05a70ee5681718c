"""The private environment is made once, from a lock, and never used half-made."""

import os
import runpy
import sys
import time
import tomllib
from pathlib import Path
from types import ModuleType

import pytest

ROOT = Path(__file__).resolve().parents[2]
BUILD = ROOT / "build"


def finished(environment: ModuleType, name: str, lock: Path) -> Path:
    folder = Path(environment.HOME, name)
    folder.mkdir(parents=True)
    (folder / environment.STAMP).write_text(environment.stamp(lock), encoding="utf-8")
    return folder


@pytest.fixture
def lock(tmp_path: Path) -> Path:
    path = tmp_path / "some.lock"
    path.write_text("one==1\n")
    return path


@pytest.fixture
def empty_installs(environment: ModuleType, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(environment, "fill", lambda *_: None)


@pytest.mark.parametrize("version", [(2, 7, 18), (3, 6, 15), (3, 10, 13)])
def test_an_old_python_is_told_in_one_sentence(
    version: tuple[int, ...], monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(sys, "version_info", version)
    with pytest.raises(SystemExit) as end:
        runpy.run_path(str(BUILD / "needs_python.py"))
    said = capsys.readouterr().err
    assert end.value.code == 3
    assert said.startswith(f"This needs Python 3.11 or newer and was started with Python {version[0]}.{version[1]}: ")
    assert said.count("\n") == 1


def test_the_oldest_python_is_the_one_the_project_names(monkeypatch: pytest.MonkeyPatch) -> None:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    oldest = tuple(int(part) for part in project["requires-python"].removeprefix(">=").split("."))
    monkeypatch.setattr(sys, "version_info", oldest)
    runpy.run_path(str(BUILD / "needs_python.py"))
    monkeypatch.setattr(sys, "version_info", (oldest[0], oldest[1] - 1))
    with pytest.raises(SystemExit):
        runpy.run_path(str(BUILD / "needs_python.py"))


def test_another_lock_or_another_python_has_another_stamp(
    environment: ModuleType, lock: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    first = environment.stamp(lock)
    assert environment.stamp(lock) == first
    lock.write_text("one==2\n")
    second = environment.stamp(lock)
    monkeypatch.setattr(sys, "version", "3.99.0")
    assert len({first, second, environment.stamp(lock)}) == 3


def test_a_folder_without_a_stamp_is_never_used(environment: ModuleType, lock: Path) -> None:
    Path(environment.HOME, "env-half").mkdir(parents=True)
    assert environment.made([environment.stamp(lock)]) is None
    whole = finished(environment, "env-whole", lock)
    assert environment.made([environment.stamp(lock)]) == whole


def test_the_test_environment_does_for_planning_but_not_the_other_way_round(environment: ModuleType) -> None:
    small = finished(environment, "env-small", environment.PLAN_LOCK)
    assert environment.environment(environment.PLAN_LOCK) == small
    assert environment.made([environment.stamp(environment.TEST_LOCK)]) is None
    (small / environment.STAMP).unlink()
    full = finished(environment, "env-full", environment.TEST_LOCK)
    assert environment.environment(environment.PLAN_LOCK) == full


@pytest.mark.usefixtures("empty_installs")
def test_an_environment_is_made_once(environment: ModuleType, lock: Path, capsys: pytest.CaptureFixture[str]) -> None:
    made = environment.environment(lock)
    assert capsys.readouterr().err == "Setting up, once: about a minute.\n"
    assert environment.environment(lock) == made
    assert capsys.readouterr().err == ""


@pytest.mark.usefixtures("empty_installs")
def test_a_new_environment_clears_away_old_and_interrupted_ones(environment: ModuleType, lock: Path) -> None:
    old = finished(environment, "env-old", lock)
    lock.write_text("one==2\n")
    interrupted, being_made = Path(environment.HOME, "env-left"), Path(environment.HOME, "env-busy")
    interrupted.mkdir()
    being_made.mkdir()
    hours_ago = time.time() - 2 * environment.ABANDONED_AFTER
    os.utime(interrupted, (hours_ago, hours_ago))
    new = environment.environment(lock)
    assert set(Path(environment.HOME).iterdir()) == {new, being_made}
    assert not old.exists()


@pytest.mark.usefixtures("empty_installs")
def test_the_environments_for_planning_testing_and_bundling_stand_side_by_side(environment: ModuleType) -> None:
    locks = (environment.PLAN_LOCK, environment.BUNDLE_LOCK, environment.TEST_LOCK)
    made = [environment.environment(lock) for lock in locks]
    assert set(Path(environment.HOME).iterdir()) == set(made)
    assert len(set(made)) == 3


@pytest.mark.parametrize("why", [KeyboardInterrupt(), OSError("no room")])
def test_an_interrupted_set_up_leaves_nothing(
    environment: ModuleType, lock: Path, monkeypatch: pytest.MonkeyPatch, why: BaseException
) -> None:
    def interrupted(*_: object) -> None:
        raise why

    monkeypatch.setattr(environment, "fill", interrupted)
    with pytest.raises(type(why)):
        environment.environment(lock)
    assert list(Path(environment.HOME).iterdir()) == []


def test_a_failed_set_up_is_told_in_one_sentence(
    environment: ModuleType, lock: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr("importlib.util.find_spec", lambda name: None if name == "ensurepip" else name)
    with pytest.raises(SystemExit) as end:
        environment.ready(lock)
    assert end.value.code == 3
    said = capsys.readouterr().err
    assert said.startswith("Setting up failed. This Python lacks its venv part: install it")
    assert said.count("\n") == 1


@pytest.mark.parametrize(
    ("said", "meant"),
    [
        (
            "WARNING: Retrying after connection broken by 'NewConnectionError'\nERROR: No matching distribution",
            "internet",
        ),
        ("ERROR: No matching distribution found for numpy==2.4.6", "64-bit Python"),
        ("ERROR: THESE PACKAGES DO NOT MATCH THE HASHES FROM THE REQUIREMENTS FILE", "not the one in the lock"),
        ("OSError: [Errno 28] No space left on device", "disk is full"),
        ("something\nERROR: wholly new\n\n", "ERROR: wholly new"),
        ("", "no reason"),
    ],
)
def test_what_the_installer_says_is_put_plainly(environment: ModuleType, said: str, meant: str) -> None:
    assert meant in environment.meaning(said)


def test_a_run_passes_the_exit_code_on(environment: ModuleType) -> None:
    assert environment.run(Path(sys.executable), "-c", "raise SystemExit(7)") == 7


def test_a_run_finds_the_checkout_and_nothing_in_the_folder_it_runs_in(environment: ModuleType, tmp_path: Path) -> None:
    (tmp_path / "csv.py").write_text("raise SystemExit('the wrong csv')")
    (tmp_path / "xlbatch.py").write_text("raise SystemExit('the wrong xlbatch')")
    look = f"import csv, xlbatch; raise SystemExit(xlbatch.__file__ != {str(ROOT / 'xlbatch' / '__init__.py')!r})"
    assert environment.run(Path(sys.executable), "-c", look, cwd=tmp_path) == 0
