"""Press cards: batch by batch, one line a garment with its steps in the order they are pressed, to be ticked."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby

from xlbatch.check.garment import Garment
from xlbatch.job.job import Film, Press
from xlbatch.pages.leaf import ACROSS, COLUMN, Leaf, Shown, Span, Under
from xlbatch.pages.look import (
    ACCENT,
    BAND,
    BANNER,
    HAIRLINE,
    HEAD,
    KEY,
    PLAIN,
    STRONG,
    THICK,
    THIN,
    Look,
    Part,
)  # fmt: skip
from xlbatch.pages.work import Work, aside_text, listed, where_text
from xlbatch.paper.style import BOX
from xlbatch.pictures.garment_drawing import card_picture
from xlbatch.press.step import Step
from xlbatch.sheets.banner import IRON
from xlbatch.trade.tables import iron_dial, work_time
from xlbatch.units import temperature_text

NAME = "Press cards"
TELLS = "Press: batch by batch, down the page. Tick each piece as it is pressed; ring ok or redo."
CAUTION = "CAUTION  Plate and fresh film burn at once. Children and pets away. Unplug when you leave."
MOST_DRAWN = 300  # garments: with more, cards have no drawings
MOST_BANNERS = 4  # films whose settings stand at the top of every page
NO, WHO, DRAWING, STEPS, RESULT = 4, 13, 11, 19, 4
NOTE = ACROSS - NO - WHO - DRAWING - STEPS - RESULT
STEP_HEIGHT, LEAST_CARD, TALL_CARD = 17.0, 30.0, 48.0  # points
RULE = PLAIN.but(bottom=HAIRLINE)


@dataclass(frozen=True)
class Block:
    """Batches whose garments are all finished before the next block's begin; `passes` as the plate's heat changes."""

    batches: tuple[int, ...]
    passes: tuple[tuple[Step, ...], ...]

    @property
    def cards(self) -> tuple[tuple[Garment, tuple[tuple[int, Step], ...]], ...]:
        """Each garment, in the order first pressed, with the number of the pass of each of its steps."""
        of: dict[int, list[tuple[int, Step]]] = {}
        for number, steps in enumerate(self.passes, 1):
            for step in steps:
                of.setdefault(step.place.garment.no, []).append((number, step))
        return tuple((them[0][1].place.garment, tuple(them)) for them in of.values())


def blocks(steps: Sequence[Step]) -> Iterator[Block]:
    """The steps parted where no batch reaches over the cut, each part by the plate's heats."""
    last = {step.batch: at for at, step in enumerate(steps)}
    start = end = 0
    for at, step in enumerate(steps):
        end = max(end, last[step.batch])
        if at == end:
            part = steps[start : at + 1]
            passes = tuple(tuple(them) for _, them in groupby(part, key=lambda step: step.temperature))
            yield Block(tuple(dict.fromkeys(step.batch for step in part)), passes)
            start = at + 1


def write(leaf: Leaf, work: Work) -> None:
    """The films' settings at the top of every page, then the batches."""
    steps = work.plan.pressing.steps
    films = list({step.film.name.casefold(): step.film for step in steps}.values())
    few = len(films) <= MOST_BANNERS
    for film in films if few else ():
        _write_settings(leaf, work, film, steps[0].press)
    leaf.line(CAUTION, STRONG)
    _write_heads(leaf)
    leaf.repeat()
    for film in () if few else films:
        _write_settings(leaf, work, film, steps[0].press)
    for at, block in enumerate(found := tuple(blocks(steps))):
        _write_block(leaf, work, block)
        if at == 0 and len(found) > 1:
            stop = f"STOP: let it cool. Edges down, place right, color right?   {BOX} yes: cut, weed and press the rest"
            leaf.line(stop, STRONG.but(color=ACCENT, top=THIN, bottom=THIN), 20)
    _write_advice(leaf)


def _write_settings(leaf: Leaf, work: Work, film: Film, press: Press) -> None:
    """A film's settings in large type."""
    heat = temperature_text(film.temperature, work.plan.job.settings.temperature_unit)
    if press.kind == IRON:
        heat = f"dial {iron_dial(film.temperature)}"
    edge = Look(top=THIN, bottom=THIN)
    cover = f"{press.cover} on" if press.cover else "no cover"
    back = f"then back {film.back:g} s" if film.back else "one side only"
    leaf.row(
        42,
        Span(
            20,
            (Part(film.name, KEY, bold=True), Part(f"\nwarm the bare garment {film.warm_up:g} s; {cover}")),
            edge.but(left=THIN),
        ),
        Span(11, heat, edge.but(size=BANNER, bold=True, align="center")),
        Span(
            12, (Part(f"{film.press:g} s", BANNER, bold=True), Part(f"\n{back}")), edge.but(align="center", left=THIN)
        ),
        Span(8, (Part(film.pressure, KEY, bold=True), Part("\npressure")), edge.but(align="center", left=THIN)),
        Span(8, (Part(film.peel, KEY, bold=True), Part("\npeel")), edge.but(align="center", left=THIN, right=THIN)),
    )


