"""The part of try_windows.py that runs in its environment: windows_tries.py [--source] [TRY...]. One try a function;
without names of some, all are made."""

# mypy: disable-error-code=import-not-found
# (the modules beside a script are found when it runs)

import os
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from functools import partial
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent))  # what lies beside a script must be importable

from compare_plans import differences
from environment import ROOT
from kill_bundle import Folder, kill_often
from large_list import computed, large_list
from PIL import Image, ImageGrab
from try_bundle import copy_examples
from windows_machine import PATIENCE, Machine, machine

FOLDER = "Büro & Möbel Ωμέγα 張"  # a space, an ampersand, letters of three scripts
MISTAKES = ("size-unknown", "film-unknown", "artwork-unreadable", "lettering-too-long", "heat-over-limit")
FORBIDDEN = ("CON", "a/b: c?", "ends in a dot.", "\N{BALLOON}" * 61, "Ωμέγα")  # groups; file names come of them
WORKER = "parent_pid="  # in the command of a process that works for another
KILLS = 4
LONGEST = 259  # characters of a path
SHOTS = ROOT / "dist" / "windows"
HOLD = (
    "import ctypes, sys; ctypes.windll.kernel32.CreateFileW(sys.argv[1], 0xC0000000, 0, None, 3, 0, None);"
    "print('held', flush=True); sys.stdin.read()"
)
CLASSES = r"HKEY_CURRENT_USER\Software\Classes"
PROGRAM = r"C:\my programs\xlbatch.exe"
REPORTS = "*fault report*.txt"
SCREEN = (1920, 1200)
PAUSE, ALIKE, MOST_LOOKS = 3, 4, 40  # s between two looks at a window; as many alike show that it is drawn


class Program:
    """What is tried: the built program, or the source under Windows' Python."""

    def __init__(self, box: Machine, source: Path, built: Path | None) -> None:
        self.box, self._built = box, built
        self.surroundings = {"PYTHONPATH": str(source), "PYTHONSAFEPATH": "1"}

    def command(self, *, window: bool = False) -> tuple[Path | str, ...]:
        if self._built:
            return (self._built / f"xlbatch{'' if window else '-console'}.exe",)
        return (self.box.python, "-m", "xlbatch", *(["--window"] if window else []))

    def start(self, *words: Path | str, window: bool = False) -> "subprocess.Popen[bytes]":
        running: subprocess.Popen[bytes] = self.box.start(*self.command(window=window), *words, **self.surroundings)
        return running

    def on_linux(self, *words: Path | str) -> None:
        """Runs the same source here."""
        command = [sys.executable, "-m", "xlbatch", "--no-window", *words]
        subprocess.run(command, env=os.environ | self.surroundings, check=False, stdout=subprocess.DEVNULL)

    def plan(self, *words: Path | str, code: int = 0) -> str:
        """Runs it in a console; what it said. Raises where its exit code is another than `code`."""
        with self.start("--no-window", *words) as running:
            out, error = running.communicate(timeout=PATIENCE)
        if running.returncode != code:
            reports = [file.read_text(encoding="utf-8") for path in words for file in Path(path).parent.glob(REPORTS)]
            raise AssertionError("\n".join([f"{words}: exit code {running.returncode}", out.decode(), *reports]))
        return (out + error).decode()


def same(ours: Path, theirs: Path) -> None:
    """Raises where what was written into two folders differs."""
    lines = list(differences(ours, theirs))
    if lines:
        raise AssertionError("Windows and Linux differ:\n" + "\n".join(lines[:20]))


def try_examples(program: Program, scratch: Path) -> None:
    """The examples come out as on Linux."""
    theirs = copy_examples(scratch / FOLDER / "my lists")
    program.plan(*theirs)
    program.on_linux(*copy_examples(scratch / "linux"))
    same(scratch / FOLDER / "my lists", scratch / "linux")


def try_mistakes(program: Program, scratch: Path) -> None:
    """Problems are the same, to the word."""
    folders = [scratch / name for name in ("mistakes", "mistakes on linux")]
    for folder in folders:
        folder.mkdir()
        for code in MISTAKES:
            for file in (ROOT / "example_workbooks" / "with_mistakes").glob(f"{code}.*"):
                shutil.copy(file, folder)
    lists = [sorted(folder.iterdir()) for folder in folders]
    if len(lists[0]) < len(MISTAKES):
        raise AssertionError("An example of a mistake is missing.")
    running = program.start("--no-window", "--check", *lists[0])
    running.communicate(timeout=PATIENCE)
    program.on_linux("--check", *lists[1])
    same(*folders)


