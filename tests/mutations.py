"""Workbooks spoiled at random, and what must hold of each: a plain exit, and no row lost without a word."""

import io
import random
import zipfile
from collections.abc import Callable, Iterable, Iterator, Mapping
from datetime import date, datetime
from pathlib import Path

from openpyxl import Workbook
from openpyxl.utils.cell import coordinate_to_tuple
from openpyxl.worksheet.worksheet import Worksheet

from xlbatch.files.book import open_book
from xlbatch.files.raw import Raw, RawSheet
from xlbatch.job.job import Job
from xlbatch.plan import Plan
from xlbatch.problems import Where
from xlbatch.roster.read import Reading, UnreadableFile, read
from xlbatch.run import Options, make_plan, run
from xlbatch.tables.input_tables import IGNORED
from xlbatch.tables.roster_columns import decide

RUN_AT = datetime(2026, 5, 4, 9, 30)
ODD = (
    "", " ", "M", "YL", "10-12", "TBD", "Total", "Who", "Size", "x", "0", "-1", "1e99", "=1+1", "@a", "#REF!", "#N/A",
    "Ana", "MarÃ­a", "Аnna", "\u200b", "a\u00a0b", "🎈", "שלום", "x" * 300, "27 cm", "330 °F", "yes", "cancelled",
    "done", "redo film",
    0, 1, 7, -3, 2.5, 1e99, 10**15, True, False, None, date(2026, 3, 5), datetime(1900, 1, 1),
)  # fmt: skip
INPUT = ("Job", "Designs", "Garments", "Film", "Press", "Positions", "Work times", "Press log")


def base_book() -> Workbook:
    """A small job with every input sheet that people fill in."""
    book = Workbook()
    del book["Sheet"]
    sheets: dict[str, list[list[object]]] = {
        "Roster": [
            ["Harbor run"],
            ["Who", "Group", "Garment", "Size", "Color", "Number", "How many", "Paid"],
            ["Ana Novak", "Novak", "Crew-neck tee", "M", "white", "07", 1, "yes"],
            ["Ivo Novak", "Novak", "V-neck tee", "XL", "red", 12, 2, 15],
            ["Mei Lin", "Lin", "", "Youth M", "", 3, "", ""],
            ["Bo Lin", "Lin", "", "2T", "gray", "", "", "no"],
            ["Cy Okafor", "", "Crew-neck tee", "Ladies L", "white", 8, 1, ""],
        ],
        "Job": [
            ["Setting", "Value"],
            ["Job name", "Harbor run"],
            ["Shirts per strip", 3],
            ["Gap between decals", "1/4 in"],
        ],
        "Designs": [
            ["Design", "Decal", "What", "Film", "Position", "Width", "Height"],
            ["Name", "Badge", "artwork", "Black smooth", "full front", "6 in", "4 in"],
            ["Name", "Name", "print name", "Black smooth", "upper back", "", "1 in"],
        ],
        "Garments": [["Garment", "Size", "Colors", "Price"], ["Crew-neck tee", "M", "white; red", 4.2]],
        "Film": [["Film", "Kind", "Color", "Rolls sold"], ["Black smooth", "smooth", "black", "5 yd = 21.00"]],
    }
    for name, rows in sheets.items():
        sheet = book.create_sheet(name)
        for row in rows:
            sheet.append(row)
    return book


def spoiled(seed: int) -> tuple[str, bytes]:
    """The kind of spoiling, and the workbook spoiled by it; the same for the same seed."""
    dice = random.Random(seed)
    kind = dice.choice(("cells", "cells", "structure", "structure", "bytes"))
    book = base_book()
    for _ in range(dice.randint(1, 4)):
        if kind == "structure":
            dice.choice(STRUCTURE)(dice, book)
        else:
            spoil_cell(dice, book)
    file = io.BytesIO()
    book.save(file)
    return kind, spoil_bytes(dice, file.getvalue()) if kind == "bytes" else file.getvalue()


def spoil_cell(dice: random.Random, book: Workbook) -> None:
    sheet = any_sheet(dice, book)
    cell = sheet.cell(dice.randint(1, sheet.max_row + 1), dice.randint(1, sheet.max_column + 1))
    if type(cell).__name__ != "MergedCell":
        cell.value = dice.choice(ODD)


def any_sheet(dice: random.Random, book: Workbook) -> Worksheet:
    """The roster half of the time."""
    return dice.choice([book.worksheets[0], dice.choice(book.worksheets)])


