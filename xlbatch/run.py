"""The whole flow: a workbook in, a plan and its cut files out. One call a stage.

The stages are imported where they are called, so that starting, --help and a file that can't be read stay quick.
"""

from collections.abc import Iterable
from dataclasses import replace
from datetime import datetime
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Literal

from xlbatch.fault import Disagreement
from xlbatch.how_far import alive, hear, listening
from xlbatch.outcome import (
    DRAWING,
    LAYING,
    ORDERING,
    PLACING,
    READING,
    STAGES,
    WRITING,
    Offer,
    Options,
    Outcome,
    Progress,
    Step,
)
from xlbatch.problems import Problem
from xlbatch.saving import CannotSave, base_name, save_plan, save_problems
from xlbatch.seldom_searched import seldom_searched

if TYPE_CHECKING:
    from xlbatch.check.garment import Garment
    from xlbatch.files.raw import UnreadableFile
    from xlbatch.job.job import Job
    from xlbatch.kept.lasting import Numbered
    from xlbatch.kept.memory import KeptDecal
    from xlbatch.kept.recall import Past
    from xlbatch.placement.place import Place
    from xlbatch.plan import Plan
    from xlbatch.roster.read import Reading

__all__ = ["STAGES", "Offer", "Options", "Outcome", "Progress", "Step", "make_plan", "run"]


def run(workbook: Path, options: Options, progress: Progress, now: datetime) -> Outcome:
    """Plans one workbook: reads, plans, writes. The input is never changed."""
    with listening(), seldom_searched():
        return _run(workbook, options, progress, now)


def _run(workbook: Path, options: Options, progress: Progress, now: datetime) -> Outcome:
    _begin(READING, progress)
    from xlbatch.kept.later import later_plan, numbered_after, sentence
    from xlbatch.roster.read import UnreadableFile, read

    alive()  # loading these takes a while, as does what is loaded below
    reading = _with_answers(workbook, options.forms) if options.forms else read(workbook)
    if isinstance(reading, UnreadableFile):
        return Outcome(3, reading.sentence)
    if later := later_plan(workbook, base_name(workbook), reading):
        if not options.anew:
            offers = (Offer("Plan it anyway", replace(options, anew=True)),)
            return Outcome(3, sentence(workbook, reading, later), offers=offers)
        reading = numbered_after(reading, later)
    plan = make_plan(reading, options.effort, progress, now)
    if options.what_if and plan.garments:
        plan = _with_changes_tried(reading, plan, options.effort, now)
    _begin(WRITING, progress)
    try:
        outcome = _write(plan, options.folder or workbook.parent, base_name(workbook), options.check_only, progress)
        again = (Offer("What if", replace(options, what_if=True)),) if outcome.cut_files and not options.what_if else ()
        return replace(outcome, offers=(*outcome.offers, *again))
    except CannotSave as cannot:
        return Outcome(3, str(cannot), unsaved=True)


def _begin(stage: str, progress: Progress) -> None:
    """Says that a stage begins, and has its counts told."""
    progress(Step(stage))
    hear(lambda done, of: progress(Step(stage, done, of)))


def _with_answers(workbook: Path, forms: tuple[Path, ...]) -> "Reading | UnreadableFile":
    from xlbatch.sign_up.together import read_together

    return read_together(workbook, forms)


def _with_changes_tried(reading: "Reading", plan: "Plan", effort: int, now: datetime) -> "Plan":
    """The plan with what single changes would save."""
    from xlbatch.what_if.try_changes import figures, tried

    return replace(
        plan, as_planned=figures(plan), what_if=tried(reading, plan, partial(_planned_quietly, effort=effort, now=now))
    )


def _planned_quietly(reading: "Reading", effort: int, now: datetime) -> "Plan":
    return make_plan(reading, effort, lambda _: None, now)


