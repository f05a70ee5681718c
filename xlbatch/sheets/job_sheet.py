"""Job sheet: the job at a glance, what was assumed, what to do next and what to print."""

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from decimal import Decimal

from xlbatch.check.garment import Garment
from xlbatch.job.job import Job
from xlbatch.paper.cell import Formula, Link, Value
from xlbatch.paper.page import Column, Page
from xlbatch.plan import Plan
from xlbatch.sheets import money, shopping_list
from xlbatch.sheets.inputs import advice
from xlbatch.sheets.time_plan import hours_text
from xlbatch.tables.days import day_text
from xlbatch.tables.sizes import says_whose, size_class
from xlbatch.trade.tables import table
from xlbatch.units import printed_sum, printed_text

COLUMNS = (Column("", 1.75, ("text", "strong")), Column("", 5.75, ("text",)))
NOT_KNOWN = "not known: prices are missing"
MOST_HELD = 30  # rows held back that are listed here; all are on Problems
ASSUMED = ("assumed", "label-not-checked", "price-missing")  # the problems that say what was taken for granted

NEXT_STEPS = (
    ("0  Ask", "Send each group its message and the picture of the same name; they lie in the folder of cut files, "
     "with reminders for groups that have not confirmed or not paid. Write yes into Confirmed on Roster and "
     "what was paid into Paid."),
    ("1  Buy", "Have the Proof read and signed. Then buy what the Shopping list says and tick it off."),
    ("2  Cut", "Run by run from the cut files, a test piece of each film first. Cut each run apart into its strips."),
    ("3  Weed", "Strip by strip, on the Cut list. Keep each strip with its number."),
    ("4  Press", "Batch by batch down the Press log. Then type the results into the log."),
    ("5  Hand out", "One of the Bag tags with each garment. Money says who owes what."),
    ("Later", "At any time: mark what is cut, weeded or spoiled on Cut list, what was pressed on Press log, what was "
     "ordered and came on Shopping list, what was paid on Money; write late joiners and changes into Roster, and drop "
     "this workbook again. What is cut is not cut again, and decals keep their numbers. While nothing is marked as "
     "cut, runs and strips are numbered anew."),
)  # fmt: skip
PAGES_TO_PRINT = (
    "Best",
    "All of the workbook “… - to print” beside this plan, which is made to work from. Or these sheets:",
)
PRINT_THESE = (
    ("Proof", "for whoever ordered: to read and sign"),
    ("Shopping list", "for whoever buys"),
    ("Cut list", "for the cutter and the weeding table"),
    ("Press log", "for the press: each step with its measures, to tick"),
    ("Placement pictures", "for the press: a ruler and a drawing of each kind of garment"),
    ("Bag tags", "for packing: a tag for each garment"),
)


def write(page: Page, plan: Plan, printed: Mapping[str, int]) -> None:
    """The job sheet, section by section. `printed`: how many pages each sheet prints on."""
    page.lay_columns(COLUMNS, base="form")
    page.title(plan.job.settings.job_name or plan.job.path.stem)
    for label, value, look in facts(plan):
        row = page.record((label, value), "fact", least=21)
        page.write(row, 1, value, "form", look, "fact")
    notes = [(problem.where.sheet, advice(problem)) for problem in plan.problems if problem.code in ASSUMED]
    pages = _count(sum(printed[name] for name, _ in PRINT_THESE), "page")
    sections: dict[str, Iterable[tuple[Value, Value]]] = {
        "Held back": list(held(plan)) or [("None", "Every row that is not done or cancelled is planned.")],
        "What to do next": NEXT_STEPS,
        f"Print these: {pages}": [PAGES_TO_PRINT, *to_print(printed)],
        "Assumed": notes or [("Nothing", "Everything used was given in the workbook.")],
        "Cautions": [("", line["Caution"]) for line in table("cautions")],
        "How the list was understood": (*understood(plan), *headings(plan.job)),
    }
    page.break_pages([_section(page, title, rows) for title, rows in sections.items()])
    page.sheet.print_area(0, 0, page.row - 1, page.last)


def to_print(printed: Mapping[str, int]) -> Iterator[tuple[Value, Value]]:
    """The sheets to print, for whom, on how many pages."""
    for name, whom in PRINT_THESE:
        yield Link(name, name), f"{_count(printed[name], 'page')}, {whom}"


def _section(page: Page, title: str, rows: Iterable[tuple[Value, Value]]) -> int:
    """A heading and its rows. Returns the first row."""
    start = page.gap()
    page.cells([title, None], "section", least=24)
    for label, value in rows:
        row = page.record((label, value), least=15)
        if isinstance(label, Link):
            page.write(row, 0, label, "form", "link", "strong")
    return start


def run_at(plan: Plan) -> str:
    """When the plan was made."""
    return f"{plan.run_at:%Y-%m-%d %H:%M}"