def delete_row(dice: random.Random, book: Workbook) -> None:
    sheet = any_sheet(dice, book)
    sheet.delete_rows(dice.randint(1, sheet.max_row))


def insert_rows(dice: random.Random, book: Workbook) -> None:
    sheet = any_sheet(dice, book)
    sheet.insert_rows(dice.randint(1, sheet.max_row + 1), dice.randint(1, 3))


def move_column(dice: random.Random, book: Workbook) -> None:
    sheet = any_sheet(dice, book)
    sheet.insert_cols(dice.randint(1, sheet.max_column + 1))


def delete_column(dice: random.Random, book: Workbook) -> None:
    sheet = any_sheet(dice, book)
    sheet.delete_cols(dice.randint(1, sheet.max_column))


def repeat_row(dice: random.Random, book: Workbook) -> None:
    sheet = any_sheet(dice, book)
    at = dice.randint(1, sheet.max_row)
    sheet.append([cell.value for cell in sheet[at]])


def merge(dice: random.Random, book: Workbook) -> None:
    sheet = any_sheet(dice, book)
    row, column = dice.randint(1, sheet.max_row), dice.randint(1, sheet.max_column)
    sheet.merge_cells(
        start_row=row, start_column=column, end_row=row + dice.randint(0, 2), end_column=column + dice.randint(0, 2)
    )


def hide(dice: random.Random, book: Workbook) -> None:
    sheet = any_sheet(dice, book)
    sheet.row_dimensions[dice.randint(1, sheet.max_row)].hidden = True


def rename(dice: random.Random, book: Workbook) -> None:
    any_sheet(dice, book).title = dice.choice(("Sheet1", "Team A", "Roster 2", "Proof", "JOB", "x" * 31))


def copy(dice: random.Random, book: Workbook) -> None:
    book.copy_worksheet(any_sheet(dice, book))


def list_beside(dice: random.Random, book: Workbook) -> None:
    sheet = book.worksheets[0]
    at = sheet.max_column + dice.randint(1, 3)
    for row, values in enumerate((["Who", "Size"], ["Eva", "M"], ["Zoe", "?"]), 2):
        for column, value in enumerate(values, at):
            sheet.cell(row, column).value = value


def list_below(dice: random.Random, book: Workbook) -> None:
    sheet = book.worksheets[0]
    for values in (
        [],
        ["Helpers"],
        dice.choice((["Size", "Name"], ["Who", "Size", "Note"])),
        ["L", "M", "x"],
        ["Total", 3],
    ):
        sheet.append(values)


STRUCTURE: tuple[Callable[[random.Random, Workbook], None], ...] = (
    delete_row, insert_rows, move_column, delete_column, repeat_row, merge, hide, rename, copy, list_beside, list_below,
)  # fmt: skip


def spoil_bytes(dice: random.Random, data: bytes) -> bytes:
    """A byte changed, the end cut off, or a part of the package left out or changed."""
    way = dice.randint(0, 3)
    at = dice.randrange(len(data))
    if way == 0:
        return data[:at] + bytes([dice.randrange(256)]) + data[at + 1 :]
    if way == 1:
        return data[:at]
    file = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(data)) as old, zipfile.ZipFile(file, "w") as new:
        chosen = dice.choice(old.namelist())
        for name in old.namelist():
            part = old.read(name)
            if name == chosen:
                spot = dice.randrange(max(len(part), 1))
                part = part[:spot] + dice.choice((b"", b"<", b"x", b"&", b"\0", b"9999999")) + part[spot + 1 :]
            if name != chosen or way == 2:
                new.writestr(name, part)
    return file.getvalue()


def faults(seed: int, folder: Path, *, write: bool = False) -> Iterator[str]:
    """What does not hold of the workbook spoiled by `seed`; with `write` the plan is written too."""
    kind, data = spoiled(seed)
    yield from faults_of(seed, kind, data, folder, write=write, rows_of=_by_the_program)


def _by_the_program(path: Path) -> Iterable[RawSheet]:
    sheets = open_book(path)
    assert not isinstance(sheets, UnreadableFile)
    return sheets


