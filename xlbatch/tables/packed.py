"""Many short records in few cells: a row holds a JSON list of records, a record the list of its values.

A sheet that remembers 1,000 garments is read and written several times as fast so. Only plain ASCII is written, which
every spreadsheet program gives back as it was.
"""

import json
from collections.abc import Iterable, Iterator, Sequence

ENOUGH = 8_000  # letters of a row: the next record begins another
MOST = 30_000  # letters of a cell, of the 32,767 that spreadsheet programs hold; a longer row goes on in the next cell


class NotPacked(Exception):
    """These cells are none that `packed` made."""


Record = Sequence[object]  # texts, numbers, and lists of texts


def packed(records: Iterable[Record]) -> Iterator[tuple[str, ...]]:
    """The records as rows of cells, in order."""
    texts: list[str] = []
    letters = 0
    for record in records:
        if letters > ENOUGH:
            yield _cells(texts)
            texts, letters = [], 0
        texts.append(json.dumps(record, separators=(",", ":")))
        letters += len(texts[-1])
    if texts:
        yield _cells(texts)


def _cells(texts: Iterable[str]) -> tuple[str, ...]:
    text = f"[{','.join(texts)}]"
    return tuple(text[start : start + MOST] for start in range(0, len(text), MOST))


def unpacked(cells: Iterable[str]) -> list[list[object]]:
    """The records of a row. Raises NotPacked."""
    try:
        records = json.loads("".join(cells))
    except ValueError as error:
        raise NotPacked from error
    if not isinstance(records, list) or not all(isinstance(record, list) for record in records):
        raise NotPacked
    return records
