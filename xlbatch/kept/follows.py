"""What has to be done because of what changed, counted in the plan itself."""

from collections import Counter, defaultdict
from collections.abc import Iterable
from dataclasses import dataclass, replace

from xlbatch.art.decal import Decal
from xlbatch.check.garment import Garment
from xlbatch.film.layout import Layout, Run, Strip
from xlbatch.job.costs import sign_of
from xlbatch.job.job import Film, Settings
from xlbatch.kept.changes import ROSTER
from xlbatch.kept.memory import KeptChange, Memory
from xlbatch.press.step import PressPlan
from xlbatch.trade.tables import color_name
from xlbatch.units import printed_text

NOTHING_TO_MAKE = ("Paid", "Note", "Confirmed")  # headings of the Roster that nothing is made by


@dataclass(frozen=True)
class Piece:
    """A decal to cut that was not to be cut before: its share of the film (mm), what that costs (None: not known)."""

    film: str
    length: float
    price: float | None


class Follows:
    """For each garment what is to cut, to take and to press, and was not in the plan before."""

    def __init__(
        self, memory: Memory, settings: Settings, garments: Iterable[Garment], layout: Layout, pressing: PressPlan
    ) -> None:
        self.settings = settings
        self.garments = {garment.no: garment for garment in garments}
        self.cut: dict[int, list[Piece]] = defaultdict(list)
        to_cut = {decal.id for decal in memory.decals if decal.state == "to cut"}
        for run in layout.runs:
            for strip in run.strips:
                for decal in (lying.decal for lying in strip.lying):
                    if decal.id not in to_cut:
                        self.cut[decal.garment_no].append(_piece(run, strip, decal))
        planned = {decal.id for decal in memory.decals if decal.ready or (decal.state == "to cut" and decal.run)}
        decals = (step.place.decal for step in pressing.steps)
        self.steps = Counter(decal.garment_no for decal in decals if decal.id not in planned)
        taken = {
            garment.no: _kind(garment.garment, garment.size, garment.color)
            for garment in memory.garments
            if not garment.stage
        }
        self.blanks = {
            no
            for no, garment in self.garments.items()
            if garment.needs_blank and taken.get(no) != _kind(garment.blank.garment, garment.blank.size, garment.color)
        }

    def told(self, changes: Iterable[KeptChange]) -> tuple[KeptChange, ...]:
        """The changes, each with what follows from it; what follows from one of a row is not told of others again."""
        changes = tuple(changes)
        of_rows = {number for change in changes if (number := _number(change))}
        return tuple(replace(change, follows=self._of(change, of_rows)) for change in changes)

    def _of(self, change: KeptChange, of_rows: set[int]) -> str:
        if change.sheet == ROSTER:
            return "" if change.what in NOTHING_TO_MAKE else self._said([_number(change)]) or "nothing to make"
        return self._said([no for no in self.garments if no not in of_rows and self._concerned(no, change)])

    def _concerned(self, no: int, change: KeptChange) -> bool:
        """Whether a garment may have to be made otherwise because of a change on another sheet than the Roster."""
        garment, name = self.garments[no], change.who.casefold()
        if change.sheet == "Designs":
            return name.startswith(f"{garment.design[0].design.casefold()} · ")
        if change.sheet == "Garments":
            return name.startswith(f"{garment.blank.garment.casefold()} · ")
        if change.sheet == "Film":
            return any(piece.film.casefold() == name for piece in self.cut[no])
        return True

    def _said(self, numbers: Iterable[int]) -> str:
        """What is to be done anew for some garments."""
        numbers = tuple(numbers)
        cut = [piece for no in numbers for piece in self.cut.get(no, ())]
        blanks = [self.garments[no] for no in numbers if no in self.blanks]
        steps = sum(self.steps[no] for no in numbers)
        kind = f", {blanks[0].blank.size} {blanks[0].color}" if len(blanks) == 1 else ""
        return "; ".join(
            (
                *([f"{_counted(len(cut), 'decal')} to cut, {self._film(cut)}"] if cut else []),
                *([_counted(len(blanks), "blank") + kind] if blanks else []),
                *([f"{_counted(steps, 'step')} to press"] if steps else []),
            )
        )

    def _film(self, cut: list[Piece]) -> str:
        length = printed_text(sum(piece.length for piece in cut), self.settings.length_unit, up=True)
        prices = [piece.price for piece in cut if piece.price is not None]
        price = f" for {sign_of(self.settings.currency)}{sum(prices):.2f}" if len(prices) == len(cut) else ""
        return f"{length} of film{price}"


def _number(change: KeptChange) -> int:
    """The garment a change on the Roster is about; 0 where it is about none."""
    number = change.who.partition(" ")[2].partition(" ")[0]
    return int(number) if change.sheet == ROSTER and number.isdecimal() else 0


def _kind(garment: str, size: str, color: str) -> tuple[str, str, str]:
    return garment.casefold(), size, color_name(color)


def _piece(run: Run, strip: Strip, decal: Decal) -> Piece:
    """A decal's share of its strip's film, by its box."""
    length = strip.length + (run.length - sum(strip_.length for strip_ in run.strips)) / len(run.strips)
    boxes = sum(lying.decal.width * lying.decal.height for lying in strip.lying)
    share = length * decal.width * decal.height / boxes
    rate = _rate(run.film)
    return Piece(run.film.name, share, None if rate is None else share * rate)


def _rate(film: Film) -> float | None:
    """What a mm of a film costs on the roll where it is cheapest."""
    return min((float(roll.price) / roll.length for roll in film.rolls if roll.price is not None), default=None)


def _counted(count: int, what: str) -> str:
    return f"{count} {what}{'s' * (count != 1)}"
