"""How big a decal is on a garment: scaled from the size it was drawn for, and kept on film and garment. In mm."""

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cache

import numpy as np

from xlbatch.check.garment import Garment
from xlbatch.job.job import Blank, DecalSpec, Film, Job
from xlbatch.job.position import SLEEVES, Position
from xlbatch.tables.sizes import size_class
from xlbatch.trade.tables import practice, table
from xlbatch.trade.usual_sizes import chest_art_width
from xlbatch.units import mm_per

USUAL_CAP_HEIGHT = practice("how high capitals are on an adult M, where nothing is said")
USUAL_SIZE, USUAL_CLASS = "M", "adult"
_NEAR = 1e-3  # outlines are measured to 0.001 mm

Chests = Mapping[tuple[str, str], float]


@dataclass(frozen=True)
class Limits:
    """`across` is the widest that the garment's place allows, `usable` the film's; `turned` where the film may lie
    either way round."""

    across: float
    usable: float
    turned: bool

    def widths(self) -> tuple[float, ...]:
        """The widths to try for lettering, the wider first: one that only fits turned, then one that fits anyway."""
        return (self.across, min(self.across, self.usable)) if self.turned else (min(self.across, self.usable),)

    def fits_film(self, width: float, height: float) -> bool:
        """Whether a decal of this size lies on the film."""
        return (min(width, height) if self.turned else width) <= self.usable + _NEAR

    def shrink(self, width: float, height: float) -> float:
        """The part of this size, at most 1, that fits both film and garment."""
        side = min(width, height) if self.turned else width
        return min(1.0, self.across / width, self.usable / side)


def chests_of(blanks: Iterable[Blank]) -> Chests:
    """The flat chest of each garment and size; under no garment's name, that of the first garment in that size."""
    chests: dict[tuple[str, str], float] = {}
    for blank in blanks:
        for garment in (blank.garment.casefold(), ""):
            chests.setdefault((garment, blank.size), blank.chest)
    return chests


def ratio(chests: Chests, garment: Garment, spec: DecalSpec) -> float:
    """How much bigger this garment's decal is than the one drawn, as the usual widths of its class and chest are; 1
    where it is not scaled."""
    if not spec.scale:
        return 1.0
    size = spec.sized_for or USUAL_SIZE
    class_drawn_for = size_class(size)
    own, drawn = (chest_art_width(spec.position, for_) for for_ in (garment.blank.for_, USUAL_CLASS))
    if own and drawn and own != drawn and class_drawn_for == USUAL_CLASS:
        return own / drawn
    chest_drawn_for = chests.get((garment.blank.garment.casefold(), size)) or chests.get(("", size))
    if not chest_drawn_for:
        return 1.0
    return usual_width(garment.blank.for_, garment.blank.chest) / usual_width(class_drawn_for, chest_drawn_for)


def usual_width(for_: str, chest: float) -> float:
    """How wide artwork usually is on a garment of this class with a flat chest of so many mm: in mm, straight between
    the chests of the table `art_sizes`, and no less or more than its first and last."""
    chests, widths = _art_sizes(for_)
    return float(np.interp(chest, chests, widths))


@cache
def _art_sizes(for_: str) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """The flat chests of a class, and the width of artwork on each, in mm."""
    lines = [line for line in table("art_sizes") if line["For"] == for_]
    chests, widths = (
        tuple(float(line[heading]) * mm_per("in") for line in lines) for heading in ("Chest width (in)", "Width (in)")
    )
    return chests, widths


def letter_ratio(garment: Garment, spec: DecalSpec) -> float:
    """How much higher letters are on this garment's class than on the one they are drawn for; 1 where they are not
    scaled: all sizes of a class have one letter height."""
    if not spec.scale:
        return 1.0
    drawn_for = size_class(spec.sized_for or USUAL_SIZE)
    return _letter_height(garment.blank.for_) / _letter_height(drawn_for)


@cache
def _letter_height(for_: str) -> float:
    """The letter height of a class, of an adult's."""
    return next(float(line["Letter height (of an adult's)"]) for line in table("letter_sizes") if line["For"] == for_)


def grown(length: float, ratio: float, step: float) -> float:
    """A length scaled and rounded to whole steps, at least one; as it is where it is not scaled."""
    return length if ratio == 1 else round(max(1, math.floor(length * ratio / step + 0.5)) * step, 3)


def shrunk(length: float, part: float, step: float) -> float:
    """A length made smaller to fit, rounded down to whole steps where that leaves one."""
    return round(math.floor(length * part / step + 1e-6) * step or length * part, 3)


def limits_of(job: Job, garment: Garment, spec: DecalSpec, films: Iterable[Film], edge: float) -> Limits:
    """What limits a decal's size, less `edge` mm of outline on every side.

    On a body: the flat chest less what must stay clear of the side seams (and twice the way off the middle); on
    a sleeve: its opening less half an inch each side. On film: its usable width."""
    films = tuple(films)
    return Limits(
        _across(job, garment, spec) - 2 * edge,
        min((film.usable_width for film in films), default=math.inf) - 2 * edge,
        job.settings.turn and not any(film.one_direction for film in films),
    )


def _across(job: Job, garment: Garment, spec: DecalSpec) -> float:
    blank = garment.blank
    rule = job.position(spec.position, blank.for_, blank.neckline)
    if rule is None:
        return math.inf
    if rule.side in SLEEVES:
        return blank.sleeve_opening - 2 * job.settings.clear_of_sleeve_edge if blank.sleeve_opening else math.inf
    widths = [blank.chest / 2 - job.settings.clear_of_side]
    if rule.measured_from != "hem" and blank.between_armholes:
        widths.append(blank.between_armholes / 2)
    across = 2 * (min(widths) - abs(rule.across))
    return min(across, min(widths) - _beside_collar(blank, rule, rule.distance))


def center_of(blank: Blank, rule: Position, width: float, below: float) -> float:
    """How far off the middle what is so wide, and so far below the seam, is centered (mm, as the position has it):
    farther out than the position says where it would come near the collar."""
    return math.copysign(max(abs(rule.across), _beside_collar(blank, rule, below) + width / 2), rule.across)


def _beside_collar(blank: Blank, rule: Position, below: float) -> float:
    """How far off the middle artwork on one side of the chest must stay; elsewhere it may be anywhere."""
    if rule.measured_from != "side of the collar seam":
        return -math.inf
    return neck_at(blank, below) + practice("how far chest artwork stays from the collar")


def neck_at(blank: Blank, below_shoulder: float) -> float:
    """Half of how wide the front neck opening is so far below the shoulder point, in mm: straight sides on a V, else a
    parabola down to the collar drop."""
    half = blank.chest * practice("how wide the neck opening is, of the chest width") / 2
    part = max(0.0, 1 - below_shoulder / blank.drop_front) if blank.drop_front else 0.0
    return half * (part if blank.neckline == "V" else part**0.5)
