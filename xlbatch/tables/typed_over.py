"""What a plan wrote on its own sheets, in a few letters a cell, and the cells in which something else stands now.

Only cells are looked at that the program does not read back: what is typed over one of these would be lost."""

from collections.abc import Container, Iterable, Iterator, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass

from xlbatch.files.raw import Raw, RawSheet
from xlbatch.problems import Where
from xlbatch.tables.by_place import Place, marks_by_row, other_texts
from xlbatch.tables.cell_marks import each_mark, is_other, mark_of_value, plain
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
KIND, PLACES, AMONG = "marks", "places", "among"  # how the memory's rows begin for a table's rows, for a form or what
# stands above a table, and for its headings and what stands among and below its rows
UNPACKED = "written"  # as they began when each had a row of its own: headings, or one row's key and marks
MOST_NEW = 20  # rows of a sheet that were not written: more are another table


@dataclass(frozen=True)
class TypedOver:
    """A cell with another text than the plan wrote, or all texts of a new row at its first."""

    sheet: str
    where: Where
    row: str
    heading: str
    text: str


def marked(sheet: str, headings: Sequence[str], rows: Iterable[Sequence[object]]) -> Iterator[tuple[str, ...]]:
    """The rows of the memory for a sheet that is written, its records packed: what its columns are called, then each
    row's key and marks. A value None is blank, one of no plain kind a formula."""
    watched = [column for column, heading in enumerate(headings) if heading not in READ.get(sheet, ())]
    keys = [headings.index(heading) for heading in WATCHED[sheet]]

    def records() -> Iterator[tuple[str, ...]]:
        yield "", *(headings[column] for column in watched)
        for values in rows:
            if key := _key(plain(values[column]) for column in keys):
                yield key, "".join(mark_of_value(values[column]) for column in watched)

    yield from ((KIND, sheet, *cells) for cells in packed(records()))


def placed(sheet: str, cells: Mapping[Place, object], head: int, anything: str) -> Iterator[tuple[str, ...]]:
    """The rows of the memory for what a form holds, or a sheet beside the rows of its table, whose headings stand in
    the row `head` (from 1). A text with `anything` in it may become any other."""
    for kind in (PLACES, AMONG):
        own = {
            place: value
            for place, value in cells.items()
            if (kind == AMONG) == bool(WATCHED[sheet] and place[0] >= head)
        }
        yield from ((kind, sheet, *packed_) for packed_ in packed(marks_by_row(own, anything)))


def _key(texts: Iterable[str]) -> str:
    return " · ".join(filter(None, texts))


def typed_over(memory: RawSheet, sheets: Mapping[str, RawSheet]) -> Iterator[TypedOver]:
    """The cells typed over, sheet by sheet. `sheets`: those watched, by what they are."""
    tables: dict[str, dict[str, list[str]]] = {}  # by sheet: each row's marks by its key; the headings under ""
    for name, key, *rest in _records(memory, KIND):
        rows = tables.setdefault(name, {})
        rows[key] = [] if key in rows else rest  # two rows that nothing tells apart are not watched
    places, among = _places(memory, PLACES), _places(memory, AMONG)
    keeps_formulas = any(sheet.formulas for sheet in sheets.values())  # not every program that saves a plan does
    for name, sheet in sheets.items():
        headings = tables.get(name, {}).pop("", [])
        head, columns = _head(sheet, WATCHED[name], headings)
        results = sheet.formulas if keeps_formulas else _Anywhere()
        if name in places:
            above = {row: cells for row, cells in sheet.rows.items() if row < head}
            for (row_no, column), text in other_texts(above, places[name], results):
                yield TypedOver(name, sheet.where(column, row_no), "", "", text)
        if columns:
            written = _Table(name, sheet, head, columns, results)
            yield from written.typed_over(tables[name], among.get(name, {}))


class _Anywhere:
    """Every place is in it."""

    def __contains__(self, place: object) -> bool:
        return True


def _places(memory: RawSheet, wanted: str) -> dict[str, dict[int, str]]:
    """By sheet, the marks of each of its rows."""
    places: dict[str, dict[int, str]] = {}
    for name, row, marks in _records(memory, wanted):
        places.setdefault(name, {})[int(row)] = marks
    return places


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


@dataclass(frozen=True)
class _Table:
    """A table as it stands now: the row of its headings, the column of each, the cells of formulas' results."""

    name: str
    sheet: RawSheet
    head: int
    columns: Mapping[str, int]
    results: Container[Place]

    def typed_over(self, marks_by_key: Mapping[str, Sequence[str]], among: Mapping[int, str]) -> Iterator[TypedOver]:
        """In its rows, and the rows among and below these that were not written. `among`: the marks of those that
        were, and of the headings, which show where columns are now; a plan of an older edition has none."""
        known, new = self._matched(marks_by_key)
        for row, (key, marks) in known.items():
            yield from self._in_row(row, key, marks)
        rows = {row: self.sheet.rows[row] for row in (self.head, *new)} if among else {}
        texts: dict[int, dict[int, str]] = {}
        for (row, column), text in other_texts(rows, among, self.results):
            texts.setdefault(row, {})[column] = text
        for row, cells in texts.items():
            if row != self.head:
                yield TypedOver(self.name, self.sheet.where(min(cells), row), "", "", " · ".join(cells.values()))

    def _matched(self, marks_by_key: Mapping[str, Sequence[str]]) -> tuple[dict[int, tuple[str, str]], list[int]]:
        """The key and marks of each row; the rows below the headings that are none of the table's."""
        marks_of = {key: marks[0] for key, marks in marks_by_key.items() if marks}
        known: dict[int, tuple[str, str]] = {}
        renamed: dict[int, dict[str, str]] = {}  # rows with a key that was not written
        new: list[int] = []
        for row, cells in self.sheet.rows.items():
            if row <= self.head:
                continue
            texts = {heading: _text(cells.get(column)) for heading, column in self.columns.items()}
            key = _key(texts[heading] for heading in WATCHED[self.name])
            if key in marks_of:
                known[row] = key, marks_of.pop(key)
            elif not key:
                new.append(row)
            elif key not in marks_by_key:
                renamed[row] = texts
        for row, texts in renamed.items() if len(renamed) <= MOST_NEW else ():
            own = next((key for key, marks in marks_of.items() if _is_row(self.name, texts, marks)), "")
            if own:
                known[row] = own, marks_of.pop(own)
            else:
                new.append(row)
        return known, new

    def _in_row(self, row: int, key: str, marks: str) -> Iterator[TypedOver]:
        for (heading, column), before in zip(self.columns.items(), each_mark(marks), strict=False):
            text = _text(self.sheet.rows[row].get(column))
            if text and is_other(text, before, result=(row, column) in self.results):
                yield TypedOver(self.name, self.sheet.where(column, row), key, heading, text)


def _text(cell: Raw | None) -> str:
    return plain(cell.value) if cell and not cell.fault else ""


def _is_row(name: str, texts: Mapping[str, str], marks: str) -> bool:
    """Whether a row is as it was written, but for its key."""
    pairs = zip(texts.items(), each_mark(marks), strict=False)
    others = (heading for (heading, text), before in pairs if is_other(text, before, result=True))
    return all(heading in WATCHED[name] for heading in others)
