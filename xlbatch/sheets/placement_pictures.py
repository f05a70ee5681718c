"""Placement pictures: each kind of garment with its decals to scale, beside a paper ruler with this job's drops."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from functools import partial

from xlbatch.job.job import Settings
from xlbatch.paper.measure import text_width
from xlbatch.paper.page import Column, Page
from xlbatch.paper.picture import Picture, drawn
from xlbatch.pictures.layers_picture import layers_svg
from xlbatch.pictures.ruler import CHECK, ruler, ruler_height
from xlbatch.pictures.sketch import sketch
from xlbatch.placement.place import Place
from xlbatch.placement.register import drawings
from xlbatch.plan import Plan
from xlbatch.sheets.line_up import edges
from xlbatch.units import length_number, mm_per, print_step, printed_length

MOST = 24  # pictures
ACROSS = 3
ROW = 18.0  # points: the rows the pictures lie over
HIGH = 9 * ROW  # of one picture
CAPTION, LETTER = 10.5, 9.0  # points: line height and size of the words below a drawing
COLUMNS = (Column("", 1.87), *(Column("", 1.95) for _ in range(ACROSS)))

Kind = tuple[str, ...]


def kinds(plan: Plan) -> Mapping[Kind, Sequence[Place]]:
    """The places by what tells one picture from another: garment, for whom, side, and what is on it."""
    garments: dict[tuple[int, str], list[Place]] = {}
    for place in plan.places:
        garments.setdefault((place.garment.no, place.side), []).append(place)
    places_by_kind: dict[Kind, list[Place]] = {}
    for (_, side), places in garments.items():
        blank = places[0].garment.blank
        on_it = [f"{place.decal.spec.position}/{place.decal.piece}" for place in places]
        places_by_kind.setdefault((blank.for_, blank.neckline, blank.garment, side, *on_it), []).extend(places)
    return places_by_kind


def drops(places: Iterable[Place], settings: Settings) -> Mapping[float, Sequence[str]]:
    """The positions at each printed distance (mm) below a seam."""
    step = print_step(settings.length_unit)
    drops_by_height: dict[float, dict[str, None]] = {}
    for place in places:
        if place.below_collar is not None and place.register is None:
            drops_by_height.setdefault(round(place.below_collar / step) * step, {})[place.decal.spec.position] = None
    return {drop: tuple(positions) for drop, positions in drops_by_height.items()}


def write(page: Page, plan: Plan) -> None:
    """The ruler at the left of the first page, the pictures beside it and on further pages."""
    settings = plan.job.settings
    page.sheet.set_print_scale(100)
    page.lay_columns(COLUMNS, base="form")
    page.title(
        "Placement pictures",
        f"Print at actual size (100 %). Check the ruler: {CHECK[settings.length_unit][1]} must measure "
        f"{CHECK[settings.length_unit][1]}. Cut it out and lay its 0 on the seam. Each drawing shows one size of "
        "its kind; the measures are those of Placement.",
    )
    top = page.row
    page.picture(top, 0, ruler(drops(plan.places, settings), settings.length_unit), left=0, top=0, exact=True)
    shown = [partial(_picture, places, settings) for places in list(kinds(plan).values())[:MOST]]
    designs: dict[tuple[str, ...], Sequence[Place]] = {}
    for alike in drawings(plan.places):
        pieces = (place.decal.piece for place in alike[0])
        designs.setdefault((alike[0][0].decal.spec.design, *pieces), alike[0])
    shown += [partial(_layers, drawing, settings) for drawing in list(designs.values())[:MOST]]
    starts = []
    for first in range(0, len(shown), ACROSS):
        starts.append(page.row)
        for column, picture in enumerate(shown[first : first + ACROSS], 1):
            page.picture(page.row, column, picture(page.widths[column] - 6))
        for _ in range(int(HIGH / ROW)):
            page.gap(ROW)
    while sum(page.heights[top:]) < ruler_height(settings.length_unit):
        page.gap(ROW)
    page.break_pages(starts)
    page.sheet.print_area(0, 0, page.row - 1, page.last)


def _picture(places: Sequence[Place], settings: Settings, width: float) -> Picture:
    """The first garment of a kind, with what it is and the measures of all."""
    first = places[0].garment
    shown = [place for place in places if place.garment.no == first.no]
    title = f"{first.blank.for_} {first.blank.garment}, {places[0].side}"
    return _captioned([title, *measures(places, settings)], width, partial(sketch, shown))


def _layers(drawing: Sequence[Place], settings: Settings, width: float) -> Picture:
    """The layers of a drawing, and how each lies on the lowest in this size."""
    lowest, *layers = drawing
    lying = (f"{no} {place.decal.piece}: {edges(place, settings)}" for no, place in enumerate(layers, 2))
    title = f"Layers on {lowest.decal.piece}, here {lowest.garment.blank.size}"
    return _captioned([title, f"1 {lowest.decal.piece}", *lying], width, partial(layers_svg, drawing))


def _captioned(caption: Sequence[str], width: float, art: Callable[[float, float], str]) -> Picture:
    """A drawing with its title and further lines below it."""
    lines = [part for line in caption for part in _wrapped(line, width - 4)]
    high = HIGH - CAPTION * len(lines) - 10
    words = "".join(
        f'<text x="2" y="{high + CAPTION * (line_no + 1):.2f}" font-size="{LETTER}"'
        f"{' font-weight=' + chr(34) + '700' + chr(34) if not line_no else ''}>{_escaped(line)}</text>"
        for line_no, line in enumerate(lines)
    )
    svg = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width:.2f}" height="{HIGH - 6}" font-family="Arimo" '
        f'fill="#17202a">{art(width, high)}{words}</svg>'
    )
    return drawn(svg, "; ".join(caption))


def measures(places: Iterable[Place], settings: Settings) -> list[str]:
    """`back name: 4 in below the back collar seam`, a line a position; several distances with their sizes."""
    distances: dict[tuple[str, str], dict[float, dict[str, None]]] = {}
    for place in places:
        if place.register:
            continue
        seam = place.measured_from
        away = place.below_collar if place.below_collar is not None else place.above_opening or place.above_hem or 0.0
        where = "below" if place.below_collar is not None else "above"
        of = distances.setdefault((place.decal.spec.position, f"{where} {seam}"), {})
        of.setdefault(printed_length(away, settings.length_unit), {})[place.garment.blank.size] = None
    return [f"{position}: {_by_size(away, settings)} {where}" for (position, where), away in distances.items()]


def _by_size(away: Mapping[float, Iterable[str]], settings: Settings) -> str:
    """`4 in`, or `S 3, M 3 1/2 in` where sizes differ; where a size has several, Placement has each. `away`: sizes by
    the printed distance."""
    unit = settings.length_unit
    sizes = [size for them in away.values() for size in them]
    if len(set(sizes)) < len(sizes):
        return "as on Placement"
    told = (f"{'/'.join(them)} " * (len(away) > 1) + length_number(length * mm_per(unit), unit)
            for length, them in sorted(away.items()))  # fmt: skip
    return f"{', '.join(told)} {unit}"


def _wrapped(text: str, room: float) -> list[str]:
    """The words in lines of at most `room` points."""
    lines = [""]
    for word in text.split(" "):
        joined = f"{lines[-1]} {word}".strip()
        if lines[-1] and text_width(joined, LETTER) > room:
            lines.append(f"   {word}")
        else:
            lines[-1] = joined if len(lines) == 1 else f"   {joined}"
    return lines


def _escaped(text: str) -> str:
    return text.replace("&", "&amp;").replace("<", "&lt;")
