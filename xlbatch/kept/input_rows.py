"""The input as text, row by row, and what of it is not as the plan wrote it."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from xlbatch.job.source import Source
from xlbatch.kept.memory import KeptHeadings, KeptRow, Memory
from xlbatch.roster.settings import todays_name


@dataclass(frozen=True)
class GivenRow:
    """A row of an input sheet: what it is called, and its values by heading."""

    sheet: str
    key: str
    values: Mapping[str, str]
    source: Source


def kept_rows(given: Iterable[GivenRow]) -> tuple[tuple[KeptHeadings, ...], tuple[KeptRow, ...]]:
    """The rows as the memory keeps them."""
    headings: dict[str, tuple[str, ...]] = {}
    rows = []
    for row in given:
        names = headings.setdefault(row.sheet, tuple(row.values))
        rows.append(KeptRow(row.sheet, row.key, tuple(row.values.get(name, "") for name in names)))
    return tuple(KeptHeadings(sheet, names) for sheet, names in headings.items()), tuple(rows)


def as_planned(memory: Memory) -> dict[tuple[str, str], dict[str, str]]:
    """Each row's values by heading as the plan wrote them, by sheet and what the row is called."""
    headings = {kept_headings.sheet: kept_headings.headings for kept_headings in memory.headings}
    return {
        (row.sheet, todays_name(row.key) if row.sheet == "Job" else row.key): dict.fromkeys(headings[row.sheet], "")
        | dict(zip(headings[row.sheet], row.values, strict=False))
        for row in memory.rows
    }


def counted_anew(memory: Memory, given: Iterable[GivenRow]) -> tuple[set[tuple[str, str]], set[str]]:
    """Whose On hand a person changed: of blanks garment and size, of films the name, in lower case."""
    before = as_planned(memory)
    changed = [
        row
        for row in given
        if "On hand" in row.values
        and (old := before.get((row.sheet, row.key)))
        and old.get("On hand", "") != row.values["On hand"]
    ]
    blanks = {(row.values["Garment"].casefold(), row.values["Size"]) for row in changed if row.sheet == "Garments"}
    return blanks, {row.values["Film"].casefold() for row in changed if row.sheet == "Film"}
