"""Decals of one garment that go on as one: the films of one drawing, or a single decal."""

from collections.abc import Iterable
from dataclasses import dataclass

from xlbatch.art.decal import Decal


@dataclass(frozen=True)
class Group:
    """Decals that line up in one box of width × height (mm)."""

    decals: tuple[Decal, ...]
    width: float
    height: float


def groups(decals: Iterable[Decal]) -> tuple[Group, ...]:
    """The decals of one position, in design order; those cut from one drawing at one size go together."""
    together: dict[object, list[Decal]] = {}
    for decal in decals:
        together.setdefault(_drawing(decal), []).append(decal)
    return tuple(Group(tuple(them), *(them[0].whole or (them[0].width, them[0].height))) for them in together.values())


def _drawing(decal: Decal) -> object:
    if decal.whole is None:
        return decal.id
    return (decal.drawing or decal.spec.artwork or decal.spec.decal, decal.whole)
