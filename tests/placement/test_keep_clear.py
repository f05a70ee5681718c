"""10,000 random garments: no decal on a feature, the collar, a seam or the hem; what moves is told."""

import random
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest
from shapely import box

from xlbatch.art.decal import Decal
from xlbatch.art.size import neck_at
from xlbatch.check.garment import Garment
from xlbatch.job.feature import Feature
from xlbatch.job.job import Job
from xlbatch.job.position import SLEEVES
from xlbatch.placement.place import Place
from xlbatch.placement.put import place
from xlbatch.plan import Plan
from xlbatch.roster.read import Reading

GARMENTS = 10_000
INCH, NEAR = 25.4, 0.02
NECK, ARMPIT = 0.36, 0.45  # of the chest width: common practice, no source


def garment_of(job: Job, number: int, draw: random.Random) -> tuple[Garment, tuple[Decal, ...]]:
    """A garment with features here and there, and one to three decals on it."""
    blank = draw.choice(job.blanks)
    if draw.random() < 0.3:
        feature = Feature(
            "badge", draw.choice(("front", "back")), draw.uniform(10, 200), draw.uniform(10, 200), "collar"
        )
        blank = replace(blank, keep_clear=(*blank.keep_clear, feature))
    wanted = draw.sample(job.position_names, draw.randint(1, 3))
    specs = tuple(replace(job.designs[0], decal=f"Piece {at}", position=it) for at, it in enumerate(wanted))
    garment = Garment(replace(job.roster[0], no=number), blank, "white", "Ana", specs, specs, needs_blank=True)
    sizes = [(draw.uniform(20, 300), draw.uniform(20, 250)) for _ in specs]
    return garment, tuple(
        Decal(spec.decal, number, spec, "", "Black smooth", "", *size, None)
        for spec, size in zip(specs, sizes, strict=True)
    )


def wrong(it: Place, job: Job) -> str:
    """What a decal lies on that it should not, worked out anew from the garment's measures."""
    blank, settings = it.garment.blank, job.settings
    left, bottom, right, top = it.extent
    if it.side in SLEEVES:
        assert blank.sleeve_opening
        assert blank.sleeve_length
        half = blank.sleeve_opening / 2 - settings.clear_of_sleeve_edge
        return "" if -half - NEAR <= left and right <= half + NEAR and top <= blank.sleeve_length else "sleeve seam"
    half = blank.chest / 2 - settings.clear_of_side
    if left < -half - NEAR or right > half + NEAR:
        return "side seam"
    if bottom < settings.clear_of_hem - NEAR:
        return "hem"
    drop = blank.drop_front if it.side == "front" else blank.drop_back
    armholes = blank.between_armholes or blank.chest
    if top > blank.length - ARMPIT * blank.chest and max(-left, right) > armholes / 2 + NEAR:
        return "armhole"
    for feature in blank.keep_clear:
        upper = blank.length - drop if feature.at == "collar" else feature.height
        here = box(-feature.width / 2, upper - feature.height, feature.width / 2, upper)
        if feature.side == it.side and box(*it.extent).intersection(here).area > 1:
            return feature.name
    if top > blank.length - drop and it.side == "front":  # beside the collar: on which side of the neck's curve
        part = max(0.0, 1 - (blank.length - top) / drop)
        neck = NECK * blank.chest / 2 * (part if blank.neckline == "V" else part**0.5)
        if left < neck - NEAR and right > -neck + NEAR:
            return "collar"
    return ""


def test_no_decal_lies_on_what_is_to_be_kept_clear(reading_of: Callable[..., Reading]) -> None:
    job = reading_of([["Who", "Size"], ["Ana", "M"]]).job
    draw = random.Random(17)
    garments = [garment_of(job, number, draw) for number in range(1, GARMENTS + 1)]
    decals = tuple(decal for _, them in garments for decal in them)
    places, problems = place(job, tuple(garment for garment, _ in garments), decals)
    assert len({it.garment.no for it in places}) > GARMENTS / 10
    assert any(found.code == "position-moved" for found in problems)
    assert any(found.code == "decal-on-feature" for found in problems)
    faults = [(fault, it.garment.blank.garment, it.decal.spec.position) for it in places if (fault := wrong(it, job))]
    assert faults == []


HOODIE = [["Who", "Garment", "Size"], ["Ana Novak", "Hooded sweatshirt", "M"]]
DESIGN = ["Design", "Decal", "What", "Film", "Position", "Width", "Height", "Scale with size"]


def test_a_back_name_on_a_hooded_sweatshirt_goes_below_the_hood(plan_of: Callable[..., Plan]) -> None:
    designs = [DESIGN, ["Name", "Badge", "artwork", "Black smooth", "upper back", "8 in", "3 in", "no"]]
    plan = plan_of(HOODIE, Designs=designs)
    (place_,) = plan.places
    assert place_.below_collar == pytest.approx((8 + 0.5) * INCH)  # the hood is 8 in long on the back
    assert [p.rows for p in plan.problems if p.code == "position-moved"] == [(2,)]


def test_a_front_that_reaches_the_pouch_pocket_is_held_back(plan_of: Callable[..., Plan]) -> None:
    designs = [DESIGN, ["Name", "Badge", "artwork", "Black smooth", "full front", "8 in", "14 in", "no"]]
    plan = plan_of(HOODIE, Designs=designs)
    (told,) = [p for p in plan.problems if p.level == "stop"]
    assert (told.code, told.where.sheet, told.where.cell) == ("decal-on-feature", "Designs", "E2")  # its position
    # 29 in long, the collar 3.75 deep, 3 below it 14 high: it ends 8.25 above the hem, where the pocket is 9.5 high
    assert told.wrong.endswith("would lie on the pouch pocket of Hooded sweatshirt M, by 1 1/4 in.")
    cleared = [["Garment", "Size", "Keep clear"], ["Hooded sweatshirt", "M", "nothing"]]
    assert len(plan_of(HOODIE, Designs=designs, Garments=cleared).places) == 1


