"""Placement pictures: one drawing for each kind of garment and side, its measures in a table beside it, and a ruler."""

from collections.abc import Callable, Iterator, Sequence
from functools import partial
from itertools import zip_longest
from string import ascii_uppercase
from typing import NamedTuple

from xlbatch.pages.layer_drawings import layer_rows
from xlbatch.pages.leaf import COLUMN, Leaf, Row, Shown, Span
from xlbatch.pages.page_looks import ACCENT, BAND, HAIRLINE, KEY, PLAIN, STRONG, THIN, Look, Text
from xlbatch.pages.work import Work, aside_text, where_text
from xlbatch.paper.paging import page_starts
from xlbatch.paper.picture import Picture
from xlbatch.pictures.garment_drawing import placement_drawing, placement_height
from xlbatch.pictures.ruler import CHECK, plain_ruler
from xlbatch.placement.place import Place

NAME = "Placement pictures"
TELLS = "Press: hang this up. Each letter is a measure, from the seam to the nearest edge of the piece."
DRAWING, SIZES, MEASURE = 14, 8, 5  # columns; what is left is for the ruler
PAIR = 2 * (DRAWING + SIZES + MEASURE)
HIGH, LEAST_HIGH = 160.0, 105.0  # points, of a drawing; and where there are many
STEP = 5  # points between the heights tried
FILLER, CLEAR, GAP = 16.0, 4.0, 4.0  # points: of an empty row, below the ruler, and below each line of drawings
MOST = 24  # drawings
WHOLE_WORDS = {"in": "inches", "cm": "cm", "mm": "mm"}

Kind = tuple[str, ...]
Line = Sequence[Span]  # cells that fill SIZES + MEASURE columns


def kinds(work: Work) -> Sequence[Sequence[Place]]:
    """The places by what tells one drawing from another: garment, side, and what is pressed there."""
    sides: dict[tuple[int, str], list[Place]] = {}
    for place in work.plan.places:
        sides.setdefault((place.garment.no, place.side), []).append(place)
    places_by_kind: dict[Kind, list[Place]] = {}
    for (_, side), places in sides.items():
        blank = places[0].garment.blank
        on_it = (f"{place.decal.spec.position}/{place.decal.piece}" for place in places)
        places_by_kind.setdefault((blank.for_, blank.neckline, blank.garment, side, *on_it), []).extend(places)
    return list(places_by_kind.values())[:MOST]


