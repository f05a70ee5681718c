"""A problem found in a person's workbook: a value with its sheet and cell, never an exception."""

from dataclasses import dataclass
from typing import NamedTuple

from xlbatch.problems.kind import Kind, Level
from xlbatch.problems.kinds import KINDS


class Where(NamedTuple):
    """A cell of the person's workbook: sheet name and A1 reference ("" where no one cell is meant)."""

    sheet: str
    cell: str = ""


@dataclass(frozen=True)
class Problem:
    """One finding. `rows` are the Roster rows it holds back or is about (sheet row numbers)."""

    kind: Kind
    where: Where
    found: str
    wrong: str
    todo: str
    suggestion: str = ""
    rows: tuple[int, ...] = ()
    who: str = ""  # the people it is about

    @property
    def code(self) -> str:
        return self.kind.code

    @property
    def level(self) -> Level:
        return self.kind.level

    @property
    def sentence(self) -> str:
        """The whole finding in one line, for a console or a window."""
        place = " ".join(part for part in self.where if part) + (f" ({self.who})" if self.who else "")
        hint = f" Did you mean {self.suggestion}?" if self.suggestion else ""
        return f"{place}: {self.wrong} {self.todo}{hint}".removeprefix(": ")


_BY_CODE = {kind.code: kind for kind in KINDS}


def problem(
    code: str, where: Where, found: object = "", *, suggestion: str = "", rows: tuple[int, ...] = (), **facts: object
) -> Problem:
    """A problem of the kind `code`, its texts filled in from `found` and `facts`. Raises KeyError if one lacks."""
    kind = _BY_CODE[code]
    facts["found"] = found
    return Problem(kind, where, str(found), kind.wrong.format_map(facts), kind.todo.format_map(facts), suggestion, rows)
