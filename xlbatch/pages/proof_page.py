"""Proof: each artwork once, large, as it will look; then every text as cut, to read and tick, and a line to sign."""

from collections.abc import Iterator, Mapping, Sequence
from functools import cache, partial
from typing import NamedTuple

from xlbatch.check.garment import Garment
from xlbatch.files.beside import beside, folder_of
from xlbatch.pages.leaf import ACROSS, COLUMN, Leaf, Shown, Span, columns_for
from xlbatch.pages.page_looks import FINE, HAIRLINE, HEAD, KEY, PLAIN, SMALL, STRONG, THIN, WORK, Text
from xlbatch.pages.work import Work, size_text
from xlbatch.paper.style import BOX
from xlbatch.pictures.art_panel import COARSE, SHARP, Rooms, art_panel, row_picture, word_rooms
from xlbatch.pictures.traced_picture import is_picture, traced_picture
from xlbatch.placement.group import Group, groups
from xlbatch.placement.place import Place
from xlbatch.sheets.proof import narrowed
from xlbatch.trade.tables import table

NAME = "Proof"
TELLS = "Whoever ordered: read every name and number aloud, tick it, sign below. Nothing is cut before."
PANELS = 3  # side by side
WIDE_TRACED = 150.0  # points
IN_ONE_COLUMN = 14  # garments
MOST_PANELS, MOST_DRAWN = 12, 1_000
MOST_SHARP = 300  # garments: of more, pictures of texts have fewer dots
NO, TICKED, GUTTER, HALF = 3, 3, 2, 29  # columns; a garment takes half the page where it has one text
TEXT_HIGH, OF_PANEL = 13.0, 0.125  # of a row of pieces: least, in points, and of the panels' height
LOWEST_PANEL, OF_MORE = 56.0, 0.5  # points; a row of words in a drawing is higher by so much of what a panel has more
SIZES_HIGH = 15.0  # points below it
RULE = PLAIN.but(bottom=HAIRLINE)


