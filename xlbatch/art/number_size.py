"""Measures the numbers as they will be cut against the book named in `Number rule`."""

from collections.abc import Iterator

from xlbatch.art.decal import Decal
from xlbatch.check.garment import Garment
from xlbatch.job.job import Job
from xlbatch.problems import Problem, problem
from xlbatch.trade.number_rules import NumberRule, number_rule
from xlbatch.units import length_text

_SLACK = 0.5  # mm: lettering is rounded to no more than this


def number_sizes(job: Job, garments: tuple[Garment, ...], decals: tuple[Decal, ...]) -> tuple[Problem, ...]:
    """Each number that is too low or too thin for the league's rule, one problem a row of the Designs sheet."""
    rule = number_rule(job.settings.number_rule)
    if rule is None:
        return ()
    wearers = {garment.no: garment for garment in garments}
    faults: dict[tuple[str, str, int], Problem] = {}
    for decal in decals:
        if decal.spec.what == "number" and not decal.border and decal.garment_no in wearers:
            for fault in _faults(job, rule, wearers[decal.garment_no], decal):
                faults.setdefault((fault.code, decal.spec.decal, decal.spec.source.row), fault)
    return tuple(faults.values())


def _faults(job: Job, rule: NumberRule, garment: Garment, decal: Decal) -> Iterator[Problem]:
    blank, unit, spec = garment.blank, job.settings.length_unit, decal.spec
    place = job.position(spec.position, blank.for_, blank.neckline)
    least = {"front": rule.front, "back": rule.back}.get(place.side if place else "")
    measured = (("number-too-low", decal.height, least), ("number-too-thin", stroke(decal), rule.stroke))
    for code, value, wanted in measured:
        if value is not None and wanted is not None and value < wanted - _SLACK:
            yield problem(
                code,
                spec.source.at("Height"),
                decal.text,
                rows=(garment.row.source.row,),
                garment=f"{blank.garment} {blank.size}",
                measure=length_text(value, unit),
                least=length_text(wanted, unit),
                rule=rule.name,
                edition=rule.edition,
            )


def stroke(decal: Decal) -> float | None:
    """About how thick its strokes are (mm), by area A and outline P: a ring's 2A/P, a bar's w in P = 2A/w + 2w."""
    if decal.outline is None:
        return None
    area, outline = decal.outline.area, decal.outline.cut_length
    if decal.outline.contours > 1:
        return 2 * area / outline
    return float((outline - max(outline**2 - 16 * area, 0.0) ** 0.5) / 4)