def make_plan(reading: "Reading", effort: int, progress: Progress, now: datetime) -> "Plan":
    """Everything computed for one workbook, from the rows read to the money."""
    from xlbatch.check.check import check
    from xlbatch.check.planned_days import planned_days
    from xlbatch.check.worst_first import worst_first
    from xlbatch.film.lay import lay
    from xlbatch.kept.begun import as_pressed
    from xlbatch.kept.film_left import with_coming
    from xlbatch.kept.offers import not_needed, offers
    from xlbatch.kept.recall import recall
    from xlbatch.kept.remember import remember
    from xlbatch.kept.renumber import press_batches, renumbered, retired
    from xlbatch.kept.tell import Planned, tell
    from xlbatch.parts.take_up import with_drawings
    from xlbatch.plan import Plan
    from xlbatch.press.order import press_order
    from xlbatch.schedule.dates import dates
    from xlbatch.schedule.late import late
    from xlbatch.schedule.plan_time import plan_time
    from xlbatch.sheets.given import given_rows
    from xlbatch.sheets.own_headings import own_headings
    from xlbatch.shopping.buy import shopping_list, shopping_problems, spare_choices
    from xlbatch.shopping.prices import money

    alive()
    job, of_drawings = with_drawings(reading.job)
    reading = replace(reading, job=job, problems=reading.problems + of_drawings)
    past = recall(reading, given_rows)
    memory, stood = past.memory, past.stood
    job, days, of_days = planned_days(as_pressed(stood.job, stood.garments), now.date())
    garments, problems = check(job, _held(past.problems))
    problems = past.problems + of_days + problems

    _begin(DRAWING, progress)
    garments, places, numbers, problems = _placed(job, garments, past, problems)
    decals = numbers.decals

    _begin(LAYING, progress)  # only what is not cut yet
    given = retired(memory, stood.decals)
    layout = renumbered(lay(with_coming(job), garments, numbers.to_cut, effort), *given)

    _begin(ORDERING, progress)  # every step still to do
    batches = press_batches([garment.no for garment in garments], layout.batches, numbers.ready)
    pressing = press_order(job, batches, places)
    time = plan_time(job, layout, pressing)
    shopping = shopping_list(job, garments, layout)
    backward = dates(days, job.settings, time, {line.kind for line in shopping if line.buy})
    problems += shopping_problems(job, shopping, garments) + late(job, days, backward, now.date())
    unused = tuple(old for old in stood.decals if old.ready and old.id not in numbers.ready)
    offered = offers(unused, numbers.to_cut)
    problems += tuple(not_needed(stood, _of_rows(unused, job, _held(problems)), offered))
    accounts = money(job, garments, decals, layout, shopping, time)
    now_planned = Planned(job, garments, layout, pressing, shopping, accounts)
    problems, told = tell(past, reading.marks, problems, now_planned, offered, own_headings())
    job = replace(job, roster=stood.job.roster)
    return Plan(
        job=job,
        problems=worst_first(job, problems),
        held=tuple(row for row in job.roster if row.source.row in _held(problems) and not row.status),
        garments=garments,
        decals=decals,
        places=places,
        layout=layout,
        pressing=pressing,
        time=time,
        shopping=shopping,
        dates=backward,
        spare_choices=spare_choices(job, garments),
        money=accounts,
        run_at=now,
        unused=frozenset(old.id for old in unused),
        memory=remember(memory, stood, numbers, layout, batches, garments, given, given_rows(job), told),
    )


def _placed(
    job: "Job", garments: tuple["Garment", ...], past: "Past", problems: tuple[Problem, ...]
) -> tuple[tuple["Garment", ...], tuple["Place", ...], "Numbered", tuple[Problem, ...]]:
    """What can be made, where each of its decals goes, their lasting numbers, and the problems with those found."""
    from xlbatch.art.bench import BY_GARMENT
    from xlbatch.art.draw import draw
    from xlbatch.art.number_size import number_sizes
    from xlbatch.film.join import join
    from xlbatch.film.unfit import unfit
    from xlbatch.kept.lasting import cut_pieces, numbered
    from xlbatch.kept.sizes_cut import sizes_cut
    from xlbatch.placement.fewer_sections import fewer_sections
    from xlbatch.placement.put import place
    from xlbatch.placement.register import registered

    kept = past.stood.decals
    decals, of_drawing = draw(job, garments)
    if job.settings.sizes != BY_GARMENT and (cut := sizes_cut(decals, kept, past.changes)):
        decals, of_drawing = draw(job, garments, cut)
    problems += of_drawing + number_sizes(job, garments, decals)
    places, of_place = place(job, garments, decals)
    problems += of_place
    garments, places = _kept(garments, places, problems)
    places = join(job, places, cut_pieces(kept))
    problems += unfit(job, garments, tuple(position.decal for position in places)) + fewer_sections(job, places)
    garments, places = _kept(garments, places, problems)
    numbers = numbered((position.decal for position in places), kept, past.memory.last_decal)
    with_numbers = (replace(position, decal=decal) for position, decal in zip(places, numbers.decals, strict=True))
    return garments, registered(job, with_numbers), numbers, problems


