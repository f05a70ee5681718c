"""What is cut for one row of a design on one garment, and the decals it makes."""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from xlbatch.art.bench import Bench, edge_of
from xlbatch.art.decal import Decal
from xlbatch.check.garment import Garment
from xlbatch.geometry.outline import Outline
from xlbatch.geometry.path import Box
from xlbatch.job.job import DecalSpec
from xlbatch.trade.tables import practice

NOTICED = practice("how far off the middle ink lies before it is noticed, of the width")


@dataclass(frozen=True)
class Cut:
    """An outline (None where only its size is known) and where its ink lies in the whole drawing's ink, in mm."""

    outline: Outline | None
    width: float
    height: float
    offset: tuple[float, float] = (0.0, 0.0)
    whole: tuple[float, float] | None = None
    text: str = ""
    font: str = ""
    cap_height: float | None = None
    condensed: float = 1.0
    center: float | None = None  # how far from the left of the whole drawing its ink's centroid lies
    rooms: tuple[Box, ...] = ()  # see Decal
    base: Box | None = None  # see Decal


def decals_of(
    bench: Bench, garment: Garment, spec: DecalSpec, cut: Cut, together: Iterable[DecalSpec]
) -> tuple[Decal, ...]:
    """The decal of a cut, after the wider piece that goes under it where the design gives an outline film.

    `together` are the specs that share the drawing: the box they line up in has room for the widest outline of
    any of them. Numbers are given later."""
    edge = edge_of(together)
    whole = cut.whole or (cut.width, cut.height)
    decal = Decal(
        id="",
        garment_no=garment.no,
        spec=spec,
        text=cut.text,
        film=bench.film(spec.film),
        font=cut.font,
        cap_height=cut.cap_height,
        condensed=cut.condensed,
        shift=_shift(cut.center, whole[0]),
        width=cut.width,
        height=cut.height,
        outline=cut.outline,
        rooms=cut.rooms,
        base=cut.base,
        offset=(round(cut.offset[0] + edge, 3), round(cut.offset[1] + edge, 3)),
        whole=(round(whole[0] + 2 * edge, 3), round(whole[1] + 2 * edge, 3)) if edge or cut.whole else None,
    )
    return (_border(bench, decal), decal) if spec.outline_film else (decal,)


def _shift(center: float | None, width: float) -> float:
    """How far to move a drawing so that its ink is centered; 0 where it nearly is."""
    off = width / 2 - center if center is not None else 0.0
    return round(off, 3) if abs(off) > NOTICED * width else 0.0


def _border(bench: Bench, decal: Decal) -> Decal:
    """The piece that stands out by the outline's width on every side; it is pressed first, under the decal."""
    wide = decal.spec.outline_width
    assert wide  # an outline's film is not without its width
    return replace(
        decal,
        film=bench.film(decal.spec.outline_film),
        width=round(decal.width + 2 * wide, 3),
        height=round(decal.height + 2 * wide, 3),
        outline=bench.bordered(decal.outline, wide) if decal.outline else None,
        offset=(round(decal.offset[0] - wide, 3), round(decal.offset[1] - wide, 3)),
        border=True,
    )
