"""A strip of film to scale as it lies on the cutter, each piece with its label."""

from collections.abc import Mapping
from typing import NamedTuple

from xlbatch.film.layout import Lying, Run, Strip
from xlbatch.film.profile import cut_out
from xlbatch.geometry.path import Matrix, path_data, product
from xlbatch.paper.measure import text_width
from xlbatch.paper.picture import Picture, drawn
from xlbatch.pictures.swatch import UNKNOWN_FILM
from xlbatch.trade.tables import color_hex

GROUND, INK = "#e4e4e4", "#000000"
RING, LETTERS = 7.5, 11.0  # points: a label's least ring and its letters
MUCH = 0.75
STAGGER = (0.5, 0.22, 0.78)  # where along a piece its label stands, so that labels keep apart
TOO_DARK = 0.45  # of white: a film this dark is drawn lighter, so that its outline is seen


class View(NamedTuple):
    """How the strips of a run are drawn: `lying`: the leading end at the left, else at the bottom; points a mm."""

    lying: bool
    scale: float

    def size(self, run: Run, strip: Strip) -> tuple[float, float]:
        """Width and height in points."""
        across, along = run.film.usable_width * self.scale, strip.length * self.scale
        return (along, across) if self.lying else (across, along)


def view_of(run: Run, width: float, height: float) -> View:
    """The view in which every strip of a run fits `width` × `height` points: upright, where that is not much smaller,
    since short strips then take little height."""
    across, along = run.film.usable_width, max(strip.length for strip in run.strips)
    upright, lying = min(width / across, height / along), min(width / along, height / across)
    return View(False, upright) if upright >= MUCH * lying else View(True, lying)


def strip_picture(run: Run, strip: Strip, labels: Mapping[str, str], view: View, gap: float | None = None) -> Picture:
    """A strip as it lies on the cutter, a thick line at its leading end; `labels` by decal. With `gap` the cuts between
    interlocked pieces are drawn."""
    width, height = (side + 3 for side in view.size(run, strip))
    scale = view.scale
    onto: Matrix = (scale, 0.0, 0.0, -scale, 1.5, 1.5 + (strip.start + strip.length) * scale)
    lead = f"M0 {height - 1.5:.2f}H{width:.2f}"
    if view.lying:
        onto = (0.0, scale, scale, 0.0, 1.5 - strip.start * scale, 1.5)
        lead = f"M1.5 0V{height:.2f}"
    fill = color_hex(run.film.color) or UNKNOWN_FILM
    body = f'<rect x="1" y="1" width="{width - 2:.2f}" height="{height - 2:.2f}" fill="{GROUND}" stroke="{INK}"/>'
    for lying in strip.lying:
        body += _piece(run, lying, onto, fill)
        if gap is not None and lying.decal.outline is not None:
            around = (_moved(point, onto) for point in cut_out(lying, gap, mirrored=run.mirrored))
            spots = " ".join(f"{x:.2f},{y:.2f}" for x, y in around)
            body += f'<polygon points="{spots}" fill="none" stroke="{INK}" stroke-width=".5"/>'
    for at, lying in enumerate(sorted(strip.lying, key=lambda lying: (lying.along, lying.across))):
        body += _label(lying, labels[lying.decal.id], onto, STAGGER[at % len(STAGGER)], (width, height))
    svg = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width:.2f}" height="{height:.2f}" font-family="Arimo">'
        f'{body}<path d="{lead}" stroke="{INK}" stroke-width="3"/></svg>'
    )
    return drawn(svg, f"Strip {strip.batch} of run {run.no} as it lies on the cutter")


def _moved(point: tuple[float, float], onto: Matrix) -> tuple[float, float]:
    (x, y), (a, b, c, d, e, f) = point, onto
    return a * x + c * y + e, b * x + d * y + f


def _piece(run: Run, lying: Lying, onto: Matrix, fill: str) -> str:
    if lying.decal.outline is None:
        x, y = _moved((lying.across, lying.along), onto)
        u, v = _moved((lying.across + lying.width, lying.along + lying.length), onto)
        size = f'width="{abs(u - x):.2f}" height="{abs(v - y):.2f}"'
        return f'<rect x="{min(x, u):.2f}" y="{min(y, v):.2f}" {size} fill="{fill}" stroke="{INK}" stroke-width=".5"/>'
    path = path_data(lying.decal.outline.segments, product(lying.matrix(mirrored=run.mirrored), onto))
    return f'<path d="{path}" fill="{_light(fill)}" stroke="{INK}" stroke-width=".5"/>'


def _light(fill: str) -> str:
    """The color, mixed with white where it is dark: the labels and the outline are what counts here."""
    parts = [int(fill[at : at + 2], 16) for at in (1, 3, 5)]
    if sum(parts) / 3 > 255 * TOO_DARK:
        return fill
    return "#" + "".join(f"{round(part * 0.45 + 255 * 0.55):02x}" for part in parts)


def _label(lying: Lying, label: str, onto: Matrix, along: float, frame: tuple[float, float]) -> str:
    """Its label in a ring on its long middle line, within the picture."""
    right, up = (along, 0.5) if lying.width > lying.length else (0.5, along)
    x, y = _moved((lying.across + lying.width * right, lying.along + lying.length * up), onto)
    wide = max(RING, text_width(label, LETTERS, True) / 2 + 2.5)
    x = min(max(x, wide + 1), frame[0] - wide - 1)
    y = min(max(y, RING + 1), frame[1] - RING - 1)
    return (
        f'<rect x="{x - wide:.2f}" y="{y - RING:.2f}" width="{2 * wide:.2f}" height="{2 * RING}" rx="{RING}" '
        f'fill="#fff" stroke="{INK}" stroke-width=".8"/><text x="{x:.2f}" y="{y + 3.9:.2f}" font-size="{LETTERS}" '
        f'font-weight="700" text-anchor="middle">{label}</text>'
    )
