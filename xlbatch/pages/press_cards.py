"""Press cards: batch by batch, one line a garment with its steps in the order they are pressed, to be ticked."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby

from xlbatch.check.garment import Garment
from xlbatch.job.job import Film, Press
from xlbatch.pages.leaf import ACROSS, COLUMN, Leaf, Shown, Span, Under
from xlbatch.pages.page_looks import (
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
    WORK,
    Look,
    Part,
)  # fmt: skip
from xlbatch.pages.work import Work, aside_text, corner_text, listed, where_text
from xlbatch.paper.style import BOX
from xlbatch.pictures.garment_drawing import card_picture
from xlbatch.press.step import Step
from xlbatch.sheets.banner import IRON
from xlbatch.sheets.how import minded
from xlbatch.trade.tables import iron_dial
from xlbatch.units import temperature_text

NAME = "Press cards"
TELLS = "Press: batch by batch, down the page. Tick each piece as it is pressed; ring ok or redo."
CAUTION = "CAUTION  Plate and fresh film burn at once. Children and pets away. Unplug when you leave."
MOST_DRAWN = 300  # garments: with more, cards have no drawings
MOST_BANNERS = 4  # films whose settings stand at the top of every page
NO, WHO, DRAWING, STEPS, RESULT = 3, 15, 10, 18, 5
NOTE = ACROSS - NO - WHO - DRAWING - STEPS - RESULT
STEP_HEIGHT, LEAST_CARD, TALL_CARD = 17.5, 30.0, 52.0  # points; of one step, of a card of one, of a card of several
USUAL = ("below front collar seam", "below back collar seam")  # what is measured from where nothing else is said
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
    _write_heads(leaf, work.unit)
    leaf.repeat()
    for film in () if few else films:
        _write_settings(leaf, work, film, steps[0].press)
    for at, block in enumerate(found := tuple(blocks(steps))):
        _write_block(leaf, work, block)
        if at == 0 and len(found) > 1:
            stop = f"STOP: let it cool. Edges down, place right, color right?   {BOX} yes: cut, weed and press the rest"
            leaf.line(stop, STRONG.but(color=ACCENT, top=THIN, bottom=THIN), 20)
    _write_advice(work, leaf)


def _write_settings(leaf: Leaf, work: Work, film: Film, press: Press) -> None:
    """A film's settings in large type."""
    heat = temperature_text(film.temperature, work.plan.job.settings.temperature_unit)
    if press.kind == IRON:
        heat = f"dial {iron_dial(film.temperature)}"
    edge = Look(top=THIN, bottom=THIN)
    center = edge.but(align="center", left=THIN)
    cover = f"{press.cover} on top" if press.cover else "no cover"
    back = f"then back {film.back:g} s" if film.back else "one side only"
    about = (Part(film.name, KEY, bold=True), Part(f"\nwarm-up {film.warm_up:g} s; {cover}"))
    leaf.row(
        42,
        Span(23, about, edge.but(left=THIN)),
        Span(11, heat, edge.but(size=BANNER, bold=True, align="center")),
        Span(10, (Part(f"{film.press:g} s", BANNER, bold=True), Part(f"\n{back}")), center),
        Span(8, (Part(film.pressure, KEY, bold=True), Part("\npressure")), center),
        Span(8, (Part(film.peel, KEY, bold=True), Part("\npeel")), center.but(right=THIN)),
    )


def _write_heads(leaf: Leaf, unit: str) -> None:
    measured = f"{unit} from collar seam down to top edge"
    heads = (
        (NO, "No."), (WHO, "Who, garment, size"), (DRAWING, "Where"), (STEPS, f"Press in this order: {measured}"),
        (RESULT, "Result"), (NOTE, "Note"),
    )  # fmt: skip
    leaf.row(18, *(Span(width, text, HEAD) for width, text in heads))


def _write_block(leaf: Leaf, work: Work, block: Block) -> None:
    word = "BATCH" if len(block.batches) == 1 else "BATCHES"
    band, several = Look(fill=BAND, top=THICK), len(block.passes) > 1
    passes = "   ".join(
        f"{f'{number}: ' if several else ''}{_pass_text(work, steps)}" for number, steps in enumerate(block.passes, 1)
    )
    title = Span(15, f"{word} {listed(block.batches)}", band.but(size=KEY, bold=True))
    leaf.row(20, title, Span(ACROSS - 15, passes, band.but(align="right")), joined=True)
    for garment, steps in block.cards:
        _write_card(leaf, work, garment, [(str(number) if several else "", step) for number, step in steps])


