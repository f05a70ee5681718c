"""Press cards: batch by batch, one line a garment with its steps in the order they are pressed, to be ticked."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import partial
from itertools import groupby
from typing import NamedTuple

from xlbatch.check.garment import Garment
from xlbatch.pages.card_text import step_text, who_text
from xlbatch.pages.leaf import ACROSS, COLUMN, Leaf, Shown, Span, Under, columns_for, columns_of, parts_width
from xlbatch.pages.page_looks import (
    ACCENT,
    BAND,
    HAIRLINE,
    HEAD,
    KEY,
    PLAIN,
    STRONG,
    THICK,
    THIN,
    WORK,
    Look,
)  # fmt: skip
from xlbatch.pages.press_settings import write_caution, write_plates, write_settings
from xlbatch.pages.work import Work, listed
from xlbatch.paper.style import BOX
from xlbatch.pictures.garment_drawing import card_picture
from xlbatch.press.step import PressStep
from xlbatch.sheets.banner import heat_text
from xlbatch.sheets.how import minded

NAME = "Press cards"
TELLS = "Press: down the page. Tick each piece as it is pressed; ring ok or redo."
STOP = f"STOP after batch {{batch}}{{when}}: let it cool. Edges, place and color right?   {BOX} yes, go on"
MOST_DRAWN = 300  # garments: with more, cards have no drawings
MOST_BANNERS = 6  # films whose settings stand at the top of every page
NO, LEAST_NOTE, LEAST_DRAWING, MOST_DRAWING = 3, 9, 7, 12  # columns
TITLE_WIDE = 20  # columns: room for `BATCH 14, continued`
LEAST_CARD = (42.0, 50.0)  # points, of a garment with several steps: as high as its drawings fill
TALL = 1.3  # a drawing's height, of its width
MOST_LINE = 32.0  # points, of a garment in one line
WORDS = (
    ("trial", "trial: press a scrap of the same fabric first"),
    ("tack", "tack: only holds, the full time comes with the top layer"),
    ("cover", "cover: lay the cover sheet over the piece named"),
)
ROOMY = 20.0  # points of a step: its measure is then in larger letters
RULE = PLAIN.but(bottom=HAIRLINE)


class CardColumns(NamedTuple):
    """The widths of a table of cards in columns; `one_line`: every garment has one step, and stands in one line."""

    who: int
    drawing: int
    steps: int
    result: int
    note: int
    one_line: bool


def columns(work: Work) -> CardColumns:
    """As wide as names, garments and steps need; the note has what is left."""
    one_line = all(len(steps) == 1 for steps in work.steps.values())
    garments = work.plan.garments
    if one_line:
        names = {f"{garment.who}  {garment.blank.size}" for garment in garments}
    else:
        names = {garment.who for garment in garments}
        names |= {f"{garment.blank.size}  {work.garment_text(garment)}" for garment in garments}
    who = columns_for(names, WORK, bold=True, least=9, most=19 if one_line else 12)
    usual = [step for step in work.plan.pressing.steps if not step.trial]
    widest = max((parts_width(step_text(work, "1", step, KEY)) for step in usual), default=0.0)
    result = 6 if one_line else 4
    free = ACROSS - NO - who - result - LEAST_NOTE
    steps = max(15, min(columns_of(widest), free - LEAST_DRAWING))
    drawing = 5 if one_line else min(MOST_DRAWING, free - steps)
    free += LEAST_NOTE - drawing
    return CardColumns(who, drawing, steps, result, free - steps, one_line)


@dataclass(frozen=True)
class Block:
    """Batches whose garments are all finished before the next block's begin; `passes` as the plate's heat changes."""

    batches: tuple[int, ...]
    passes: tuple[tuple[PressStep, ...], ...]

    def cards(self, batch: int) -> tuple[tuple[Garment, tuple[tuple[int, PressStep], ...]], ...]:
        """Each garment of a batch, in the order first pressed, with the number of the pass of each of its steps."""
        of: dict[int, list[tuple[int, PressStep]]] = {}
        for number, steps in enumerate(self.passes, 1):
            for step in steps:
                if step.batch == batch:
                    of.setdefault(step.place.garment.no, []).append((number, step))
        return tuple((them[0][1].place.garment, tuple(them)) for them in of.values())


def blocks(steps: Sequence[PressStep]) -> Iterator[Block]:
    """The steps parted where no batch reaches over the cut, each part by the plate's heats."""
    last = {step.batch: number for number, step in enumerate(steps)}
    start = end = 0
    for step_no, step in enumerate(steps):
        end = max(end, last[step.batch])
        if step_no == end:
            part = steps[start : step_no + 1]
            passes = tuple(tuple(them) for _, them in groupby(part, key=lambda step: step.temperature))
            yield Block(tuple(dict.fromkeys(step.batch for step in part)), passes)
            start = step_no + 1


