"""Garments → the decals to cut for them, and problems with their lettering and artwork."""

from collections.abc import Iterable, Mapping
from dataclasses import replace

from xlbatch.art.bench import NOTHING_CUT, Bench, Drawn
from xlbatch.art.cuttable import check_cuttable
from xlbatch.art.decal import Decal
from xlbatch.art.draw_artwork import draw_artwork
from xlbatch.art.draw_text import draw_text
from xlbatch.art.off_center import off_center
from xlbatch.check.garment import Garment, kept
from xlbatch.how_far import counted
from xlbatch.job.job import DecalSpec, Job
from xlbatch.problems import Problem, problem


def draw(
    job: Job, garments: tuple[Garment, ...], cut_before: Mapping[tuple[int, str], float] = NOTHING_CUT
) -> tuple[tuple[Decal, ...], tuple[Problem, ...]]:
    """The decals still to make, in garment and then design order, and what is wrong with the others.

    Decals are numbered D001 and so on, over the garments that no problem found here holds back. `cut_before`: how much
    bigger pieces lie cut than they would be made."""
    bench = Bench(job, garments, cut_before)
    decals: list[Decal] = []
    problems: list[Problem] = []
    for garment in counted(garments):
        for spec in garment.to_do:
            drawn, faults = _drawn(bench, garment, spec)
            decals += drawn
            problems += faults
    good = {garment.no for garment in kept(garments, problems)}
    cuttable, faults = check_cuttable(bench, garments, (decal for decal in decals if decal.garment_no in good))
    problems += faults + off_center(bench, garments, cuttable)
    good = {garment.no for garment in kept(garments, problems)}
    return numbered(decal for decal in cuttable if decal.garment_no in good), merged(problems)


def numbered(decals: Iterable[Decal]) -> tuple[Decal, ...]:
    """The decals with numbers: D001, D002 …"""
    decals = tuple(decals)
    digits = max(3, len(str(len(decals))))
    return tuple(replace(decal, id=f"D{number:0{digits}d}") for number, decal in enumerate(decals, 1))


def merged(problems: Iterable[Problem]) -> tuple[Problem, ...]:
    """The problems with those that differ only in their roster rows made one."""
    rows: dict[Problem, dict[int, None]] = {}
    for fault in problems:
        rows.setdefault(replace(fault, rows=()), {}).update(dict.fromkeys(fault.rows))
    return tuple(replace(kind, rows=tuple(them)) for kind, them in rows.items())


def _drawn(bench: Bench, garment: Garment, spec: DecalSpec) -> Drawn:
    missing = _outline_missing(garment, spec)
    if missing:
        return (), (missing,)
    return draw_artwork(bench, garment, spec) if spec.what == "artwork" else draw_text(bench, garment, spec)


def _outline_missing(garment: Garment, spec: DecalSpec) -> Problem | None:
    """An outline needs both its film and its width."""
    if bool(spec.outline_film) == bool(spec.outline_width):
        return None
    heading = "Outline width" if spec.outline_film else "Outline film"
    return problem("value-needed", spec.source.at(heading), rows=(garment.row.source.row,), heading=heading)