def write(leaf: Leaf, work: Work, high: float) -> None:
    """The panels, `high` points each, then the texts in two columns."""
    panels = list(sides(work))[:MOST_PANELS]
    colors = work.plan.job.film_colors
    beside = -(-len(panels) // max(1, -(-len(panels) // PANELS)))  # as even as so many rows allow
    for first in range(0, len(panels), max(1, beside)):
        _write_panels(leaf, work, panels[first : first + beside], colors, (ACROSS // beside, high))
    _write_traced(leaf, work, high)
    garments = sorted(work.plan.garments, key=lambda garment: garment.no)
    lines = _lines(work, high)
    heads = ((NO, "No."), (lines.who, "Who, size"), (lines.art, "As cut, size"), (TICKED, "Right"))
    half = [Span(width, text, HEAD.but(size=FINE)) for width, text in heads]
    leaf.row(14, *half, *([Span(GUTTER), *half] if lines.beside > 1 else []), joined=True)
    leaf.repeat()
    rows = -(-len(garments) // lines.beside)
    for row_no in range(rows):
        _write_texts(leaf, work, garments[row_no::rows], colors, lines, joined=row_no == rows - 1)
    count = len(garments)
    leaf.line(f"All {count} read and right. Cut them as shown.", STRONG, 24, joined=True)
    leaf.row(14, joined=True)
    signed = SMALL.but(top=THIN, valign="top")
    leaf.row(14, Span(18, "Name", signed), Span(2), Span(25, "Signature", signed), Span(2), Span(12, "Date", signed))


class Lines(NamedTuple):
    """How the garments are listed: so many beside one another; columns; points of a row of pieces; what is shown of
    drawings."""

    beside: int
    who: int
    art: int
    high: float
    rooms: Rooms


def _lines(work: Work, high: float) -> Lines:
    """Two garments beside one another, unless they are few or some have several texts."""
    garments = work.plan.garments
    texts = [_texts(work, garment) for garment in garments]
    rooms = word_rooms(group for row in texts for group in row)
    row_high = TEXT_HIGH + (high - LOWEST_PANEL) * OF_MORE if rooms else max(TEXT_HIGH, high * OF_PANEL)
    few = len(garments) <= IN_ONE_COLUMN or any(len(row) > 1 for row in texts)
    beside = 1 if few else 2
    names = columns_for((garment.who for garment in garments), WORK, bold=True, least=9, most=28 // beside)
    who = max(names, columns_for(map(_about, garments), FINE, most=28 // beside))
    return Lines(beside, who, (HALF if beside > 1 else ACROSS) - NO - who - TICKED, row_high, rooms)


def sides(work: Work) -> Iterator[Sequence[Place]]:
    """One garment's places for each design, garment color and side, that with the longest texts."""
    of: dict[tuple[str, str, str], dict[int, list[Place]]] = {}
    for place in work.plan.places:
        garment = place.garment
        key = (garment.row.design.casefold(), garment.color.casefold(), place.side)
        of.setdefault(key, {}).setdefault(garment.no, []).append(place)
    for garments in of.values():
        yield max(garments.values(), key=lambda places: (len(places), sum(len(place.decal.text) for place in places)))


def _write_panels(
    leaf: Leaf, work: Work, panels: Sequence[Sequence[Place]], colors: Mapping[str, str], size: tuple[int, float]
) -> None:
    """Panels side by side, each with what it shows below it; `size`: columns and points high."""
    wide, high = size
    shown = [
        Shown(partial(art_panel, places, colors, wide * COLUMN - 6, high), panel_no * wide * COLUMN + 2)
        for panel_no, places in enumerate(panels)
    ]
    leaf.row(high + 4, pictures=shown, joined=True)
    leaf.row(14, *(Span(wide, _caption(work, places), SMALL.but(bold=True, valign="top")) for places in panels),
             joined=True)  # fmt: skip


def _write_traced(leaf: Leaf, work: Work, high: float) -> None:
    """What was made of each drawing that is a picture, over the picture itself."""
    names = dict.fromkeys(spec.artwork for decal in work.plan.decals for spec in decal.specs)
    places_of_files = [beside(folder_of(work.plan.job.path), name) for name in names if is_picture(name)][:PANELS]
    files = [file for file in places_of_files if file]
    if not files:
        return
    wide = ACROSS // len(files)
    shown = [
        Shown(partial(traced_picture, file, WIDE_TRACED, high), file_no * wide * COLUMN + 2)
        for file_no, file in enumerate(files)
    ]
    leaf.row(high + 4, pictures=shown, joined=True)
    look = SMALL.but(valign="top")
    leaf.row(14, *(Span(wide, f"{file.name}, pale: red is cut, blue stays open.", look) for file in files),
             joined=True)  # fmt: skip


def _caption(work: Work, places: Sequence[Place]) -> str:
    """`Front, navy, no. 3, M: Bird 9 × 5 in, White smooth`."""
    garment = places[0].garment
    pieces = "; ".join(
        f"{'/'.join(dict.fromkeys(decal.spec.decal for decal in group.decals))} "
        f"{size_text(group.width, group.height, work.unit)}, {' + '.join(dict.fromkeys(d.film for d in group.decals))}"
        for group in groups(place.decal for place in places)
    )
    return f"{places[0].side.capitalize()}, {garment.color}; here no. {garment.no}, {garment.blank.size}: {pieces}"


def _texts(work: Work, garment: Garment) -> tuple[Group, ...]:
    """The groups of a garment that have a text of its own; all of them where none has."""
    all_groups = groups(decal for decal in work.decals.get(garment.no, ()))
    return tuple(group for group in all_groups if any(decal.text for decal in group.decals)) or all_groups


def _write_texts(
    leaf: Leaf, work: Work, beside: Sequence[Garment], colors: Mapping[str, str], lines: Lines, *, joined: bool
) -> None:
    cells, pictures = [], []
    for half_no, garment in enumerate(beside):
        texts = _texts(work, garment)
        cells += [Span(GUTTER)] * (half_no > 0) + list(_cells(work, garment, texts, lines))
        count = len(work.plan.garments)
        if texts and count <= MOST_DRAWN:
            dots = SHARP if count <= MOST_SHARP else COARSE
            left = half_no * (HALF + GUTTER) + NO + lines.who
            draw = partial(row_picture, texts, lines.rooms, colors, (lines.art * COLUMN - 8, lines.high - 1), dots)
            pictures.append(Shown(draw, left * COLUMN + 3, 1.5))
    leaf.row(lines.high + SIZES_HIGH, *cells, pictures=pictures, joined=joined)


def _about(garment: Garment) -> str:
    return ", ".join(filter(None, [garment.group, garment.blank.size]))


def _in_one_line(lines: Lines, way: tuple[str, str]) -> bool:
    """Whether the size below a picture, and what stands below the name, take one line each."""
    sizes, about = way
    return columns_for([sizes], FINE) <= lines.art and columns_for([about], FINE) <= lines.who


def _cells(work: Work, garment: Garment, texts: Sequence[Group], lines: Lines) -> Iterator[Span]:
    sizes = "; ".join(size_text(group.width, group.height, work.unit) for group in texts) or "nothing printed"
    sizes += "".join(look_alikes(decal.text) for group in texts for decal in group.decals)
    about, narrow = _about(garment), next(filter(None, map(narrowed, texts)), "")
    short = narrow.replace(" letters", "").replace(" wide", "")
    ways = ((sizes + narrow, about), (sizes, about + narrow), (sizes + short, about), (sizes, about + short))
    sizes, about = next(filter(partial(_in_one_line, lines), ways), ways[-1])  # a second line lies under the picture
    yield Span(NO, garment.no, RULE.but(bold=True))
    yield Span(lines.who, (Text(garment.who or "–", bold=True), Text(f"\n{about}", FINE)), RULE)
    yield Span(lines.art, sizes, RULE.but(size=FINE, valign="bottom"))
    yield Span(TICKED, BOX, RULE.but(size=KEY, align="center"))


@cache
def _looks_like() -> Mapping[str, str]:
    return {line["Letter"]: line["Looks like"] for line in table("lookalikes")}


def look_alikes(text: str) -> str:
    """The letters that look like those of the plain alphabet in a text that has both, with their Unicode numbers."""
    like = _looks_like()
    mixed = any(letter.isascii() and letter.isalpha() for letter in text)
    alike = dict.fromkeys(letter for letter in text if mixed and letter in like)
    return "".join(f"; {letter} is U+{ord(letter):04X}, not {like[letter]}" for letter in alike)
