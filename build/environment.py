"""A private environment for the scripts here, made on first use from a lock of exact versions and hashes.

It lies in `.xlbatch-env/` in the checkout, so it never meets a `.venv` of your own. Each environment there is a
folder with a stamp, written last, that says what it was made from: a folder without one was interrupted and is
never used. Another lock or another Python asks for another stamp, and so for a new environment.
"""

import hashlib
import importlib.util
import os
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterable
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
HOME = ROOT / ".xlbatch-env"
PLAN_LOCK = ROOT / "build" / "requirements.lock"
TEST_LOCK = ROOT / "build" / "requirements-test.lock"  # the same packages and more
BUNDLE_LOCK = ROOT / "build" / "requirements-bundle.lock"  # the same packages and PyInstaller

STAMP = "made-from.txt"
FAILED = 3
STOPPED_BY_HAND = 130  # what a shell reports after Ctrl-C
ABANDONED_AFTER = 3600  # s; a folder still without a stamp then was interrupted
PIP = ("-m", "pip", "install", "--quiet", "--no-input", "--disable-pip-version-check")
FROM_LOCK = ("--require-hashes", "--no-deps", "--only-binary", ":all:", "--requirement")

OFFLINE = "The packages could not be fetched: connect to the internet, this once, and start it again."
FAILURES = (  # what pip says, and what that means to a person
    ("No space left", "The disk is full."),
    ("DO NOT MATCH THE HASHES", "A package arrived that is not the one in the lock; it was not installed."),
    ("connection broken", OFFLINE),
    ("Max retries exceeded", OFFLINE),
    ("No matching distribution", "A package is not made for this Python: use a 64-bit Python 3.11 to 3.14."),
)


class SetupFailed(Exception):
    """The environment could not be made; the message is for the person."""


def stamp(lock: Path) -> str:
    """What an environment made from `lock` by this Python is stamped with."""
    digest = hashlib.sha256(lock.read_bytes()).hexdigest()
    return f"{lock.name} {digest}\nPython {sys.version}\n{sys.base_prefix}\n"


def made(stamps: Iterable[str]) -> Path | None:
    """The finished environment that bears one of `stamps`, or None."""
    wanted = set(stamps)
    for note in sorted(HOME.glob(f"*/{STAMP}")):
        if note.read_text(encoding="utf-8") in wanted:
            return note.parent
    return None


def python_in(folder: Path) -> Path:
    """The Python of an environment."""
    return folder / "Scripts" / "python.exe" if os.name == "nt" else folder / "bin" / "python"


def meaning(said: str) -> str:
    """What pip's complaint means, in a sentence; its own last line where it is none we know."""
    for words, plain in FAILURES:
        if words in said:
            return plain
    return ([line for line in said.splitlines() if line.strip()] or ["The installer gave no reason."])[-1]


def fill(folder: Path, lock: Path) -> None:
    """Makes an environment in `folder` and installs `lock` into it. Raises SetupFailed."""
    commands: tuple[tuple[str | Path, ...], ...] = (
        (sys.executable, "-m", "venv", folder),
        (python_in(folder), *PIP, *FROM_LOCK, lock),
    )
    for command in commands:
        done = subprocess.run(command, capture_output=True, text=True, errors="replace", check=False)
        if done.returncode:
            raise SetupFailed(meaning(done.stdout + done.stderr))


def make(lock: Path) -> Path:
    """Makes the environment for `lock` and clears away those it replaces. Raises SetupFailed."""
    if not all(importlib.util.find_spec(name) for name in ("venv", "ensurepip")):
        raise SetupFailed("This Python lacks its venv part: install it (on Debian: apt install python3-venv).")
    print("Setting up, once: about a minute.", file=sys.stderr, flush=True)
    HOME.mkdir(exist_ok=True)
    folder = Path(tempfile.mkdtemp(prefix="env-", dir=HOME))
    try:
        fill(folder, lock)
        (folder / STAMP).write_text(stamp(lock), encoding="utf-8")
    except BaseException:
        shutil.rmtree(folder, ignore_errors=True)
        raise
    clear_all_but(folder)
    return folder


def clear_all_but(folder: Path) -> None:
    """Deletes the other environments, save those that still hold and one that is just being made."""
    current = {stamp(lock) for lock in (PLAN_LOCK, TEST_LOCK, BUNDLE_LOCK)}
    for other in HOME.iterdir():
        note = other / STAMP
        being_made = not note.exists() and time.time() - other.stat().st_mtime < ABANDONED_AFTER
        holds = note.exists() and note.read_text(encoding="utf-8") in current
        if other != folder and not being_made and not holds:
            shutil.rmtree(other, ignore_errors=True)


def environment(lock: Path) -> Path:
    """The environment for `lock`, made if need be. The one for the tests does for planning too. Raises SetupFailed."""
    serving = {lock, TEST_LOCK} if lock == PLAN_LOCK else {lock}
    return made(map(stamp, serving)) or make(lock)


def ready(lock: Path) -> Path:
    """The Python of `lock`'s environment. Ends the program, with a plain sentence, where there can be none."""
    try:
        return python_in(environment(lock))
    except (SetupFailed, OSError) as reason:
        print(f"Setting up failed. {reason}", file=sys.stderr)
        sys.exit(FAILED)
    except KeyboardInterrupt:
        sys.exit(STOPPED_BY_HAND)


def run(python: Path, *arguments: str, cwd: Path | None = None) -> int:
    """Runs `python` with the checkout importable, wherever it runs; its exit code. Ctrl-C ends the program."""
    surroundings = {name: value for name, value in os.environ.items() if name not in ("PYTHONHOME", "PYTHONPATH")}
    surroundings |= {"PYTHONPATH": str(ROOT), "PYTHONSAFEPATH": "1"}  # never a file of the person's folder
    try:
        return subprocess.call([python, *arguments], cwd=cwd, env=surroundings)
    except KeyboardInterrupt:
        sys.exit(STOPPED_BY_HAND)
