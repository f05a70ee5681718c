"""Garments and decals → places, and problems where a decal does not fit.

Below the collar seam means: from the seam's lowest point on that side down to the decal's top. Clear at the
hem follows from the body length, which is measured from the shoulder point, less the collar's drop.
"""

from collections import defaultdict
from collections.abc import Mapping
from itertools import accumulate, combinations

from xlbatch.art.decal import Decal
from xlbatch.art.draw import merged
from xlbatch.art.size import center_of
from xlbatch.check.garment import Garment
from xlbatch.job.job import Blank, Job
from xlbatch.job.position import SLEEVES, Position
from xlbatch.placement.clear_of_features import below_features, on_feature
from xlbatch.placement.group import Group, groups
from xlbatch.placement.keep_clear import beyond_armholes
from xlbatch.placement.place import Place
from xlbatch.placement.sections import moves_of, sections
from xlbatch.problems import Problem, problem
from xlbatch.problems.phrases import phrase
from xlbatch.units import printed_text

FROM_BELOW = ("sleeve opening", "hem")
NEAR = 0.01  # mm: below this two lengths are the same


def place(
    job: Job, garments: tuple[Garment, ...], decals: tuple[Decal, ...]
) -> tuple[tuple[Place, ...], tuple[Problem, ...]]:
    """Where every decal goes, in garment and decal order, and the garments it does not fit."""
    of_garment: dict[int, list[Decal]] = defaultdict(list)
    for decal in decals:
        of_garment[decal.garment_no].append(decal)
    places: list[Place] = []
    problems: list[Problem] = []
    for garment in garments:
        moved: list[Problem] = []
        put = _put(job, garment, tuple(of_garment[garment.no]), moved)
        if isinstance(put, Problem):
            problems.append(put)
        else:
            places += put
            problems += moved
    return tuple(places), merged(problems)


def _put(job: Job, garment: Garment, decals: tuple[Decal, ...], moved: list[Problem]) -> tuple[Place, ...] | Problem:
    """The places of one garment's decals, and what was `moved`, or the first thing that keeps one of them off it."""
    by_position: dict[str, list[Decal]] = {}
    for decal in decals:
        by_position.setdefault(decal.spec.position.casefold(), []).append(decal)
    placed: dict[str, tuple[Place, ...]] = {}
    rules: dict[str, Position] = {}
    for position, here in by_position.items():
        rule = job.position(position, garment.blank.for_, garment.blank.neckline)
        wrong = _cannot_measure(garment, here[0], rule)
        if rule is None or wrong:
            return wrong or _not_made(garment, here[0])
        rules[position] = rule
    for position in sorted(rules, key=lambda name: bool(rules[name].under)):
        stack = _stack(job, garment, rules[position], groups(by_position[position]), placed)
        placed[position], told = below_features(job, stack)
        moved += told
    places = tuple(place for position in by_position for place in placed[position])
    misfits = (_misfit(job, place, rules[place.decal.spec.position.casefold()]) for place in places)
    on_it = (on_feature(job, place) for place in places)
    return next((fault for fault in (*misfits, *on_it, _overlap(places)) if fault), None) or places


def _stack(
    job: Job, garment: Garment, rule: Position, here: tuple[Group, ...], placed: Mapping[str, tuple[Place, ...]]
) -> tuple[Place, ...]:
    """One position's groups, one below the other."""
    if rule.measured_from in FROM_BELOW:
        return _stack_up(job, garment, rule, here)
    above = [place for name in rule.under for place in placed.get(name, ())]
    lowest = max((_bottom(place) for place in above), default=None)
    below = rule.distance if lowest is None else lowest + rule.gap
    tops = accumulate((group.height + rule.gap for group in here[:-1]), initial=below)
    stack = tuple(zip(here, tops, strict=True))
    center = max((center_of(garment.blank, rule, group.width, top) for group, top in stack), key=abs)
    return tuple(
        _placed(job, garment, rule, group, decal, center, below=top) for group, top in stack for decal in group.decals
    )


def _stack_up(job: Job, garment: Garment, rule: Position, here: tuple[Group, ...]) -> tuple[Place, ...]:
    """A position measured from below: the last group lies lowest."""
    places: list[Place] = []
    above = rule.distance
    for group in reversed(here):
        places += (_placed(job, garment, rule, group, decal, rule.across, above=above) for decal in group.decals)
        above += group.height + rule.gap
    return tuple(places)


