"""Gives the decals drawn now the numbers they have had, and tells those that lie cut on the table from those to cut."""

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass, replace

from xlbatch.art.decal import Decal
from xlbatch.kept.memory import KeptDecal

SAME = 0.3  # mm: how far the box of a decal drawn anew may be off that of the one that was cut
SAME_AREA = 0.02  # of its area, likewise


@dataclass(frozen=True)
class Numbered:
    """The decals still to press, with their numbers; those of them that are cut; the last number given."""

    decals: tuple[Decal, ...]
    ready: dict[str, KeptDecal]
    last: int

    @property
    def to_cut(self) -> tuple[Decal, ...]:
        return tuple(decal for decal in self.decals if decal.id not in self.ready)


def numbered(decals: Iterable[Decal], kept: Iterable[KeptDecal], last: int) -> Numbered:
    """A decal cut before that is as the one drawn now is used; one not cut yet keeps its number; a new one gets the
    number after `last`."""
    had: dict[tuple[int, str], list[KeptDecal]] = defaultdict(list)
    for decal_ in kept:
        if decal_.ready or decal_.state == "to cut":
            had[decal_.garment_no, decal_.piece].append(decal_)
    ready: dict[str, KeptDecal] = {}
    now: list[Decal] = []
    for decal in decals:
        old = _old(decal, had[decal.garment_no, decal.piece])
        if old is None:
            last += 1
        elif old.ready:
            ready[old.id] = old
        now.append(replace(decal, id=old.id if old else f"D{last:03d}"))
    return Numbered(tuple(now), ready, last)


def _old(decal: Decal, had: list[KeptDecal]) -> KeptDecal | None:
    """The decal to take, out of those there are of its piece."""
    taken = next((old for old in had if old.ready and fits(old, decal)), None)
    taken = taken or next((old for old in had if not old.ready), None)
    if taken:
        had.remove(taken)
    return taken


def fits(old: KeptDecal, decal: Decal) -> bool:
    """Whether a decal cut before is what is drawn now."""
    area = area_of(decal)
    return (
        (old.text, old.film.casefold()) == (text_of(decal), decal.film.casefold())
        and abs(old.width - decal.width) <= SAME
        and abs(old.height - decal.height) <= SAME
        and abs(old.area - area) <= SAME_AREA * max(old.area, area)
    )


def area_of(decal: Decal) -> float:
    """The area of a decal's outline in mm²; 0 where only its box is known."""
    return round(decal.outline.area, 1) if decal.outline else 0.0


def text_of(decal: Decal) -> str:
    """What a decal says, its parts' texts in one."""
    return " / ".join(decal.texts)


def cut_pieces(kept: Iterable[KeptDecal]) -> dict[int, list[str]]:
    """The pieces that lie cut, by garment number."""
    pieces: dict[int, list[str]] = defaultdict(list)
    for old in kept:
        if old.ready:
            pieces[old.garment_no].append(old.piece)
    return pieces
