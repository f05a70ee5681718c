"""Where no decal may lie: a garment's features, its collar, and beyond its armholes."""

from collections.abc import Iterator
from typing import NamedTuple

from xlbatch.art.size import neck_at
from xlbatch.job.job import Blank
from xlbatch.placement.place import Extent, Place
from xlbatch.trade.tables import practice

COLLAR = "collar"


class Met(NamedTuple):
    """A place to keep clear that a decal lies on."""

    name: str
    box: Extent
    by: float  # mm of height both share
    can_move: bool  # whether it hangs from the collar, so that a decal may go below it


def met(place: Place) -> Iterator[Met]:
    """What of its garment a decal lies on."""
    if place.above_opening is not None:
        return
    for name, box, can_move in _boxes(place.garment.blank, place.side):
        if place.extent.meets(box):
            shared = min(place.extent.top, box.top) - max(place.extent.bottom, box.bottom)
            yield Met(name, box, shared, can_move)


def _boxes(blank: Blank, side: str) -> Iterator[tuple[str, Extent, bool]]:
    drop = blank.drop_front if side == "front" else blank.drop_back
    for feature in blank.keep_clear:
        if feature.side == side:
            top = blank.length - drop if feature.at == "collar" else feature.height
            box = Extent(-feature.width / 2, top - feature.height, feature.width / 2, top)
            yield feature.name, box, feature.at == "collar"


def beyond_armholes(place: Place) -> float:
    """How far a decal that reaches above the armpits reaches beyond the armhole seams, in mm; 0 where it does not."""
    blank = place.garment.blank
    if place.above_opening is not None or blank.between_armholes is None:
        return 0.0
    armpit = blank.length - blank.chest * practice("how far below the shoulder the armpit lies, of the chest width")
    if place.extent.top <= armpit:
        return 0.0
    return max(0.0, max(-place.extent.left, place.extent.right) - blank.between_armholes / 2)


def on_collar(place: Place) -> bool:
    """Whether a decal beside the middle lies on the collar."""
    if place.side != "front" or place.measured_from != "side of the collar seam" or place.below_collar is None:
        return False
    inner = min(abs(place.extent.left), abs(place.extent.right))
    across = place.extent.left < 0 < place.extent.right
    return neck_at(place.garment.blank, place.below_collar) > (0.0 if across else inner)
