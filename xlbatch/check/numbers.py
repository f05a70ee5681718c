"""Rules about player numbers: filled in, each once in a group, and legal in the league's book where one is named."""

from collections.abc import Iterator

from xlbatch.check.garment import Garment
from xlbatch.check.names import did_you_mean
from xlbatch.check.placeholders import stands_for
from xlbatch.job.job import Job, RosterRow
from xlbatch.problems import Problem, Where, problem
from xlbatch.trade.number_rules import number_rule, number_rules
from xlbatch.trade.tables import color_name

_SEVERAL = 3  # numbers worn twice: more have one cause


def number_is_filled_in(_job: Job, garments: tuple[Garment, ...]) -> Iterator[Problem]:
    """A number to be printed is no `TBD`."""
    for garment in numbered(garments):
        row = garment.row
        if stands_for(row.number):
            yield problem("number-open", row.source.at("Number"), row.number, rows=(row.source.row,))


def number_once_in_a_group(_job: Job, garments: tuple[Garment, ...]) -> Iterator[Problem]:
    """No two people of a group wear one number in one color, and none wear 7 and 07. Where many do, that has one
    cause: it is asked once."""
    twice = list(_worn_twice(garments))
    same = [(row, other) for row, other in twice if row.number == other.number]
    if len(same) > _SEVERAL:
        row, _ = same[0]
        numbers = "; ".join(f"{row.number} ({_called(other)}, {_called(row)})" for row, other in same)
        rows = tuple(row.source.row for row, _ in same)
        yield problem("numbers-twice", row.source.at("Number"), len(same), rows=rows, numbers=numbers)
    for row, other in twice:
        code = "number-twice" if other.number == row.number else "number-alike"
        if code == "number-alike" or len(same) <= _SEVERAL:
            facts = {"other": other.number, "who": _called(other)}
            yield problem(code, row.source.at("Number"), row.number, rows=(row.source.row,), **facts)


def _called(row: RosterRow) -> str:
    return row.who or f"row {row.source.sheet_row}"


def _worn_twice(garments: tuple[Garment, ...]) -> Iterator[tuple[RosterRow, RosterRow]]:
    """Each row whose number another person wears already, and the first of them."""
    first: dict[tuple[str, str, str], Garment] = {}
    for garment in numbered(garments):
        row, value = garment.row, garment.row.number.lstrip("0") or "0"
        key = (row.group.casefold(), color_name(garment.color), value if row.number.isdecimal() else row.number)
        other = first.setdefault(key, garment).row
        if other.who.casefold() != row.who.casefold() and row.number:
            yield row, other


def number_is_legal(job: Job, garments: tuple[Garment, ...]) -> Iterator[Problem]:
    """Each number is legal in the book named in `Number rule`, and none stands with one it may not stand with."""
    name = job.settings.number_rule
    rule = number_rule(name) if name else None
    if name and rule is None:
        names = [known.name for known in number_rules()]
        where = job.setting_cells.get("Number rule", Where("Job"))
        yield problem("number-rule-unknown", where, name, suggestion=did_you_mean(name, names), rules="; ".join(names))
    if rule is None:
        return
    worn: dict[str, set[str]] = {}
    for garment in numbered(garments):
        row = garment.row
        together = worn.setdefault(row.group.casefold(), set())
        clash = row.number in rule.not_together and together & (set(rule.not_together) - {row.number})
        together.add(row.number)
        if row.number and not stands_for(row.number) and (clash or not rule.allows(row.number)):
            legal = f"not both {' and '.join(rule.not_together)}" if clash else "; ".join(rule.legal)
            facts = {"rule": rule.name, "edition": rule.edition, "legal": legal}
            yield problem("number-illegal", row.source.at("Number"), row.number, rows=(row.source.row,), **facts)


def numbered(garments: tuple[Garment, ...]) -> Iterator[Garment]:
    """The garments that get a number."""
    return (garment for garment in garments if any(spec.what == "number" for spec in garment.to_do))
