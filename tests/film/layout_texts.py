"""What small jobs come to on film, kept as text: where every decal lies, what is cut from what, what is bought. Where a
change is meant, look at what got longer or dearer."""

import random
from collections.abc import Iterator, Sequence
from dataclasses import replace
from decimal import Decimal as Money
from pathlib import Path

from tests.film.conftest import Shop, film
from xlbatch.film.box import Bed, bed_of
from xlbatch.film.cutting import cutting
from xlbatch.film.layout import FilmNeed, Layout, Lying, Run
from xlbatch.film.profile import cut_out, profiles
from xlbatch.film.shape import distance, least_area
from xlbatch.geometry.outline import Outline, Segment, pack
from xlbatch.job.job import FilmPiece, Roll

# bent sides around a hole, and two dots too far apart to hang together
BOW: Sequence[Segment] = (
    ("M", (0, 0)), ("Q", (40, 30, 80.2, 0)), ("C", (70, 20, 75, 40, 60, 45.5)), ("L", (10, 40)), ("Z", ()),
    ("M", (30, 25)), ("C", (30, 35, 45, 35, 45, 25)), ("Z", ()),
)  # fmt: skip
DOTS: Sequence[Segment] = (
    ("M", (0, 0)), ("L", (12, 0)), ("L", (0, 20)), ("Z", ()),
    ("M", (130, 8)), ("L", (150, 8)), ("L", (150, 16)), ("Z", ()),
)  # fmt: skip
BLACK, GOLD = "Black smooth", "Gold smooth"
YARDS = (Roll(914.4, Money("6.25")), Roll(4572, Money("24.00")))


def jobs() -> Iterator[tuple[str, Shop, int]]:
    """Small jobs, and with what effort they are laid."""
    dice = random.Random(8)

    def box(wide: tuple[int, int], high: tuple[int, int]) -> tuple[float, float]:
        return dice.randint(*wide) + 0.25, dice.randint(*high) + 0.5

    names = Shop()
    for _ in range(12):
        names.decals([box((60, 240), (25, 60))])
    yield "names", names, 1
    yield "names, two shirts a strip", replace(names, settings=replace(names.settings, shirts_per_strip=2)), 1
    yield "names, in roster order", names, 0

    held = (FilmPiece(305, 700), FilmPiece(200, 900), FilmPiece(305, 90))
    fronts = Shop(films=(film(rolls=YARDS, on_hand=held), film(GOLD, one_direction=True, rolls=(Roll(600, None),))))
    fronts.settings = replace(fronts.settings, spoiled_film_per_100=5, test_cut=True)
    for no in range(1, 10):
        fronts.decals([box((150, 285), (60, 200)), box((60, 200), (40, 40))])
        if no % 4:
            fronts.more(no, [box((80, 280), (40, 120))], GOLD)
    yield "fronts and backs in two films", fronts, 1
    sure = replace(fronts.settings, sureness=95, longest_cut=600, longest_strip=500, handy_strip=200)
    yield "short runs, surely enough film", replace(fronts, settings=sure), 0

    many = Shop(films=(film(rolls=YARDS[:1]),))
    for _ in range(3):
        many.decals([box((20, 150), (20, 90)) for _ in range(6)])
    yield "many decals a shirt", many, 0
    yield "many decals a shirt, none turned", replace(many, settings=replace(many.settings, turn=False)), 1

    shapes = Shop()
    shapes.settings = replace(shapes.settings, interlock=True, longest_strip=300, handy_strip=280)
    for _ in range(7):
        shapes.decals([box((90, 200), (70, 160)) for _ in range(2)], outlined=True)
    yield "interlocked", shapes, 0
    few = Shop(settings=replace(shapes.settings, mirror=False, shirts_per_strip=2))
    few.decals([box((90, 160), (70, 160)) for _ in range(3)], outlined=True)
    yield "interlocked, not mirrored", few, 1

    alone = Shop()
    alone.settings = replace(alone.settings, shirts_per_strip=1, longest_cut=700, longest_strip=400, test_cut=True)
    for _ in range(9):
        alone.decals([box((40, 290), (50, 250))], outlined=True)
    yield "one shirt a strip", alone, 1


