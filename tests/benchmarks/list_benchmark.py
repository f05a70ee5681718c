"""How long reading and checking takes, against openpyxl alone, and what becomes of huge or hostile files. Run it
with -m from the top folder.

Wanted: 10,000 rows read and checked in at most 3 times the time openpyxl needs to load the file; 200,000 formatted
empty rows in at most 2 times; a sheet of a million rows or a zip bomb refused in under 5 s and 500 MB.
"""

import random
import subprocess
import sys
import tempfile
import time
import zipfile
from collections.abc import Callable, Iterable, Iterator
from pathlib import Path

import xlsxwriter
from openpyxl import load_workbook

from xlbatch.check.check import check
from xlbatch.check.progress import up_to_date
from xlbatch.roster.read import UnreadableFile, read

HEAD = [
    "Who",
    "Group",
    "Garment",
    "Size",
    "Color",
    "Design",
    "Print name",
    "Number",
    "How many",
    "Note",
    "Paid",
    "Status",
]
SOUNDS = ["ba", "ko", "ri", "mu", "ten", "zal", "pe", "dro", "shi", "lan", "or", "ek", "vi", "no", "ta", "gre"]
TIMES = 3


def name(dice: random.Random) -> str:
    return "".join(dice.choices(SOUNDS, k=3)).capitalize()


def people(path: Path, rows: int, formatted: int = 0) -> Path:
    """A list of `rows` people, then `formatted` rows of twelve cells with a border and nothing in them."""
    dice = random.Random(1)
    with xlsxwriter.Workbook(path, {"constant_memory": True}) as book:
        sheet, border = book.add_worksheet("Roster"), book.add_format({"border": 1})
        sheet.write_row(0, 0, HEAD)
        for row in range(1, rows + 1):
            size, color = dice.choice(["S", "M", "YL", "2T", "Ladies M"]), dice.choice(["navy", "red", "white"])
            values = [f"{name(dice)} {name(dice)}", f"Group {row // 20}", "Crew-neck tee", size, color, "Name"]
            sheet.write_row(row, 0, [*values, name(dice), row % 100, 1, f"note {row}", 15, ""])
        for row in range(rows + 1, rows + formatted + 1):
            for column in range(len(HEAD)):
                sheet.write_blank(row, column, None, border)
    return path


def best(work: Callable[[Path], object], path: Path) -> float:
    """The shortest of a few runs (s): the machine may be busy with other things."""
    return min(_seconds(work, path) for _ in range(TIMES))


def _seconds(work: Callable[[Path], object], path: Path) -> float:
    start = time.perf_counter()
    work(path)
    return time.perf_counter() - start


def load_alone(path: Path) -> None:
    load_workbook(path, data_only=True)


def read_and_check(path: Path) -> None:
    reading = read(path)
    assert not isinstance(reading, UnreadableFile), reading
    check(up_to_date(reading.job)[0], frozenset())


def package(path: Path, sheet: Iterable[bytes]) -> Path:
    """A list whose one sheet is `sheet`, packed as it comes."""
    people(path, 1)
    with zipfile.ZipFile(path) as old:
        parts = {part: old.read(part) for part in old.namelist()}
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as new:
        for part, data in parts.items():
            with new.open(part, "w", force_zip64=True) as file:
                file.writelines(sheet if part.endswith("sheet1.xml") else [data])
    return path


def cells(rows: int, across: int, letters: int) -> Iterator[bytes]:
    """A sound sheet of so many rows, each of so many cells, of text of so many letters."""
    yield b'<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>'
    filled = b'<c t="inlineStr"><is><t>%s</t></is></c>' % (b"x" * letters) * across
    for row in range(1, rows + 1):
        yield b'<row r="%d">%s</row>' % (row, filled)
    yield b"</sheetData></worksheet>"


def refused(path: Path) -> tuple[float, float, str]:
    """Reads a file in a process of its own: its time with start-up (s), its most memory (MB), and its sentence."""
    start = time.perf_counter()
    done = subprocess.run(
        [sys.executable, "-m", "tests.benchmarks.list_benchmark", str(path)], capture_output=True, text=True, check=True
    )
    memory, _, said = done.stdout.strip().partition(" ")
    return time.perf_counter() - start, float(memory), said


def one(path: Path) -> None:
    """In a process of its own: the most memory (MB) reading takes, and what is said."""
    reading = read(path)
    status = Path("/proc/self/status").read_text(encoding="ascii")  # getrusage counts the parent's memory too
    kilobytes = next(int(line.split()[1]) for line in status.splitlines() if line.startswith("VmHWM"))
    print(f"{kilobytes / 1024:.0f} {reading.sentence if isinstance(reading, UnreadableFile) else 'read'}")


def main(folder: Path) -> bool:
    """Prints the ratios and the refusals; whether all are as wanted."""
    good = True
    for rows, formatted, most in ((10_000, 0, 3), (100, 200_000, 2)):
        path = people(folder / f"{rows} and {formatted}.xlsx", rows, formatted)
        ratio = best(read_and_check, path) / best(load_alone, path)
        good &= ratio <= most
        print(f"{rows} rows, {formatted} empty: {ratio:.2f} times openpyxl alone (wanted: {most})")
    hostile = {
        "a million rows": cells(1_000_000, 5, 5),
        "two million long cells": cells(100_000, 20, 40),
        "2 GB of zeros": [b"0" * 10_000_000] * 200,
    }
    for what, sheet in hostile.items():
        path = package(folder / f"{what}.xlsx", sheet)
        seconds, memory, said = refused(path)
        good &= seconds < 5 and memory < 500 and said != "read"
        print(f"{what}: {seconds:.1f} s, {memory:.0f} MB (wanted: 5 s, 500 MB): {said}")
    return good


if __name__ == "__main__":
    if len(sys.argv) > 1:
        one(Path(sys.argv[1]))
    else:
        with tempfile.TemporaryDirectory() as made:
            sys.exit(not main(Path(made)))
