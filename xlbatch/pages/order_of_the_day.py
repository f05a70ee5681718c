"""Order of the day: the job at a glance, who is held back and why, what to do in what order with which pages."""

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence

from xlbatch.job.job import RosterRow
from xlbatch.kept.changes import ADDED, DELETED
from xlbatch.kept.memory import KeptChange
from xlbatch.pages import buy_and_check_in, cut_and_weed, hand_out, placement_page, press_cards, proof_page, tag_page
from xlbatch.pages.hand_out import summed
from xlbatch.pages.leaf import ACROSS, Leaf, Span
from xlbatch.pages.page_looks import ACCENT, BAND, FINE, HAIRLINE, HEAD, KEY, PLAIN, THIN, TITLE, Look, Text
from xlbatch.pages.work import Work, listed
from xlbatch.paper.style import BOX, currency_sign
from xlbatch.schedule.hours import Stage
from xlbatch.sheets.film_requirement import film_length
from xlbatch.sheets.inputs import advice
from xlbatch.sheets.time_plan import hours_text
from xlbatch.tables.days import day_text
from xlbatch.trade.tables import table
from xlbatch.units import film_text, long_text

NAME = "Order of the day"
TELLS = "Whoever runs the job: read this, have the proof signed, then hand out the other pages."
CODE_POINT = re.compile(r" \(U\+[0-9A-F]{4,6}\)")  # is of use beside a letter only where that looks like another
MOST_LINES, MOST_NAMES = 8, 8  # reasons to hold back or to ask; people named with each
PASSED = "Days on gray have passed: ask for quick delivery, or change Needed by on the plan’s sheet Job."
ASSUMED = ("assumed", "label-not-checked", "price-missing")  # what was taken for granted

Pages = Mapping[str, tuple[int, int]]  # the first and the last page of each sheet


def write(leaf: Leaf, work: Work, pages: Pages, plan_name: str) -> None:
    """Totals, exceptions, the steps of the day, cautions."""
    _write_totals(leaf, work)
    _write_days(leaf, work)
    _write_changes(leaf, work)
    _write_people(leaf, "Held back: not in these pages", _reasons(work, "stop"))
    _write_people(leaf, "Ask before buying", _reasons(work, "check"))
    _write_steps(leaf, work, pages, plan_name)
    if assumed := list(_assumed(work)):
        leaf.head("Assumed: each can be changed in the plan")
        leaf.line(" ".join(assumed))
    leaf.head("Cautions")
    leaf.line("  ".join(f"• {line['Caution']}" for line in table("cautions")))


def _write_totals(leaf: Leaf, work: Work) -> None:
    plan = work.plan
    people = len({(garment.group.casefold(), garment.who.casefold()) for garment in plan.garments})
    groups = len({garment.group.casefold() for garment in plan.garments if garment.group})
    of = f"{people} people" + (f", {groups} groups" if groups else "")
    sign = currency_sign(plan.job.settings)
    cost = buy_and_check_in.total(plan.shopping)
    owed = summed(work.money[no].owed for no in work.garments)
    facts = [
        (str(len(plan.garments)), f"garments, {of}"),
        (str(len(plan.decals)), "pieces of film"),
        (hours_text(plan.time.seconds), "of hand work"),
        ("–" if cost is None else f"{sign}{cost:,.2f}", "to buy" if cost is not None else "to buy: no prices given"),
        ("–" if owed is None else f"{sign}{owed:,.2f}", "still owed" if owed is not None else "owed: no prices given"),
    ]
    box = Look(top=THIN, bottom=THIN, left=THIN, right=THIN, align="center")
    leaf.row(6)
    widths = (15, 10, 12, 12, 11)
    leaf.row(40, *(Span(width, (Text(big, TITLE, bold=True), Text(f"\n{small}", FINE)), box)
                   for width, (big, small) in zip(widths, facts, strict=True)))  # fmt: skip
    for need in plan.layout.needs:
        length = film_length(plan, need.film)
        rolls = ", ".join(f"{count} × {long_text(roll.length, work.unit)}" for count, roll in need.rolls)
        says = f"   {need.runs} run{'s' * (need.runs != 1)}; {f'buy {rolls}' if rolls else 'enough on hand'}"
        film = Text(f"{need.film.name}: {film_text(length, work.unit)}", KEY, bold=True)
        leaf.row(20, Span(ACROSS, (film, Text(says)),
                          box.but(align="left", indent=1)))  # fmt: skip


