"""What a plan wrote on its own sheets, in a few letters a cell, and the cells in which something else stands now.

Only cells are looked at that the program does not read back: what is typed over one of these would be lost."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass
from functools import lru_cache
from zlib import crc32

from xlbatch.files.raw import Raw, RawSheet
from xlbatch.problems import Where
from xlbatch.tables.cells import shown_value
from xlbatch.tables.packed import NotPacked, packed, unpacked

WATCHED: Mapping[str, tuple[str, ...]] = {  # what tells a sheet's rows apart
    "Proof": ("Garment no.",),
    "Film requirement": ("Film",),
    "Cut list": ("Film", "Run", "Strip"),
    "Placement": ("Garment no.", "Decal"),
    "Press log": ("Decal",),
    "Time plan": ("Stage", "Work", "Batch", "Person"),
    "Runs": ("Run",),
    "Decals": ("Decal",),
}
READ: Mapping[str, tuple[str, ...]] = {  # the columns of these that are read back
    "Proof": ("Checked",),
    "Cut list": ("Cut", "Weeded", "Spoiled"),
    "Press log": ("Pressed", "Peeled", "Result", "By", "Note"),
}
KIND = "marks"  # how these rows of the memory begin
UNPACKED = "written"  # as they began when each had a row of its own: headings, or one row's key and marks
MARK = 3  # letters a cell
MOST_KEYS = 20  # rows of a sheet with another key: more are another table
BLANK, ANY = "-" * MARK, "=" * MARK  # marks of a blank cell, and of one that may hold anything
_LETTERS = "0123456789abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ+/"


@dataclass(frozen=True)
class TypedOver:
    """A cell with another text than the plan wrote."""

    sheet: str
    where: Where
    row: str
    heading: str
    text: str


@lru_cache(maxsize=20_000)  # few texts stand in many cells
def mark_of(text: str) -> str:
    """A few letters that stand for a text: one in 262,144 others has the same."""
    number = crc32(text.encode())
    return "".join(_LETTERS[number >> shift & 63] for shift in (0, 6, 12)) if text else BLANK


@lru_cache(maxsize=20_000, typed=True)
def plain(value: object) -> str:
    """A cell's text, however the program that saved it keeps numbers."""
    number = isinstance(value, int | float) and not isinstance(value, bool)
    return f"{float(value):.6g}" if number else shown_value(Raw(value))  # type: ignore[arg-type]


def marked(sheet: str, headings: Sequence[str], rows: Iterable[Sequence[object]]) -> Iterator[tuple[str, ...]]:
    """The rows of the memory for a sheet that is written, its records packed: what its columns are called, then each
    row's key and marks. A value None is blank, one of no plain kind (a formula) anything."""
    watched = [column for column, heading in enumerate(headings) if heading not in READ.get(sheet, ())]
    keys = [headings.index(heading) for heading in WATCHED[sheet]]

    def records() -> Iterator[tuple[str, ...]]:
        yield "", *(headings[column] for column in watched)
        for values in rows:
            if key := _key(plain(values[column]) for column in keys):
                yield key, "".join(_mark(values[column]) for column in watched)

    yield from ((KIND, sheet, *cells) for cells in packed(records()))


def _mark(value: object) -> str:
    return _of_value(value) if value is None or isinstance(value, str | int | float) else ANY


@lru_cache(maxsize=1 << 14, typed=True)  # sheets say the same again and again
def _of_value(value: object) -> str:
    return mark_of(plain(value))


def _key(texts: Iterable[str]) -> str:
    return " · ".join(filter(None, texts))


def typed_over(memory: RawSheet, sheets: Mapping[str, RawSheet]) -> Iterator[TypedOver]:
    """The cells typed over, sheet by sheet. `sheets`: those watched, by what they are."""
    headings: dict[str, list[str]] = {}
    written: dict[tuple[str, str], str] = {}
    for sheet_name, key, *rest in _records(memory):
        if key and rest:
            written[sheet_name, key] = rest[0]
        elif not key:
            headings[sheet_name] = rest
    for name, sheet in sheets.items():
        if name in headings:
            yield from _on_sheet(name, sheet, headings[name], written)


def _records(memory: RawSheet) -> Iterator[list[str]]:
    """Of each record the sheet, then what was written for it. What somebody made unreadable is none."""
    for cells in memory.rows.values():
        kind, *texts = [str(cells[no].value) if no in cells else "" for no in range(1, max(cells) + 1)]
        if kind == UNPACKED and len(texts) > 1:
            yield texts
        elif kind == KIND:
            with suppress(NotPacked):
                yield from ([texts[0], *map(str, record)] for record in unpacked(texts[1:]) if record)


def _on_sheet(
    name: str, sheet: RawSheet, headings: Sequence[str], written: Mapping[tuple[str, str], str]
) -> Iterator[TypedOver]:
    marks_of = {key: marks for (sheet_name, key), marks in written.items() if sheet_name == name}
    columns: dict[str, int] = {}
    unknown: dict[int, dict[str, str]] = {}  # rows with a key that was not written
    for row, cells in sheet.rows.items():
        if not columns:
            titles = {shown_value(cell): column for column, cell in cells.items()}
            columns = titles if set(WATCHED[name]) <= titles.keys() and len(titles) > len(headings) // 2 else {}
            continue
        texts = {head: _text(cells.get(columns[head])) for head in headings if head in columns}
        key = _key(texts[head] for head in WATCHED[name])
        if marks := marks_of.pop(key, ""):
            for head in _others(headings, texts, marks):
                yield TypedOver(name, sheet.where(columns[head], row), key, head, texts[head])
        elif key:
            unknown[row] = texts
    for row, texts in unknown.items() if len(unknown) <= MOST_KEYS else ():
        own = next((key for key, marks in marks_of.items() if _is_row(name, headings, texts, marks)), "")
        for head in _others(headings, texts, marks_of.pop(own, "")):
            yield TypedOver(name, sheet.where(columns[head], row), own, head, texts[head])


def _text(cell: Raw | None) -> str:
    return plain(cell.value) if cell and not cell.fault else ""


def _others(headings: Sequence[str], texts: Mapping[str, str], marks: str) -> Iterator[str]:
    """The headings under which another text stands than was written."""
    for head, before in zip(headings, _each_mark(marks), strict=False):
        if texts.get(head) and before not in (ANY, mark_of(texts[head])):
            yield head


def _is_row(name: str, headings: Sequence[str], texts: Mapping[str, str], marks: str) -> bool:
    """Whether a row is as it was written, but for its key."""
    pairs = zip(headings, _each_mark(marks), strict=False)
    return all(before in (ANY, mark_of(texts.get(head, ""))) for head, before in pairs if head not in WATCHED[name])


def _each_mark(marks: str) -> Iterator[str]:
    return (marks[begins : begins + MARK] for begins in range(0, len(marks), MARK))
