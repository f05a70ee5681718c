"""Decals → the same with the places marked that are too thin for their film, and problems that say how big would do."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace

from xlbatch.art.bench import Bench
from xlbatch.art.decal import Decal
from xlbatch.art.thin import Thin
from xlbatch.check.garment import Garment
from xlbatch.job.job import Film
from xlbatch.problems import Problem, problem
from xlbatch.problems.phrases import phrase
from xlbatch.trade.tables import practice
from xlbatch.units import LengthUnit, printed_text, thin_text

_CODES = {"stroke": "stroke-thin", "gap": "gap-thin", "dot": "dot-small"}

Hit = tuple[Thin, Decal]


@dataclass
class _Fault:
    """One kind of fault of one piece of the designs in one film, and the decals that have it."""

    film: Film
    hits: list[Hit] = field(default_factory=list)


@dataclass(frozen=True)
class _Shop:
    """What problems are told with."""

    bench: Bench
    garments: Mapping[int, Garment]

    @property
    def unit(self) -> LengthUnit:
        return self.bench.job.settings.length_unit

    def row(self, decal: Decal) -> int:
        """The roster row of a decal's garment."""
        return self.garments[decal.garment_no].row.source.row

    def may_grow(self, decal: Decal, times: float) -> bool:
        """Whether it may be made so many times as big: not much bigger than it was asked for, and its garment and film
        have room."""
        if times > practice("how much bigger a decal may become to be cut better"):
            return False
        width, height = decal.whole or (decal.width, decal.height)
        limits = self.bench.limits(self.garments[decal.garment_no], (decal.spec,))
        return limits.shrink(times * width, times * height) == 1


def check_cuttable(
    bench: Bench, garments: Iterable[Garment], decals: Iterable[Decal]
) -> tuple[tuple[Decal, ...], tuple[Problem, ...]]:
    """Every decal measured against the thinnest stroke of its film; one problem for each fault of each piece."""
    shop = _Shop(bench, {garment.no: garment for garment in garments})
    faults: dict[tuple[object, ...], _Fault] = {}
    marked: list[Decal] = []
    problems: list[Problem] = []
    for decal in decals:
        film = bench.job.film_of.get(decal.film.casefold())
        if film is None or decal.outline is None:
            marked.append(decal)
            continue
        thin, fine = bench.thin(decal.outline, film.thinnest)
        marked.append(replace(decal, thin=tuple(place for thin_spot in thin for place in thin_spot.places)))
        if thin and fine:
            problems.append(_too_fine(decal, film, thin, shop))
            continue
        for thin_place in thin:
            key = decal.spec.source.sheet, decal.spec.source.row, decal.border, decal.film, thin_place.kind
            faults.setdefault(key, _Fault(film)).hits.append((thin_place, decal))
    return tuple(marked), (*problems, *(_reported(fault, shop) for fault in faults.values()))


def _reported(fault: _Fault, shop: _Shop) -> Problem:
    thin, decal = min(fault.hits, key=lambda hit: hit[0].width)
    hits = len(fault.hits)
    return problem(
        _CODES[thin.kind],
        decal.spec.source.at("Height" if decal.text else "Width"),
        decal.text,
        rows=tuple(dict.fromkeys(shop.row(_thin) for _, _thin in fault.hits)),
        width=thin_text(thin.width, shop.unit, down=True),
        which=decal.titled + (f" and {hits - 1} more" if hits > 1 else ""),
        film=fault.film.name,
        least=thin_text(fault.film.thinnest, shop.unit),
        remedy=_remedy(fault.hits, shop),
    )


def _too_fine(decal: Decal, film: Film, thin: tuple[Thin, ...], shop: _Shop) -> Problem:
    return problem(
        "decal-too-fine",
        decal.spec.source.at("Height" if decal.text else "Width"),
        decal.text,
        rows=(shop.row(decal),),
        which=decal.titled,
        film=film.name,
        least=thin_text(film.thinnest, shop.unit),
        remedy=_remedy([(thin_place, decal) for thin_place in thin], shop),
    )


def _remedy(hits: Iterable[Hit], shop: _Shop) -> str:
    """What would do: the size at which all of these pass, where that is possible on their garments."""
    hits = tuple(hits)
    letters = hits[0][1].cap_height is not None
    if not all(shop.may_grow(decal, thin.grow) for thin, decal in hits):
        return phrase("another font" if letters else "bolder")
    needed = printed_text(max(_sides(hits)), shop.unit, up=True)
    if letters:
        return phrase("higher letters", height=needed)
    return phrase("wider", width=needed)


def _sides(hits: Iterable[Hit]) -> Iterator[float]:
    """The letter height, or for artwork the width, at which each passes."""
    for thin, decal in hits:
        yield thin.grow * (decal.cap_height or (decal.whole or (decal.width,))[0])
