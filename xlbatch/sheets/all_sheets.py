"""Every returned sheet, in order. To add a sheet: one module, and one line here."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from functools import partial

from xlbatch.job.job import Job
from xlbatch.paper.page import Page
from xlbatch.plan import Plan
from xlbatch.problems import Problem
from xlbatch.sheets import (
    bag_tags,
    changes_sheet,
    cut_list,
    decals,
    film_requirement,
    fonts_sheet,
    inputs,
    job_input,
    kept_sheet,
    money,
    placement,
    placement_pictures,
    press_log,
    problems_sheet,
    proof,
    roll_layout,
    runs,
    shopping_list,
    time_plan,
    what_if_sheet,
)
from xlbatch.sheets.designs_input import DESIGNS
from xlbatch.sheets.drawing_parts_input import DRAWING_PARTS, write_drawing_parts
from xlbatch.sheets.film_input import FILM
from xlbatch.sheets.garments_input import GARMENTS
from xlbatch.sheets.inputs import Input
from xlbatch.sheets.positions_input import POSITIONS
from xlbatch.sheets.press_input import PRESS
from xlbatch.sheets.roster import ROSTER
from xlbatch.sheets.work_times_input import WORK_TIMES

Write = Callable[[Page, Plan], None]
INPUTS: tuple[Input, ...] = (ROSTER, DESIGNS, DRAWING_PARTS, GARMENTS, FILM, PRESS, POSITIONS, WORK_TIMES)
WRITERS = {DRAWING_PARTS.name: write_drawing_parts}  # of input sheets that are more than a table


@dataclass(frozen=True)
class Sheet:
    """One returned sheet: what writes it, how its paper lies, whether it is a form (no gridlines)."""

    name: str
    write: Write
    landscape: bool = False
    form: bool = False
    hidden: bool = False  # not for people
    needed: Callable[[Plan], bool] = lambda _: True


@dataclass(frozen=True)
class InputSheet:
    """A sheet that is read again: written from the job and the problems found in it."""

    name: str
    write: Callable[[Page, Job, Iterable[Problem]], None]
    landscape: bool = True


INPUT_SHEETS: tuple[InputSheet, ...] = (
    InputSheet("Roster", partial(inputs.write, ROSTER)),
    InputSheet("Job", job_input.write, landscape=False),
    *(InputSheet(sheet.name, WRITERS.get(sheet.name, partial(inputs.write, sheet))) for sheet in INPUTS[1:]),
)
TRADE_NUMBERS = ("Positions", "Work times")  # these stand last, and are not printed


def _returned(sheet: InputSheet) -> Sheet:
    return Sheet(sheet.name, lambda page, plan: sheet.write(page, plan.job, plan.problems), sheet.landscape)


def _problems(page: Page, plan: Plan) -> None:
    problems_sheet.write(page, plan.job, plan.problems, INPUTS, answers=plan.memory.answers, notes=plan.memory.notes)


JOB_SHEET = "Job sheet"  # stands first; written last, since it says how many pages the others print on
SHEETS: tuple[Sheet, ...] = (
    Sheet("Problems", _problems, landscape=True),
    Sheet(changes_sheet.NAME, changes_sheet.write, landscape=True, needed=changes_sheet.needed),
    _returned(INPUT_SHEETS[0]),
    Sheet("Proof", proof.write, landscape=True),
    Sheet("Shopping list", shopping_list.write, landscape=True),
    Sheet("Film requirement", film_requirement.write, landscape=True),
    Sheet("Roll layout", roll_layout.write, form=True),
    Sheet("Cut list", cut_list.write),
    Sheet("Placement", placement.write, landscape=True),
    Sheet("Placement pictures", placement_pictures.write, form=True),
    Sheet("Press log", press_log.write, landscape=True),
    Sheet("Time plan", time_plan.write),
    Sheet("Money", money.write),
    Sheet("Bag tags", bag_tags.write, form=True),
    Sheet(what_if_sheet.NAME, what_if_sheet.write, landscape=True, needed=lambda plan: plan.as_planned is not None),
    *(_returned(sheet) for sheet in INPUT_SHEETS[1:] if sheet.name not in TRADE_NUMBERS),
    Sheet(fonts_sheet.NAME, fonts_sheet.write, landscape=True),
    Sheet("Runs", runs.write, landscape=True),
    Sheet("Decals", decals.write, landscape=True),
    *(_returned(sheet) for sheet in INPUT_SHEETS if sheet.name in TRADE_NUMBERS),
    Sheet(kept_sheet.NAME, kept_sheet.write, hidden=True),
)
