"""Turns the rows of the Roster sheet into garments, each with its lasting number."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import cast

from xlbatch.job.job import Paid, RosterRow, Status
from xlbatch.job.source import Source
from xlbatch.problems import Problem
from xlbatch.roster.whose_size import note_whose, said_adult
from xlbatch.tables import cells
from xlbatch.tables.cells import Unclear, shown_value
from xlbatch.tables.line import Line

MOST_ALIKE = 1000  # garments in one row; more is a slip
EXAMPLE_ROW: Mapping[str, str] = {  # stands in a blank workbook; left as it is, it is no one
    "Who": "Ana Novak",
    "Size": "M",
    "Note": "example row: write over it",
}
NO_SIZE_NEEDED = ("done", "cancelled")


@dataclass(frozen=True)
class People:
    """The roster, the highest number given out, and what was wrong."""

    roster: tuple[RosterRow, ...]
    last_no: int
    problems: tuple[Problem, ...]


def read_people(given: Iterable[Line], last_no: int, in_doubt: frozenset[str] | None = None) -> People:
    """One row a garment: `How many` spread out; rows without a number of their own get the next, in sheet order.

    `last_no` is the highest number given out before; numbers are never given twice. `in_doubt` are the garment numbers
    whose size the plan read again asked about; None where it is no plan."""
    rows = tuple(line for line in given if not _is_example(line))
    own = _own_numbers(rows)
    last_no = max(last_no, *own.values(), 0)
    roster: list[RosterRow] = []
    for line_no, line in enumerate(rows):
        many = _how_many(line)
        row = _row(line)
        new = many - (line_no in own)
        numbers = ([own[line_no]] if line_no in own else []) + list(range(last_no + 1, last_no + new + 1))
        last_no += new
        paid = _shares(row.paid, many)
        roster += (replace(row, no=number, paid=part) for number, part in zip(numbers, paid, strict=True))
        _note_number(line, line_no in own, numbers[0])
    settled = frozenset(own.values()) if in_doubt is not None else frozenset()
    note_whose(rows, roster, settled - {number for number in settled if str(number) in (in_doubt or ())})
    adults = said_adult(rows, roster)
    roster = [replace(row, adult_said=row.source.row in adults) for row in roster]
    return People(tuple(roster), last_no, _of_the_list_once(problem for line in rows for problem in line.problems))


def _of_the_list_once(problems: Iterable[Problem]) -> tuple[Problem, ...]:
    """The problems; what is asked about the list is asked once, at the first of its rows, for all of them."""
    told: dict[object, Problem] = {}
    for place, fault in enumerate(problems):
        of_list = fault.code.startswith("list-")
        key = fault.code if of_list else place
        told[key] = replace(told[key], rows=told[key].rows + fault.rows) if key in told else fault
    return tuple(told.values())


def _is_example(line: Line) -> bool:
    return line.cells.keys() == EXAMPLE_ROW.keys() and all(
        shown_value(cell) == EXAMPLE_ROW[heading] for heading, cell in line.cells.items()
    )


def _own_numbers(rows: Iterable[Line]) -> dict[int, int]:
    """The garment numbers the rows bring, by the row's place; a number's second row brings none."""
    first: dict[int, int] = {}
    for line_no, line in enumerate(rows):
        number = garment_no(line)
        if number:
            first.setdefault(number, line_no)
    return {place: number for number, place in first.items()}


def garment_no(line: Line) -> int | None:
    """The garment number a row brings; None where there is none to be read."""
    cell = line.cells.get("Garment no.")
    value = cells.count(cell) if cell and not cell.fault else None
    return None if isinstance(value, Unclear) else value


def _note_number(line: Line, kept: bool, number: int) -> None:
    if not kept and line.given("Garment no."):
        code = "garment-no-twice" if garment_no(line) else "garment-no-unclear"
        line.found(code, "Garment no.", shown_value(line.cells["Garment no."]), number=number)


def _how_many(line: Line) -> int:
    """The garments a row is for; 1 where that is blank or, with its problem, unclear."""
    many = line.count("How many")
    if many is not None and not 1 <= many <= MOST_ALIKE:
        line.found("how-many-unclear", "How many", many)
        line.unclear["How many"] = str(many)
        return 1
    return many or 1


def _shares(paid: Paid, many: int) -> tuple[Paid, ...]:
    """What was paid for a row, shared out among its garments to the cent."""
    if many == 1 or not isinstance(paid, Decimal):
        return (paid,) * many
    cents = int(paid * 100)
    share, cents_over = divmod(cents, many)
    first = Decimal(share + (cents_over > 0)) / 100 + (paid - Decimal(cents) / 100)
    return (first, *(Decimal(share + (share_no < cents_over)) / 100 for share_no in range(1, many)))


def _row(line: Line) -> RosterRow:
    """A row without its number."""
    first, last = line.text("First name"), line.text("Last name")
    status = cast(Status, line.choice("Status"))
    return RosterRow(
        source=_source(line),
        no=0,
        who=line.text("Who") or f"{first} {last}".strip(),
        group=line.text("Group"),
        garment=line.text("Garment"),
        size=_size(line, status),
        color=line.text("Color"),
        design=line.text("Design"),
        print_name=line.text("Print name"),
        number=line.text("Number"),
        note=line.any_text("Note"),
        paid=line.paid("Paid"),
        status=status,
        done_so_far=line.pieces_done("Done so far"),
        first_name=first,
        last_name=last,
        unclear=line.unclear,
        confirmed=bool(line.mark("Confirmed")),
    )


def _source(line: Line) -> Source:
    """Where the row was read; a name in two columns is pointed at by its first."""
    cells_ = line.source.cells
    first = cells_.get("First name") or cells_.get("Last name")
    return replace(line.source, cells={**cells_, "Who": first}) if first and "Who" not in cells_ else line.source


def _size(line: Line, status: Status) -> str:
    size = line.size("Size")
    if not line.given("Size") and "Size" in line.source.cells and status not in NO_SIZE_NEEDED:
        line.found("size-missing", "Size")
    return size
