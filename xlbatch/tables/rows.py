"""Turns a table into its lines: one a row, or one for each size that a row asks for."""

from collections.abc import Iterator, Mapping
from dataclasses import replace

from xlbatch.files.raw import Raw
from xlbatch.job.source import Source
from xlbatch.tables.cells import shown_value
from xlbatch.tables.input_tables import Table
from xlbatch.tables.line import Line, Units
from xlbatch.tables.size_columns import pieces
from xlbatch.tables.sizes import read_size, several_people, several_sizes
from xlbatch.trade.columns import columns


def lines(table: Table, usual: Units, *, built_in: bool = False) -> Iterator[Line]:
    """The rows of a table. Those of a built-in table have row number 0."""
    known = {column.heading: column for column in columns(table.meaning)}
    holds = table.meaning == "Roster"
    for row, filled in table.rows.items():
        given = {heading: filled[at] for heading, at in table.columns.items() if at in filled}
        refs = {} if built_in else _refs(table, row)
        extra = {name: shown_value(filled[at]) for at, name in table.extra.items() if at in filled and not built_in}
        line = Line(
            meaning=table.meaning,
            source=Source(table.sheet, 0 if built_in else table.counted_on(row), refs, extra),
            columns=known,
            cells=_in_group(given, table, row),
            units=table.units,
            usual=usual,
            rows=(table.counted_on(row),) if holds else (),
        )
        if table.sizes:
            yield from _by_size(line, table, row)
        elif table.wearers:
            yield _with_size(line, table, row)
        else:
            yield from _each_size(line) if holds else (line,)


def _refs(table: Table, row: int) -> dict[str, str]:
    """The cell under each heading; under "" the row's first, where that is not in column A."""
    refs = {heading: table.lie.cell(at, row) for heading, at in table.columns.items()}
    return refs | {"": table.lie.cell(1, row)} if table.lie.sideways else refs


def _in_group(given: Mapping[str, Raw], table: Table, row: int) -> Mapping[str, Raw]:
    group = table.groups.get(row, table.group)
    return {**given, "Group": Raw(group)} if group and "Group" not in table.columns else given


def _with_size(line: Line, table: Table, row: int) -> Line:
    """The line with its size from the one column, of several for different people, that is filled.

    Where two are, the size is both together, which is none."""
    filled = table.rows[row]
    given = [at for at in sorted({*table.wearers, table.columns.get("Size", 0)}) if at in filled]
    first = given[0] if given else min(table.wearers)
    source = replace(line.source, cells={**line.source.cells, "Size": table.lie.cell(first, row)})
    sizes = [_sized(at, table, filled) for at in given]
    both = Raw(" and ".join(map(shown_value, sizes)))
    size = {"Size": both if len(sizes) > 1 else sizes[0]} if sizes else {}
    return replace(line, source=source, cells={**line.cells, **size})


def _sized(at: int, table: Table, filled: Mapping[int, Raw]) -> Raw:
    cell = filled[at]
    typed = f"{table.wearers.get(at, '')} {shown_value(cell)}"
    return Raw(typed) if at in table.wearers and not cell.fault and read_size(typed) else cell


def _each_size(line: Line) -> Iterator[Line]:
    """A line for each size where one person names several: a form lets people tick more than one."""
    cell = line.cells.get("Size")
    sizes = several_sizes(shown_value(cell)) if cell and not cell.fault else ()
    if not sizes or line.given("How many") or line.given("Garment no.") or _is_several(line):
        yield line
        return
    line.found("size-several", "Size", shown_value(line.cells["Size"]))
    for at, size in enumerate(sizes):
        yield replace(line, cells={**line.cells, "Size": Raw(size)}, problems=[] if at else line.problems)


def _is_several(line: Line) -> bool:
    return any(several_people(shown_value(line.cells[name])) for name in ("Who", "First name") if line.given(name))


def _by_size(line: Line, table: Table, row: int) -> Iterator[Line]:
    """A line for each size that a row of a list with one column a size asks for; the row itself where it asks none."""
    filled = table.rows[row]
    wanted = {at: filled[at] for at in table.sizes if at in filled and pieces(filled[at]) != 0}
    ref = {at: table.lie.cell(at, row) for at in table.sizes}
    for at, cell in wanted.items():
        refs = {**line.source.cells, "Size": ref[at], "How many": ref[at]}
        many = pieces(cell)
        cells_ = {**line.cells, "Size": Raw(table.sizes[at]), "How many": cell if many is None else Raw(many)}
        yield replace(line, source=replace(line.source, cells=refs), cells=cells_, problems=[])
    if not wanted:
        refs = {**line.source.cells, "Size": ref[min(ref)]}
        yield replace(line, source=replace(line.source, cells=refs))
