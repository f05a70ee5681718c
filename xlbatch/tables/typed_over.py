"""What a plan wrote on its own sheets, in a few letters a cell, and the cells in which something else stands now.

Only cells are looked at that the program does not read back: what is typed over one of these would be lost."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass

from xlbatch.files.raw import Raw, RawSheet
from xlbatch.problems import Where
from xlbatch.tables.by_place import Place, marks_by_row, other_texts
from xlbatch.tables.cell_marks import ANY, each_mark, mark_of, mark_of_value, plain
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
    "Shopping list": ("Kind", "Item", "Garment", "Size", "Color"),
    "Money": ("Garment no.",),
    "Changes": ("Plan", "Sheet", "Cell", "Whose", "What"),
    "What if": ("Change",),
    "Fonts to choose from": ("Name for the cell Font",),
    **dict.fromkeys(("Job sheet", "Roll layout", "Placement pictures", "Bag tags"), ()),  # forms: no table
}
READ: Mapping[str, tuple[str, ...]] = {  # the columns of these that are read back
    "Proof": ("Checked",),
    "Cut list": ("Cut", "Weeded", "Spoiled"),
    "Press log": ("Pressed", "Peeled", "Result", "By", "Note"),
    "Shopping list": ("Spares", "On hand", "Price", "Ordered", "Arrived", "Note"),
    "Money": ("Price", "Paid", "Paid in Roster", "Told"),
}
KIND, PLACES = "marks", "places"  # how the memory's rows begin for a table, and for what stands elsewhere
UNPACKED = "written"  # as they began when each had a row of its own: headings, or one row's key and marks
MOST_KEYS = 20  # rows of a sheet with another key: more are another table


@dataclass(frozen=True)
class TypedOver:
    """A cell with another text than the plan wrote."""

    sheet: str
    where: Where
    row: str
    heading: str
    text: str


def marked(sheet: str, headings: Sequence[str], rows: Iterable[Sequence[object]]) -> Iterator[tuple[str, ...]]:
    """The rows of the memory for a sheet that is written, its records packed: what its columns are called, then each
    row's key and marks. A value None is blank, one of no plain kind (a formula) anything."""
    watched = [column for column, heading in enumerate(headings) if heading not in READ.get(sheet, ())]
    keys = [headings.index(heading) for heading in WATCHED[sheet]]

    def records() -> Iterator[tuple[str, ...]]:
        yield "", *(headings[column] for column in watched)
        for values in rows:
            if key := _key(plain(values[column]) for column in keys):
                yield key, "".join(mark_of_value(values[column]) for column in watched)

    yield from ((KIND, sheet, *cells) for cells in packed(records()))


def placed(sheet: str, cells: Mapping[Place, object], anything: str) -> Iterator[tuple[str, ...]]:
    """The rows of the memory for what a sheet holds above its table, or a form anywhere. A text with `anything` in it
    may become any other."""
    yield from ((PLACES, sheet, *packed_) for packed_ in packed(marks_by_row(cells, anything)))


def _key(texts: Iterable[str]) -> str:
    return " · ".join(filter(None, texts))


def typed_over(memory: RawSheet, sheets: Mapping[str, RawSheet]) -> Iterator[TypedOver]:
    """The cells typed over, sheet by sheet. `sheets`: those watched, by what they are."""
    tables: dict[str, dict[str, list[str]]] = {}  # by sheet: each row's marks by its key; the headings under ""
    for name, key, *rest in _records(memory, KIND):
        rows = tables.setdefault(name, {})
        rows[key] = [] if key in rows else rest  # two rows that nothing tells apart are not watched
    places: dict[str, dict[int, str]] = {}
    for name, row, marks in _records(memory, PLACES):
        places.setdefault(name, {})[int(row)] = marks
    for name, sheet in sheets.items():
        headings = tables.get(name, {}).pop("", [])
        head, columns = _head(sheet, WATCHED[name], headings)
        if name in places:
            above = {row: cells for row, cells in sheet.rows.items() if row < head}
            for (row_no, column), text in other_texts(above, places[name]):
                yield TypedOver(name, sheet.where(column, row_no), "", "", text)
        if columns:
            marks_of = {key: rest[0] for key, rest in tables[name].items() if rest}
            yield from _in_table(name, sheet, head, columns, marks_of)


def _records(memory: RawSheet, wanted: str) -> Iterator[list[str]]:
    """Of each record the sheet, then what was written for it. What somebody made unreadable is none."""
    for cells in memory.rows.values():
        kind, *texts = [str(cells[no].value) if no in cells else "" for no in range(1, max(cells) + 1)]
        if kind == UNPACKED and wanted == KIND and len(texts) > 1:
            yield texts
        elif kind == wanted:
            with suppress(NotPacked):
                yield from ([texts[0], *map(str, record)] for record in unpacked(texts[1:]) if record)


def _head(sheet: RawSheet, keys: Sequence[str], headings: Sequence[str]) -> tuple[int, dict[str, int]]:
    """The row of a table's headings, and the column of each (0 where it is gone); without a table the row after the
    last, and none."""
    for row, cells in sheet.rows.items() if headings else ():
        titles = {shown_value(cell): column for column, cell in cells.items()}
        if set(keys) <= titles.keys() and len(titles) > len(headings) // 2:
            return row, {heading: titles.get(heading, 0) for heading in headings}
    return max(sheet.rows, default=0) + 1, {}


def _in_table(
    name: str, sheet: RawSheet, head: int, columns: Mapping[str, int], marks_of: dict[str, str]
) -> Iterator[TypedOver]:
    unknown: dict[int, dict[str, str]] = {}  # rows with a key that was not written
    for row, cells in sheet.rows.items():
        if row <= head:
            continue
        texts = {heading: _text(cells.get(column)) for heading, column in columns.items()}
        key = _key(texts[heading] for heading in WATCHED[name])
        if marks := marks_of.pop(key, ""):
            for heading in _others(texts, marks):
                yield TypedOver(name, sheet.where(columns[heading], row), key, heading, texts[heading])
        elif key:
            unknown[row] = texts
    for row, texts in unknown.items() if len(unknown) <= MOST_KEYS else ():
        own = next((key for key, marks in marks_of.items() if _is_row(name, texts, marks)), "")
        for heading in _others(texts, marks_of.pop(own, "")):
            yield TypedOver(name, sheet.where(columns[heading], row), own, heading, texts[heading])


def _text(cell: Raw | None) -> str:
    return plain(cell.value) if cell and not cell.fault else ""


def _others(texts: Mapping[str, str], marks: str) -> Iterator[str]:
    """The headings under which another text stands than was written."""
    for (heading, text), before in zip(texts.items(), each_mark(marks), strict=False):
        if text and before not in (ANY, mark_of(text)):
            yield heading


def _is_row(name: str, texts: Mapping[str, str], marks: str) -> bool:
    """Whether a row is as it was written, but for its key."""
    pairs = zip(texts.items(), each_mark(marks), strict=False)
    return all(before in (ANY, mark_of(text)) for (heading, text), before in pairs if heading not in WATCHED[name])
