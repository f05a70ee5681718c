"""The memory and what was written since → where each decal and each garment stands now."""

import re
from collections import defaultdict
from collections.abc import Container, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from xlbatch.check.progress import BLANK_IN_HAND, designs_by_name, pieces_wanted
from xlbatch.job.job import JOINED, Job, RosterRow
from xlbatch.job.marks import ALL, Marks, StepMark, StripMark
from xlbatch.kept.memory import KeptDecal, KeptGarment, Memory, Stage, State
from xlbatch.problems import Problem, problem
from xlbatch.roster.press_results import by_garment

_NUMBER = re.compile(r"D\d+")
OVER: tuple[State, ...] = ("pressed", "spoiled")


@dataclass(frozen=True)
class Standing:
    """Where the work stands: the job with each row's Status and Done so far, all decals, the blanks newly used up."""

    job: Job
    decals: tuple[KeptDecal, ...]
    garments: Mapping[int, KeptGarment]  # those begun or done, with the blank they are on
    used: Mapping[int, int]  # blanks used since the plan, by garment number; less than 0 where a mark was taken back
    problems: tuple[Problem, ...]


def standing(job: Job, marks: Marks, memory: Memory) -> Standing:
    """What the memory and the marks come to. A Status set by hand wins over the log."""
    decals, problems = _after_cutting(memory.decals, marks.strips)
    of_garment: dict[int, list[KeptDecal]] = defaultdict(list)
    for decal in decals:
        of_garment[decal.garment_no].append(decal)
    steps, kept = by_garment(marks.steps), {garment.no: garment for garment in memory.garments}
    designs = designs_by_name(job)
    rows: list[RosterRow] = []
    used: dict[int, int] = {}
    begun: dict[int, KeptGarment] = {}
    for row in job.roster:
        wanted = tuple(piece for spec in pieces_wanted(row, job, designs) for piece in spec.pieces)
        at_press = _Garment(row, kept.get(row.no), of_garment[row.no], steps.get(row.no, []))
        now, of_garment[row.no], stage, spoiled = at_press.after(wanted)
        rows.append(now)
        if before := kept.get(row.no):
            used[row.no] = spoiled + bool(stage) - bool(before.stage)
            begun |= {row.no: replace(before, stage=stage)} if stage else {}
    after = {decal.id: decal for own in of_garment.values() for decal in own}
    return Standing(
        replace(job, roster=tuple(rows)),
        _with_their_strips(memory.decals, tuple(after[decal.id] for decal in decals if decal.id in after)),
        begun,
        {number: count for number, count in used.items() if count},
        problems,
    )


def _after_cutting(
    decals: Iterable[KeptDecal], strips: Iterable[StripMark]
) -> tuple[tuple[KeptDecal, ...], tuple[Problem, ...]]:
    """The decals as the Cut list leaves them, and the decals marked as spoiled that are on no such strip."""
    marks = {(mark.film.casefold(), mark.run, mark.strip): mark for mark in strips}
    on_strip: dict[tuple[str, int, int], set[str]] = defaultdict(set)
    after, decals = [], tuple(decals)
    half_weeded = {decal.place for decal in decals if decal.state == "cut"}
    for decal in decals:
        on_strip[decal.place].add(decal.id)
        mark = marks.get(decal.place)
        after.append(decal if mark is None else replace(decal, state=_marked(decal, mark, half_weeded)))
    return tuple(after), tuple(
        problem("spoiled-unknown", mark.source.at("Spoiled"), number)
        for place, mark in marks.items()
        for number in mark.spoiled
        if number != ALL and number not in on_strip[place]
    )


def _with_their_strips(before: Iterable[KeptDecal], now: tuple[KeptDecal, ...]) -> tuple[KeptDecal, ...]:
    """Of a strip of which a decal is pressed or spoiled, the others are cut too, marked or not."""
    to_cut = {decal.id for decal in before if decal.state == "to cut"}
    used = {decal.place for decal in now if decal.id in to_cut and decal.state in OVER}
    return tuple(
        replace(decal, state="cut") if decal.state == "to cut" and decal.place in used else decal for decal in now
    )


def _marked(decal: KeptDecal, mark: StripMark, half_weeded: Container[tuple[str, int, int]]) -> State:
    """A cleared Cut makes a strip to cut again; where only Weeded is marked, it was cut. On a strip in `half_weeded`
    the plan left Weeded empty: still empty, it takes nothing back from the decals that are weeded."""
    if decal.state in ("pressed", "spoiled"):
        return decal.state
    if decal.id in mark.spoiled or ALL in mark.spoiled:
        return "spoiled"
    if decal.ready and not mark.cut:
        return "to cut"
    if mark.weeded or (mark.cut and decal.state == "weeded" and decal.place in half_weeded):
        return "weeded"
    return "cut" if mark.cut else "to cut"


