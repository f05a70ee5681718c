"""What a plan comes to, in three lines: for the window and the console."""

from collections.abc import Iterator

from xlbatch.paper.style import currency_sign
from xlbatch.plan import Plan
from xlbatch.sheets.shopping_list import total, unpriced
from xlbatch.sheets.time_plan import hours_text
from xlbatch.units import printed_sum, printed_text


def in_short(plan: Plan, to_print: str) -> tuple[str, str, str]:
    """The amounts, what was assumed, and what to print: `to_print` names the workbook of pages to print, if there is
    one."""
    return ", ".join(_amounts(plan)) + ".", _assumed(plan), _print_these(plan, to_print)


def _amounts(plan: Plan) -> Iterator[str]:
    settings = plan.job.settings
    film = printed_sum((run.length for run in plan.layout.runs), settings.length_unit)
    yield _count(len(plan.garments), "garment")
    yield f"{printed_text(film, settings.length_unit)} of film in {_count(len(plan.layout.runs), 'run')}"
    cost, without = total(plan), unpriced(plan)
    if cost != "":
        yield f"{currency_sign(settings)}{cost:,.2f} to buy" + (" so far (prices are missing)" if without else "")
    elif without:
        yield "cost not known (no prices given)"
    yield f"{hours_text(plan.time.seconds)} of hand work"


def _assumed(plan: Plan) -> str:
    """The assumptions in one line; each has its cell in the plan."""
    notes = [
        problem.wrong.partition(": this is used: ")[2].rstrip(".")
        for problem in plan.problems
        if problem.code == "assumed"
    ]
    if not any(notes):
        return "Nothing was assumed: everything used was given."
    return f"Assumed, each in a cell you can change: {'; '.join(notes)}."


def _print_these(plan: Plan, to_print: str) -> str:
    if not to_print:
        return "To print: the sheets that the first page of the plan names."
    proof = "; the proof first, the rest when it is signed" if plan.layout.runs else ""  # without runs all is cut
    return f"To print: the whole of {to_print}{proof}."


def _count(number: int, noun: str) -> str:
    return f"{number:,} {noun}{'s' * (number != 1)}"
