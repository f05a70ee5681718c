"""The drawings of several layers, assembled: one a size, with how each layer lies on the lowest piece."""

import re
from collections.abc import Iterator, Sequence
from functools import partial

from xlbatch.pages.leaf import COLUMN, Leaf, Row, Shown, Span
from xlbatch.pages.page_looks import ACCENT, STRONG, THIN, Look, Text
from xlbatch.pages.work import Work, corner_text, listed, size_text
from xlbatch.pictures.layers_picture import layers_picture
from xlbatch.placement.place import Place
from xlbatch.placement.register import drawings

ACROSS, WIDE, HIGH = 5, 10, 84.0  # drawings side by side; columns and points of each
MOST = 30  # sizes drawn
KEPT = re.compile(r"(?<=\d) (?=\d)| (?=in|cm|mm)")  # within a measure no line is broken
TELLS = "Layers: lay each on piece 1, so far below (↓) and right (→) of its top left corner"


def layer_rows(work: Work) -> list[Sequence[Row]]:
    """Rows that stay together: each line of drawings with the words below it."""
    sizes = drawings(work.plan.places)
    lines: list[Sequence[Row]] = []
    shown_sizes = min(len(sizes), MOST)
    across = -(-shown_sizes // max(1, -(-shown_sizes // ACROSS)))  # lines of the same length
    wide = ACROSS * WIDE // max(1, across)
    for first in range(0, shown_sizes, max(1, across)):
        leaf = Leaf("", job="", paper="Letter")
        if not first:
            more = f"; {len(sizes) - MOST} more sizes: see Press cards" * (len(sizes) > MOST)
            leaf.row(18, Span(ACROSS * WIDE, TELLS + more, STRONG.but(color=ACCENT, top=THIN)))
        beside = sizes[first : min(first + across, shown_sizes)]
        shown = [
            Shown(partial(layers_picture, alike[0], wide * COLUMN - 10, HIGH), size_no * wide * COLUMN + 8)
            for size_no, alike in enumerate(beside)
        ]
        leaf.row(HIGH + 3, pictures=shown, joined=True)
        leaf.row(14, *(Span(wide, tuple(_words(work, alike)), Look(valign="top")) for alike in beside))
        lines.append(leaf.rows)
    return lines


def _words(work: Work, alike: Sequence[Sequence[Place]]) -> Iterator[Text]:
    """The garments it is for, the lowest piece with its size, and each layer with its measures."""
    lowest, *layers = alike[0]
    garments = [drawing[0].garment for drawing in alike]
    sizes = listed(dict.fromkeys(garment.blank.size for garment in garments))
    yield Text(f"{sizes}: no. {listed(garment.no for garment in garments)}", bold=True)
    yield Text(f"\n1 {lowest.decal.piece} {size_text(lowest.decal.width, lowest.decal.height, work.unit)}")
    for no, place in enumerate(layers, 2):
        assert place.register is not None
        yield Text(f"\n{no} {place.decal.piece} ")
        yield Text(KEPT.sub("\u00a0", corner_text(place.register, work.unit)), bold=True)
