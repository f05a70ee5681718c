"""Asks whose size a bare letter is, in a family that also has children's sizes."""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence

from xlbatch.job.job import RosterRow
from xlbatch.tables.cells import shown_value
from xlbatch.tables.line import Line
from xlbatch.tables.sizes import ADULT, read_size, says_whose, size_class
from xlbatch.trade.tables import practice

LARGEST_FAMILY = practice("garments of the largest group that is a family")
_CHILDREN = ("youth", "toddler", "infant")
_ALSO_YOUTH = frozenset(ADULT[1:5])  # the letters children's sizes have too, bar the largest


def note_whose(lines: Sequence[Line], roster: Iterable[RosterRow], settled: frozenset[int] = frozenset()) -> None:
    """Adds `size-whose` to the first line of a family with children whose size is a bare letter.

    `settled` are garments of an earlier plan that did not ask this."""
    for family in _with_children(roster):
        rows = (row for row in family if row.no not in settled)
        asked = next((line for line in _lines_of(rows, lines) if _is_bare(shown_value(line.cells["Size"]))), None)
        if asked:
            asked.found("size-whose", "Size", shown_value(asked.cells["Size"]))


def said_adult(lines: Sequence[Line], roster: Iterable[RosterRow]) -> frozenset[int]:
    """The rows of families with children whose size is said to be an adult's: `Adult L`."""
    rows = [row for family in _with_children(roster) for row in family if size_class(row.size) == "adult"]
    return frozenset(line.source.row for line in _lines_of(rows, lines) if says_whose(shown_value(line.cells["Size"])))


def _with_children(roster: Iterable[RosterRow]) -> Iterator[list[RosterRow]]:
    """The rows still to make of each family that has children's sizes too."""
    families: dict[str, list[RosterRow]] = defaultdict(list)
    for row in roster:
        if row.group and row.size and row.status not in ("done", "cancelled"):
            families[row.group.casefold()].append(row)
    for family in families.values():
        if len(family) <= LARGEST_FAMILY and any(size_class(row.size) in _CHILDREN for row in family):
            yield family


def _lines_of(rows: Iterable[RosterRow], lines: Sequence[Line]) -> Iterator[Line]:
    """The lines with sizes in letters that children's sizes have too."""
    by_row = {line.source.row: line for line in lines if "Size" in line.cells}
    return (by_row[row.source.row] for row in rows if row.size in _ALSO_YOUTH and row.source.row in by_row)


def _is_bare(typed: str) -> bool:
    return read_size(typed) is not None and not says_whose(typed)