def write(leaf: Leaf, work: Work, room: float) -> None:
    """Cards of at least `room` points for each step. The films' settings at the top of every page, then the batches."""
    leaf.cushion = 1.5
    steps = work.plan.pressing.steps
    films = list({step.film.name.casefold(): step.film for step in steps}.values())
    few = len(films) <= MOST_BANNERS
    table = columns(work)
    titled = len(leaf.rows)
    if few:
        write_settings(leaf, work, films, steps[0].press)
    write_caution(leaf, films, steps[0].press)
    _write_heads(leaf, table)
    leaf.repeat(len(leaf.rows) - titled)
    if not few:
        write_settings(leaf, work, films, steps[0].press)
    if any(place.register for place in work.plan.places):
        leaf.line(
            "↓ ↑ → ← how far the top left corner of a layer lies below, above, right or left of the lowest piece's."
        )
    _write_words(leaf, work)
    write_plates(leaf, work)
    batches = list(dict.fromkeys(step.batch for step in steps))
    lanes = any(step.lane > 1 for step in steps)
    for block in blocks(steps):
        _write_block(leaf, work, block, table, room, batches=batches, lanes=lanes)
    _write_advice(work, leaf)


def _write_words(leaf: Leaf, work: Work) -> None:
    """What the words beside the steps mean, of those that are used."""
    used = {text.split(" ")[0] for step in work.plan.pressing.steps for text in minded(step)}
    if told := "; ".join(text for word, text in WORDS if word in used):
        leaf.line(f"{told[0].upper()}{told[1:]}.")


def _write_heads(leaf: Leaf, table: CardColumns) -> None:
    first = ((NO, "No."), (table.who, "Who, size"), (table.drawing, "Where"))
    heads = (*first, (table.steps, "Below collar seam"), (table.result, "OK?"), (table.note, "Note"))
    leaf.row(18, *(Span(width, text, HEAD) for width, text in heads))


def _write_block(
    leaf: Leaf, work: Work, block: Block, table: CardColumns, room: float, *, batches: Sequence[int], lanes: bool
) -> None:
    """`batches`: those of the whole job; `lanes`: whether it has several presses."""
    several = len(block.passes) > 1
    heats = [
        f"{f'{number} at ' if several else ''}{_heat_text(work, steps)}" for number, steps in enumerate(block.passes, 1)
    ]
    if several and len(block.batches) > 1:
        first, *others = heats
        passes = f"Batches {_range(block.batches)}: first every {first}"
        passes += "".join(f"; then from the top every {heat}" for heat in others)
        leaf.line(f"{passes}.", STRONG.but(color=ACCENT, top=THIN), 18, joined=True)
    of: dict[int, list[PressStep]] = {}
    for step in (step for them in block.passes for step in them):
        of.setdefault(step.batch, []).append(step)
    for batch, steps in of.items():
        band = Look(fill=BAND, top=THICK)
        lane = f"press {steps[0].lane}   " if lanes else ""
        about = f"{lane}{_strips(work, steps)}    {'   '.join(heats) if several else _heat_text(work, steps)}".strip()
        title = Span(TITLE_WIDE, f"BATCH {batch}", band.but(size=KEY, bold=True))
        leaf.row(18, title, Span(ACROSS - TITLE_WIDE, about, band.but(align="right")), joined=True, begins=True)
        cards = block.cards(batch)
        for card_no, (garment, of_garment) in enumerate(cards):
            numbered = [(str(number) if several else "", step) for number, step in of_garment]
            alone = batch == batches[-1] and card_no >= len(cards) - 2  # the last ones stay with the advice
            alone |= table.one_line and card_no + 1 < len(cards) and card_no in (0, len(cards) - 2)
            _write_card(leaf, work, garment, numbered, table, room, joined=alone)
        leaf.end_part()
        if batch == batches[0] and len(batches) > 1:
            leaf.line(STOP.format(batch=batch, when=" at heat 1" * (several and len(block.batches) > 1)),
                      STRONG.but(color=ACCENT, top=THIN, bottom=THIN), 20)  # fmt: skip


