"""A strip of film to scale as it lies on the cutter, each piece with its label."""

from collections.abc import Iterator, Mapping
from typing import NamedTuple

from xlbatch.film.layout import Lying, Run, Strip
from xlbatch.film.profile import cut_out
from xlbatch.geometry.path import Matrix, path_data, product
from xlbatch.paper.measure import text_width
from xlbatch.paper.picture import Picture, drawn
from xlbatch.pictures.labels import Box, label_boxes
from xlbatch.pictures.swatch import UNKNOWN_FILM
from xlbatch.trade.tables import color_hex

GROUND, INK = "#e4e4e4", "#000000"
RING, LETTERS = 7.5, 11.0  # points: half a label's height, and its letters
EDGE = 1.5  # points around the strip
BARE = 6.0  # mm of film shown beside the pieces, where the rest of its width is bare
WHOLE = 0.85  # of the film's width: with more to show, all of it is shown
TOO_DARK = 0.45  # of white: a film this dark is drawn lighter, so that its outline is seen


class StripView(NamedTuple):
    """How a strip is drawn: the part of the film's width from `left` on, in mm, at points a mm; `lying`: the leading
    end at the left, else at the bottom."""

    lying: bool
    left: float
    across: float
    scale: float

    def size(self, strip: Strip) -> tuple[float, float]:
        """Width and height in points."""
        across, along = self.across * self.scale + 2 * EDGE, strip.length * self.scale + 2 * EDGE
        return (along, across) if self.lying else (across, along)

    def onto(self, strip: Strip) -> Matrix:
        """Takes a point of the run to the picture."""
        if self.lying:
            return 0.0, self.scale, self.scale, 0.0, EDGE - strip.start * self.scale, EDGE - self.left * self.scale
        far = EDGE + (strip.start + strip.length) * self.scale
        return self.scale, 0.0, 0.0, -self.scale, EDGE - self.left * self.scale, far


def view_of(run: Run, strip: Strip, width: float, height: float) -> StripView:
    """The view in which a strip is largest within `width` × `height` points."""
    film = run.film.usable_width
    left = max(0.0, min(lying.across for lying in strip.lying) - BARE)
    right = min(film, max(lying.across + lying.width for lying in strip.lying) + BARE)
    left, across = (0.0, film) if right - left > WHOLE * film else (left, right - left)
    wide, high = width - 2 * EDGE, height - 2 * EDGE
    upright, lying = min(wide / across, high / strip.length), min(wide / strip.length, high / across)
    return StripView(lying >= upright, left, across, max(upright, lying))


def strip_picture(
    run: Run, strip: Strip, labels: Mapping[str, str], width: float, height: float, gap: float | None = None
) -> Picture:
    """A strip as it lies on the cutter in `width` × `height` points, a thick line at its leading end; `labels` by
    decal. With `gap` the cuts between interlocked pieces are drawn."""
    view = view_of(run, strip, width, height)
    onto, (wide, high) = view.onto(strip), view.size(strip)
    fill = color_hex(run.film.color) or UNKNOWN_FILM
    body = f'<rect x="1" y="1" width="{wide - 2:.2f}" height="{high - 2:.2f}" fill="{GROUND}"/>'
    for lying in strip.lying:
        body += _piece(run, lying, onto, fill)
        if gap is not None and lying.decal.outline is not None:
            around = (_moved(point, onto) for point in cut_out(lying, gap, mirrored=run.mirrored))
            spots = " ".join(f"{x:.2f},{y:.2f}" for x, y in around)
            body += f'<polygon points="{spots}" fill="none" stroke="{INK}" stroke-width=".5"/>'
    body += "".join(_edges(run, view, wide, high)) + "".join(
        _labels(strip, labels, onto, Box(1, 1, wide - 1, high - 1))
    )
    svg = f'<svg xmlns="http://www.w3.org/2000/svg" width="{wide:.2f}" height="{high:.2f}" font-family="Arimo">'
    return drawn(f"{svg}{body}</svg>", f"Strip {strip.batch} of run {run.no} as it lies on the cutter")


