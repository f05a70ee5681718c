"""The memory as rows of plain text cells, and back: a row begins with its kind, then has records of it, packed."""

from collections.abc import Iterable, Iterator
from dataclasses import fields
from typing import Any, get_origin

from xlbatch.files.raw import RawSheet
from xlbatch.kept.memory import NUMBERS, RECORDS, STATES, Memory
from xlbatch.tables.cells import shown_value
from xlbatch.tables.packed import NotPacked, packed, unpacked

EDITION = 3
UNPACKED = 2  # the edition that had a record a row, a field a cell
_KINDS = {"edition", *NUMBERS, *RECORDS}


class Damaged(Exception):
    """The memory's cells were changed so that it can't be trusted."""


def to_rows(memory: Memory) -> Iterator[tuple[str, ...]]:
    """The rows below the title: numbers first, then each kind of record under its fields' names."""
    yield "edition", str(EDITION)
    for name in NUMBERS:
        yield name, str(getattr(memory, name))
    for kind, record in RECORDS.items():
        names = [field.name for field in fields(record)]
        yield f"{kind}:", *names
        records = ([_rounded(getattr(record_, name)) for name in names] for record_ in getattr(memory, kind))
        yield from ((kind, *cells) for cells in packed(records))


def _rounded(value: object) -> object:
    return round(value, 3) if isinstance(value, float) else value


def from_sheet(sheet: RawSheet) -> Memory:
    """The memory on a sheet. Raises Damaged where its cells can't be what a plan wrote."""
    numbers: dict[str, Any] = {}
    records: dict[str, Any] = {kind: [] for kind in RECORDS}
    edition = 0
    for cells in sheet.rows.values():
        kind = shown_value(cells[1]) if 1 in cells else ""
        texts = {column: shown_value(cell) for column, cell in cells.items()} if kind in _KINDS else {}
        if kind in NUMBERS:
            numbers[kind] = _value(int, texts.get(2, ""))
        elif kind == "edition":
            edition = _value(int, texts.get(2, ""))
        elif kind in RECORDS and edition == UNPACKED:
            records[kind].append(_record(RECORDS[kind], _values(RECORDS[kind], texts)))
        elif kind in RECORDS:
            records[kind] += _packed(RECORDS[kind], (str(cell.value) for no, cell in cells.items() if no > 1))
    if edition not in (EDITION, UNPACKED) or any(decal.state not in STATES for decal in records["decals"]):
        raise Damaged
    return Memory(**numbers | {kind: tuple(them) for kind, them in records.items()})


def _packed(record: type, cells: Iterable[str]) -> list[Any]:
    """The records of a row. Raises Damaged."""
    try:
        return [_record(record, values) for values in unpacked(cells)]
    except NotPacked as error:
        raise Damaged from error


def _values(record: type, texts: dict[int, str]) -> list[Any]:
    """A record's values in a row that is not packed: a last field of many parts takes as many cells."""
    count = len(fields(record))
    if get_origin(fields(record)[-1].type) is not tuple:
        return [texts.get(column, "") for column in range(2, count + 2)]
    several = [texts.get(column, "") for column in range(count + 1, max(texts) + 1)]
    return [*(texts.get(column, "") for column in range(2, count + 1)), several]


def _record(record: type, values: list[Any]) -> Any:
    """Raises Damaged."""
    if len(values) != len(fields(record)):
        raise Damaged
    return record(*(_value(field.type, value) for field, value in zip(fields(record), values, strict=True)))


def _value(type_: Any, value: Any) -> Any:
    """A field's value, of a number also from its text. Raises Damaged."""
    try:
        return (
            type_(value) if type_ in (int, float) else tuple(map(str, value)) if isinstance(value, list) else str(value)
        )
    except (ValueError, TypeError) as error:
        raise Damaged from error
