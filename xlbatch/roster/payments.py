"""Carries what was paid from a plan's Money sheet, where a person wrote it, to the rows of the Roster."""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from decimal import Decimal

from xlbatch.files.raw import Raw
from xlbatch.job.job import Paid
from xlbatch.problems import Problem, problem
from xlbatch.problems.phrases import phrase
from xlbatch.roster.people import garment_no
from xlbatch.tables import cells
from xlbatch.tables.cells import Unclear, shown_value
from xlbatch.tables.line import Line

BEFORE = "Paid in Roster"  # the heading on Money of what the Roster said when the plan was made
EVERYONE, NO_GROUP = "Everyone", "no group"  # what the rows of sums are called there
HALF_A_CENT = 0.005
MOST_TOLD = 20  # payments that are listed; all stand in the Roster


@dataclass(frozen=True)
class _Payment:
    """A Paid on Money that is not what the plan wrote there."""

    line: Line
    now: Paid
    before: Paid  # in the Roster, when the plan was made
    price: Decimal | None

    def agrees(self, paid: Paid | Unclear) -> bool:
        """Whether the Roster says the same: paid in full is the price."""
        return paid == self.now or (self.price is not None and {paid, self.now} == {"yes", self.price})

    @property
    def told(self) -> str:
        who = " ".join(filter(None, (_shown(self.line, "Who"), f"(no. {_shown(self.line, 'Garment no.')})")))
        return f"{who} {_said(self.now)}" + (f", not {_said(self.before)}" if self.before else "")


def paid_on_money(
    people: Iterable[Line], money: tuple[Line, ...], prices: Mapping[int, Decimal]
) -> tuple[tuple[Line, ...], tuple[Problem, ...]]:
    """The roster's lines with what was written under Paid on Money since the plan was made, and what to say of it.

    Where the Roster's Paid was changed too, and to something else, it stands, and the other is told. `prices` are
    those of Money, by garment number."""
    changed, problems = _changed(money, prices)
    lines: list[Line] = []
    moved: list[_Payment] = []
    for line in people:
        payment = changed.pop(garment_no(line), None) if changed else None
        paid = _paid(line, "Paid") if payment else None
        if payment and paid == payment.before:
            line = _with_paid(line, payment)
            moved.append(payment)
        elif payment and not payment.agrees(paid):
            problems.append(_two_ways(line, payment))
        lines.append(line)
    problems += (
        _not_read(payment.line, phrase("no such garment", number=number))
        for number, payment in changed.items()
        if payment.now
    )
    return tuple(lines), (*problems, *_taken_over(moved))


def _changed(
    money: tuple[Line, ...], prices: Mapping[int, Decimal]
) -> tuple[dict[int | None, _Payment], list[Problem]]:
    """The payments that are not as the plan wrote them, by garment number; and those that cannot be read."""
    changed: dict[int | None, _Payment] = {}
    problems = list(_over_sums(money))
    for line in money:
        number = garment_no(line)
        if not number or "Paid" not in line.source.cells:
            continue
        payment = _payment(line, prices.get(number))
        if isinstance(payment, Unclear):
            problems.append(_not_read(line, phrase("no amount")))
        elif payment and number in changed:
            problems.append(_not_read(line, phrase("garment twice", number=number)))
        elif payment:
            changed[number] = payment
    return changed, problems


def _payment(line: Line, price: Decimal | None) -> _Payment | Unclear | None:
    """What the row says now, or None where it is as the plan wrote it: where all was paid, that follows the price."""
    now, before, cell = _paid(line, "Paid"), _paid(line, BEFORE), line.cells.get("Paid")
    before = None if isinstance(before, Unclear) else before
    follows = before == "yes" and (now == price or (cell is not None and cell.fault == "unsaved"))
    if now == before or follows:
        return None
    return now if isinstance(now, Unclear) else _Payment(line, now, before, price)


def _over_sums(money: tuple[Line, ...]) -> Iterator[Problem]:
    """What stands under Paid in a row without a garment, and is not the sum that a plan has there."""
    sums: dict[tuple[str, str], float] = defaultdict(float)
    for line in filter(garment_no, money):
        for payer in ((EVERYONE, ""), ("", _shown(line, "Group") or NO_GROUP)):
            sums[payer] += _added(line.cells.get("Paid"))
    for line in money:
        cell, payer = line.cells.get("Paid"), (_shown(line, "Who"), _shown(line, "Group"))
        if cell is None or cell.fault or line.given("Garment no."):
            continue
        if isinstance(cell.value, str) or abs(_added(cell) - sums[payer]) > HALF_A_CENT:
            yield _not_read(line, phrase("row of sums"))


def _added(cell: Raw | None) -> float:
    """What a cell adds to a spreadsheet's sum."""
    if cell is None or isinstance(cell.value, bool) or not isinstance(cell.value, int | float):
        return 0.0
    return cell.value


def _with_paid(line: Line, payment: _Payment) -> Line:
    others = {heading: cell for heading, cell in line.cells.items() if heading != "Paid"}
    return replace(line, cells=others | {"Paid": payment.line.cells["Paid"]} if payment.now is not None else others)


def _taken_over(moved: list[_Payment]) -> tuple[Problem, ...]:
    """One note for all, those first that had paid before."""
    if not moved:
        return ()
    first, *_ = ordered = sorted(moved, key=lambda payment: payment.before is None)
    more = [f"and {len(ordered) - MOST_TOLD} more"] if len(ordered) > MOST_TOLD else []
    what = "; ".join([*(payment.told for payment in ordered[:MOST_TOLD]), *more])
    return (problem("paid-taken-over", first.line.source.at("Paid"), what=what),)


def _two_ways(line: Line, payment: _Payment) -> Problem:
    cell = payment.line.source.at("Paid").cell
    shown = _shown(line, "Paid") or "nothing"
    return problem("paid-two-ways", line.source.at("Paid"), shown, other=_said(payment.now), cell=cell)


def _not_read(line: Line, why: str) -> Problem:
    return problem("paid-not-read", line.source.at("Paid"), _shown(line, "Paid") or "the formula", why=why)


def _paid(line: Line, heading: str) -> Paid | Unclear:
    cell = line.cells.get(heading)
    if cell is None:
        return None
    return Unclear() if cell.fault else cells.paid(cell)


def _shown(line: Line, heading: str) -> str:
    cell = line.cells.get(heading)
    return shown_value(cell) if cell else ""


def _said(paid: Paid) -> str:
    return f"{paid:.2f}" if isinstance(paid, Decimal) else paid or "nothing"
