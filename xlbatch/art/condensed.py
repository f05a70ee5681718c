"""Notes on lettering that was condensed to fit its width."""

from collections import defaultdict
from collections.abc import Iterable

from xlbatch.art.decal import Decal
from xlbatch.check.garment import Garment
from xlbatch.problems import Problem, problem


def condensed(garments: Iterable[Garment], decals: Iterable[Decal]) -> tuple[Problem, ...]:
    """One note for each row of the designs, about the text that is condensed the most."""
    rows = {garment.no: garment.row.source.row for garment in garments}
    found: dict[tuple[str, int, str], list[Decal]] = defaultdict(list)
    for decal in decals:
        if decal.condensed < 1 and not decal.border:
            found[decal.spec.source.sheet, decal.spec.source.row, decal.spec.decal].append(decal)
    return tuple(
        _note(decals, tuple(dict.fromkeys(rows[each.garment_no] for each in decals))) for decals in found.values()
    )


def _note(decals: list[Decal], rows: tuple[int, ...]) -> Problem:
    worst, more = min(decals, key=lambda decal: decal.condensed), len(decals) - 1
    return problem(
        "letters-condensed",
        worst.spec.source.at("Height"),
        worst.text,
        rows=rows,
        which=worst.titled + (f" and {more} more" if more else ""),
        is_are="are" if more else "is",
        part=round(100 * worst.condensed),
    )
