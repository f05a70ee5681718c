"""A garment to make."""

from collections.abc import Iterable
from dataclasses import dataclass

from xlbatch.job.job import Blank, DecalSpec, RosterRow
from xlbatch.problems import Problem


@dataclass(frozen=True)
class Garment:
    """One garment that is still to be made, with all its names resolved."""

    row: RosterRow
    blank: Blank
    color: str
    print_name: str
    design: tuple[DecalSpec, ...]
    to_do: tuple[DecalSpec, ...]  # the decals not yet pressed, in Designs order
    needs_blank: bool  # False where the blank is already in hand, partly pressed

    @property
    def no(self) -> int:
        return self.row.no

    @property
    def who(self) -> str:
        return self.row.who

    @property
    def group(self) -> str:
        return self.row.group


def kept(garments: Iterable[Garment], problems: Iterable[Problem]) -> tuple[Garment, ...]:
    """The garments that no `stop` holds back."""
    held = {row for problem in problems if problem.level == "stop" for row in problem.rows}
    return tuple(garment for garment in garments if garment.row.source.row not in held)
