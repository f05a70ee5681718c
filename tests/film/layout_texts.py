"""What small jobs come to on film, kept as text: where every decal lies, what is cut from what, what is bought. Where a
change is meant, look at what got longer or dearer."""

import random
from collections.abc import Iterator
from dataclasses import replace
from decimal import Decimal as Money
from pathlib import Path

from tests.film.conftest import Shop, film
from xlbatch.film.cutting import cutting
from xlbatch.film.layout import FilmNeed, Layout, Run
from xlbatch.job.job import FilmPiece, Roll

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
    lines: list[str] = []
    for name, shop, effort in jobs():
        lines += [f"\n== {name}", *_layout(shop.lay(effort))]
    yield "layouts.txt", "\n".join(lines) + "\n"


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
