"""Lays each batch's decals of one film in a strip as short as the search can make it."""

from collections.abc import Sequence

from xlbatch.art.decal import Decal
from xlbatch.film.box import UM, Bed, Packing, box_of
from xlbatch.film.free import pack_each
from xlbatch.film.layout import Lying, Strip
from xlbatch.film.pack_sets import pack_sets

MANY = 15  # boxes, from where on the free search is tried too
FREE_TRIES = 16


def lay_strips(sets: Sequence[tuple[int, Sequence[Decal]]], bed: Bed, tries: int) -> tuple[Strip, ...]:
    """One strip for each batch number and its decals; along from the strip's own beginning."""
    boxes = [[box_of(decal, bed.gap) for decal in decals] for _, decals in sets]
    packings = pack_sets(boxes, bed, tries)
    large = [number for number, these in enumerate(boxes) if len(these) >= MANY]
    for set_no, packing in zip(large, pack_each([boxes[number] for number in large], bed, FREE_TRIES), strict=True):
        packings[set_no] = min(packings[set_no], packing, key=lambda packing_: packing_.length)
    return tuple(_strip(batch, decals, laid, bed.gap) for (batch, decals), laid in zip(sets, packings, strict=True))


def _strip(batch: int, decals: Sequence[Decal], packing: Packing, gap: int) -> Strip:
    lying = tuple(
        Lying(decal, spot.across / UM, spot.along / UM, 90 if spot.turned else 0)
        for decal, spot in zip(decals, packing.spots, strict=True)
    )
    return Strip(batch, 0.0, (packing.length - gap) / UM, lying)
