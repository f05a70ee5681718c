"""Spoils lists and drawings at random, and plans them: python -m tests.fuzz [KIND [FIRST [CASES]]].

A list may be refused or held back, in plain sentences; it may never meet a fault of ours, be changed, or leave anything
half-written. Each case is made of its number alone, so that one that fails can be made again: `python -m tests.fuzz
cells 417 1`. Without arguments: some hundred cases of each kind, a few minutes.
"""

import io
import re
import shutil
import sys
import tempfile
import time
import zipfile
from collections.abc import Callable, Iterator, Mapping
from datetime import datetime
from pathlib import Path
from random import Random

from openpyxl import Workbook, load_workbook

from xlbatch.resources import examples
from xlbatch.run import Options, Outcome, run

SEEDS = examples() / "with_mistakes"
FORMER_PLANS = Path(__file__).parent / "data" / "first_edition"
NOW = datetime(2026, 1, 1)
MOST = 500_000  # bytes of a spoiled part: more is cut off
SLOW = 60.0  # CPU seconds that no small list may take
CASES = {"bytes": 400, "parts": 200, "cells": 60, "drawings": 60}

# fmt: off
TEXTS = (
    "", " ", "\u00a0", "0", "-1", "1e400", "9" * 400, "9" * 5000, "nan", "inf", "1/0", "½", "1.5.5", "٣", "²",
    "=1+1", "+x", "@SUM(A1)", "-", "--", "a\nb", "_x000D_", "\u202eabc\u202c", "\ufeff", "\ud7ff", "\U0010ffff",
    "\N{BALLOON}" * 61, "e" + "\u0301" * 50, "x" * 33_000, "a/b\\c:d*e?f", "../..", "'", '"', "<svg>", "&amp;",
    "M", "S-XL", "2 x L", "Youth M", "3XL (loose)", "99 x L", "M" * 300, "10-12", "12/2", "1-Jan", "31.12.9999",
    "Who", "Size", "How many", "Total", "yes", "no", "same", "done", "cancelled", "#N/A", "#REF!", "TRUE", "red",
    "12 in", "0 mm", "-3 cm", "1e9 ft", "1/3 yd", "400 °F", "-500 °C", "1,2,3", "1=2;3=4", "10+ = 5", "25:61",
)
VALUES = (
    *TEXTS, None, True, 0, -1, 7, 1.5, 1e-9, 1e15, 1e300, datetime(1900, 1, 1), datetime(9999, 12, 31, 23, 59),
)
ATTRIBUTES = ("", "0", "-1", "99999999999", "nan", "1e999", "A1:A0", "XFD1048576", "ZZZZ9", "url(#a)", "x" * 999)
# fmt: on


def spoiled_bytes(random: Random, data: bytes) -> bytes:
    """A file with some of its bytes changed, left out, doubled, or with its end cut off."""
    spoiled = bytearray(data)
    for _ in range(random.choice((1, 1, 3, 20))):
        start = random.randrange(len(spoiled) + 1)
        end = min(len(spoiled), start + random.choice((1, 1, 2, 16, 200)))
        spoiled[start:end] = random.choice(
            (b"", random.randbytes(end - start), bytes(end - start), bytes(spoiled[start:end]) * 2)
        )
    return bytes(spoiled[: random.randrange(len(spoiled) + 1)] if random.random() < 0.2 else spoiled)


def spoiled_xml(random: Random, text: str) -> str:
    """XML that is mostly still well formed: other attributes and texts, elements left out, doubled or moved."""
    for _ in range(random.choice((1, 1, 2, 5))):
        pattern, others = random.choice(((r'="[^"]*"', ATTRIBUTES), (r">[^<>]+<", TEXTS), (r"<(\w+:?\w*)[^<>]*/>", ())))
        places = list(re.finditer(pattern, text))
        if not places:
            continue
        place = random.choice(places)
        if others:
            word = escaped(random.choice(others))
            new = f'="{word}"' if others is ATTRIBUTES else f">{word}<"
        else:
            new = random.choice(("", place[0] * 2, random.choice(places)[0]))
        text = (text[: place.start()] + new + text[place.end() :])[:MOST]
    return text


def escaped(text: str) -> str:
    clean = "".join(sign for sign in text if sign >= " ")
    return clean.replace("&", "&amp;").replace("<", "&lt;").replace('"', "&quot;")


def spoiled_parts(random: Random, data: bytes) -> bytes:
    """A workbook of which one part is spoiled or lacks."""
    file = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(data)) as old, zipfile.ZipFile(file, "w", zipfile.ZIP_DEFLATED) as new:
        names = [name for name in old.namelist() if name.endswith((".xml", ".rels"))]
        victims = random.sample(names, min(len(names), random.choice((1, 1, 2))))
        for name in old.namelist():
            part = old.read(name)
            if name not in victims:
                new.writestr(name, part)
            elif random.random() > 0.1:
                text = spoiled_xml(random, part.decode("utf-8", "replace"))
                new.writestr(name, spoiled_bytes(random, part) if random.random() < 0.1 else text.encode())
    return file.getvalue()


