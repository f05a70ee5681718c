"""The memory as rows of plain text cells, and back: a row begins with its kind, then has a record's fields in order."""

from collections.abc import Iterator, Sequence
from dataclasses import fields
from typing import Any, get_origin

from xlbatch.files.raw import RawSheet
from xlbatch.kept.memory import NUMBERS, RECORDS, STATES, Memory
from xlbatch.tables.cells import shown_value

EDITION = 2
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
        for record_ in getattr(memory, kind):
            yield kind, *_texts([getattr(record_, name) for name in names])


def _texts(values: Sequence[object]) -> Iterator[str]:
    """One cell a field; a last field of many parts takes as many."""
    for value in values:
        yield from value if isinstance(value, tuple) else (_text(value),)


def _text(value: object) -> str:
    return f"{value:.3f}".rstrip("0").rstrip(".") if isinstance(value, float) else str(value)


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
        elif kind in RECORDS:
            records[kind].append(_record(RECORDS[kind], texts))
    if edition != EDITION or any(decal.state not in STATES for decal in records["decals"]):
        raise Damaged
    return Memory(**numbers | {kind: tuple(them) for kind, them in records.items()})


def _record(record: type, texts: dict[int, str]) -> Any:
    names = fields(record)
    if is_list := get_origin(names[-1].type) is tuple:
        names = names[:-1]
    values: list[Any] = [_value(field.type, texts.get(column, "")) for column, field in enumerate(names, 2)]
    if is_list:
        values.append(tuple(texts.get(column, "") for column in range(len(names) + 2, max(texts) + 1)))
    return record(*values)


def _value(type_: Any, text: str) -> Any:
    """A field's value. Raises Damaged."""
    try:
        return type_(text) if type_ in (int, float) else text
    except ValueError as error:
        raise Damaged from error
