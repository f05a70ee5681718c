"""A strip of film to scale as it lies on the cutter, its leading end at the left, each piece with its label."""

from collections.abc import Mapping

from xlbatch.film.layout import Lying, Run, Strip
from xlbatch.film.profile import cut_out
from xlbatch.geometry.path import path_data, product
from xlbatch.paper.measure import text_width
from xlbatch.paper.picture import Picture, drawn
from xlbatch.pictures.swatch import UNKNOWN_FILM
from xlbatch.trade.tables import color_hex

GROUND, INK = "#e4e4e4", "#000000"
RING, LETTERS = 7.5, 10.0  # points: a label's least ring and its letters
TOO_DARK = 0.45  # of white: a film this dark is drawn lighter, so that its outline is seen


def strip_picture(run: Run, strip: Strip, labels: Mapping[str, str], scale: float, gap: float | None = None) -> Picture:
    """A strip at `scale` points a mm; `labels` by decal. With `gap` the cuts between interlocked pieces are drawn."""
    width, height = strip.length * scale + 2, run.film.usable_width * scale + 2
    fill = color_hex(run.film.color) or UNKNOWN_FILM
    body = f'<rect x=".5" y=".5" width="{width - 1:.2f}" height="{height - 1:.2f}" fill="{GROUND}" stroke="{INK}"/>'
    onto = (0.0, scale, scale, 0.0, 1 - strip.start * scale, 1.0)  # along the film goes to the right, across it down
    for lying in strip.lying:
        body += _piece(run, lying, onto, scale, fill)
        if gap is not None and lying.decal.outline is not None:
            around = cut_out(lying, gap, mirrored=run.mirrored)
            spots = " ".join(f"{1 + (y - strip.start) * scale:.2f},{1 + x * scale:.2f}" for x, y in around)
            body += f'<polygon points="{spots}" fill="none" stroke="{INK}" stroke-width=".5"/>'
    body += "".join(_label(lying, labels[lying.decal.id], strip.start, scale) for lying in strip.lying)
    svg = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width:.2f}" height="{height:.2f}" font-family="Arimo">'
        f"{body}</svg>"
    )
    return drawn(svg, f"Strip {strip.batch} of run {run.no} as it lies on the cutter")


def _piece(run: Run, lying: Lying, onto: tuple[float, ...], scale: float, fill: str) -> str:
    a, b, c, d, e, f = onto
    if lying.decal.outline is None:
        x, y = e + lying.along * scale, f + lying.across * scale
        size = f'width="{lying.length * scale:.2f}" height="{lying.width * scale:.2f}"'
        return f'<rect x="{x:.2f}" y="{y:.2f}" {size} fill="{fill}" stroke="{INK}" stroke-width=".5"/>'
    matrix = product(lying.matrix(mirrored=run.mirrored), (a, b, c, d, e, f))
    path = path_data(lying.decal.outline.segments, matrix)
    return f'<path d="{path}" fill="{_light(fill)}" stroke="{INK}" stroke-width=".5"/>'


def _light(fill: str) -> str:
    """The color, mixed with white where it is dark: the labels and the outline are what counts here."""
    parts = [int(fill[at : at + 2], 16) for at in (1, 3, 5)]
    if sum(parts) / 3 > 255 * TOO_DARK:
        return fill
    return "#" + "".join(f"{round(part * 0.45 + 255 * 0.55):02x}" for part in parts)


def _label(lying: Lying, label: str, start: float, scale: float) -> str:
    """Its label in a ring in the middle of the piece."""
    x = 1 + (lying.along - start + lying.length / 2) * scale
    y = 1 + (lying.across + lying.width / 2) * scale
    wide = max(RING, text_width(label, LETTERS, True) / 2 + 2.5)
    return (
        f'<rect x="{x - wide:.2f}" y="{y - RING:.2f}" width="{2 * wide:.2f}" height="{2 * RING}" rx="{RING}" '
        f'fill="#fff" stroke="{INK}" stroke-width=".8"/><text x="{x:.2f}" y="{y + 3.6:.2f}" font-size="{LETTERS}" '
        f'font-weight="700" text-anchor="middle">{label}</text>'
    )