def faults_of(
    seed: int, kind: str, data: bytes, folder: Path, *, write: bool, rows_of: Callable[[Path], Iterable[RawSheet]]
) -> Iterator[str]:
    """What does not hold of a spoiled workbook; `rows_of` gives the sheets whose rows must not be lost."""
    path = folder / f"list {seed}.xlsx"
    path.write_bytes(data)
    if write:
        outcome = run(path, Options(effort=0), lambda _stage: None, RUN_AT)
        if outcome.code not in (0, 1, 2, 3):
            yield f"exit code {outcome.code}"
        return
    reading = read(path)
    if isinstance(reading, UnreadableFile):
        if kind != "bytes":
            yield f"refused: {reading.sentence}"
        return
    plan = make_plan(reading, 0, lambda _stage: None, RUN_AT)
    yield from lost_garments(reading.job, plan)
    yield from lost_rows(rows_of(path), reading)


def lost_garments(job: Job, plan: Plan) -> Iterator[str]:
    """Garments of the job that are neither planned nor held back, done or cancelled."""
    there = {garment.no for garment in plan.garments} | {row.no for row in plan.held}
    for row in plan.job.roster:
        if row.no not in there and row.status not in ("done", "cancelled"):
            yield f"garment {row.no} of row {row.source.row} is nowhere"
    if len(job.roster) != len(plan.job.roster):
        yield "garments lost"


def lost_rows(sheets: Iterable[RawSheet], reading: Reading) -> Iterator[str]:
    """Rows of the list's sheets that became no garment and that no problem names."""
    sideways = {each.where.sheet for each in reading.problems if each.code == "list-sideways"}

    def row_of(where: Where) -> int:
        column, row = _column_and_row(where)
        return column if where.sheet in sideways else row

    told = {(where.sheet, row_of(where)) for where in (each.where for each in reading.problems) if where.cell}
    whole = {each.where.sheet for each in reading.problems if each.code in ("sheet-unknown", "sheet-second")}
    made = {(row.source.sheet, row.source.sheet_row) for row in reading.job.roster}
    heads = {(each.sheet, row_of(Where(each.sheet, each.cell))) for each in reading.job.headings}
    below = {each.where.sheet: row_of(each.where) for each in reading.problems if each.code == "table-aside"}
    lists = {sheet for sheet, _ in made} | {sheet for sheet, _ in heads if sheet not in meant_otherwise(reading)}
    for sheet in (turned(each) if each.name in sideways else each for each in sheets):
        if sheet.name in lists and sheet.name not in whole and sheet.name.strip().casefold() not in IGNORED:
            for row in data_rows(sheet, {row for name, row in heads if name == sheet.name}):
                named = {(sheet.name, row)} & (told | made)
                if not named and row < below.get(sheet.name, 2**30):
                    yield f"row {row} of {sheet.name} is lost: {[cell.value for cell in sheet.rows[row].values()]}"


def meant_otherwise(reading: Reading) -> set[str]:
    """The sheets that are no lists of people."""
    job = reading.job
    others = [each.source.sheet for each in job.designs] + [each.source.sheet for each in job.blanks]
    others += [each.source.sheet for each in job.films] + [each.source.sheet for each in job.presses]
    return set(others) | set(INPUT) | {where.sheet for where in job.setting_cells.values()}


def data_rows(sheet: RawSheet, heads: set[int]) -> Iterator[int]:
    """The filled rows that are no headings, nor titles of one cell above them."""
    titles = [sheet.rows[row] for row in heads if row in sheet.rows]
    for row, cells in sheet.rows.items():
        title = row < min(heads, default=0) and (len(cells) < 2 or has_heading(cells))
        again = any(all(at in head and head[at].value == cell.value for at, cell in cells.items()) for head in titles)
        if row not in heads and not title and not again:
            yield row


def has_heading(cells: Mapping[int, Raw]) -> bool:
    """Whether a heading stands in a row: such a row above the list's headings belongs to them."""
    return bool(decide({at: str(cell.value) for at, cell in cells.items()}, ()).matches)


def turned(sheet: RawSheet) -> RawSheet:
    """The sheet with its columns as rows."""
    rows: dict[int, dict[int, Raw]] = {}
    for row, cells in sheet.rows.items():
        for at, cell in cells.items():
            rows.setdefault(at, {})[row] = cell
    return RawSheet(sheet.name, dict(sorted(rows.items())))


def _column_and_row(where: Where) -> tuple[int, int]:
    """The column and row of a cell reference, 0 where it names no cell."""
    row, column = coordinate_to_tuple(where.cell) if where.cell else (0, 0)
    return column, row
