"""Turns a table into its lines: one a row, or one for each size that a row asks for."""

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace

from xlbatch.files.raw import Raw
from xlbatch.job.job import NO_NAME, Class
from xlbatch.job.source import Source
from xlbatch.tables.cells import shown_value, yes_no
from xlbatch.tables.contents import kind_of_text
from xlbatch.tables.heading_rows import NAMES
from xlbatch.tables.input_table import ANSWERS, Table
from xlbatch.tables.line import Line, Units
from xlbatch.tables.size_cell import counted_sizes, read_size_cell
from xlbatch.tables.size_columns import is_tick, pieces
from xlbatch.tables.sizes import BETWEEN, read_size, says_whose, several_people, several_sizes, wearer_in
from xlbatch.trade.answer_words import answer
from xlbatch.trade.columns import columns

_DITTO = ('"', "″", "”", "“", "''", "〃", "ditto", "Ditto", "do.", '-"-', '- " -')
_MAY_BE_COUNT = re.compile(r"[2-9] +x+l", re.IGNORECASE)  # 2 XL: two, or 2XL
_COUNT_AND_SIZE = re.compile(r"(\d{1,2}) +(x*[sml]|small|medium|large)", re.IGNORECASE)
_MOSTLY = 0.6  # of a column's cells
_MANY = 0.25  # of the rows; fewer may be people with one name
_SAME_AS_ABOVE = ("same as above", "as above")  # under Print name it may mean the person's own name


def lines(table: Table, usual: Units, *, built_in: bool = False) -> Iterator[Line]:
    """The rows of a table. Those of a built-in table have row number 0."""
    known = {column.heading: column for column in columns(table.meaning)}
    holds = table.meaning == "Roster"
    of_counts = holds and _is_of_counts(table)
    for row, filled in _without_dittos(table) if holds else table.rows.items():
        given = {heading: filled[column] for heading, column in table.columns.items() if column in filled}
        refs = {} if built_in else _refs(table, row)
        extra = {
            name: shown_value(filled[column])
            for column, name in table.extra.items()
            if column in filled and not built_in
        }
        notes = _notes(table, row) if table.notes else {}
        last = table.columns.get("Last name")
        line = Line(
            meaning=table.meaning,
            source=Source(table.sheet, 0 if built_in else table.counted_on(row), refs, extra, notes),
            columns=known,
            cells=_also_said(given, table, row) if holds else given,
            units=table.units,
            usual=usual,
            rows=(table.counted_on(row),) if holds else (),
            for_=_whom(table, row) if holds else None,
            left_out=table.left_out.get(row, ""),
        )
        if last in filled and last not in table.rows[row]:
            line.found("list-last-names", "First name", shown_value(filled[table.columns["First name"]]))
        line = _counted(line) if of_counts else line
        if table.sizes:
            yield from _by_size(line, table, row)
        elif table.counts:
            yield from _by_count(line, table, row)
        elif table.wearers:
            yield _with_size(line, table, row)
        else:
            yield from _each_size(line) if holds else (line,)


def _refs(table: Table, row: int) -> dict[str, str]:
    """The cell under each heading; under "" the row's first, where that is not in column A."""
    refs = {
        heading: table.orientation.cell(column, row)
        for heading, column in (*_roles(table).items(), *table.columns.items())
    }
    return refs | {"": table.orientation.cell(1, row)} if table.orientation.sideways else refs


def _notes(table: Table, row: int) -> dict[str, str]:
    """The notes on a row's cells, by heading."""
    named = {column: heading for heading, column in table.columns.items()} | dict(table.extra)
    return {name: table.notes[row, column] for column, name in named.items() if (row, column) in table.notes}


def _also_said(given: Mapping[str, Raw], table: Table, row: int) -> Mapping[str, Raw]:
    """The cells with what a title, the sheet's name or a heading says of the row, and the answers in other columns."""
    group = table.groups.get(row, table.group)
    texts = {"Group": group if "Group" not in table.columns else "", "Garment": table.garment or table.garment_said[0]}
    texts["Print name"] = "" if any(heading in table.columns for heading in NAMES) else NO_NAME
    filled = {role: cell for role in _roles(table) if (cell := _answer(table, row, role)) is not None}
    filled = {role: Raw(text) for role, text in table.blanks_mean.items()} | filled
    texts |= table.ordered_under(table.groups.get(row, ""))
    return {**{heading: Raw(text) for heading, text in texts.items() if text}, **filled, **given}


def _answer(table: Table, row: int, role: str) -> Raw | None:
    """What the columns of a role say; where two contradict each other, both."""
    cells = [
        table.rows[row][column]
        for column, column_role in table.roles.items()
        if column_role == role and column in table.rows[row]
    ]
    differ = len({yes_no(cell) for cell in cells if not cell.fault}) > 1
    return Raw(", ".join(map(shown_value, cells))) if differ else cells[0] if cells else None