def facts(plan: Plan) -> Iterator[tuple[str, Value, str]]:
    """The main figures: label, value, and what it is. Sums of money follow their own sheets."""
    unit = plan.job.settings.length_unit
    film = printed_sum((run.length for run in plan.layout.runs), unit)
    unpriced = shopping_list.unpriced(plan)
    yield "Garments", len(plan.garments), "count"
    yield "People", len({(garment.group.casefold(), garment.who.casefold()) for garment in plan.garments}), "count"
    yield "Decals", len(plan.decals), "count"
    newest = [change for change in plan.memory.changes if change.plan == plan.memory.plan]
    if newest:
        yield "Changes", f"{_count(len(newest), 'change')} since the plan before: see the sheet Changes", "text"
    yield "Film", f"{printed_text(film, unit, up=True)} long, in {_count(len(plan.layout.runs), 'run')}", "text"
    yield "Hand work", f"{hours_text(plan.time.seconds)}, {_days(plan)}", "text"
    yield "To buy", _known(shopping_list.TOTAL, shopping_list.total(plan)), "money"
    if unpriced:
        yield "No price for", f"{_count(unpriced, 'line')} of the Shopping list", "text"
    if plan.money:
        yield "Owed", _known(money.OWED, money.owed(plan)), "money"
    yield from days(plan)
    yield "Planned at", run_at(plan), "text"


def days(plan: Plan) -> Iterator[tuple[str, Value, str]]:
    """The days of the job, in their order; Needed by as it was written where that is no day."""
    dates = plan.dates
    named = (
        ("Answer by", dates.answer_by),
        ("Order by", dates.order_by),
        ("All there by", dates.ready_by),
        ("Cut by", dates.cut_by),
        ("Press by", dates.press_by),
        ("Hand out", dates.hand_out),
    )
    for name, day in named:
        if day:
            yield name, day_text(day), "text"
    if plan.job.settings.needed_by and not dates.hand_out:
        yield "Needed by", plan.job.settings.needed_by, "text"


def _known(name: str, amount: Decimal | str) -> Formula:
    """The sum in the cell of that name, or that it is not known."""
    return Formula(f'IF({name}="","{NOT_KNOWN}",{name})', NOT_KNOWN if amount == "" else amount)


def _count(number: int, noun: str) -> str:
    return f"{number} {noun}{'s' * (number != 1)}"


def _days(plan: Plan) -> str:
    last = max((work.ends_day for work in plan.time.work), default=1)
    return "done on the first day" if last == 1 else f"done on day {last}"


def held(plan: Plan) -> Iterator[tuple[str, str]]:
    """The rows held back, each with the reason."""
    for row in plan.held[:MOST_HELD]:
        reasons = [
            advice(problem) for problem in plan.problems if problem.level == "stop" and row.source.row in problem.rows
        ]
        yield f"No. {row.no}  {row.who}".strip(), "\n".join(dict.fromkeys(reasons))
    if len(plan.held) > MOST_HELD:
        yield "And more", f"{len(plan.held) - MOST_HELD} further rows are held back: see Problems."


def understood(plan: Plan) -> Iterator[tuple[str, str]]:
    """Three garments as they were read: the first, the one with most to print, and the oddest."""
    doubts = Counter(row for problem in plan.problems if problem.level == "check" for row in problem.rows)
    garments = plan.garments
    if garments:
        longest = max(garments, key=lambda garment: len(garment.print_name))
        oddest = max(garments, key=lambda garment: doubts[garment.row.source.row])
        for garment in dict.fromkeys(garment_.no for garment_ in (garments[0], longest, oddest)):
            yield "For example", _in_words(next(garment_ for garment_ in garments if garment_.no == garment))


def _in_words(garment: Garment) -> str:
    """`Tom Vail: adult L, white, prints TOM V, number 4`."""
    row = garment.row
    size = row.size if says_whose(row.size) else f"{size_class(row.size)} {row.size}"
    printed = f"prints {garment.print_name}" if garment.print_name else "no name printed"
    number = f"number {row.number}" if row.number else ""
    parts = (garment.blank.garment, size, garment.color, printed, number)
    return f"{garment.who or 'No name'}: {', '.join(filter(None, parts))}"


def headings(job: Job) -> Iterator[tuple[str, str]]:
    """What each heading was taken for; on each sheet those that are this program's own in one line."""
    for sheet in dict.fromkeys(heading.sheet for heading in job.headings):
        them = [heading for heading in job.headings if heading.sheet == sheet]
        own = [heading.found for heading in them if heading.meaning and _same(heading.found, heading.meaning)]
        if own:
            yield sheet, f"read as they stand: {', '.join(own)}"
        for heading_read in them:
            if heading_read.found not in own:
                yield (
                    sheet,
                    f"{heading_read.found} ({heading_read.cell}): "
                    + (
                        f"read as {heading_read.meaning}"
                        if heading_read.meaning
                        else "not understood; kept, but not used"
                    ),
                )


def _same(title: str, meaning: str) -> bool:
    return title.partition(" (")[0].strip().casefold() == meaning.casefold()