def try_names(program: Program, scratch: Path) -> None:
    """Groups whose names Windows forbids in files, letters a console lacks, and UTF-8 at the end of a pipe."""
    rows = "".join(f"Ana {no},M,{group}\n" for no, group in enumerate(FORBIDDEN))
    folders = [scratch / name for name in ("names", "names on linux")]
    for folder in folders:
        folder.mkdir()
        (folder / "Liste Ωμέγα 張.csv").write_text(f"Who,Size,Group\n{rows}", encoding="utf-8")
    said = program.plan(folders[0] / "Liste Ωμέγα 張.csv")
    if said.splitlines()[0] != "Liste Ωμέγα 張.csv: 5 garments planned.":
        raise AssertionError(f"Said through a pipe: {said}")
    program.on_linux(folders[1] / "Liste Ωμέγα 張.csv")
    same(*folders)


def try_locked(program: Program, scratch: Path) -> None:
    """A list that another program holds is said to be held."""
    path = scratch / "held.csv"
    path.write_text("Who,Size\nAna,M\n", encoding="utf-8")
    with program.box.start(program.box.python, "-c", HOLD, path) as holder:
        assert holder.stdout is not None
        holder.stdout.readline()
        said = program.plan(path, code=3)
        holder.communicate()
    if "Close it in other programs" not in said:
        raise AssertionError(said)


def try_long_path(program: Program, scratch: Path) -> None:
    """A plan whose path would be too long is whole, or it is said and nothing of it is there."""
    folder = scratch / "long"
    while len(str(folder)) < LONGEST - 60:
        folder /= "a folder of a folder"
    folder.mkdir(parents=True)
    name = "n" * (LONGEST - len(str(folder)) - 10)
    path = folder / f"{name}.csv"
    path.write_text("Who,Size\nAna,M\n", encoding="utf-8")
    with program.start("--no-window", path) as running:
        said = b"".join(running.communicate(timeout=PATIENCE)).decode()
    left = [each.name for each in folder.iterdir()]
    if running.returncode != 0 and ("Choose a shorter name or folder" not in said or left != [path.name]):
        raise AssertionError(f"{said}\n{left}")


def try_kills(program: Program, scratch: Path) -> None:
    """Killed while it writes there is a whole plan or none."""
    folder = scratch / "kills"
    folder.mkdir()
    kill_often(Folder(folder, partial(program.start, "--no-window")), KILLS)


def try_offered(program: Program, scratch: Path) -> None:
    """Offered under Open with for every kind of list, and the first program for none."""
    offer = f"import sys, pathlib; from xlbatch.window.open_with import offer; offer(pathlib.Path({PROGRAM!r}))"
    done = program.box.run(program.box.python, "-c", offer, folder=scratch, **program.surroundings)
    keys = program.box.run("reg", "query", CLASSES, "/s").stdout.decode(errors="replace")
    wanted = [r"Applications\xlbatch.exe\SupportedTypes", rf'"{PROGRAM}" "%1"']
    wanted += [rf"{CLASSES}\{kind}\OpenWithList\xlbatch.exe" for kind in (".xlsx", ".ods", ".csv")]
    lacking = [words for words in wanted if words not in keys]
    first = [kind for kind in (".xlsx", ".ods", ".csv") if _default(program, kind)]
    if lacking or first:
        raise AssertionError(f"Not noted: {lacking}. First for: {first}. {keys}{done.stderr.decode()}")


def _default(program: Program, kind: str) -> bool:
    """Whether a program is noted as the first for a kind of file."""
    said = program.box.run("reg", "query", rf"{CLASSES}\{kind}", "/ve").stdout.decode(errors="replace")
    return "xlbatch" in said.casefold()