def _assumed(work: Work) -> Iterator[str]:
    """What was taken for granted: the things alone where the problem names them."""
    for problem in work.plan.problems:
        if problem.code in ASSUMED:
            _, named, things = problem.wrong.partition(": this is used: ")
            yield things[:1].upper() + things[1:] if named else problem.wrong


def _write_days(leaf: Leaf, work: Work) -> None:
    """The days as far as they are known, side by side; those that have passed say so, on gray."""
    dates, today = work.plan.dates, work.plan.run_at.date()
    days = (
        ("Answers by", dates.answer_by), ("Order by", dates.order_by), ("All here by", dates.ready_by),
        ("Cut by", dates.cut_by), ("Press by", dates.press_by), ("Hand out", dates.hand_out),
    )  # fmt: skip
    known = [(what, day) for what, day in days if day]
    cells = []
    for what, day in known:
        label = f"{what}: passed!" if day < today else what
        weekday, _, date = day_text(day).rpartition(" ")[0].partition(" ")
        cells.append((Text(label, FINE), Text(f"\n{weekday}"), Text(f"\n{date}", bold=True)))
    if cells:
        box = Look(bottom=THIN, left=THIN, right=THIN, align="center")
        fills = [BAND if day < today else "" for _, day in known]
        wide = ACROSS // len(cells)
        leaf.row(40, *(Span(wide, cell, box.but(fill=fill)) for cell, fill in zip(cells, fills, strict=True)))
    if any(day < today for _, day in known):
        leaf.line(PASSED, Look(bold=True, color=ACCENT))


def _reasons(work: Work, level: str) -> Mapping[str, Mapping[str, RosterRow]]:
    """What is wrong, like ones once in the words of the first, and the rows it is about, by who; only what is about
    people."""
    rows = {row.source.row: row for row in reversed(work.plan.job.roster)}
    words: dict[str, str] = {}
    rows_by_reason: dict[str, dict[str, RosterRow]] = {}
    for problem in work.plan.problems:
        them = [rows[row] for row in problem.rows if row in rows]
        if problem.level == level and them and not (problem.where.sheet == "Designs" and level == "check"):
            text = words.setdefault(problem.code, CODE_POINT.sub("", advice(problem)))
            names = {f"{row.who or 'no name'} (no. {row.no}{f', {row.size}' * bool(row.size)})": row for row in them}
            rows_by_reason.setdefault(text, {}).update(names)
    return rows_by_reason


def _write_changes(leaf: Leaf, work: Work) -> None:
    """What is not as in the plan before, by whose it is, and what follows from it."""
    memory = work.plan.memory
    of: dict[str, dict[str, str]] = {}  # by whose: what is new, and what follows
    for change in (change for change in memory.changes if change.plan == memory.plan):
        of.setdefault(change.who or change.sheet, {})[_change_text(change)] = change.follows
    if not of:
        return
    leaf.head("Changed since the plan before")
    for who, changes in list(of.items())[:MOST_LINES]:
        follows = "; ".join(filter(None, dict.fromkeys(changes.values())))
        leaf.line((Text(f"{who}: ", bold=True), Text("; ".join(changes)), Text(f" → {follows}" if follows else "")))
    if len(of) > MOST_LINES:
        leaf.line(f"and {len(of) - MOST_LINES} more: see Changes in the plan.")


def _change_text(change: KeptChange) -> str:
    """`Size M, now L`."""
    if change.what in (ADDED, DELETED):
        told = "" if change.sheet == "Roster" else f" ({change.now or change.before})"
        return change.what.removeprefix("row ") + told
    what = f"{change.what} " * (change.what != "Value")  # a setting's value
    return f"{what}{change.before or 'blank'}, now {change.now or 'blank'}"


def _write_people(leaf: Leaf, title: str, reasons: Mapping[str, Mapping[str, RosterRow]]) -> None:
    """The people by what is the matter, the reason once."""
    if not reasons:
        return
    leaf.head(title)
    for text, rows in list(reasons.items())[:MOST_LINES]:
        names = listed(rows) if len(rows) <= MOST_NAMES else f"{len(rows)} people"
        leaf.line((Text(f"{names}: ", bold=True), Text(text)))
    if len(reasons) > MOST_LINES:
        leaf.line(f"and {len(reasons) - MOST_LINES} more: see Problems in the plan.")


