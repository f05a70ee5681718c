"""Proof: each artwork once, large, as it will look; then every text as cut, to read and tick, and a line to sign."""

from collections.abc import Iterator, Mapping, Sequence
from functools import partial

from xlbatch.check.garment import Garment
from xlbatch.files.beside import beside
from xlbatch.pages.leaf import ACROSS, COLUMN, Leaf, Shown, Span, columns_for
from xlbatch.pages.page_looks import FINE, HAIRLINE, HEAD, KEY, PLAIN, SMALL, STRONG, THIN, WORK, Part
from xlbatch.pages.work import Work, size_text
from xlbatch.paper.style import BOX
from xlbatch.pictures.art_panel import art_panel, row_picture
from xlbatch.pictures.traced_picture import is_picture, traced_picture
from xlbatch.placement.group import Group, groups
from xlbatch.placement.place import Place
from xlbatch.sheets.proof import film_colors
from xlbatch.trade.tables import table

NAME = "Proof"
TELLS = "Whoever ordered: read every name and number aloud, tick it, sign below. Nothing is cut before."
PANELS = 3  # side by side
WIDE_TRACED = 150.0  # points
MOST_PANELS, MOST_DRAWN = 12, 1_000
NO, TICKED, GUTTER, HALF = 3, 3, 2, 29  # columns; a garment takes half the page
TEXT_HIGH = 13.0  # points of a row of pieces
RULE = PLAIN.but(bottom=HAIRLINE)


def write(leaf: Leaf, work: Work, high: float) -> None:
    """The panels, `high` points each, then the texts in two columns."""
    panels = list(sides(work))[:MOST_PANELS]
    colors = film_colors(work.plan.job.films)
    for first in range(0, len(panels), PANELS):
        _write_panels(leaf, work, panels[first : first + PANELS], colors, high)
    _write_traced(leaf, work, high)
    names = columns_for((garment.who for garment in work.plan.garments), WORK, bold=True, least=9, most=14)
    who = max(names, columns_for(map(_about, work.plan.garments), FINE, most=14))
    heads = ((NO, "No."), (who, "Who, size"), (HALF - NO - who - TICKED, "As cut, true size"), (TICKED, "Right"))
    look = HEAD.but(size=FINE)
    half = [Span(width, text, look) for width, text in heads]
    leaf.row(14, *half, Span(GUTTER), *half, joined=True)
    garments = sorted(work.plan.garments, key=lambda garment: garment.no)
    rows = -(-len(garments) // 2)
    for at in range(rows):
        beside = [garments[at], *garments[rows + at : rows + at + 1]]
        _write_texts(leaf, work, beside, colors, who, joined=at == rows - 1)
    count = len(garments)
    leaf.line(f"All {count} read and right. Cut them as shown.", STRONG, 24, joined=True)
    leaf.row(14, joined=True)
    signed = SMALL.but(top=THIN, valign="top")
    leaf.row(14, Span(18, "Name", signed), Span(2), Span(25, "Signature", signed), Span(2), Span(12, "Date", signed))


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
    leaf: Leaf, work: Work, panels: Sequence[Sequence[Place]], colors: Mapping[str, str], high: float
) -> None:
    """Panels side by side, each with what it shows below it."""
    wide = ACROSS // len(panels)
    shown = [
        Shown(partial(art_panel, places, colors, wide * COLUMN - 6, high), at * wide * COLUMN + 2)
        for at, places in enumerate(panels)
    ]
    leaf.row(high + 4, pictures=shown, joined=True)
    leaf.row(14, *(Span(wide, _caption(work, places), SMALL.but(bold=True, valign="top")) for places in panels),
             joined=True)  # fmt: skip


def _write_traced(leaf: Leaf, work: Work, high: float) -> None:
    """What was made of each drawing that is a picture, over the picture itself."""
    names = dict.fromkeys(spec.artwork for decal in work.plan.decals for spec in decal.specs)
    found = [beside(work.plan.job.path.parent, name) for name in names if is_picture(name)][:PANELS]
    files = [file for file in found if file]
    if not files:
        return
    wide = ACROSS // len(files)
    shown = [
        Shown(partial(traced_picture, file, WIDE_TRACED, high), at * wide * COLUMN + 2) for at, file in enumerate(files)
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
    found = groups(decal for decal in work.decals.get(garment.no, ()))
    return tuple(group for group in found if any(decal.text for decal in group.decals)) or found


def _write_texts(
    leaf: Leaf, work: Work, beside: Sequence[Garment], colors: Mapping[str, str], who: int, *, joined: bool
) -> None:
    cells, pictures = [], []
    for at, garment in enumerate(beside):
        texts = _texts(work, garment)
        cells += [Span(GUTTER)] * at + list(_cells(work, garment, texts, who))
        if texts and len(work.plan.garments) <= MOST_DRAWN:
            left = at * (HALF + GUTTER) + NO + who
            draw = partial(row_picture, texts, colors, (HALF - NO - who - TICKED) * COLUMN - 8, TEXT_HIGH)
            pictures.append(Shown(draw, left * COLUMN + 3, 2))
    leaf.row(TEXT_HIGH + 14, *cells, pictures=pictures, joined=joined)


def _about(garment: Garment) -> str:
    return ", ".join(filter(None, [garment.group, garment.blank.size]))


def _cells(work: Work, garment: Garment, texts: Sequence[Group], wide: int) -> Iterator[Span]:
    sizes = "; ".join(size_text(group.width, group.height, work.unit) for group in texts) or "nothing printed"
    codes = "".join(look_alikes(decal.text) for group in texts for decal in group.decals)
    yield Span(NO, garment.no, RULE.but(bold=True))
    yield Span(wide, (Part(garment.who or "–", bold=True), Part(f"\n{_about(garment)}", FINE)), RULE)
    yield Span(HALF - NO - wide - TICKED, sizes + codes, RULE.but(size=FINE, valign="bottom"))
    yield Span(TICKED, BOX, RULE.but(size=KEY, align="center"))


def look_alikes(text: str) -> str:
    """The letters that look like those of the plain alphabet in a text that has both, with their Unicode numbers."""
    like = {line["Letter"]: line["Looks like"] for line in table("lookalikes")}
    mixed = any(letter.isascii() and letter.isalpha() for letter in text)
    found = dict.fromkeys(letter for letter in text if mixed and letter in like)
    return "".join(f"; {letter} is U+{ord(letter):04X}, not {like[letter]}" for letter in found)
