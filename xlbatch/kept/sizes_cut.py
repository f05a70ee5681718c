"""Where few sizes are made: how much bigger pieces that lie cut are than they would be made now."""

from collections.abc import Iterable, Mapping

from xlbatch.art.decal import Decal
from xlbatch.kept.lasting import SAME, SAME_AREA, area_of, text_of
from xlbatch.kept.memory import KeptChange, KeptDecal

_CHANGES_SIZES = ("Sizes", "Most sizes", "Round sizes to")


def sizes_cut(
    decals: Iterable[Decal], kept: Iterable[KeptDecal], changes: Iterable[KeptChange]
) -> Mapping[tuple[int, str], float]:
    """By garment number and piece; none where a person asked for another size or drawing since."""
    changes = tuple(changes)
    if any(change.sheet == "Drawing parts" or change.who in _CHANGES_SIZES for change in changes):
        return {}
    redesigned = {change.who.partition(" · ")[0].casefold() for change in changes if change.sheet == "Designs"}
    resized = {change.who.split(" ")[1] for change in changes if change.who.startswith("No. ")}
    lying: dict[tuple[int, str], list[KeptDecal]] = {}
    for old in kept:
        if old.ready:
            lying.setdefault((old.garment_no, old.piece), []).append(old)
    return {
        (decal.garment_no, decal.piece): old.width / decal.width
        for decal in decals
        if decal.spec.what == "artwork" and decal.spec.design.casefold() not in redesigned
        if str(decal.garment_no) not in resized
        for old in lying.get((decal.garment_no, decal.piece), ())
        if _is_scaled(old, decal)
    }


def _is_scaled(old: KeptDecal, decal: Decal) -> bool:
    """Whether a decal cut before is what is drawn now, bigger or smaller."""
    times, area = old.width / decal.width, area_of(decal)
    return (
        (old.text, old.film.casefold()) == (text_of(decal), decal.film.casefold())
        and abs(old.width - decal.width) > SAME
        and abs(old.height - decal.height * times) <= SAME
        and abs(old.area - area * times**2) <= SAME_AREA * old.area
    )
