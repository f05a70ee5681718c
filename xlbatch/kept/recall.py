"""A workbook's memory, and where the work stands by it; of a list, or a plan made before there was one, nothing."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

from xlbatch.check.progress import up_to_date
from xlbatch.check.stock import blank_kind
from xlbatch.job.job import Job
from xlbatch.job.marks import Marks, OrderKey, Stock
from xlbatch.kept.begun import changed_after_pressing, design_changed, redone_under, set_text_changed
from xlbatch.kept.blanks import shelf, used_since
from xlbatch.kept.changes import changes_since
from xlbatch.kept.copied import told_apart
from xlbatch.kept.film_left import film_left, kept_film
from xlbatch.kept.gone import with_deleted
from xlbatch.kept.input_rows import GivenRow, counted_anew
from xlbatch.kept.later import after, numbers_given
from xlbatch.kept.memory import NO_MEMORY, KeptChange, KeptOrder, Memory
from xlbatch.kept.not_taken_up import not_taken_up
from xlbatch.kept.offers import handed_over
from xlbatch.kept.on_the_way import orders_now
from xlbatch.kept.states import Standing, standing
from xlbatch.kept.written import Damaged, from_sheet
from xlbatch.problems import Problem, Where, problem
from xlbatch.roster.read import Reading
from xlbatch.trade.tables import table

Given = Callable[[Job], tuple[GivenRow, ...]]  # the input's rows as text


@dataclass(frozen=True)
class Past:
    """The memory of the plan dropped, with films, orders and strips as they are now; where each piece stands; what to
    ask."""

    memory: Memory
    stood: Standing
    problems: tuple[Problem, ...]  # those of reading among them
    changes: tuple[KeptChange, ...] = ()


def recall(reading: Reading, given: Given) -> Past:
    """What came before. `given` tells the input's rows as text."""
    memory, damaged = _memory(reading)
    if memory is None:
        job, asked = up_to_date(reading.job)
        films = tuple(kept_film(film.name, film.on_hand) for film in job.films)
        nothing = replace(after(NO_MEMORY, reading.after), films=films)
        nothing = after(nothing, numbers_given(reading.marks))
        asked += tuple(_cut_before(reading.marks))
        return Past(nothing, Standing(job, (), {}, {}, ()), reading.problems + damaged + asked)
    memory, given_away = handed_over(after(memory, reading.after), reading.marks.answers)
    reading = told_apart(reading, memory, given(reading.job))
    rows = given(reading.job)
    job, deleted = with_deleted(reading.job, memory)
    stood = standing(job, reading.marks, memory)
    problems = (*reading.problems, *deleted, *stood.problems)
    problems += (*changed_after_pressing(stood), *redone_under(stood, reading.marks))
    if memory.last_run and all(decal.state == "to cut" for decal in stood.decals):
        problems += (problem("anything-cut", Where("Cut list")),)
    changes = changes_since(memory, rows, job.settings)
    problems += (*design_changed(stood, changes), *set_text_changed(stood, changes))
    past = _stocked(reading, rows, memory, stood, problems)
    asked, lines = not_taken_up(reading.typed_over, memory)
    return replace(past, problems=past.problems + asked, changes=(*changes, *given_away, *lines))


def _cut_before(marks: Marks) -> Iterator[Problem]:
    """A question where strips of a plan without a memory are marked as cut."""
    if cut := [mark for mark in marks.strips if mark.cut or mark.weeded]:
        yield problem("cut-not-known", cut[0].source.at("Cut"), count=len(cut))


def _stocked(
    reading: Reading, given: tuple[GivenRow, ...], memory: Memory, stood: Standing, problems: tuple[Problem, ...]
) -> Past:
    """With the blanks, film and supplies that are there and on the way."""
    job, blanks_counted, films_counted = stood.job, *counted_anew(memory, given)
    orders = orders_now(memory.orders, reading.marks.orders)
    short = {blank_kind(*order.key[2:]): order.short for order in memory.orders if order.short}
    there = shelf(job.blanks, orders, used_since(stood.used, memory.garments), short, blanks_counted)
    film = film_left(job, memory.films, memory.strips, stood.decals, orders, films_counted)
    supplies = _supplies(memory, stood)
    kept = []
    for key, order in orders.items():
        on_hand = supplies.get(key, 0) + order.came if key.kind == "supply" else 0
        lacking = there.short.get(blank_kind(*key[2:]), 0) if key.kind == "blank" else 0
        kept.append(KeptOrder(*key, order.on_the_way, on_hand, lacking, order.note))
    stocks = {order.key: Stock(order.on_the_way, order.on_hand, order.note) for order in kept}
    job = replace(job, blanks=there.blanks, films=film.films, orders=stocks)
    open_ = tuple(order for order in kept if order.on_the_way or order.on_hand or order.short or order.note)
    memory = replace(memory, films=film.kept, strips=film.strips, orders=open_)
    return Past(memory, replace(stood, job=job), problems + there.problems + film.problems)


def _supplies(memory: Memory, stood: Standing) -> dict[OrderKey, int]:
    """The supplies that are left: each garment done since takes its own along."""
    done = sum(garment.stage == "done" for garment in stood.garments.values())
    done -= sum(garment.stage == "done" for garment in memory.garments)
    per_garment = {line["Item"]: int(line["How many"]) for line in table("supplies") if line["For each"] == "garment"}
    return {order.key: max(0, order.on_hand - done * per_garment.get(order.item, 0)) for order in memory.orders}


def _memory(reading: Reading) -> tuple[Memory | None, tuple[Problem, ...]]:
    if reading.kept is None:
        return None, ()
    try:
        return from_sheet(reading.kept), ()
    except Damaged:
        return None, (problem("memory-damaged", Where(reading.kept.name)),)