def _roles(table: Table) -> dict[str, int]:
    """The columns whose answers go under the Roster's own headings."""
    return {role: column for column, role in table.roles.items() if role in ANSWERS}


def _whom(table: Table, row: int) -> Class | None:
    """Whom the sizes of a row are for, by the title above it or its sheet's name; an age is a child's where the
    headings speak of children."""
    titled = wearer_in(table.groups.get(row, table.title)) or wearer_in(table.sheet)
    cell = table.rows[row].get(table.columns.get("Size", 0))
    typed = shown_value(cell) if cell and not titled and table.is_of_children else ""
    return "youth" if typed[:1].isdigit() and read_size(typed, "youth") and not read_size(typed) else titled


def _without_dittos(table: Table) -> Iterator[tuple[int, Mapping[int, Raw]]]:
    """The rows, a mark that repeats the cell above it replaced by that."""
    above: Mapping[int, Raw] = {}
    printed = table.columns.get("Print name", 0)
    texts = list[str]()  # what is printed in the rows above
    first, last = (table.columns.get(heading, 0) for heading in ("First name", "Last name"))
    families = last if _has_families(table, first, last) else 0
    for row, cells in table.rows.items():
        if families in above and first in cells and families not in cells:  # brothers and sisters, in all likelihood
            cells = {**cells, families: above[families]}
        cells = {
            column: above.get(column, cell)
            if cell.value in _DITTO or (cell.value in _SAME_AS_ABOVE and column != printed)
            else cell
            for column, cell in cells.items()
        }
        said_same = printed in cells and answer("Print name", shown_value(cells[printed])) == "whole name"
        if said_same and len(texts) > 1 and len({*texts}) == 1:  # the others all say one thing
            cells |= {printed: Raw(_SAME_AS_ABOVE[0])}
        elif printed in cells:
            texts.append(shown_value(cells[printed]))
        yield row, cells
        above = cells


def _has_families(table: Table, first: int, last: int) -> bool:
    """Whether many first names stand without a last name, as brothers and sisters do below the first of them."""
    if not (first and last) or {"Who", "Garment no."} & table.columns.keys():
        return False
    alone = sum(first in cells and last not in cells for cells in table.rows.values())
    return alone > 1 and alone >= _MANY * len(table.rows)


def _with_size(line: Line, table: Table, row: int) -> Line:
    """The line with its size from the one column, of several for different people, that is filled.

    Where two are, the size is both together, which is none."""
    filled = table.rows[row]
    given = [column for column in sorted({*table.wearers, table.columns.get("Size", 0)}) if column in filled]
    first = given[0] if given else min(table.wearers)
    source = replace(line.source, cells={**line.source.cells, "Size": table.orientation.cell(first, row)})
    sizes = [_sized(column, table, filled) for column in given]
    both = Raw(" and ".join(map(shown_value, sizes)))
    size = {"Size": both if len(sizes) > 1 else sizes[0]} if sizes else {}
    return replace(line, source=source, cells={**line.cells, **size})


def _sized(column: int, table: Table, filled: Mapping[int, Raw]) -> Raw:
    cell = filled[column]
    if column not in table.wearers or cell.fault:
        return cell
    whom, typed = table.wearers[column], shown_value(cell)
    both = (f"{whom} {typed}", f"{typed} {whom}")  # youth M?, 2 x M youth
    return next((Raw(text) for text in both if read_size_cell(text).size), cell)


def _is_of_counts(table: Table) -> bool:
    """Whether the cells of sizes begin with a count: 1 M."""
    column = table.columns.get("Size", 0)
    sizes = [shown_value(cells[column]) for cells in table.rows.values() if column in cells]
    counted = sum(bool(_COUNT_AND_SIZE.fullmatch(size) or read_size_cell(size).many > 1) for size in sizes)
    sure = any(_COUNT_AND_SIZE.fullmatch(size) and not _MAY_BE_COUNT.fullmatch(size) for size in sizes)
    return (sure or counted > 1) and counted >= _MOSTLY * len(sizes)


def _counted(line: Line) -> Line:
    """The line with two of M for `2 M`, in a column of such counts; 2 XL is asked about."""
    cell = line.cells.get("Size")
    match = _COUNT_AND_SIZE.fullmatch(shown_value(cell)) if cell and not cell.fault else None
    if not match or line.given("How many"):
        return line
    if _MAY_BE_COUNT.fullmatch(match[0]):
        line.found("size-doubtful", "Size", match[0], size=match[2].upper(), many=match[1])
    return replace(line, cells={**line.cells, "Size": Raw(match[2]), "How many": Raw(int(match[1]))})