def _write_heads(leaf: Leaf) -> None:
    heads = ((NO, "No."), (WHO, "Who, garment, size"), (DRAWING, ""), (STEPS, f"Pieces in order ({BOX} pressed)"))
    last = ((RESULT, "Result"), (NOTE, "Note"))
    leaf.row(18, *(Span(width, text, HEAD) for width, text in (*heads, *last)))


def _write_block(leaf: Leaf, work: Work, block: Block) -> None:
    word = "BATCH" if len(block.batches) == 1 else "BATCHES"
    band = Look(fill=BAND, top=THICK)
    leaf.row(
        20,
        Span(17, f"{word} {listed(block.batches)}", band.but(size=KEY, bold=True)),
        Span(
            42,
            "   ".join(_pass_text(work, number, steps) for number, steps in enumerate(block.passes, 1)),
            band.but(align="right"),
        ),
        joined=True,
    )
    for garment, steps in block.cards:
        _write_card(leaf, work, garment, steps, several=len(block.passes) > 1)


def _pass_text(work: Work, number: int, steps: Sequence[Step]) -> str:
    """`1: White smooth 330 °F, strips 3`."""
    films = dict.fromkeys(step.film.name for step in steps)
    heat = temperature_text(steps[0].temperature, work.plan.job.settings.temperature_unit)
    wait = f", wait {max(1, round(steps[0].wait / 60))} min" if steps[0].wait >= 30 else ""
    strips = dict.fromkeys(work.lies[s.place.decal.id][1].batch for s in steps if s.place.decal.id in work.lies)
    return f"{number}: {' + '.join(films)} strip {listed(strips)}, {heat}{wait}"


def _write_card(leaf: Leaf, work: Work, garment: Garment, steps: Sequence[tuple[int, Step]], *, several: bool) -> None:
    count, edge = len(steps), RULE
    least = max(STEP_HEIGHT, (LEAST_CARD if count == 1 else TALL_CARD) / count)
    who = (Part(garment.who or f"no. {garment.no}", bold=True), Part(f"\n{garment.blank.garment}, {garment.color}  "),
           Part(garment.blank.size, bold=True))  # fmt: skip
    drawn = len(work.plan.garments) <= MOST_DRAWN
    picture = (
        card_picture([step.place for _, step in steps], DRAWING * COLUMN - 4, least * count - 3) if drawn else None
    )
    for at, (number, step) in enumerate(steps):
        first, last = at == 0, at == count - 1
        side = (
            (Span(NO, garment.no, edge.but(size=KEY, bold=True), down=count), Span(WHO, who, edge, down=count),
             Span(DRAWING, None, edge, down=count))
            if first else (Under(NO), Under(WHO), Under(DRAWING))
        )  # fmt: skip
        end = (
            (Span(RESULT, "ok\nredo", edge.but(align="center", left=THIN), down=count),
             Span(NOTE, None, edge.but(left=THIN, right=THIN), down=count))
            if first else (Under(RESULT), Under(NOTE))
        )  # fmt: skip
        shown = [Shown(picture, (NO + WHO) * COLUMN + 2)] if picture and first else []
        text = _step_text(work, step, str(number) if several else "")
        leaf.row(least, *side, Span(STEPS, text, edge if last else PLAIN), *end, pictures=shown, joined=not last)


def _step_text(work: Work, step: Step, number: str) -> tuple[Part, ...]:
    """`☐ 1 full front  3 in below front collar seam`, and what to mind."""
    place = step.place
    far, seam = where_text(place, work.unit)
    more = [aside_text(place, work.unit), step.how]
    says = [*([seam] if place.line_up_by else []), *filter(None, more)]
    return (
        Part(f"{BOX} ", KEY),
        Part(f"{number} {place.decal.spec.position} ".lstrip()),
        Part(far, KEY, bold=True),
        Part(f" {'; '.join(says)}"),
    )


def _write_advice(leaf: Leaf) -> None:
    again = work_time("press", "press again where an edge lifts")
    leaf.line(f"If an edge lifts: lay the carrier back, cover it, {again:g} s more. If a piece is spoiled: ring redo, "
              "write which piece into Note, lay the garment aside and go on.")  # fmt: skip
