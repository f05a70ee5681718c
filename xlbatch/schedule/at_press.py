"""One person at one press → what they do, act by act.

A cold-peel piece cools beside the press while others are pressed; only what is left of its cooling is waited for."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby
from typing import NamedTuple

from xlbatch.job.work_time import WorkTimes
from xlbatch.press.step import PressStep

COOLS = {"cold": "cool", "warm": "cool to warm"}  # the work time of each peel; hot: none
PLATE = "wait for the plate"
PRESSING = "the plate is down"
COOLING = "cooling not hidden"


class Act(NamedTuple):
    """Something done from `begins` to `ends`, s since the press's first act."""

    work: str
    garment: int
    begins: float
    ends: float


@dataclass
class _Hands:
    """What one person does, one act after another."""

    times: WorkTimes
    acts: list[Act]
    now: float = 0.0

    def do(self, work: str, garment: int, seconds: float | None = None) -> None:
        """An act of its usual time, or of so many seconds."""
        takes = self.times.of("press", work) if seconds is None else seconds
        if takes > 0:
            self.acts.append(Act(work, garment, self.now, self.now + takes))
            self.now += takes


def blocks(steps: Sequence[PressStep]) -> Iterator[list[PressStep]]:
    """The steps of each batch at each heat."""
    for _, block in groupby(steps, key=lambda step: (step.lane, step.batch, step.temperature)):
        yield list(block)


def at_press(steps: Sequence[PressStep], times: WorkTimes) -> list[tuple[list[PressStep], list[Act]]]:
    """The acts of each block of one press's steps."""
    worked = []
    hands = _Hands(times, [])
    for number, block in enumerate(blocks(steps)):
        hands.acts = []
        if number == 0:
            hands.do("switch on and heat up", 0)
        _press(block, hands)
        worked.append((block, hands.acts))
    return worked


def _press(block: Sequence[PressStep], hands: _Hands) -> None:
    """One block: piece after piece is pressed, and peeled once it has cooled."""
    cooled: dict[int, tuple[float, list[PressStep]]] = {}  # when each garment's pieces may be peeled
    loaded = 0
    for _, closing in groupby(block, key=lambda step: step.with_step or step.no):
        pieces = list(closing)
        step, garment = pieces[0], pieces[0].place.garment.no
        hands.do(PLATE, 0, step.wait)
        if step.trial:
            hands.do("trial on a scrap", garment, hands.times.of("press", "trial on a scrap") + step.film.press)
        if garment in cooled:
            _peel(*cooled.pop(garment), hands)
        if step.first:
            hands.do("crease the garment", garment)
        if loaded != garment:
            hands.do("load the garment", garment)
        hands.do("place the decal", garment, len(pieces) * hands.times.of("press", "place the decal"))
        hands.do(PRESSING, garment, (step.warm_up + step.front + step.back) * step.place.presses)
        again = hands.times.of("press", "edges that lift") / 100 * len(pieces)
        hands.do(
            "press again where an edge lifts",
            garment,
            again * hands.times.of("press", "press again where an edge lifts"),
        )
        loaded = garment
        cooled[garment] = hands.now + cooling(step, hands.times), pieces
    for ready, pieces in cooled.values():
        _peel(ready, pieces, hands)
        if pieces[-1].last:
            hands.do("fold", pieces[-1].place.garment.no)


def cooling(step: PressStep, times: WorkTimes) -> float:
    """How long a piece cools before it is peeled, in s."""
    return times.of("press", COOLS[step.film.peel]) if step.film.peel in COOLS else 0.0


def _peel(ready: float, pieces: Sequence[PressStep], hands: _Hands) -> None:
    garment = pieces[0].place.garment.no
    hands.do(COOLING, garment, ready - hands.now)
    hands.do("peel", garment, len(pieces) * hands.times.of("press", "peel"))