def write(leaf: Leaf, work: Work) -> None:
    """Two drawings beside one another, the ruler at the right of those on the first page."""
    kinds_shown, layers = kinds(work), layer_rows(work)
    measured = (place.below_collar or 0.0 for place in work.plan.places if place.register is None)
    ruler = plain_ruler(max(measured, default=0.0), work.unit)
    check = CHECK[work.unit][1]
    leaf.line(f"Ruler at the right: print at 100 %, check {check} against a tape, cut it out, lay 0 on the seam.",
              STRONG, 18, joined=True)  # fmt: skip
    room, beside_ruler = leaf.budget - _height(leaf.rows), ruler.height + CLEAR

    def pages(*blocks: Sequence[Row]) -> int:
        return 1 + len(page_starts([_height(rows) + GAP for rows in blocks], room, leaf.budget))

    fewest = pages(*_pairs(work, kinds_shown, LEAST_HIGH), *layers)
    heights = range(int(HIGH), int(LEAST_HIGH), -STEP)
    high = next((high for high in heights if pages(*_pairs(work, kinds_shown, high), *layers) <= fewest), LEAST_HIGH)
    pairs = _pairs(work, kinds_shown, high)
    a_page = max(1, -(-len(pairs) // pages(*pairs)))  # so that none has a last one by itself
    shown = [Shown(lambda: ruler, PAIR * COLUMN + 2, 0)]
    for block_no, rows in enumerate([*pairs, *layers]):
        high = _height(rows)
        if block_no and (high > room or (block_no < len(pairs) and block_no % a_page == 0)):
            _fill(leaf, beside_ruler)
            leaf.new_page()
            room, beside_ruler = leaf.budget, 0.0
        for row in rows:
            leaf.row(row.height, *row.spans, pictures=[*row.pictures, *shown], joined=True)
            shown = []
        leaf.row(GAP)
        room, beside_ruler = room - high - GAP, beside_ruler - high - GAP
    _fill(leaf, beside_ruler)


def _fill(leaf: Leaf, height: float) -> None:
    """Empty rows, so that what stands beside them stays on this page."""
    while height > 0:
        leaf.row(min(height, FILLER))
        height -= FILLER


def _height(rows: Sequence[Row]) -> float:
    return sum(row.height for row in rows)


def _pairs(work: Work, kinds_shown: Sequence[Sequence[Place]], high: float) -> list[Sequence[Row]]:
    """The drawings of all kinds, so high, two by two."""
    drawings = [_drawing(work, places, high) for places in kinds_shown]
    return [_pair(drawings[first : first + 2]) for first in range(0, len(drawings), 2)]


def _pair(beside: Sequence["_Drawing"]) -> Sequence[Row]:
    """The rows of two drawings with their tables."""
    leaf = Leaf("", job="", paper="Letter")
    wide = DRAWING + SIZES + MEASURE
    band = Look(bold=True, fill=BAND, top=THIN)
    shown = [Shown(drawing.draw, drawing_no * wide * COLUMN + 2, 20) for drawing_no, drawing in enumerate(beside)]
    leaf.row(18, *(Span(wide, drawing.title, band) for drawing in beside), pictures=shown)
    for lines in zip_longest(*(drawing.lines for drawing in beside)):
        leaf.row(FILLER, *(cell for line in lines for cell in (Span(DRAWING), *(line or (Span(SIZES + MEASURE),)))))
    _fill(leaf, max(drawing.high for drawing in beside) + 22 - sum(row.height for row in leaf.rows))
    return leaf.rows


class _Drawing(NamedTuple):
    title: str
    draw: Callable[[], Picture]
    high: float
    lines: Sequence[Line]


def _drawing(work: Work, places: Sequence[Place], high: float) -> _Drawing:
    """The drawing of the garment of middle size, and the measures of all."""
    blank, side = places[0].garment.blank, places[0].side
    of: dict[int, list[Place]] = {}
    for place in places:
        of.setdefault(place.garment.no, []).append(place)
    by_size = sorted(of.values(), key=lambda them: them[0].garment.blank.chest)
    middle = by_size[len(by_size) // 2]
    measured = [place_no for place_no, place in enumerate(middle) if place.register is None]
    letters = {middle[place_no].decal.id: letter for place_no, letter in zip(measured, ascii_uppercase, strict=False)}
    high = placement_height(middle, DRAWING * COLUMN - 5, high)
    draw = partial(placement_drawing, middle, letters, DRAWING * COLUMN - 5, high)
    lines = [
        line
        for place_no, letter in zip(measured, letters.values(), strict=False)
        for line in _measures(work, letter, [them[place_no] for them in by_size if place_no < len(them)])
    ]
    layers = ", ".join(place.decal.piece for place in middle if place.register)
    if layers:
        lines.append((Span(SIZES + MEASURE, f"{layers}: on top, see Layers"),))
    return _Drawing(f"{blank.for_.capitalize()} {blank.garment}, {side}", draw, high, lines)


def _measures(work: Work, letter: str, places: Sequence[Place]) -> Iterator[Line]:
    """One piece in all its sizes: its name and where it is measured from, then a line for sizes that are alike."""
    unit = work.unit
    far, seam = where_text(places[0], unit)
    name = f"{places[0].decal.piece}: {WHOLE_WORDS[unit]} {seam}"
    yield (Span(SIZES + MEASURE, (Text(f"{letter}  ", KEY, bold=True), Text(name, bold=True))),)
    of_size: dict[str, set[tuple[str, str]]] = {}
    sizes: dict[tuple[str, str], dict[str, None]] = {}
    for place in places:
        key, size = (
            (where_text(place, unit)[0].removesuffix(f" {unit}"), aside_text(place, unit)),
            place.garment.blank.size,
        )
        of_size.setdefault(size, set()).add(key)
        sizes.setdefault(key, {})[size] = None
    if any(len(measures) > 1 for measures in of_size.values()):  # it depends on what stands above it
        yield (Span(SIZES + MEASURE, "see Press cards", PLAIN.but(bottom=HAIRLINE)),)
        return
    for (far, aside), them in sizes.items():
        edge = PLAIN.but(bottom=HAIRLINE)
        yield (
            Span(SIZES, "all sizes" if len(sizes) == 1 else ", ".join(them), edge),
            Span(MEASURE, far, edge.but(size=KEY, bold=True, align="center")),
        )
        if aside:
            yield (Span(SIZES + MEASURE, aside, PLAIN.but(bold=True, color=ACCENT)),)
