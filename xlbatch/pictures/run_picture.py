"""Pictures for the roll layout: a run to scale as it lies on the cutter, in parts that fit on a page."""

from collections.abc import Sequence

from xlbatch.film.layout import Lying, Run, Strip
from xlbatch.film.profile import cut_out
from xlbatch.geometry.path import path_data, product
from xlbatch.paper.measure import text_width
from xlbatch.paper.picture import CRISP, PLAIN, Picture, drawn

LABEL = 32.0  # points left of the film, for the strips' numbers
END = 14.0  # points below the film, for its leading end
SCALE = 72 / 25.4 / 6  # points a mm at a sixth of the true size
INK, PIECE, LINE = "#17202a", "#c3ccd4", "#4d5966"
HALO = ' stroke="#fff" stroke-width="1.6" paint-order="stroke"'  # keeps a label readable on a shape

Part = Sequence[Strip]


def scale_of(run: Run, width: float) -> float:
    """Points a mm: a sixth of the true size, less where the film would be wider than `width` points."""
    return min(SCALE, (width - LABEL - 2) / run.film.usable_width)


def parts(run: Run, width: float, height: float) -> tuple[Part, ...]:
    """The run's strips in parts that are at most `height` points long when drawn, none split."""
    most = (height - END) / scale_of(run, width)
    parts_: list[list[Strip]] = []
    for strip in run.strips:
        if parts_ and _end(run, strip) - _start(run, parts_[-1][0]) <= most:
            parts_[-1].append(strip)
        else:
            parts_.append([strip])
    return tuple(map(tuple, parts_))


def _start(run: Run, strip: Strip) -> float:
    """Where the film of a strip begins: at the cut halfway to the strip before it (mm along the run)."""
    strip_no = run.strips.index(strip)
    return _cut(run.strips[strip_no - 1], strip) if strip_no else 0.0


def _end(run: Run, strip: Strip) -> float:
    strip_no = run.strips.index(strip) + 1
    return _cut(strip, run.strips[strip_no]) if strip_no < len(run.strips) else run.length


def _cut(before: Strip, after: Strip) -> float:
    return (before.start + before.length + after.start) / 2


def run_picture(run: Run, part: Part, width: float, *, shapes: bool, gap: float | None) -> tuple[Picture, float]:
    """A part of a run, the leading end below, and the picture's height in points. Without `shapes` decals are boxes;
    with a `gap` they interlock, and what is to be cut out of the strip is drawn around each."""
    scale = scale_of(run, width)
    start, end = _start(run, part[0]), _end(run, part[-1])
    film, high = run.film.usable_width * scale, (end - start) * scale
    pieces = (
        f'<rect x="{LABEL}" y=".5" width="{film:.2f}" height="{high:.2f}" fill="#fff" stroke="{LINE}"/>',
        *(_lying(run, lying, end, scale, shapes, gap) for strip in part for lying in strip.lying),
        *(_strip(run, strip, end, scale, film) for strip in part),
        _leading_end(high, film, first=start == 0.0),
    )
    svg = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width:.2f}" height="{high + END:.2f}" font-family="Arimo" '
        'shape-rendering="crispEdges">'
        f"{''.join(pieces)}</svg>"
    )
    numbers = ", ".join(str(strip.batch) for strip in part)
    return drawn(svg, f"Run {run.no}, {run.film.name}, strips {numbers}", CRISP if shapes else PLAIN), high + END


def _lying(run: Run, lying: Lying, end: float, scale: float, shapes: bool, gap: float | None) -> str:
    """A decal: its shape in gray, its box or its piece, and its number with its garment's."""
    left, top = LABEL + lying.across * scale, (end - lying.along - lying.length) * scale
    width, height = lying.width * scale, lying.length * scale
    shape = ""
    if shapes and lying.decal.outline is not None:
        onto = product(run.matrix(lying), (scale, 0, 0, scale, LABEL, (end - run.length) * scale))
        shape = f'<path d="{path_data(lying.decal.outline.segments, onto)}" fill="{PIECE}"/>'
    if shape and gap is not None:
        around = ((LABEL + x * scale, (end - y) * scale) for x, y in cut_out(lying, gap, mirrored=run.mirrored))
        edge = f'<polygon points="{" ".join(f"{x:.2f},{y:.2f}" for x, y in around)}"'
    else:
        edge = f'<rect x="{left:.2f}" y="{top:.2f}" width="{width:.2f}" height="{height:.2f}"'
    label = _label(lying, left + width / 2, top + height / 2, width, height, HALO if shape else "")
    return f'{shape}{edge} fill="none" stroke="{LINE}" stroke-width=".5"/>{label}'


def _label(lying: Lying, x: float, y: float, width: float, height: float, halo: str) -> str:
    """The decal's number and, in brackets, its garment's, as large as its box allows; upright where it is narrow."""
    text = f"{lying.decal.id} ({lying.decal.garment_no})"
    upright = height > width
    along, across = (height, width) if upright else (width, height)
    size = max(4.5, min(8.5, 8.5 * (along - 2) / text_width(text, 8.5, True), across * 0.8))
    turn = f' transform="rotate(-90 {x:.2f} {y:.2f})"' if upright and along > width else ""
    place = f'x="{x:.2f}" y="{y + size * 0.36:.2f}" text-anchor="middle" font-size="{size:.2f}" font-weight="700"'
    return f'<text {place}{turn} fill="{INK}"{halo}>{text}</text>'


def _strip(run: Run, strip: Strip, end: float, scale: float, film: float) -> str:
    """A strip's number beside it, and the straight cut that parts it from the one before."""
    bottom, top = ((end - edge) * scale for edge in (_start(run, strip), _end(run, strip)))
    line = f'<line x1="2" x2="{LABEL + film:.2f}" y1="{bottom:.2f}" y2="{bottom:.2f}" stroke="{INK}"'
    cut = f'{line} stroke-width="1.2" stroke-dasharray="5 3"/>' if strip is not run.strips[0] else ""
    size = max(5.0, min(15.0, bottom - top - 2))
    under = (bottom + top) / 2 + size * 0.36
    word = f'<text x="2" y="{under - size:.2f}" font-size="8" fill="{LINE}">strip</text>' if size == 15.0 else ""
    number = f'<text x="2" y="{under:.2f}" font-size="{size:.2f}" font-weight="700" fill="{INK}">{strip.batch}</text>'
    return cut + word + number


def _leading_end(high: float, film: float, *, first: bool) -> str:
    says = "leading end: goes into the cutter first" if first else "toward the leading end"
    edge = f'<line x1="{LABEL}" x2="{LABEL + film:.2f}" y1="{high:.2f}" y2="{high:.2f}" stroke="{INK}"'
    return (
        f'{edge} stroke-width="{2.5 if first else 0.5}"/>'
        f'<text x="{LABEL}" y="{high + 10:.2f}" font-size="8" fill="{INK}">{says}</text>'
    )