def _each_size(line: Line) -> Iterator[Line]:
    """A line for each size where one person names several: a form lets people tick more than one."""
    cell = line.cells.get("Size")
    typed = shown_value(cell) if cell and not cell.fault else ""
    counted = line.given("How many") and shown_value(line.cells["How many"]) == str(len(_parts(typed)))
    if people := _people_apart(line, typed):
        yield from people
        return
    sizes = _parts(typed) if counted else several_sizes(typed) or counted_sizes(typed)
    if len(sizes) < 2 or (line.given("How many") and not counted) or line.given("Garment no.") or _is_several(line):
        yield line
        return
    if counted:  # as many sizes as are asked for: no question
        line = replace(line, cells={heading: cell for heading, cell in line.cells.items() if heading != "How many"})
    else:
        line.found("size-several", "Size", typed)
    for number, size in enumerate(sizes):
        yield replace(line, cells={**line.cells, "Size": Raw(size)}, problems=[] if number else line.problems)


def _people_apart(line: Line, typed: str) -> tuple[Line, ...]:
    """A line for each person where one cell names several and the other has as many sizes: `Ana, Ivo` beside `M, L`."""
    cell = line.cells.get("Who")
    names = _split(shown_value(cell)) if cell and not cell.fault and BETWEEN.search(typed) else ()
    sizes = _split(typed) if names else ()
    if (
        not 1 < len(names) == len(sizes)
        or not all(read_size_cell(size).size for size in sizes)
        or line.given("How many")
    ):
        return ()
    if line.given("Garment no.") or not all(kind_of_text(name) in ("name", "words") for name in names):
        return ()
    line.found("list-in-cells", "Who", ", ".join(names))
    family = names[-1].split()[1:]  # of Ana & Ivo Berg
    names = tuple(name if " " in name else " ".join((name, *family)) for name in names)
    return tuple(
        replace(
            line, cells={**line.cells, "Who": Raw(name), "Size": Raw(size)}, problems=[] if place else line.problems
        )
        for place, (name, size) in enumerate(zip(names, sizes, strict=True))
    )


def _split(typed: str) -> tuple[str, ...]:
    return tuple(part.strip() for part in BETWEEN.split(typed) if part.strip())


def _parts(typed: str) -> tuple[str, ...]:
    """The sizes of an answer that names several, as typed; none where a part of it is no size."""
    parts = _split(typed)
    return parts if all(map(read_size, parts)) and not read_size(typed) else ()


def _is_several(line: Line) -> bool:
    return any(several_people(shown_value(line.cells[name])) for name in ("Who", "First name") if line.given(name))


def _by_size(line: Line, table: Table, row: int) -> Iterator[Line]:
    """A line for each size that a row of a list with one column a size asks for; the row itself where it asks none."""
    filled = table.rows[row]
    wanted = _wanted(table.sizes, filled)
    ref = {place: table.orientation.cell(place, row) for place in table.sizes}
    told = line.problems if len(wanted) > 1 and all(is_tick(cell) for cell in wanted.values()) else []
    if told is line.problems:  # one that was to be chosen, maybe
        line = replace(line, source=replace(line.source, cells={**line.source.cells, "Size": ref[min(wanted)]}))
        line.found("size-several", "Size", " and ".join(table.sizes[column] for column in wanted))
    for column, cell in wanted.items():
        refs = {**line.source.cells, "Size": ref[column], "How many": ref[column]}
        many = pieces(cell)
        size = ("Adult " if says_whose(table.titles[column]) else "") + table.sizes[column]
        size = size if read_size(size) == table.sizes[column] else table.sizes[column]
        cells_ = {**line.cells, "Size": Raw(size), "How many": cell if many is None else Raw(many)}
        yield replace(line, source=replace(line.source, cells=refs), cells=cells_, problems=told)
        told = []
    if not wanted:
        refs = {**line.source.cells, "Size": ref[min(ref)]}
        yield replace(line, source=replace(line.source, cells=refs))


def _by_count(line: Line, table: Table, row: int) -> Iterator[Line]:
    """A line for each garment, cut or color that a row of a list with one column each asks for; where it asks none, the
    row itself, asked about, if it names someone."""
    filled = table.rows[row]
    for number, (column, cell) in enumerate((wanted := _wanted(table.counts, filled)).items()):
        heading, text = table.counts[column]
        ref, many = table.orientation.cell(column, row), pieces(cell)
        source = replace(line.source, cells={**line.source.cells, heading: ref, "How many": ref})
        counted = {heading: Raw(text), "How many": cell if many is None else Raw(many)}
        yield replace(line, source=source, cells={**line.cells, **counted}, problems=[] if number else line.problems)
    if not wanted and any(heading in line.cells for heading in NAMES):
        line = replace(
            line,
            source=replace(
                line.source, cells={**line.source.cells, "Wanted": table.orientation.cell(min(table.counts), row)}
            ),
        )
        yield replace(line, cells={**line.cells, "Wanted": Raw("")})


def _wanted(columns: Iterable[int], filled: Mapping[int, Raw]) -> dict[int, Raw]:
    """The cells that ask for something, in those columns."""
    return {column: filled[column] for column in columns if column in filled and pieces(filled[column]) != 0}