def _range(numbers: Sequence[int]) -> str:
    """`2–11, 1, 12, 13`: numbers that follow one another as one range where there are more than two."""
    ranges: list[list[int]] = []
    for number in numbers:
        if ranges and number == ranges[-1][-1] + 1:
            ranges[-1].append(number)
        else:
            ranges.append([number])
    return ", ".join(f"{them[0]}–{them[-1]}" if len(them) > 2 else listed(them) for them in ranges)


def _strips(work: Work, steps: Sequence[PressStep]) -> str:
    """The strips to lay ready, cut now or before: `strip 3 of each film`, or film by film where their numbers
    differ."""
    of: dict[str, dict[int, None]] = {}
    for step in steps:
        if strip := work.strip_of.get(step.place.decal.id):
            of.setdefault(step.film.name, {})[strip] = None
    numbers = {tuple(sorted(strips)) for strips in of.values()}
    if len(numbers) == 1:
        return f"strip {listed(next(iter(numbers)))}{' of each film' if len(of) > 1 else ''}"
    return "strips " + ", ".join(f"{film} {listed(strips)}" for film, strips in of.items()) if of else ""


def _heat_text(work: Work, steps: Sequence[PressStep]) -> str:
    """`330 °F (wait 2 min)`, or an iron's dial."""
    heat = heat_text(steps[0].temperature, steps[0].press, work.plan.job.settings)
    return f"{heat} (wait {max(1, round(steps[0].wait / 60))} min)" if steps[0].wait >= 30 else heat


def _write_card(
    leaf: Leaf,
    work: Work,
    garment: Garment,
    steps: Sequence[tuple[str, PressStep]],
    table: CardColumns,
    room: float,
    *,
    joined: bool,
) -> None:
    """One garment: its steps below one another, everything else beside all of them. `joined`: it is not the last of a
    page."""
    count = len(steps)
    least = max(room, _drawing_height(table, steps) / count) if count > 1 else min(room, MOST_LINE)
    size = KEY if least >= ROOMY else WORK
    texts = [Span(table.steps, step_text(work, number, step, size)) for number, step in steps]
    heights = [max(least, leaf.needed(text)) for text in texts]
    who = who_text(work, garment, one_line=table.one_line)
    side = (
        Span(NO, garment.no, RULE.but(size=KEY, bold=True), down=count),
        Span(table.who, who, RULE, down=count),
        Span(table.drawing, None, RULE, down=count),
    )
    end = (
        Span(
            table.result, "ok   redo" if table.one_line else "ok\nredo", RULE.but(align="center", left=THIN), down=count
        ),
        Span(table.note, None, RULE.but(left=THIN, right=THIN), down=count),
    )
    heights[-1] += max(0, leaf.needed(side[1]) - sum(heights))
    shown = []
    if len(work.plan.garments) <= MOST_DRAWN:
        places = [step.place for _, step in steps]
        draw = partial(card_picture, places, table.drawing * COLUMN - 4, sum(heights) - 5)
        shown = [Shown(draw, (NO + table.who) * COLUMN + 2)]
    for line_no, (text, height) in enumerate(zip(texts, heights, strict=True)):
        last = line_no == count - 1
        cell = text._replace(look=RULE) if last else text
        under = ([Under(span.columns) for span in spans] for spans in (side, end))
        before, after = (side, end) if line_no == 0 else under
        leaf.row(height, *before, cell, *after, pictures=() if line_no else shown, joined=joined or not last)


def _drawing_height(table: CardColumns, steps: Sequence[tuple[str, PressStep]]) -> float:
    """How high a card is worth making for its drawings, in points."""
    sides = len({step.place.side for _, step in steps})
    least, most = LEAST_CARD
    return max(least, min(most, TALL * table.drawing * COLUMN / sides))


def _write_advice(work: Work, leaf: Leaf) -> None:
    again = work.plan.job.work_times.of("press", "press again where an edge lifts")
    leaf.line(
        f"If an edge lifts: lay the carrier back, cover it, {again:g} s more. If a piece is spoiled: ring redo, write "
        "which piece into Note, lay the garment aside and go on."
    )