def layouts_text(_folder: Path) -> Iterator[tuple[str, str]]:
    yield "layouts.txt", "".join(f"{line}\n" for part in (_shapes, _jobs) for line in part())


def _jobs() -> Iterator[str]:
    for name, shop, effort in jobs():
        yield f"\n== {name}"
        yield from _layout(shop.lay(effort))


def _shapes() -> Iterator[str]:
    """What an L, a bow and two dots far apart fill of the columns they lie in, and how near they are to one another."""
    yield "== shapes"
    shop = Shop()
    shop.decals([(40.3, 60.6), (80.2, 45.5), (150.0, 20.0)], outlined=True)
    ell, bow, dots = shop.made
    bow = replace(bow, outline=Outline(pack(BOW), 80.2, 45.5, 2, 1.0, 1.0))
    dots = replace(dots, outline=Outline(pack(DOTS), 150.0, 20.0, 2, 1.0, 1.0))
    for decal in (ell, bow, dots):
        for bed, mirrored in ((bed_of(film(), shop.settings), True), (Bed(120_000, 10**6, 2_500, turn=True), False)):
            for way in profiles(decal, bed, mirrored=mirrored):
                yield f"{decal.id} {way.turned}° {way.across} x {way.along}, mirrored {mirrored}"
                yield f"  low {way.low[::6].tolist()} high {way.high[::6].tolist()}"
        yield f"  takes {least_area(decal, 6):.3f} and {least_area(replace(decal, outline=None), 6):.3f} mm²"
        lying = Lying(decal, 20.0, 30.0, 270)
        cut = " ".join(f"{x:.2f}/{y:.2f}" for x, y in cut_out(lying, 6, mirrored=True)[::4])
        yield f"  cut out {cut}"
        for other in (Lying(bow, 70.0, 90.0, 90), Lying(replace(bow, outline=None), 5.0, 190.5, 0)):
            near = (distance(lying, other, mirrored=mirrored) for mirrored in (False, True))
            yield f"  away {' '.join(f'{away:.3f}' for away in near)}"


def _layout(layout: Layout) -> Iterator[str]:
    for batch in layout.batches:
        yield f"batch {batch.no}: {' '.join(map(str, batch.garments))}"
    for run in layout.runs:
        yield from _run(run)
    yield from map(_need, layout.needs)
    yield f"lever: {tuple(layout.lever) if layout.lever else 'none'}"


def _run(run: Run) -> Iterator[str]:
    cut = cutting(run)
    yield (
        f"run {run.no} {run.film.name} {run.length:.3f} from {run.cut_from}, test cut {run.test_cut} at"
        f" {run.test_along}, ink {run.ink_box}, cuts {cut.length} travel {cut.travel}"
    )
    for strip in run.strips:
        yield f"  strip {strip.batch} at {strip.start:.3f}: {strip.length:.3f}, weeded with {run.weeded_with(strip)}"
        for lying in strip.lying:
            at = f"{lying.across:.3f} {lying.along:.3f}"
            yield f"    {lying.decal.id} {lying.width} x {lying.length} at {at} {lying.turned}°"
    yield f"  cut: {' '.join(piece.lying.decal.id for piece in cut.pieces)}"


def _need(need: FilmNeed) -> str:
    rolls = ", ".join(f"{count} of {roll.length}" for count, roll in need.rolls)
    left = ", ".join(f"{piece.width} x {piece.length}" for piece in need.left)
    return (
        f"{need.film.name}: {need.decals} decals, {need.runs} runs, {need.length} long; least {need.least}, free"
        f" {need.free}, used {need.used:.5f}; on hand {need.on_hand}, spare {need.spare}, buy {need.buy}: {rolls} for"
        f" {need.cost}, left {left}, sure {need.sure:.5f}, cheaper {need.cheaper}"
    )