class _Garment:
    """One garment at the press: what was pressed before, what its rows say now, and what its Status says of both."""

    def __init__(
        self, row: RosterRow, kept: KeptGarment | None, decals: Sequence[KeptDecal], steps: Sequence[StepMark]
    ) -> None:
        self.row, self.steps = row, steps
        self.before: Stage = kept.stage if kept else ""
        self.decals = _taken_back(row, decals)
        self.step_of = {decal.id: step for step in steps for decal in self.decals if _is(decal, step)}
        known = {part for decal in decals for part in parts(decal.piece)}
        self.loose = {*row.done_so_far} - {BLANK_IN_HAND} - known  # pressed before there was a memory

    def after(self, wanted: tuple[str, ...]) -> tuple[RosterRow, list[KeptDecal], Stage, int]:
        """The row as it now stands, its decals, its stage, and how many blanks were spoiled since the plan."""
        row, status = self.row, self.row.status
        if status == "done":
            return row, self.decals if self.before == "done" else self._done_by_hand(), "done", 0
        if status in ("redo garment", "redo film"):
            keeps = status == "redo film"
            now = replace(row, status="", done_so_far=(BLANK_IN_HAND,) if keeps else ())
            return now, self._redone(), "begun" if keeps else "", 0 if keeps else 1
        if any(step.outcome == "redo garment" for step in self.steps):
            return replace(row, done_so_far=()), self._spoiled_with_it(), "", 1
        return self._by_log(wanted)

    def _by_log(self, wanted: tuple[str, ...]) -> tuple[RosterRow, list[KeptDecal], Stage, int]:
        decals = [self._by_row(decal) for decal in self.decals]
        done = self.loose | {part for decal in decals if decal.state == "pressed" for part in parts(decal.piece)}
        if not self.row.status and wanted and all({*parts(piece)} <= done for piece in wanted):
            return replace(self.row, status="done", done_so_far=()), decals, "done", 0
        marked = any(step.outcome in ("ok", "redo film") for step in self.steps)
        if not (done or marked or BLANK_IN_HAND in self.row.done_so_far):
            return replace(self.row, done_so_far=()), decals, "", 0
        pressed = (part for decal in decals if decal.state == "pressed" for part in parts(decal.piece))
        whole = (piece for piece in wanted if {*parts(piece)} <= done)
        now = tuple(dict.fromkeys((BLANK_IN_HAND, *whole, *pressed)))  # what is on it and not wanted now stays known
        return replace(self.row, done_so_far=now), decals, "begun", 0

    def _by_row(self, decal: KeptDecal) -> KeptDecal:
        step = self.step_of.get(decal.id)
        if step is None or decal.state in OVER:
            return decal
        after: dict[str, State] = {"ok": "pressed", "redo film": "spoiled"}
        return replace(decal, state=after.get(step.outcome, decal.state))

    def _done_by_hand(self) -> list[KeptDecal]:
        """Done by its Status is as if every step of it were ok; what lies on the table besides is not used up."""
        return [
            replace(decal, state="pressed") if decal.state not in OVER and decal.id in self.step_of else decal
            for decal in self.decals
        ]

    def _redone(self) -> list[KeptDecal]:
        """What a Status redo spoils: what is known to be on the garment; where nothing is, all that was cut, unless
        only the blank of one begun went wrong."""
        blank_alone = self.before == "begun" and self.row.status == "redo garment"
        if blank_alone or any(map(self._on_garment, self.decals)):
            return self._spoiled_with_it()
        return [replace(decal, state="spoiled") if decal.ready else decal for decal in self.decals]

    def _spoiled_with_it(self) -> list[KeptDecal]:
        """Spoiled with the garment: what is pressed on it. What still lies on the table is good."""
        return [replace(decal, state="spoiled") if self._on_garment(decal) else decal for decal in self.decals]

    def _on_garment(self, decal: KeptDecal) -> bool:
        """Whether a decal is on the garment, well or badly."""
        step = self.step_of.get(decal.id)
        return decal.state == "pressed" or bool(step and (step.outcome or step.pressed))


def _is(decal: KeptDecal, step: StepMark) -> bool:
    """Whether a step is about a decal: by its number, or by its piece where the row has none."""
    if _NUMBER.fullmatch(step.decal):
        return decal.id == step.decal
    return decal.piece == step.piece and decal.state != "spoiled"


def _taken_back(row: RosterRow, decals: Iterable[KeptDecal]) -> list[KeptDecal]:
    """The decals where done, or a piece done so far, that was cleared on the Roster was not pressed after all."""
    if row.status:  # what is cancelled stays as far as it was made
        return list(decals)
    still = {part for piece in row.done_so_far for part in parts(piece)}
    return [
        replace(decal, state="weeded") if decal.state == "pressed" and not still & {*parts(decal.piece)} else decal
        for decal in decals
    ]


def parts(piece: str) -> tuple[str, ...]:
    """The pieces of the design that a piece of film holds."""
    return tuple(piece.split(JOINED))