def _held(problems: Iterable[Problem]) -> frozenset[int]:
    """The roster rows (sheet row numbers) that a `stop` holds back."""
    return frozenset(row for problem in problems if problem.level == "stop" for row in problem.rows)


def _of_rows(decals: tuple["KeptDecal", ...], job: "Job", held: frozenset[int]) -> tuple["KeptDecal", ...]:
    """The decals of garments that are not held back."""
    waiting = {row.no for row in job.roster if row.source.row in held and not row.status}
    return tuple(decal for decal in decals if decal.garment_no not in waiting)


def _kept(
    garments: tuple["Garment", ...], places: tuple["Place", ...], problems: tuple[Problem, ...]
) -> tuple[tuple["Garment", ...], tuple["Place", ...]]:
    """The garments that no problem holds back, and their places."""
    held = _held(problems)
    good = tuple(garment for garment in garments if garment.row.source.row not in held)
    numbers = {garment.no for garment in good}
    return good, tuple(place for place in places if place.garment.no in numbers)


def _write(plan: "Plan", folder: Path, name: str, check_only: bool, progress: Progress) -> Outcome:
    """Writes the plan, or the problems where there is nothing to plan or only a check was asked for. Raises CannotSave,
    and Disagreement where the plan does not agree with itself."""
    from xlbatch.agreement import disagreements
    from xlbatch.cutfiles.artwork_copies import artwork_copies
    from xlbatch.cutfiles.run_svg import cut_files
    from xlbatch.in_short import in_short
    from xlbatch.messages.group_messages import group_files
    from xlbatch.sheets.write import write_problems
    from xlbatch.two_workbooks import TwoWorkbooks

    stops = any(problem.level == "stop" for problem in plan.problems)
    if not plan.garments and not stops:
        return Outcome(0, "Nothing is left to do: every garment on the list is done or cancelled.")
    code: Literal[0, 1, 2] = 2 if not plan.garments else 1 if stops else 0
    about = Outcome(
        code,
        _summary(plan, code, check_only),
        problems=plan.problems,
        held=len(plan.held),
    )

    both = TwoWorkbooks(plan)

    def write(path: Path) -> None:
        if check_only or code == 2:
            write_problems(path, plan.job, plan.problems, plan.run_at, plan.memory)
        else:
            both.write(path)
        _begin(PLACING, progress)

    if check_only or code == 2:
        return replace(about, written=save_problems(folder, name, write))
    files: dict[str, str | bytes] = {file.name: file.text for file in cut_files(plan.layout, plan.job.settings)}
    files |= {**group_files(plan), **artwork_copies(plan.job, folder)}
    if wrong := disagreements(plan, files):
        raise Disagreement(wrong[0])

    saved = save_plan(folder, name, write, files, both.print_)
    return replace(
        about,
        written=saved.plan,
        cut_files=saved.cut_files,
        to_print=saved.to_print,
        in_short=in_short(plan, saved.to_print.name if saved.to_print else ""),
    )


def _summary(plan: "Plan", code: int, check_only: bool) -> str:
    if code == 2:
        return "Nothing could be planned."
    verb = "can be planned" if check_only else "planned"
    garments = f"{len(plan.garments)} garment{'s' * (len(plan.garments) != 1)} {verb}"
    return f"{garments}, {len(plan.held)} held back." if code == 1 else f"{garments}."