def _edges(run: Run, view: StripView, wide: float, high: float) -> Iterator[str]:
    """The leading end thick, the other end and the film's sides thin; dashed where bare film goes on."""
    shown = (view.left <= 0, view.left + view.across >= run.film.usable_width)
    if view.lying:
        lead, end = f"M{EDGE} 0V{high:.2f}", f"M{wide - 1:.2f} 1V{high - 1:.2f}"
        sides = (f"M1 1H{wide - 1:.2f}", f"M1 {high - 1:.2f}H{wide - 1:.2f}")
    else:
        lead, end = f"M0 {high - EDGE:.2f}H{wide:.2f}", f"M1 1H{wide - 1:.2f}"
        sides = (f"M1 1V{high - 1:.2f}", f"M{wide - 1:.2f} 1V{high - 1:.2f}")
    yield f'<path d="{end}" stroke="{INK}"/>'
    for side, edge in zip(sides, shown, strict=True):
        yield f'<path d="{side}" stroke="{INK}"' + ("/>" if edge else ' stroke-dasharray="2 2.5"/>')
    yield f'<path d="{lead}" stroke="{INK}" stroke-width="3"/>'


def _moved(point: tuple[float, float], onto: Matrix) -> tuple[float, float]:
    (x, y), (a, b, c, d, e, f) = point, onto
    return a * x + c * y + e, b * x + d * y + f


def _box(lying: Lying, onto: Matrix) -> Box:
    x, y = _moved((lying.across, lying.along), onto)
    u, v = _moved((lying.across + lying.width, lying.along + lying.length), onto)
    return Box(min(x, u), min(y, v), max(x, u), max(y, v))


def _piece(run: Run, lying: Lying, onto: Matrix, fill: str) -> str:
    if lying.decal.outline is None:
        box = _box(lying, onto)
        size = f'width="{box.right - box.left:.2f}" height="{box.bottom - box.top:.2f}"'
        return f'<rect x="{box.left:.2f}" y="{box.top:.2f}" {size} fill="{fill}" stroke="{INK}" stroke-width=".5"/>'
    path = path_data(lying.decal.outline.segments, product(lying.matrix(mirrored=run.mirrored), onto))
    return f'<path d="{path}" fill="{_light(fill)}" stroke="{INK}" stroke-width=".5"/>'


def _light(fill: str) -> str:
    """The color, mixed with white where it is dark: the labels and the outline are what counts here."""
    parts = [int(fill[digit : digit + 2], 16) for digit in (1, 3, 5)]
    if sum(parts) / 3 > 255 * TOO_DARK:
        return fill
    return "#" + "".join(f"{round(part * 0.45 + 255 * 0.55):02x}" for part in parts)


def _labels(strip: Strip, labels: Mapping[str, str], onto: Matrix, frame: Box) -> Iterator[str]:
    """Each piece's label in a ring; with a line to its piece where it stands beside that."""
    pieces = sorted(strip.lying, key=lambda lying: (lying.along, lying.across))
    boxes = [_box(lying, onto) for lying in pieces]
    texts = [labels[lying.decal.id] for lying in pieces]
    sizes = [(max(2 * RING, text_width(text, LETTERS, True) + 5), 2 * RING) for text in texts]
    for piece, text, label in zip(boxes, texts, label_boxes(boxes, sizes, frame), strict=True):
        (x, y), (u, v) = label.middle, piece.middle
        if not label.shared(piece):
            yield f'<path d="M{x:.2f} {y:.2f}L{u:.2f} {v:.2f}" stroke="{INK}"/>'
            yield f'<circle cx="{u:.2f}" cy="{v:.2f}" r="2"/>'
        yield (
            f'<rect x="{label.left:.2f}" y="{label.top:.2f}" width="{label.right - label.left:.2f}" '
            f'height="{2 * RING}" rx="{RING}" fill="#fff" stroke="{INK}" stroke-width=".8"/>'
            f'<text x="{x:.2f}" y="{y + 3.9:.2f}" font-size="{LETTERS}" font-weight="700" text-anchor="middle">'
            f"{text}</text>"
        )
