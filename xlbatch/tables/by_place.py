"""What a plan wrote on its forms and above its tables, remembered by place, and the texts that stand there now."""

from collections.abc import Container, Iterator, Mapping

from xlbatch.files.raw import Raw
from xlbatch.tables.cell_marks import ANY, BLANK, each_mark, is_other, mark_of, mark_of_value, plain

MOST = 20  # rows with other texts: with more this is another sheet

Place = tuple[int, int]  # row and column, from 1


def marks_by_row(cells: Mapping[Place, object], anything: str) -> Iterator[tuple[int, str]]:
    """Of each row with something in it, the marks of its cells from the first column on. A text with `anything` in it
    (the time of the run) may become any other."""
    rows: dict[int, dict[int, str]] = {}
    for (row, column), value in cells.items():
        free = isinstance(value, str) and anything in value
        rows.setdefault(row, {})[column] = ANY if free else mark_of_value(value)
    for row, marks in sorted(rows.items()):
        yield row, "".join(marks.get(column, BLANK) for column in range(1, max(marks) + 1))


def other_texts(
    rows: Mapping[int, Mapping[int, Raw]], marks_of: Mapping[int, str], results: Container[Place]
) -> list[tuple[Place, str]]:
    """The texts that were not written where they stand. A row that has moved is known by its other cells; in one of
    which nothing is known, texts written anywhere are left alone. None where no row is known: columns have moved.
    `results`: the cells in which a formula's result may stand."""
    written = {row: dict(enumerate(each_mark(marks), 1)) for row, marks in marks_of.items()}
    first_with = {(column, mark): row for row in sorted(written, reverse=True) for column, mark in written[row].items()}
    anywhere = {mark for _, mark in first_with}
    other: list[tuple[Place, str]] = []
    any_known = False
    for row, cells in rows.items():
        texts = {column: text for column, cell in cells.items() if (text := "" if cell.fault else plain(cell.value))}
        places = ((column, mark_of(text)) for column, text in texts.items())
        own = max((row, *(first_with.get(place, 0) for place in places)), key=lambda no: _alike(texts, written.get(no)))
        known = _alike(texts, written.get(own)) > 0
        any_known |= known
        for column, text in texts.items():
            before = written[own].get(column, BLANK) if known else ""
            if is_other(text, before, result=(row, column) in results) and (known or mark_of(text) not in anywhere):
                other.append(((row, column), text))
    return other if any_known and len({row for (row, _), _ in other}) <= MOST else []


def _alike(texts: Mapping[int, str], written: Mapping[int, str] | None) -> int:
    """How many letters stand where they stood."""
    return sum(len(text) for column, text in texts.items() if (written or {}).get(column) == mark_of(text))
