"""What was typed over cells that a plan makes anew: it is asked about, naming the sheet to change instead, and kept on
Changes."""

from collections.abc import Iterable

from xlbatch.kept.memory import KeptChange, Memory
from xlbatch.problems import Problem, problem
from xlbatch.tables.typed_over import TypedOver
from xlbatch.trade.tables import table


def not_taken_up(typed: Iterable[TypedOver], memory: Memory) -> tuple[tuple[Problem, ...], tuple[KeptChange, ...]]:
    """A problem and a line of Changes for each such cell."""
    sheets = {line["Heading"]: line["Sheet"] for line in table("changed_on")}
    problems, changes = [], []
    for change in typed:
        sheet = sheets.get(change.heading.partition(" (")[0] or change.sheet, "Job")
        code = "typed-over" if change.heading else "typed-beside"
        asked = problem(code, change.where, change.text, sheet=sheet, heading=change.heading)
        problems.append(asked)
        line = (
            memory.plan + 1,
            change.sheet,
            change.where.cell,
            change.row,
            change.heading,
            "",
            change.text,
            asked.todo,
        )
        changes.append(KeptChange(*line))
    return tuple(problems), tuple(changes)
