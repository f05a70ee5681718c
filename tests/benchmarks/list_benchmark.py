"""How long reading and checking takes, against openpyxl alone, and what becomes of huge or hostile files. Run to see.

Wanted: 10,000 rows read and checked in at most 3 times the time openpyxl needs to load the file; 200,000 formatted
empty rows in at most 2 times; a sheet of a million rows or a zip bomb refused in under 5 s and 500 MB.
"""

import random
import resource
import subprocess
import sys
import tempfile
import time
import zipfile
from collections.abc import Callable
from pathlib import Path

import xlsxwriter
from openpyxl import load_workbook

from xlbatch.check.check import check
from xlbatch.check.progress import up_to_date
from xlbatch.roster.read import Unreadable, read

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
    assert not isinstance(reading, Unreadable), reading
    check(up_to_date(reading.job)[0], frozenset())


def bomb(path: Path, inner: bytes, times: int) -> Path:
    """A small package whose one sheet unpacks to `times` times `inner`."""
    people(path, 1)
    with zipfile.ZipFile(path) as old:
        parts = {part: old.read(part) for part in old.namelist()}
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as new:
        for part, data in parts.items():
            with new.open(part, "w", force_zip64=True) as file:
                if part.endswith("sheet1.xml"):
                    for _ in range(times):
                        file.write(inner)
                else:
                    file.write(data)
    return path


def apart(path: Path) -> str:
    """Reads a file in a process of its own: its time, its most memory, and its sentence."""
    start = time.perf_counter()
    done = subprocess.run([sys.executable, __file__, str(path)], capture_output=True, text=True, check=True)
    return f"{time.perf_counter() - start:.1f} s with start-up, {done.stdout.strip()}"


def one(path: Path) -> None:
    reading = read(path)
    memory = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    print(f"{memory:.0f} MB: {reading.sentence if isinstance(reading, Unreadable) else 'read'}")


def main(folder: Path) -> None:
    """Prints the ratios and the refusals."""
    for rows, formatted in ((10_000, 0), (100, 200_000)):
        path = people(folder / f"{rows} and {formatted}.xlsx", rows, formatted)
        alone, whole = best(load_alone, path), best(read_and_check, path)
        print(f"{rows} rows, {formatted} empty: openpyxl {alone:.2f} s, all of it {whole:.2f} s: {whole / alone:.2f}")
    print("a million rows:", apart(people(folder / "million.xlsx", 1_000_000)))
    print("a bomb of 10 GB:", apart(bomb(folder / "bomb.xlsx", b"0" * 10_000_000, 1000)))
    rows_ = b'<row r="1"><c r="A1"><v>1</v></c></row>' * 100_000
    print("99 MB of cells:", apart(bomb(folder / "cells.xlsx", rows_, 25)))


if __name__ == "__main__":
    if len(sys.argv) > 1:
        one(Path(sys.argv[1]))
    else:
        with tempfile.TemporaryDirectory() as made:
            main(Path(made))
