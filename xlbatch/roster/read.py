"""Turns a workbook or .csv into a Job: typed rows, settings with every default filled in, and problems."""

import os
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from xlbatch.files.book import open_book
from xlbatch.files.raw import RawSheet, UnreadableFile
from xlbatch.job.job import Job, Settings
from xlbatch.job.marks import NO_MARKS, Beside, Marks, Result, StepMark, StripMark
from xlbatch.problems import Problem, Where, problem
from xlbatch.roster.cut_marks import read_strips
from xlbatch.roster.designs import read_designs
from xlbatch.roster.drawing_parts import read_drawing_parts
from xlbatch.roster.films import read_films
from xlbatch.roster.garments import read_garments
from xlbatch.roster.meant import design_meant, garments_meant
from xlbatch.roster.orders import read_orders
from xlbatch.roster.own_words import in_own_words
from xlbatch.roster.payments import paid_on_money
from xlbatch.roster.people import People, read_people
from xlbatch.roster.positions import read_positions
from xlbatch.roster.press_results import garments_in, read_steps
from xlbatch.roster.presses import read_presses
from xlbatch.roster.results import read_deliveries, read_prices
from xlbatch.roster.said_of_problems import read_answers, read_checked, sizes_in_doubt
from xlbatch.roster.settings import read_settings
from xlbatch.roster.unused_cells import unused_cells
from xlbatch.roster.work_times import read_work_times
from xlbatch.roster.written_beside import read_beside
from xlbatch.saving import base_name
from xlbatch.seldom_searched import seldom_searched
from xlbatch.tables.input_table import Tables
from xlbatch.tables.input_tables import INPUT, NOT_OPENED, find_tables
from xlbatch.tables.line import Line, Units
from xlbatch.tables.rows import lines
from xlbatch.tables.typed_over import TypedOver, typed_over

__all__ = ["Reading", "UnreadableFile", "blank_job", "read"]

# sheets whose bad rows are left out, and kept as typed
_MADE_OF_ROWS = ("Designs", "Garments", "Film", "Press", "Drawing parts", "Positions", "Work times")


@dataclass(frozen=True)
class Reading:
    """What a workbook says, and what is wrong with it."""

    job: Job
    problems: tuple[Problem, ...]
    marks: Marks = NO_MARKS
    kept: RawSheet | None = None  # a plan's memory, as it stands in the workbook
    typed_over: tuple[TypedOver, ...] = ()  # cells of a plan's own sheets that are not read back
    after: tuple[int, int, int] = (0, 0, 0)  # the last decal, run and strip number that another plan has given out


@seldom_searched()
def read(path: Path) -> Reading | UnreadableFile:
    """The job in a workbook or .csv, or why it cannot be read. Never raises for what a person may drop."""
    sheets = open_book(path, NOT_OPENED)
    return sheets if isinstance(sheets, UnreadableFile) else read_sheets(path, sheets)


def read_sheets(path: Path, sheets: Iterable[RawSheet]) -> Reading:
    """The job in the sheets of a workbook."""
    return _reading(path, find_tables(sheets))


def blank_job(path: Path, *, metric: bool = False) -> Job:
    """A job with no one on its roster: every default, to write a fresh workbook from; in cm, °C and for A4 paper if
    `metric`, the settings' lengths then whole millimeters."""
    job = _reading(path, find_tables(())).job
    return replace(job, settings=_in_metric(job.settings)) if metric else job


def _job_name(path: Path) -> str:
    """The usual name of the job: its file's, with what no one can read in it shown as such."""
    return os.fsencode(base_name(path)).decode(errors="replace")


def _in_metric(settings: Settings) -> Settings:
    def whole(mm: float) -> float:
        return float(round(mm))

    return replace(
        settings,
        length_unit="cm",
        temperature_unit="°C",
        paper="A4",
        currency="€",
        least_letter_height=whole(settings.least_letter_height),
        round_sizes_to=whole(settings.round_sizes_to),
        gap_in_drawing=whole(settings.gap_in_drawing),
        clear_of_side=whole(settings.clear_of_side),
        clear_of_hem=whole(settings.clear_of_hem),
        clear_of_sleeve_edge=whole(settings.clear_of_sleeve_edge),
        gap=whole(settings.gap),
        end_margin=whole(settings.end_margin),
        longest_cut=whole(settings.longest_cut),
        handy_strip=whole(settings.handy_strip),
        longest_strip=whole(settings.longest_strip),
    )


