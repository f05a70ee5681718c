"""Measure lines on a drawing of a garment: from the seam to each piece, clear of other pieces, its letter in a ring."""

from collections.abc import Iterator, Mapping, Sequence
from typing import NamedTuple

from xlbatch.pictures.labels import Box
from xlbatch.pictures.sketch import box_of
from xlbatch.placement.place import Place

ACCENT = "#0b5a5e"
ROUND = 7.5  # points: the ring of a measure's letter
TICK = 5.0  # points: half an end tick
CLEAR = 4.0  # points between a line and what it goes around
FAR = (12.0, 20.0, 30.0, 42.0)  # points from a line to the middle of its ring: the nearest that hides nothing
AWAY = 0.6  # how bad a point of distance is, beside a square point hidden


class Origin(NamedTuple):
    """Where the garment's center line and shoulder point come on paper, and points a mm."""

    x: float
    y: float
    scale: float


class MeasureLine(NamedTuple):
    """A measure on paper: the x of the seam it begins at and of its line, and the y where it begins and ends."""

    seam: float
    x: float
    start: float
    end: float


def span_of(place: Place) -> tuple[float, float, float]:
    """The measure line of a piece in mm: its x, and the y where it begins and ends."""
    left, top, width, height = box_of(place)
    if place.below_collar is not None:
        return left + width / 2, top - place.below_collar, top
    away = place.above_opening if place.above_opening is not None else place.above_hem or 0.0
    return left + width / 2, top + height, top + height + away


def measure_marks(places: Sequence[Place], letters: Mapping[str, str], origin: Origin, frame: Box) -> str:
    """SVG of the measure of each piece that has a letter (by decal). `places`: all that is on this side."""
    pieces = [_on_paper(place, origin) for place in places]
    lines = [
        (letters[place.decal.id], _line(place, [piece for other, piece in zip(places, pieces, strict=True)
                                                if other is not place], origin, frame))
        for place in places
        if place.decal.id in letters
    ]  # fmt: skip
    taken = [Box(line.x - 1, min(line.start, line.end), line.x + 1, max(line.start, line.end)) for _, line in lines]
    rings: list[Box] = []
    svg = ""
    for letter, line in lines:
        rings.append(_ring(line, [*pieces, *taken], rings, frame))
        svg += _drawn(letter, line, rings[-1])
    return svg


def _on_paper(place: Place, origin: Origin) -> Box:
    left, top, width, height = (mm * origin.scale for mm in box_of(place))
    return Box(origin.x + left, origin.y + top, origin.x + left + width, origin.y + top + height)


def _line(place: Place, others: Sequence[Box], origin: Origin, frame: Box) -> MeasureLine:
    """Over the piece's middle, or beside what lies between it and the seam."""
    x, *ends = span_of(place)
    middle = origin.x + x * origin.scale
    start, end = (origin.y + y * origin.scale for y in ends)
    between = Box(middle - 1, min(start, end) + 1, middle + 1, max(start, end) - 1)
    crossed = [other for other in others if between.shared(other) > 0]
    if crossed:
        sides = (max(box.right for box in crossed) + CLEAR, min(box.left for box in crossed) - CLEAR)
        free = [side for side in sides if frame.left + TICK <= side <= frame.right - TICK]
        return MeasureLine(middle, min(free, key=lambda side: round(abs(side - middle)), default=middle), start, end)
    return MeasureLine(middle, middle, start, end)


def _ring(line: MeasureLine, covered: Sequence[Box], rings: Sequence[Box], frame: Box) -> Box:
    """The nearest spot beside the line, or above its beginning, where the ring hides least."""
    middle = (line.start + line.end) / 2

    def bad(spot: Box) -> float:
        x, y = spot.middle
        hidden = sum(spot.shared(box) for box in covered) + 8 * sum(spot.shared(ring) for ring in rings)
        return hidden + AWAY * (abs(x - line.x) + abs(y - middle))

    spots = [
        Box(x - ROUND, y - ROUND, x + ROUND, y + ROUND)
        for far in FAR
        for x in (line.x + far, line.x - far)
        for y in (middle, min(line.start, line.end) - ROUND / 2, max(line.start, line.end) - ROUND - 1)
    ]
    within = [
        spot
        for spot in spots
        if frame.left <= spot.left and spot.right <= frame.right and frame.top <= spot.top <= frame.bottom - 2 * ROUND
    ]
    return min(within or spots, key=bad)


def _drawn(letter: str, line: MeasureLine, ring: Box) -> str:
    """The line with end ticks, a thin line to the seam where it stands aside, a leader to the ring, the ring."""
    return "".join(_parts(letter, line, ring))


def _parts(letter: str, line: MeasureLine, ring: Box) -> Iterator[str]:
    x, start, end = line.x, line.start, line.end
    center, middle = ring.middle
    nearest = max(min(start, end), min(middle, max(start, end)))
    if line.x != line.seam:
        yield (
            f'<path d="M{line.seam:.2f} {start:.2f}H{x:.2f}M{line.seam:.2f} {end:.2f}H{x:.2f}" stroke="{ACCENT}" '
            'stroke-width="0.6" stroke-dasharray="2 2" fill="none"/>'
        )
    if abs(center - x) > FAR[0] or middle != nearest:
        yield f'<path d="M{x:.2f} {nearest:.2f}L{center:.2f} {middle:.2f}" stroke="{ACCENT}" stroke-width="0.8"/>'
    yield (
        f'<path d="M{x:.2f} {start:.2f}V{end:.2f}M{x - TICK:.2f} {start:.2f}h{2 * TICK:g}M{x - TICK:.2f} {end:.2f}'
        f'h{2 * TICK:g}" stroke="{ACCENT}" stroke-width="1.6" fill="none"/>'
        f'<circle cx="{center:.2f}" cy="{middle:.2f}" r="{ROUND}" fill="#fff" stroke="{ACCENT}"/>'
        f'<text x="{center:.2f}" y="{middle + 4:.2f}" font-size="11" font-weight="700" text-anchor="middle" '
        f'fill="{ACCENT}">{letter}</text>'
    )
