"""The drawings of several layers, assembled: each design once, and beside it how each layer lies on the lowest piece, a
line a size."""

import re
from collections import Counter
from collections.abc import Iterator, Sequence
from functools import partial

from xlbatch.pages.leaf import COLUMN, Leaf, Row, Shown, Span
from xlbatch.pages.page_looks import ACCENT, HAIRLINE, HEAD, PLAIN, STRONG, THIN, WORK, Text
from xlbatch.pages.work import Work, corner_text, listed, size_text
from xlbatch.pictures.layers_picture import layers_picture
from xlbatch.placement.place import Place
from xlbatch.placement.register import drawings

DRAWING, SIZES, LIES = 15, 11, 28  # columns of the drawing, of the sizes, and of how the pieces lie
HIGH = 118.0  # points of a drawing
MOST, MOST_LAYERS = 30, 4  # sizes of a design, and pieces with a column of their own
KEPT = re.compile(r"(?<=\d) (?=\d)| (?=×|in|cm|mm)")  # within a measure no line is broken
TELLS = "Layers: lay each on piece 1, so far below (↓), above (↑), right (→) or left (←) of its top left corner"
RULE = PLAIN.but(bottom=HAIRLINE)

Drawing = Sequence[Place]  # the pieces of one garment's drawing, the lowest first


def layer_rows(work: Work) -> list[Sequence[Row]]:
    """Rows that stay together: each design with its sizes."""
    designs: dict[tuple[str, ...], list[Sequence[Drawing]]] = {}
    for alike in drawings(work.plan.places):
        pieces = (place.decal.piece for place in alike[0])
        designs.setdefault((alike[0][0].decal.spec.design, *pieces), []).append(alike)
    return [_rows(work, sizes, first=not design_no) for design_no, sizes in enumerate(designs.values())]


def _rows(work: Work, sizes: Sequence[Sequence[Drawing]], *, first: bool) -> Sequence[Row]:
    """The drawing of the middle size at the left of the table."""
    leaf = Leaf("", job="", paper="Letter")
    leaf.cushion = 1.5
    by_width = sorted(sizes, key=lambda alike: alike[0][0].decal.width)[:MOST]
    pieces = by_width[len(by_width) // 2][0]
    if first:
        leaf.row(18, Span(DRAWING + SIZES + LIES, TELLS, STRONG.but(color=ACCENT, top=THIN)))
    picture = Shown(partial(layers_picture, pieces, DRAWING * COLUMN - 10, HIGH), 2)
    wide = LIES // min(len(pieces), MOST_LAYERS)
    counted = Counter(size for alike in by_width for size in _sizes(alike))
    heads = (f"{no} {place.decal.piece}" for no, place in enumerate(pieces[:MOST_LAYERS], 1))
    head = HEAD.but(size=WORK)
    leaf.row(16, Span(DRAWING), Span(SIZES, "Size", head), *(Span(wide, text, head) for text in heads),
             pictures=[picture])  # fmt: skip
    for alike in by_width:
        several = any(counted[size] > 1 for size in _sizes(alike))  # its size does not tell which
        numbers = f": no. {listed(drawing[0].garment.no for drawing in alike)}" if several else ""
        garments = Span(SIZES, (Text(listed(_sizes(alike)), bold=True), Text(numbers)), RULE)
        lies = (Span(wide, text, RULE.but(bold=bool(no))) for no, text in enumerate(_lies(work, alike[0])))
        leaf.row(15, Span(DRAWING), garments, *lies)
    if len(pieces) > MOST_LAYERS or len(sizes) > MOST:
        leaf.row(15, Span(DRAWING), Span(SIZES + LIES, "More sizes or layers: see Press cards."))
    leaf.row(max(2.0, HIGH + 6 - sum(row.height for row in leaf.rows)))
    return leaf.rows


def _sizes(alike: Sequence[Drawing]) -> Sequence[str]:
    return list(dict.fromkeys(drawing[0].garment.blank.size for drawing in alike))


def _lies(work: Work, drawing: Drawing) -> Iterator[str]:
    """The size of the lowest piece, and where the corner of each layer lies."""
    lowest, *layers = drawing[:MOST_LAYERS]
    yield KEPT.sub("\u00a0", size_text(lowest.decal.width, lowest.decal.height, work.unit))
    for place in layers:
        assert place.register is not None
        yield KEPT.sub("\u00a0", corner_text(place.register, work.unit))