def _pass_text(work: Work, steps: Sequence[Step]) -> str:
    """`White smooth strip 3, 330 °F`."""
    films = dict.fromkeys(step.film.name for step in steps)
    heat = temperature_text(steps[0].temperature, work.plan.job.settings.temperature_unit)
    wait = f" (wait {max(1, round(steps[0].wait / 60))} min)" if steps[0].wait >= 30 else ""
    strips = dict.fromkeys(work.lies[s.place.decal.id][1].batch for s in steps if s.place.decal.id in work.lies)
    return f"{' + '.join(films)} strip {listed(strips)}, {heat}{wait}"


def _write_card(leaf: Leaf, work: Work, garment: Garment, steps: Sequence[tuple[str, Step]]) -> None:
    """One garment: its steps below one another, everything else beside all of them."""
    texts = [Span(STEPS, _step_text(work, number, step), PLAIN) for number, step in steps]
    count = len(texts)
    least = (LEAST_CARD if count == 1 else TALL_CARD) / count
    heights = [max(STEP_HEIGHT, least, leaf.needed(text)) for text in texts]
    who = (
        Part(garment.who or f"no. {garment.no}", bold=True),
        Part(f"\n{garment.blank.size}", bold=True),
        Part(f"  {work.garment_text(garment)}"),
    )
    side = (
        Span(NO, garment.no, RULE.but(size=KEY, bold=True), down=count),
        Span(WHO, who, RULE, down=count),
        Span(DRAWING, None, RULE, down=count),
    )
    end = (
        Span(RESULT, "ok\nredo", RULE.but(align="center", left=THIN), down=count),
        Span(NOTE, None, RULE.but(left=THIN, right=THIN), down=count),
    )
    heights[-1] += max(0, leaf.needed(side[1]) - sum(heights))
    shown = []
    if len(work.plan.garments) <= MOST_DRAWN:
        picture = card_picture([step.place for _, step in steps], DRAWING * COLUMN - 4, sum(heights) - 3)
        shown = [Shown(picture, (NO + WHO) * COLUMN + 2)]
    for at, (text, height) in enumerate(zip(texts, heights, strict=True)):
        last = at == count - 1
        cell = text._replace(look=RULE) if last else text
        under = ([Under(span.columns) for span in spans] for spans in (side, end))
        before, after = (side, end) if at == 0 else under
        leaf.row(height, *before, cell, *after, pictures=() if at else shown, joined=not last)


def _step_text(work: Work, number: str, step: Step) -> tuple[Part, ...]:
    """`☐ 1 full front  3 in`, and what to mind; of a layer, what it goes on."""
    place, to_mind = step.place, list(minded(step, work.plan.job.settings))
    if _settings_differ(work, step):
        to_mind.insert(0, step.film.name)
    if place.register:
        lower = work.places[place.register.on].decal.piece
        where, far = f"{place.decal.piece} on {lower}: ", corner_text(place.register, work.unit)
    else:
        far, seam = where_text(place, work.unit)
        to_mind = [seam if seam not in USUAL else "", aside_text(place, work.unit), *to_mind]
        position = place.decal.spec.position
        here = [other for other in work.steps[place.garment.no] if other.place.decal.spec.position == position]
        where = f"{position}: {place.decal.piece}  " if len(here) > 1 else f"{position}  "
    return (
        Part(f"{BOX} ", KEY),
        Part(f"{number} {where}".lstrip()),
        Part(far, WORK if place.register else KEY, bold=True),
        Part("".join(f"; {text}" for text in to_mind if text)),
    )


def _settings_differ(work: Work, step: Step) -> bool:
    """Whether the garment has another film at the same heat that is pressed otherwise."""
    return any(
        (other.film.press, other.film.back, other.film.pressure, other.film.peel)
        != (step.film.press, step.film.back, step.film.pressure, step.film.peel)
        for other in work.steps[step.place.garment.no]
        if other.temperature == step.temperature
    )


def _write_advice(work: Work, leaf: Leaf) -> None:
    again = work.plan.job.work_times.of("press", "press again where an edge lifts")
    leaf.line(
        f"If an edge lifts: lay the carrier back, cover it, {again:g} s more. If a piece is spoiled: ring redo, write "
        "which piece into Note, lay the garment aside and go on."
    )