def _reading(path: Path, tables: Tables) -> Reading:
    by_meaning = tables.by_meaning
    settings, setting_cells, setting_problems = read_settings(by_meaning.get("Job"), _job_name(path))
    problems = tables.problems + setting_problems
    units = Units(settings.length_unit, settings.temperature_unit)

    of = {
        meaning: tuple(lines(by_meaning[meaning], units)) if meaning in by_meaning and meaning != "Roster" else ()
        for meaning in INPUT
    }
    prices, costs, told, of_prices = read_prices(of["Money"])
    listed = (in_own_words(line) for table in tables.list_ for line in lines(table, units))
    paid, of_paid = paid_on_money(listed, of["Money"], prices)
    people = read_people(paid, settings.last_no, sizes_in_doubt(of["Problems"]))
    usual, of_usual = design_meant(
        of["Designs"], people.roster, settings.usual_design, chosen="Usual design" in setting_cells
    )
    settings = replace(settings, usual_design=usual, last_no=people.last_no)
    designs, of_designs = read_designs(of["Designs"], people.roster, settings.usual_design)
    blanks, of_blanks = read_garments(of["Garments"])
    roster, of_roster = garments_meant(people.roster, blanks)
    films, of_films = read_films(of["Film"])
    presses, of_presses = read_presses(of["Press"])
    strips, of_strips = read_strips(of["Cut list"])
    steps, of_steps = read_steps(of["Press log"])
    positions, of_positions = read_positions(of["Positions"])
    drawing_parts, of_parts = read_drawing_parts(of["Drawing parts"], designs, people.roster, usual)
    work_times, of_work_times = read_work_times(of["Work times"])
    deliveries, film_came, of_deliveries = read_deliveries(of["Shopping list"])
    # a plan made before pieces were joined stays so
    unjoined = any(step.outcome for step in steps) and "Join pieces" not in setting_cells
    settings = replace(settings, join=settings.join and not unjoined)
    beside = tuple(read_beside(of))
    job = Job(
        path=path,
        settings=settings,
        setting_cells=setting_cells,
        roster=roster,
        designs=designs,
        blanks=blanks,
        films=films,
        presses=presses,
        results=tuple(Result(step.garment_no, step.piece, step.outcome) for step in steps if step.outcome),
        in_log=garments_in(steps),
        positions=positions,
        drawing_parts=drawing_parts,
        work_times=work_times,
        deliveries=deliveries,
        film_came=film_came,
        prices=prices,
        costs=costs,
        told=told,
        unread={sheet: tuple(line.as_typed for line in of[sheet] if line.stopped) for sheet in _MADE_OF_ROWS},
        headings=tables.headings,
        beside_settings=tuple(note for note in beside if note.sheet == "Job"),
    )
    no_list = _no_list(tables, people)
    problems = tuple(fault for fault in problems if fault.code != "sheet-unknown" or fault.where not in no_list)
    problems += (*no_list.values(), *people.problems, *unused_cells(tables.list_, roster, tables.problems))
    problems += of_roster + of_usual
    problems += of_designs + of_blanks + of_films + of_presses + of_positions + of_parts + of_work_times
    problems += of_strips + of_steps + of_deliveries + of_prices + of_paid
    return Reading(
        job,
        problems,
        _marks(of, strips, steps, beside),
        tables.kept,
        tuple(typed_over(tables.kept, tables.watched)) if tables.kept else (),
    )


def _marks(
    of: Mapping[str, tuple[Line, ...]],
    strips: tuple[StripMark, ...],
    steps: tuple[StepMark, ...],
    beside: tuple[Beside, ...],
) -> Marks:
    """What people wrote into a plan."""
    return Marks(
        strips,
        steps,
        read_orders(of["Shopping list"]),
        read_answers(of["Problems"]),
        read_checked(of["Proof"]),
        tuple(note for note in beside if note.sheet != "Job"),
    )


def _no_list(tables: Tables, people: People) -> dict[Where, Problem]:
    """The problem, by its place, of a workbook without a list, or with one that has no sizes."""
    lists = tables.list_
    sized = (table for table in lists if "Size" in table.columns or table.sizes or table.wearers)
    if people.roster and any(table.rows for table in sized):
        return {}
    if lists:
        where = lists[0].where(1, lists[0].heading_row)
        return {where: problem("no-rows", where, rows=tuple(t.counted_on(row) for t in lists for row in t.rows))}
    unknown = next((fault.where for fault in tables.problems if fault.code == "sheet-unknown"), None)
    where = unknown or Where("Roster")
    return {where: problem("list-not-found" if unknown else "no-rows", where)}