def spoiled_cells(random: Random, data: bytes) -> bytes:
    """A workbook with other values in some cells, or rows and columns moved."""
    book: Workbook = load_workbook(io.BytesIO(data))
    for _ in range(random.choice((1, 3, 10))):
        sheet = random.choice(book.worksheets)
        row, column = random.randint(1, sheet.max_row + 1), random.randint(1, sheet.max_column + 1)
        match random.random():
            case chance if chance < 0.9:
                value = random.choice(VALUES)
                cell = sheet.cell(row, column)
                if hasattr(cell, "column_letter"):  # not within merged cells
                    cell.value = "".join(filter(str.isprintable, value)) if isinstance(value, str) else value
            case chance if chance < 0.95:
                sheet.delete_rows(row)
            case _:
                sheet.delete_cols(column)
    file = io.BytesIO()
    book.save(file)
    return file.getvalue()


def cases(kind: str, random: Random, folder: Path) -> Path:
    """Makes one case in `folder`; the list to plan."""
    books = [*sorted(SEEDS.glob("*.xlsx")), *sorted(FORMER_PLANS.glob("*.xlsx"))]
    texts = sorted(SEEDS.glob("*.csv"))
    if kind == "drawings":
        return _with_drawing(random, folder)
    seed = random.choice([*books, *texts, *texts] if kind == "bytes" else books)
    for drawing in SEEDS.glob("*.svg"):
        shutil.copy(drawing, folder)
    path = folder / f"list{seed.suffix}"
    path.write_bytes(SPOILED[kind](random, seed.read_bytes()))
    return path


def _with_drawing(random: Random, folder: Path) -> Path:
    drawing = random.choice([*sorted(SEEDS.glob("*.svg")), *sorted(examples().glob("*.svg"))])
    text = spoiled_xml(random, drawing.read_text(encoding="utf-8"))
    data = text.encode() if random.random() < 0.8 else spoiled_bytes(random, text.encode())
    (folder / "drawing.svg").write_bytes(data)
    book = Workbook()
    people = book.active
    assert people is not None
    people.title = "Roster"
    for row in (["Who", "Size", "Design"], ["Ana", "M", "Logo"], ["Ivo", "Youth L", "Logo"]):
        people.append(row)
    designs = book.create_sheet("Designs")
    designs.append(["Design", "Decal", "What", "Artwork", "Film", "Position", "Height"])
    designs.append(["Logo", "Picture", "artwork", "drawing.svg", "Black smooth", "full front", "4 in"])
    book.save(folder / "list.xlsx")
    return folder / "list.xlsx"


SPOILED: Mapping[str, Callable[[Random, bytes], bytes]] = {
    "bytes": spoiled_bytes,
    "parts": spoiled_parts,
    "cells": spoiled_cells,
}


def wrongs(kind: str, number: int) -> Iterator[str]:
    """What is wrong with how a case ended, in words."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        path = cases(kind, Random(f"{kind} {number}"), folder)
        before = {file: file.read_bytes() for file in folder.iterdir()}
        began = time.process_time()
        try:
            outcome = run(path, Options(effort=0, check_only=number % 4 == 0), lambda _step: None, NOW)
        except Exception as fault:  # whatever it is, it is a fault of ours
            places = fault.__traceback__
            while places and places.tb_next:
                places = places.tb_next
            where = f"{places.tb_frame.f_code.co_filename}:{places.tb_lineno}" if places else ""
            yield f"{type(fault).__name__}: {str(fault)[:200]} at {where}"
            return
        if time.process_time() - began > SLOW:
            yield f"took {time.process_time() - began:.0f} s"
        yield from _wrong_words(outcome)
        if any(file.read_bytes() != data for file, data in before.items()):
            yield "changed what was given"
        written = {file.name for file in folder.iterdir()} - {file.name for file in before}
        parts = [part for part in (outcome.written, outcome.to_print, outcome.cut_files) if part]
        if written != {part.name for part in parts}:
            yield f"left {sorted(written)}"
        if outcome.written:
            load_workbook(outcome.written, read_only=True).close()


def _wrong_words(outcome: Outcome) -> Iterator[str]:
    sentences = [outcome.message, *(problem.sentence for problem in outcome.problems)]
    for sentence in sentences:
        if re.search(r"Errno|Traceback|\b(?:Value|Type|Key|Index)Error\b|object at 0x", sentence):
            yield f"said “{sentence[:200]}”"
    if outcome.code not in (0, 1, 2, 3):
        yield f"ended with {outcome.code}"


def main(kind: str = "", first: str = "0", many: str = "") -> int:
    """Runs the cases, and gives 1 where any went wrong."""
    failed = 0
    for each in [kind] if kind else CASES:
        began, count = time.process_time(), int(many or CASES[each])
        for number in range(int(first), int(first) + count):
            for wrong in wrongs(each, number):
                failed += 1
                print(f"{each} {number}: {wrong}", flush=True)
        print(f"{count} cases of {each}: {time.process_time() - began:.0f} s", flush=True)
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
