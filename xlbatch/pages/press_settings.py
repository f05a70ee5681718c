"""What stands above the press cards: each film's settings in large type, the caution, and how the plate is moved over
pieces larger than it."""

from collections.abc import Sequence
from functools import partial

from xlbatch.job.job import Film, Press
from xlbatch.pages.leaf import ACROSS, COLUMN, Leaf, Shown, Span
from xlbatch.pages.page_looks import ACCENT, BANNER, KEY, STRONG, THIN, TITLE, WORK, Look, Text
from xlbatch.pages.work import Work, listed, size_text
from xlbatch.pictures.plate_picture import plate_picture
from xlbatch.placement.place import Place
from xlbatch.sheets.banner import IRON, heat_text
from xlbatch.sheets.how import sections_text
from xlbatch.trade.tables import table

CAUTION = "CAUTION  Plate and fresh film burn at once. Children and pets away. Unplug when you leave."
SHORT_CAUTION = "CAUTION  Plate and film burn. Children, pets away. Unplug when you leave."
MOST_LARGE = 2  # films whose settings stand in the largest type
PLATES, PLATE_HIGH = 3, 78.0  # drawings side by side; points
MOST_PLATES = 9  # sizes drawn


def write_settings(leaf: Leaf, work: Work, films: Sequence[Film], press: Press) -> None:
    """A row a film."""
    for film in films:
        _write_film(leaf, work, film, press, large=len(films) <= MOST_LARGE)


def write_caution(leaf: Leaf, films: Sequence[Film], press: Press) -> None:
    """One line; with the cover where the films' rows have no room for it. With an iron, how it is handled."""
    cover = f"  {press.cover.capitalize()} on top." if press.cover and len(films) > MOST_LARGE else ""
    leaf.line(f"{SHORT_CAUTION}{cover}" if cover else CAUTION, STRONG)
    if press.kind == IRON:
        leaf.line(" ".join(line["Rule"] for line in table("iron_rules")), STRONG)


def _write_film(leaf: Leaf, work: Work, film: Film, press: Press, *, large: bool) -> None:
    iron = press.kind == IRON
    heat = heat_text(film.temperature, press, work.plan.job.settings)
    edge = Look(top=THIN, bottom=THIN)
    center = edge.but(align="center", left=THIN)
    cover = f"{press.cover} on top" if large and press.cover else ""
    back = f"then back {film.back:g} s" if film.back else "one side"
    size, after = (BANNER, "\n") if large else (TITLE, "  ")
    parts = "; ".join(filter(None, (_warm_up(work, film), cover)))
    about = (Text(film.name, KEY, bold=True), Text(f"{after}{parts}" if parts else ""))
    leaf.row(
        42 if large else 24,
        Span(16 if iron else 22, about, edge.but(left=THIN, indent=1)),
        Span(16 if iron else 10, heat, edge.but(size=KEY if iron else size, bold=True, align="center")),
        Span(14, (Text(f"{film.press:g} s", size, bold=True), Text(f"{after}{back}")), center),
        Span(7, (Text(film.pressure, KEY if large else WORK, bold=True), Text("\npressure" * large)), center),
        Span(7, (Text(film.peel, KEY if large else WORK, bold=True), Text("\npeel" if large else " peel")),
             center.but(right=THIN)),
    )  # fmt: skip


def _warm_up(work: Work, film: Film) -> str:
    """The warm-up of bare garments before this film; "" where none is bare when it is pressed."""
    bare = {step.warm_up > 0 for step in work.plan.pressing.steps if step.film.name == film.name}
    return f"warm-up {film.warm_up:g} s{' if bare' if False in bare else ''}" if True in bare else ""


def write_plates(leaf: Leaf, work: Work) -> None:
    """Each size of piece that is larger than the plate, once, with where the plate comes down in which order."""
    sizes: dict[tuple[str, str], list[Place]] = {}
    for place in (step.place for step in work.plan.pressing.steps):
        if place.presses > 1:
            sizes.setdefault((place.decal.piece, sections_text(place, work.plan.job.settings)), []).append(place)
    groups = list(sizes.items())[:MOST_PLATES]
    if groups:
        leaf.line(
            "Larger than the plate: press in the order of the numbers.", STRONG.but(color=ACCENT), 18, joined=True
        )
    press, wide = work.plan.pressing.steps[0].press, ACROSS // PLATES
    for first in range(0, len(groups), PLATES):
        beside = groups[first : first + PLATES]
        shown = [
            Shown(partial(plate_picture, places[0], press, wide * COLUMN - 6, PLATE_HIGH), plate_no * wide * COLUMN + 2)
            for plate_no, (_, places) in enumerate(beside)
        ]
        leaf.row(PLATE_HIGH + 4, pictures=shown, joined=True)
        leaf.row(14, *(Span(wide, _plate_text(work, piece, where, places), Look(valign="top"))
                       for (piece, where), places in beside))  # fmt: skip
    if len(sizes) > len(groups):
        leaf.line(f"{len(sizes) - len(groups)} more sizes: How in the plan's Press log says where.", STRONG, 14)


def _plate_text(work: Work, piece: str, where: str, places: Sequence[Place]) -> tuple[Text, ...]:
    largest = max(places, key=lambda place: place.decal.width)
    size = size_text(largest.decal.width, largest.decal.height, work.unit)
    nos = listed(dict.fromkeys(place.garment.no for place in places))
    return Text(f"{piece} {size}, no. {nos}: ", bold=True), Text(where.replace("the decal's", "the piece's"))
