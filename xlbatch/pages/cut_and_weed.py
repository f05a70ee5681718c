"""Cut and weed: run by run and strip by strip, each strip's picture beside the names of its pieces."""

from collections import Counter, defaultdict
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from functools import partial
from typing import NamedTuple

from xlbatch.art.decal import Decal
from xlbatch.film.layout import Run
from xlbatch.kept.memory import KeptDecal
from xlbatch.pages.leaf import ACROSS, COLUMN, Leaf, Shown, Span, Under, columns_for
from xlbatch.pages.page_looks import ACCENT, BAND, HAIRLINE, HEAD, KEY, PLAIN, STRONG, THIN, WORK, Look, Text
from xlbatch.pages.work import Work, listed
from xlbatch.paper.picture import Picture
from xlbatch.paper.style import BOX
from xlbatch.pictures.strip_picture import strip_picture
from xlbatch.trade.tables import practice
from xlbatch.units import printed_text

NAME = "Cut and weed"
TELLS = "Cutter: run by run, carrier side down, no more mirroring. Weeder: strip by strip; keep numbers."
TABLE = practice("a longer run hangs off a table")
LINE_HEIGHT, LEAST_STRIP = 15.0, 33.0  # points; a strip's number and boxes need the latter
MOST_ALIKE = 6  # pieces that say the same: more are no pair to take for one another
MOST_DRAWN = 300  # garments: with more, strips are not drawn, so that the workbook stays small
PAD = 2.0  # points between a picture and the edges of its cell
TICKS = f"{BOX} cut  {BOX} weeded"
RULE = PLAIN.but(bottom=HAIRLINE)

Piece = Decal | KeptDecal
Drawing = Callable[[float, float], Picture]  # by width and height in points


class StripColumns(NamedTuple):
    """The widths in columns; `on_it`: 0 where a piece says nothing but whose it is; the picture has what is left."""

    strip: int
    no: int
    who: int
    on_it: int
    spoiled: int
    picture: int


def columns(work: Work, labels: Iterable[str]) -> StripColumns:
    """As wide as numbers, names and texts need."""
    strip = columns_for([TICKS], WORK)
    no = columns_for(labels, WORK, bold=True)
    names = (f"{_who(work, no)} " for no in work.garments)  # clear of what stands beside it
    who = columns_for(names, WORK, bold=work.only_names, least=9, most=22 if work.only_names else 20)
    texts = (f"{text} " for decal in work.plan.decals for text in _words(decal))
    on_it = 0 if work.only_names else columns_for(texts, WORK, bold=True, least=5, most=10)
    spoiled = columns_for([f"{BOX} {decal.id}" for decal in work.plan.decals], WORK)
    return StripColumns(strip, no, who, on_it, spoiled, ACROSS - strip - no - who - on_it - spoiled)


def _who(work: Work, no: int) -> str:
    return f"{work.garments[no].who}  {work.garments[no].blank.size}"


def _words(decal: Piece) -> Sequence[str]:
    return (decal.text or decal.piece).split()


def write(leaf: Leaf, work: Work, high: float) -> None:
    """The strips cut before, every run and its strips, drawn at least `high` points high; after a film's runs, what is
    alike in it."""
    leaf.cushion = 1.5
    labels = dict(_labels(work.plan.layout.runs))
    wide = columns(work, labels.values())
    heads = ((wide.strip, "Strip"), (wide.no, "No."), (wide.who, "Who, size"), (wide.on_it, "On it"),
             (wide.spoiled, "Spoiled"), (wide.picture, "Thick end leads"))  # fmt: skip
    leaf.row(18, *(Span(width, text, HEAD) for width, text in heads if width))
    leaf.repeat()
    for (_, run_no, strip_no), decals in work.to_weed.items():
        film = work.places[decals[0].id].decal.film
        _write_band(leaf, f"CUT BEFORE   {film}   run {run_no}", "weed it now, or tick it as weeded")
        _write_strip(leaf, work, _number(strip_no, "", f"cut  {BOX} weeded"), decals, {}, wide)
    runs = work.plan.layout.runs
    for run, after in zip(runs, (*runs[1:], None)[: len(runs)], strict=True):
        _write_run(leaf, work, run, labels, wide, high)
        leaf.end_part()
        if after is None or after.film != run.film:
            for line in alike(work, (other for other in runs if other.film == run.film)):
                leaf.line(line, STRONG.but(color=ACCENT))


def _write_run(leaf: Leaf, work: Work, run: Run, labels: Mapping[str, str], wide: StripColumns, high: float) -> None:
    length = printed_text(run.length, work.unit, up=True)
    _write_band(leaf, f"RUN {run.no}   {run.film.name}   load {length}", _about(run))
    if minded := " ".join(_minded(run)):
        leaf.line(minded, PLAIN.but(bottom=HAIRLINE), joined=True)
    drawn = len(work.plan.garments) <= MOST_DRAWN
    gap = work.plan.job.settings.gap if work.plan.job.settings.interlock else None
    for strip in run.strips:
        decals = sorted((lying.decal for lying in strip.lying), key=lambda decal: (decal.garment_no, decal.id))
        draw = partial(strip_picture, run, strip, labels, gap=gap)
        size = printed_text(strip.length, work.unit, up=True)
        number = _number(strip.batch, size, TICKS)
        _write_strip(leaf, work, number, decals, labels, wide, high, draw if drawn else None)