def try_window(program: Program, scratch: Path) -> None:
    """The program with a window opens it, whoever starts it, and shows each of its states; pictures are kept."""
    SHOTS.mkdir(parents=True, exist_ok=True)
    for scale in (100, 200):
        dots = str(96 * scale // 100)
        program.box.run(
            "reg", "add", r"HKCU\Control Panel\Desktop", "/v", "LogPixels", "/t", "REG_DWORD", "/d", dots, "/f"
        )
        program.box.end()
        lists = copy_examples(scratch / f"lists at {scale}")
        broken = scratch / f"no list {scale}.xlsx"
        broken.write_bytes(b"no workbook")
        states: tuple[tuple[str, Sequence[Path], str], ...] = (  # and what the window's title is then
            ("start", (), "^xlbatch$"),
            ("progress", lists[:1], "^[2-9][0-9]% "),
            ("results", lists[:2], "^2 lists - "),
            ("failure", (broken,), "^No plan was made"),
        )
        for state, given, title in states:
            with program.start(*given, window=True) as running:
                _wait_for_window(program.box.display, title, running)
                looks = 1 if state == "progress" else MOST_LOOKS
                _drawn(program.box.display, looks).save(SHOTS / f"{state} {scale}.png")
                running.kill()
                program.box.end()
            for plan in (scratch / f"lists at {scale}").glob("* - *"):
                shutil.rmtree(plan) if plan.is_dir() else plan.unlink()


def _drawn(display: str, most_looks: int) -> Image.Image:
    """What the screen shows when nothing on it has moved for a while, or at the last of so many looks."""
    looks: list[Image.Image] = []
    while len(looks) < most_looks and (len(looks) < ALIKE or len({look.tobytes() for look in looks[-ALIKE:]}) > 1):
        time.sleep(PAUSE)
        looks.append(ImageGrab.grab(xdisplay=display))
    return looks[-1]


def _wait_for_window(display: str, title: str, running: "subprocess.Popen[bytes]") -> None:
    """Raises where the program shows none of such a title in good time, or ends before."""
    look = ["xdotool", "search", "--onlyvisible", "--name", title]
    for _ in range(PATIENCE):
        if subprocess.run(look, env=os.environ | {"DISPLAY": display}, capture_output=True, check=False).stdout:
            return
        if running.poll() is not None:
            break
        time.sleep(1)
    raise AssertionError(f"No window was called {title}.")


def try_large(program: Program, scratch: Path) -> None:
    """A large job is written by two processes of the program with the window, and comes out as on Linux."""
    folders = [scratch / name for name in ("large", "large on linux")]
    for folder in folders:
        folder.mkdir()
        (folder / "large.csv").write_text(large_list(), encoding="utf-8")
    by_the_second, until = 0.0, time.monotonic() + PATIENCE
    with program.start("--no-window", "--effort", "0", folders[0] / "large.csv", window=True) as running:
        while running.poll() is None and time.monotonic() < until:
            by_the_second = max(by_the_second, computed(WORKER))
            time.sleep(PAUSE / 10)
        running.kill()
    if running.returncode or by_the_second < 1:
        raise AssertionError(f"Exit code {running.returncode}; a second process computed {by_the_second:.1f} s.")
    program.on_linux("--effort", "0", folders[1] / "large.csv")
    same(*folders)


TRIES = (
    try_examples, try_mistakes, try_names, try_locked, try_long_path, try_kills, try_offered, try_window, try_large,
)  # fmt: skip


def build(box: Machine, source: Path, scratch: Path) -> Path:
    """Has the program built under Windows' Python; its folder, moved to where people might put it."""
    (scratch / "building").mkdir()
    made = box.run(
        box.python, source / "build" / "bundle_pack.py", scratch / "building",
        PYTHONPATH=str(source), PYTHONSAFEPATH="1",
    )  # fmt: skip
    print(made.stdout.decode(), made.stderr.decode() if made.returncode else "", sep="", end="", flush=True)
    if made.returncode:
        raise AssertionError("The program was not built.")
    shutil.move(source / "dist" / "xlbatch", scratch / FOLDER / "xlbatch")
    return scratch / FOLDER / "xlbatch"


@contextmanager
def screen() -> Iterator[str]:
    """A screen in memory; its name."""
    command = ["Xvfb", "-displayfd", "1", "-screen", "0", f"{SCREEN[0]}x{SCREEN[1]}x24"]
    with subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True) as shown:
        assert shown.stdout is not None
        try:
            yield f":{shown.stdout.readline().strip()}"
        finally:
            shown.terminate()


def main(scratch: Path, names: Sequence[str], *, from_source: bool) -> None:
    """All tries, and how long each took. Raises at the first that fails."""
    source = scratch / "source"
    unwanted = shutil.ignore_patterns(".*", "dist", "tests", "__pycache__", "with_mistakes")
    shutil.copytree(ROOT, source, ignore=unwanted)
    (scratch / FOLDER).mkdir()
    with screen() as display:
        box = machine(Path(sys.executable), display)
        began = time.monotonic()
        try:
            program = Program(box, source, None if from_source else build(box, source, scratch))
            print(f"Ready after {time.monotonic() - began:.0f} s.", flush=True)
            for each in [each for each in TRIES if not names or each.__name__ in names]:
                began = time.monotonic()
                each(program, scratch)
                print(f"{time.monotonic() - began:4.0f} s  {each.__doc__}", flush=True)
        finally:
            box.end()


if __name__ == "__main__":
    with tempfile.TemporaryDirectory(prefix="w") as folder:
        names = [word for word in sys.argv[1:] if word != "--source"]
        main(Path(folder), names, from_source="--source" in sys.argv)
