"""Rules about player numbers: filled in, each once in a group, and legal in the league's book where one is named."""

from collections.abc import Iterator

from xlbatch.check.garment import Garment
from xlbatch.check.names import did_you_mean
from xlbatch.check.placeholders import stands_for
from xlbatch.job.job import Job
from xlbatch.problems import Problem, Where, problem
from xlbatch.trade.number_rules import number_rule, number_rules
from xlbatch.trade.tables import color_name


def number_is_filled_in(_job: Job, garments: tuple[Garment, ...]) -> Iterator[Problem]:
    """A number to be printed is no `TBD`."""
    for garment in numbered(garments):
        row = garment.row
        if stands_for(row.number):
            yield problem("number-open", row.source.at("Number"), row.number, rows=(row.source.row,))


def number_once_in_a_group(_job: Job, garments: tuple[Garment, ...]) -> Iterator[Problem]:
    """No two people of a group wear one number in one color, and none wear 7 and 07."""
    first: dict[tuple[str, str, str], Garment] = {}
    for garment in numbered(garments):
        row, value = garment.row, garment.row.number.lstrip("0") or "0"
        key = (row.group.casefold(), color_name(garment.color), value if row.number.isdecimal() else row.number)
        other = first.setdefault(key, garment).row
        if other.who.casefold() == row.who.casefold() or not row.number:
            continue
        code = "number-twice" if other.number == row.number else "number-alike"
        facts = {"other": other.number, "who": other.who or f"row {other.source.sheet_row}"}
        yield problem(code, row.source.at("Number"), row.number, rows=(row.source.row,), **facts)


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