def _write_band(leaf: Leaf, title: str, about: str) -> None:
    band = Look(fill=BAND, top=THIN)
    leaf.row(18, Span(34, title, band.but(size=KEY, bold=True)), Span(26, about, band.but(align="right")), joined=True,
             begins=True)  # fmt: skip


def _about(run: Run) -> str:
    """Its files by number, and whether it hangs off the table."""
    files = f"file and guide {run.no:02d}" if run.cut_file else f"guide {run.no:02d} only"
    return f"{'long: catch it behind; ' * (run.length > TABLE)}{files}"


def _minded(run: Run) -> Iterator[str]:
    """What is not as usual with a run."""
    if run.film.cut_with:
        yield f"Cut with: {run.film.cut_with}."
    if run.cut_from != "roll":
        yield f"From the piece {run.cut_from}."
    if not run.mirrored:
        yield "NOT MIRRORED: your cutter must mirror the file."
    together = dict.fromkeys(tuple(run.weeded_with(strip)) for strip in run.strips)
    if short := ["\u00a0+\u00a0".join(map(str, strips)) for strips in together if len(strips) > 1]:
        yield f"Too short to hold alone: weed as one piece the strips {listed(short)}."


def _labels(runs: Iterable[Run]) -> Iterator[tuple[str, str]]:
    """Each decal's label: its garment's number, and a letter where a strip holds several of that garment."""
    for strip in (strip for run in runs for strip in run.strips):
        several = Counter(lying.decal.garment_no for lying in strip.lying)
        used = Counter[int]()
        for lying in sorted(strip.lying, key=lambda lying: lying.decal.id):
            no = lying.decal.garment_no
            yield lying.decal.id, f"{no}{chr(ord('a') + used[no])}" if several[no] > 1 else str(no)
            used[no] += 1


def _number(strip: int, size: str, ticks: str) -> tuple[Text, ...]:
    return Text(str(strip), KEY, bold=True), Text(f"   {size}\n{ticks}")


def _write_strip(
    leaf: Leaf,
    work: Work,
    number: Sequence[Text],
    decals: Sequence[Piece],
    labels: Mapping[str, str],
    wide: StripColumns,
    high: float = 0.0,
    draw: Drawing | None = None,
) -> None:
    """A strip: a line a piece, and beside all of them its number and its picture."""
    count = len(decals)
    lines = [tuple(_piece_cells(work, decal, labels, wide)) for decal in decals]
    needed = [max(LINE_HEIGHT, *map(leaf.needed, cells)) for cells in lines]
    more = max(0.0, LEAST_STRIP - sum(needed), high - sum(needed)) / count
    heights = [height + more for height in needed]
    under = PLAIN.but(bottom=THIN)
    first, last = Span(wide.strip, tuple(number), under, down=count), Span(wide.picture, None, under, down=count)
    size = (wide.picture * COLUMN - 2 * PAD, sum(heights) - 2 * PAD)
    shown = [Shown(partial(draw, *size), (ACROSS - wide.picture) * COLUMN + PAD, PAD)] if draw else []
    for line_no, (cells, height) in enumerate(zip(lines, heights, strict=True)):
        end = line_no == count - 1
        inner = [span._replace(look=span.look.but(bottom=THIN)) for span in cells] if end else cells
        beside = (first, last) if line_no == 0 else (Under(wide.strip), Under(wide.picture))
        leaf.row(height, beside[0], *inner, beside[1], pictures=() if line_no else shown, joined=not end)


def _piece_cells(work: Work, decal: Piece, labels: Mapping[str, str], wide: StripColumns) -> Iterator[Span]:
    garment = work.garments[decal.garment_no]
    yield Span(wide.no, labels.get(decal.id, str(decal.garment_no)), RULE.but(bold=True))
    yield Span(wide.who, (Text(garment.who, bold=not wide.on_it), Text(f"  {garment.blank.size}")), RULE)
    if wide.on_it:
        yield Span(wide.on_it, decal.text or decal.piece, RULE.but(bold=True))
    yield Span(wide.spoiled, f"{BOX} {decal.id}", RULE)


def alike(work: Work, runs: Iterable[Run]) -> Iterator[str]:
    """One line for each text that is on several pieces of a film, so that none is taken for another."""
    same: dict[tuple[str, str], list[str]] = defaultdict(list)
    decals = ((lying.decal, strip.batch) for run in runs for strip in run.strips for lying in strip.lying)
    for decal, strip in sorted(decals, key=lambda decal_strip: (decal_strip[0].garment_no, decal_strip[0].id)):
        if decal.texts and not decal.border:
            group = work.garments[decal.garment_no].group
            group = "" if group.casefold() == decal.text.casefold() else group
            wide = printed_text(decal.width, work.unit)
            says = listed(filter(None, [f"no. {decal.garment_no}", group, f"{wide} wide, strip {strip}"]))
            same[decal.piece, decal.text].append(says)
    for (_, text), them in same.items():
        if 1 < len(them) <= MOST_ALIKE:
            yield f"ALIKE  {text}:  {';  '.join(them)}"