def _placed(
    job: Job,
    garment: Garment,
    rule: Position,
    group: Group,
    decal: Decal,
    center: float,
    *,
    below: float | None = None,
    above: float | None = None,
) -> Place:
    """`center`: how far off the garment's middle the group is centered."""
    right, up = decal.offset
    off_middle = right + decal.width / 2 - group.width / 2  # to the right as one looks at it
    across = center + (off_middle if rule.side == "back" else -off_middle)
    top = None if below is None else below + group.height - up - decal.height
    bottom = None if above is None else above + up
    on_sleeve, blank = rule.side in SLEEVES, garment.blank
    half = (blank.sleeve_opening or 0) / 2 if on_sleeve else blank.chest / 2
    clear_hem = bottom if top is None else blank.length - _drop(blank, rule) - top - decal.height
    return Place(
        garment=garment,
        decal=decal,
        side=rule.side,
        measured_from=rule.measured_from,
        below_collar=_rounded(top),
        above_opening=_rounded(bottom) if on_sleeve else None,
        above_hem=None if on_sleeve else _rounded(bottom),
        from_center=round(across, 3) + 0.0,
        clear_side=round(half - abs(across) - decal.width / 2, 3),
        clear_hem=None if on_sleeve else _rounded(clear_hem),
        sections=sections(decal.width, decal.height, job.presses[0], moves_of(job.settings.length_unit)),
    )


def _rounded(mm: float | None) -> float | None:
    return None if mm is None else round(mm, 3)


def _drop(blank: Blank, rule: Position) -> float:
    """How far below the shoulder point the seam lies that the position is measured from."""
    match rule.measured_from:
        case "back collar seam":
            return blank.drop_back
        case "side of the collar seam":
            return 0.0
        case _:
            return blank.drop_front


def _bottom(place: Place) -> float:
    return (place.below_collar or 0) + place.decal.height


def _not_made(garment: Garment, decal: Decal) -> Problem:
    blank = garment.blank
    return problem(
        "position-not-made",
        decal.spec.source.at("Position"),
        decal.spec.position,
        rows=(garment.row.source.row,),
        position=decal.spec.position,
        garment=blank.garment,
        size=blank.size,
    )


def _cannot_measure(garment: Garment, decal: Decal, rule: Position | None) -> Problem | None:
    blank = garment.blank
    if rule is None or rule.side not in SLEEVES:
        return None
    missing = "sleeve opening" if not blank.sleeve_opening else "sleeve length" if not blank.sleeve_length else ""
    if not missing:
        return None
    return problem(
        "measure-missing",
        garment.row.source.at("Garment") if blank.source.built_in else blank.source.at(missing.capitalize()),
        "",
        rows=(garment.row.source.row,),
        garment=blank.garment,
        size=blank.size,
        measure=missing,
        position=decal.spec.position,
    )


def _misfit(job: Job, place: Place, rule: Position) -> Problem | None:
    """A problem where the decal comes closer to a seam, the hem or a sleeve's end than it may."""
    settings, blank, decal = job.settings, place.garment.blank, place.decal
    side = settings.clear_of_sleeve_edge if rule.side in SLEEVES else settings.clear_of_side
    spare_height = _spare_height(job, place, rule)
    spare_width = min(place.clear_side - side, -beyond_armholes(place) or place.clear_side)
    if spare_width >= -NEAR and spare_height >= -NEAR:
        return None
    unit = settings.length_unit
    width, height = decal.width + 2 * min(0, spare_width), decal.height + min(0, spare_height)
    fits = phrase("wide and high", width=printed_text(max(width, 0), unit), height=printed_text(max(height, 0), unit))
    return problem(
        "decal-off-garment",
        place.garment.row.source.at("Size") if decal.spec.source.built_in else decal.spec.source.at("Width"),
        f"{printed_text(decal.width, unit)} × {printed_text(decal.height, unit)}",
        rows=(place.garment.row.source.row,),
        decal=decal.spec.decal,
        width=printed_text(decal.width, unit),
        height=printed_text(decal.height, unit),
        garment=blank.garment,
        size=blank.size,
        position=decal.spec.position,
        fits=fits if width > 0 and height > 0 else "smaller",
    )


def _spare_height(job: Job, place: Place, rule: Position) -> float:
    """How much higher the decal could be before it meets hem, collar or sleeve seam; below 0 it is too high."""
    blank = place.garment.blank
    if place.clear_hem is None:
        edge = job.settings.clear_of_sleeve_edge
        return (blank.sleeve_length or 0) - edge - (place.above_opening or 0) - place.decal.height
    to_hem = place.clear_hem - job.settings.clear_of_hem
    if rule.measured_from != "hem":
        return to_hem
    return min(to_hem, blank.length - blank.drop_front - place.clear_hem - place.decal.height)


def _overlap(places: tuple[Place, ...]) -> Problem | None:
    """A problem where two decals that are not films of one drawing lie on one another."""
    for place, other in combinations(places, 2):
        if place.side == other.side and not _one_drawing(place.decal, other.decal) and place.extent.meets(other.extent):
            return problem(
                "decals-overlap",
                other.decal.spec.source.at("Position"),
                other.decal.spec.position,
                rows=(other.garment.row.source.row,),
                decal=other.decal.spec.decal,
                other=place.decal.spec.decal,
                garment=other.garment.blank.garment,
                size=other.garment.blank.size,
            )
    return None


def _one_drawing(decal: Decal, other: Decal) -> bool:
    return len(groups((decal, other))) == 1
