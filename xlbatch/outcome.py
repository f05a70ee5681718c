"""What a plan is asked for, how far it is, and what became of it."""

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Literal, NamedTuple

from xlbatch.problems import Problem

STAGES = (
    "Reading the list",
    "Drawing the decals",
    "Laying out the film",
    "Ordering, timing, pricing",
    "Writing the sheets",
    "Putting them in place",
)
READING, DRAWING, LAYING, ORDERING, WRITING, PLACING = STAGES
_TAKES = dict(zip(STAGES, (5, 30, 25, 5, 33, 2), strict=True))  # % of the time of 1,000 garments, about
PAGES_TAKE = 40  # % of the writing, about
COUNTED = {  # what is said of a stage that counts
    DRAWING: "{done:,} of {of:,} drawn",
    LAYING: "{done} %",
    WRITING: "{done} %",
}


class Step(NamedTuple):
    """A stage that begins or goes on, and how many of its items are done, the one in hand in part, of how many (0: it
    counts none)."""

    stage: str
    done: float = 0
    of: int = 0

    @property
    def words(self) -> str:
        """The count in words, such as `412 of 1,000 drawn`, or a plain …"""
        return COUNTED[self.stage].format(done=int(self.done), of=self.of) if self.of and self.stage in COUNTED else "…"

    @property
    def share(self) -> float:
        """How much of the whole is behind, from 0 to 1."""
        before = sum(_TAKES[earlier] for earlier in STAGES[: STAGES.index(self.stage)])
        return (before + _TAKES[self.stage] * (self.done / self.of if self.of else 0)) / 100


Progress = Callable[[Step], None]  # may raise Stopped


@dataclass(frozen=True)
class Options:
    """How to plan: where to write (None: beside the input), how hard to search, and whether only to check."""

    folder: Path | None = None
    effort: int = 1
    check_only: bool = False
    anew: bool = False  # plan it although a later plan of it has marks
    what_if: bool = False  # also try what single changes would save
    forms: tuple[Path, ...] = ()  # filled sign-up workbooks whose answers join the list


@dataclass(frozen=True)
class Offer:
    """Another way to plan the same list: the words on its button, and the options."""

    words: str
    options: Options


@dataclass(frozen=True)
class Outcome:
    """What became of one workbook. `code` is the contract's exit code, `message` a few plain words.

    `unsaved` says that only the writing failed, so that another folder may help. `to_print` is the workbook of pages to
    print, `in_short` what the plan comes to, `offers` what else could be done with the list."""

    code: Literal[0, 1, 2, 3, 70]
    message: str
    written: Path | None = None
    cut_files: Path | None = None
    to_print: Path | None = None
    problems: tuple[Problem, ...] = ()
    held: int = 0
    in_short: tuple[str, ...] = ()
    unsaved: bool = False
    offers: tuple[Offer, ...] = ()