def _write_steps(leaf: Leaf, work: Work, pages: Pages, plan_name: str) -> None:
    leaf.head("In this order")
    widths = (3, 35, 6, 8, 8)
    heads = ("", "Do", "Page", "Whose hands", "Time, done")
    looks = [HEAD.but(size=FINE, align=align) for align in ("left", "left", "center", "center", "right")]
    leaf.row(13, *map(Span, widths, heads, looks), joined=True)
    for step_no, (do, how, sheets, hands, seconds) in enumerate(_steps(work, pages, plan_name), 1):
        numbers = _range([pages[sheet] for sheet in sheets if sheet in pages])
        look = PLAIN.but(bottom=HAIRLINE, fill=BAND if do.startswith("FIRST") else "")
        time = f"{hours_text(seconds)}  " if seconds else ""
        leaf.row(
            30,
            Span(3, step_no, look.but(size=TITLE, bold=True, color=ACCENT)),
            Span(35, (Text(do, bold=True), Text(f"\n{how}")), look),
            Span(6, numbers, look.but(size=KEY, bold=True, align="center")),
            Span(8, hands, look.but(align="center")),
            Span(8, f"{time}{BOX}", look.but(align="right")),
        )


def _range(pages: Sequence[tuple[int, int]]) -> str:
    """`4` or `4–7`."""
    if not pages:
        return ""
    first, last = min(first for first, _ in pages), max(last for _, last in pages)
    return str(first) if first == last else f"{first}–{last}"


def _steps(work: Work, pages: Pages, plan_name: str) -> Iterator[tuple[str, str, Sequence[str], str, float]]:
    """What to do, how, the sheets for it, whose hands it needs, and the seconds it takes (0: not known)."""
    cut, weed, press = (_seconds(work, stage) for stage in ("cut", "weed", "press"))
    making = (cut_and_weed.NAME, press_cards.NAME)
    batches = list(dict.fromkeys(step.batch for step in work.plan.pressing.steps))
    if proof_page.NAME in pages:
        yield "Have the proof read and signed", "Nothing is bought or cut before.", (proof_page.NAME,), "who ordered", 0
    if buy_and_check_in.NAME in pages:
        yield "Buy, then check in what comes", "Only good ones count as arrived.", (buy_and_check_in.NAME,), "buyer", 0
    if len(batches) > 1:
        first = dict.fromkeys(s.place.garment.no for s in work.plan.pressing.steps if s.batch == batches[0])
        strips = [(run, s) for run in work.plan.layout.runs for s in run.strips if s.batch == batches[0]]
        runs = listed(dict.fromkeys(f"run {run.no}" for run, _ in strips))
        done = [_seconds(work, stage, batches[:1]) for stage in ("weed", "press")]
        begun = sum(w.seconds for w in work.plan.time.work if w.label in {f"Run {run.no}" for run, _ in strips})
        before = f"Cut {runs}, weed strip {batches[0]}" if strips else "Take its strips, cut before"
        how = (
            f"{before}, press no. {listed(first)}. Let them cool and look: edges down, "
            "place right, color right? Only then go on."
        )
        yield "FIRST BATCH, all the way through", how, (*making, placement_page.NAME), "all hands", begun + sum(done)
        cut, weed, press = max(cut - begun, 0), weed - done[0], press - done[1]
    if cut_and_weed.NAME in pages:
        rest = "the rest" if len(batches) > 1 else "everything"
        yield (
            f"{'Cut and weed' if work.plan.layout.runs else 'Weed'} {rest}",
            "Run by run, strip by strip; keep the strips numbered.",
            making[:1],
            "cutter, weeder",
            cut + weed,
        )
    yield (
        "Press batch by batch",
        "Down the cards; tick each piece.",
        (press_cards.NAME, placement_page.NAME),
        "press",
        press,
    )
    yield (
        "Bag, hand out, collect",
        f"A tag in each bag. Type the results into “{plan_name}”.",
        (hand_out.NAME, tag_page.NAME),
        "packer",
        0,
    )


def _seconds(work: Work, stage: Stage, batches: Iterable[int] | None = None) -> float:
    """The hand work of a stage, of some batches or of all."""
    wanted = None if batches is None else set(batches)
    return sum(
        work_.seconds
        for work_ in work.plan.time.work
        if work_.stage == stage and (wanted is None or work_.batch in wanted)
    )