def test_left_chest_art_on_youth_has_its_usual_size(plan_of: Callable[..., Plan]) -> None:
    """Drawn 3 1/2 in wide for adults: 2 1/2 in on youth, 2 in on toddlers (common practice, no source)."""
    designs = [DESIGN, ["Name", "Badge", "artwork", "Black smooth", "left chest", "3 1/2 in", "3 1/2 in", "yes"]]
    plan = plan_of([["Who", "Size"], ["Ana", "Youth M"], ["Ivo", "4T"], ["Mei", "Youth XS"]], Designs=designs)
    assert [decal.width for decal in plan.decals] == pytest.approx([2.5 * INCH, 2 * INCH, 2.5 * INCH])


def test_chest_art_of_no_stated_width_has_the_usual_one(plan_of: Callable[..., Plan], tmp_path: Path) -> None:
    """3 1/2 in on an adult M, 2 1/2 in on youth, 2 in on toddlers (common practice, no source), clear of any collar."""
    (tmp_path / "crest.svg").write_text(
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><path d="M0 0h9v9z"/></svg>', encoding="utf-8"
    )
    designs = [[*DESIGN[:6], "Artwork"], ["Name", "Crest", "artwork", "Black smooth", "left chest", None, "crest.svg"]]
    sizes = {"M": 3.5, "3XL": 4.0, "Youth S": 2.5, "Youth M": 2.5, "3T": 2.0}
    garments = ("Crew-neck tee", "V-neck tee", "Polo", "Sweatshirt", "Tank top")
    roster = [["Who", "Garment", "Size"]]
    roster += [[f"{garment} {size}", garment, size] for garment in garments for size in sizes]
    plan = plan_of(roster, Designs=designs)
    assert len(plan.places) >= 20
    for it in plan.places:
        blank = it.garment.blank
        assert it.decal.width == pytest.approx(sizes[blank.size] * INCH), it.garment.who
        inner = abs(it.from_center) - it.decal.width / 2
        assert inner >= neck_at(blank, it.below_collar or 0.0) + 0.25 * INCH - 0.01


def test_a_name_under_chest_art_does_not_push_it_outward(plan_of: Callable[..., Plan]) -> None:
    """Under the V there is no collar: the badge lies at one place on all shirts of a size, however long the name."""
    head = [*DESIGN, "Widest"]
    designs = [head, ["Name", "Badge", "artwork", "Black smooth", "left chest", "4 1/2 in", "5 in", "no", None]]
    designs += [["Name", "Who", "print name", "Black smooth", "left chest", None, "1/2 in", "no", "6 in"]]
    roster = [["Who", "Size", "Garment"], ["Bo", "XL", "V-neck tee"], ["Theodora Vandermere", "XL", "V-neck tee"]]
    plan = plan_of(roster, Designs=designs, Job=[["Setting", "Value"], ["Join pieces", "no"]])
    badge, who, other_badge, other_who = plan.places
    assert other_who.decal.width > who.decal.width + INCH
    assert {it.from_center for it in plan.places} == {badge.from_center}
    assert badge.from_center == other_badge.from_center < -4 * INCH


POSITIONS = [
    ["Position", "For", "Neckline", "Side", "Measured from", "Distance (in)", "From center (in)", "Gap (in)"],
    ["near the neck", "adult", "any", "back", "back collar seam", 1, 0, 0.5],
]


@pytest.mark.parametrize(
    ("garment", "position", "size", "expected"),
    [
        ("Polo", "full front", ("8 in", "3 in"), 6.5),  # the placket is 6 in long
        ("Hooded sweatshirt", "back name", ("8 in", "2 in"), 8.5),  # the hood lies 8 in down the back
        ("Hooded sweatshirt", "full front", ("8 in", "14 in"), "decal-on-feature"),  # the pouch pocket
        ("Zip hooded sweatshirt", "full front", ("8 in", "3 in"), "decal-on-feature"),  # the zip, from hem to collar
        ("Zip hooded sweatshirt", "left chest", ("3 in", "3 in"), 3.5),
        ("Crew-neck tee", "near the neck", ("6 in", "1 in"), 2.5),  # the care label is 2 in long
        ("Crew-neck tee", "full back", ("15 3/4 in", "3 in"), 4.0),  # between the armholes are 16 in
        ("Crew-neck tee", "full back", ("16 1/4 in", "3 in"), "decal-off-garment"),
    ],
)
def test_each_garment_has_its_features(
    plan_of: Callable[..., Plan], garment: str, position: str, size: tuple[str, str], expected: float | str
) -> None:
    """Inches below the collar seam, or the code of what holds it back; a decal is moved half an inch clear."""
    designs = [DESIGN, ["Name", "Badge", "artwork", "Black smooth", position, *size, "no"]]
    plan = plan_of([["Who", "Garment", "Size"], ["Ana", garment, "M"]], Designs=designs, Positions=POSITIONS)
    stops = [problem.code for problem in plan.problems if problem.level == "stop"]
    if isinstance(expected, str):
        assert stops == [expected]
    else:
        assert stops == []
        assert [place_.below_collar for place_ in plan.places] == pytest.approx([expected * INCH])
