"""Notes on decals whose ink sits to one side of the middle of their box, where the eye would want them shifted."""

from collections import defaultdict
from collections.abc import Iterable

from xlbatch.art.bench import Bench
from xlbatch.art.decal import Decal
from xlbatch.check.garment import Garment
from xlbatch.problems import Problem, problem
from xlbatch.units import printed_text


def off_center(bench: Bench, garments: Iterable[Garment], decals: Iterable[Decal]) -> tuple[Problem, ...]:
    """One note for each piece of the designs, about the decal that is off the most."""
    rows = {garment.no: garment.row.source.row for garment in garments}
    decals_by_row: dict[tuple[str, int], list[Decal]] = defaultdict(list)
    for decal in decals:
        if decal.shift and not decal.border:
            decals_by_row[decal.spec.source.sheet, decal.spec.source.row].append(decal)
    return tuple(
        _note(bench, them, tuple(dict.fromkeys(rows[one_decal.garment_no] for one_decal in them)))
        for them in decals_by_row.values()
    )


def _note(bench: Bench, decals: list[Decal], rows: tuple[int, ...]) -> Problem:
    worst = max(decals, key=lambda decal: abs(decal.shift) / _width(decal))
    left, more = worst.shift < 0, len(decals) - 1
    return problem(
        "off-center",
        worst.spec.source.at("Position"),
        worst.text,
        rows=rows,
        which=worst.titled + (f" and {more} more" if more else ""),
        heavy="right" if left else "left",
        light="left" if left else "right",
        part=round(100 * abs(worst.shift) / _width(worst)),
        shift=printed_text(abs(worst.shift), bench.job.settings.length_unit),
    )


def _width(decal: Decal) -> float:
    return decal.whole[0] if decal.whole else decal.width
