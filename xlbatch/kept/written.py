"""The memory as rows of plain text cells, and back: a row begins with its kind, then has a record's fields in order."""

from collections.abc import Iterator
from dataclasses import fields
from typing import Any

from xlbatch.files.raw import RawSheet
from xlbatch.kept.memory import NUMBERS, RECORDS, STATES, Memory
from xlbatch.tables.cells import shown_value

EDITION = 2


class Damaged(Exception):
    """The memory's cells were changed so that it can't be trusted."""


def to_rows(memory: Memory) -> Iterator[tuple[str, ...]]:
    """The rows below the title: numbers first, then each kind of record under its fields' names."""
    yield "edition", str(EDITION)
    for name in NUMBERS:
        yield name, str(getattr(memory, name))
    for kind, record in RECORDS.items():
        names = [each.name for each in fields(record)]
        yield f"{kind}:", *names
        for each in getattr(memory, kind):
            yield kind, *(_text(getattr(each, name)) for name in names)


def _text(value: object) -> str:
    return f"{value:.3f}".rstrip("0").rstrip(".") if isinstance(value, float) else str(value)


def from_sheet(sheet: RawSheet) -> Memory:
    """The memory on a sheet. Raises Damaged where its cells can't be what a plan wrote."""
    numbers: dict[str, Any] = {}
    records: dict[str, Any] = {kind: [] for kind in RECORDS}
    edition = 0
    try:
        for cells in sheet.rows.values():
            texts = {at: shown_value(cell) for at, cell in cells.items()}
            kind = texts.get(1, "")
            if kind in NUMBERS:
                numbers[kind] = int(texts[2])
            elif kind == "edition":
                edition = int(texts[2])
            elif kind in RECORDS:
                records[kind].append(_record(RECORDS[kind], texts))
    except (KeyError, ValueError) as error:
        raise Damaged from error
    if edition != EDITION or any(decal.state not in STATES for decal in records["decals"]):
        raise Damaged
    return Memory(**numbers | {kind: tuple(them) for kind, them in records.items()})


def _record(record: type, texts: dict[int, str]) -> Any:
    return record(*(_value(each.type, texts.get(at, "")) for at, each in enumerate(fields(record), 2)))


def _value(type_: Any, text: str) -> str | int | float:
    return int(text) if type_ is int else float(text) if type_ is float else text
