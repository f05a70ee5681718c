"""Cut and weed: run by run and strip by strip, each strip's picture beside the names of its pieces."""

from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Mapping
from functools import partial

from xlbatch.film.layout import Lying, Run, Strip
from xlbatch.pages.leaf import ACROSS, COLUMN, Leaf, Shown, Span, Under
from xlbatch.pages.page_looks import ACCENT, BAND, FINE, HAIRLINE, HEAD, KEY, PLAIN, STRONG, THIN, TITLE, Look, Part
from xlbatch.pages.work import Work, listed
from xlbatch.paper.style import BOX
from xlbatch.pictures.strip_picture import View, strip_picture, view_of
from xlbatch.units import printed_text

NAME = "Cut and weed"
TELLS = "Cutter: run by run, carrier side down, no more mirroring. Weeder: strip by strip; keep numbers."
TABLE = 1200.0  # mm: a longer run hangs off a usual table; common practice, no source
LINE_HEIGHT, LEAST_STRIP = 16.0, 42.0  # points; a strip's number and boxes need the latter
MOST_ALIKE = 6  # pieces that say the same: more are no pair to take for one another
MOST_DRAWN = 300  # garments: with more, strips are not drawn, so that the workbook stays small
PICTURE = 14  # columns
STRIP, NO, WHO, SIZE, ON_IT, SPOILED = 9, 3, 12, 7, 9, 6
RULE = PLAIN.but(bottom=HAIRLINE)


def write(leaf: Leaf, work: Work, tallest: float) -> None:
    """Every run and its strips, none drawn higher than `tallest` points; after a film's runs, what is alike in it."""
    said = not work.only_names
    heads = (
        (STRIP, "Strip"), (NO, "No."), *(((WHO, "Who"),) if said else ((WHO + ON_IT, "Who, on it"),)), (SIZE, "Size"),
        *(((ON_IT, "On it"),) if said else ()), (SPOILED, "Spoiled"), (PICTURE, "As it lies; thick: leads"),
    )  # fmt: skip
    leaf.row(18, *(Span(width, text, HEAD) for width, text in heads))
    leaf.repeat()
    runs = work.plan.layout.runs
    for run, after in zip(runs, (*runs[1:], None), strict=True):
        _write_run(leaf, work, run, tallest)
        if after is None or after.film != run.film:
            for line in alike(work, (each for each in runs if each.film == run.film)):
                leaf.line(line, STRONG.but(color=ACCENT))


def _write_run(leaf: Leaf, work: Work, run: Run, tallest: float) -> None:
    band = Look(fill=BAND, top=THIN)
    length = printed_text(run.length, work.unit, up=True)
    title = f"RUN {run.no}   {run.film.name}   load {length}"
    leaf.row(20, Span(36, title, band.but(size=KEY, bold=True)), Span(24, _about(run), band.but(align="right")),
             joined=True)  # fmt: skip
    if minded := " ".join(_minded(run)):
        leaf.line(minded, PLAIN.but(bottom=HAIRLINE), joined=True)
    view = view_of(run, PICTURE * COLUMN - 6, tallest) if len(work.plan.garments) <= MOST_DRAWN else None
    labels = dict(_labels(run))
    for strip in run.strips:
        _write_strip(leaf, work, (run, strip), labels, view)


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


def _labels(run: Run) -> Iterator[tuple[str, str]]:
    """Each decal's label: its garment's number, and a letter where a strip holds several of that garment."""
    for strip in run.strips:
        several = Counter(lying.decal.garment_no for lying in strip.lying)
        used = Counter[int]()
        for lying in sorted(strip.lying, key=lambda lying: lying.decal.id):
            no = lying.decal.garment_no
            yield lying.decal.id, f"{no}{chr(ord('a') + used[no])}" if several[no] > 1 else str(no)
            used[no] += 1


def _write_strip(
    leaf: Leaf, work: Work, strip_of_run: tuple[Run, Strip], labels: Mapping[str, str], view: View | None
) -> None:
    run, strip = strip_of_run
    pieces = sorted(strip.lying, key=lambda lying: (lying.decal.garment_no, lying.decal.id))
    high = view.size(run, strip)[1] + 7 if view else 0.0
    least = max(LINE_HEIGHT, LEAST_STRIP / len(pieces), high / len(pieces))
    gap = work.plan.job.settings.gap if work.plan.job.settings.interlock else None
    shown = (
        [Shown(partial(strip_picture, run, strip, labels, view, gap), (ACROSS - PICTURE) * COLUMN + 2)] if view else []
    )
    for at, lying in enumerate(pieces):
        last = at == len(pieces) - 1
        edge = RULE.but(bottom=THIN) if last else RULE
        cell = _strip_cell(run, strip, work)
        first = Span(STRIP, cell, PLAIN.but(bottom=THIN), down=len(pieces)) if at == 0 else Under(STRIP)
        picture = Span(PICTURE, None, PLAIN.but(bottom=THIN), down=len(pieces)) if at == 0 else Under(PICTURE)
        leaf.row(
            least, first, *_piece_cells(work, lying, labels, edge), picture,
            pictures=shown if at == 0 else (), joined=not last,
        )  # fmt: skip


def _strip_cell(run: Run, strip: Strip, work: Work) -> tuple[Part, ...]:
    length = printed_text(strip.length, work.unit, up=True)
    together = listed(map(str, run.weeded_with(strip)))
    short = f"\nweed {together} as one" if together else ""
    return (
        Part(f"{strip.batch}", TITLE, bold=True),
        Part(f"   {length}\n{BOX} cut  {BOX} weeded{short}", FINE),
    )


def _piece_cells(work: Work, lying: Lying, labels: Mapping[str, str], edge: Look) -> Iterator[Span]:
    decal = lying.decal
    garment = work.garments[decal.garment_no]
    said = not work.only_names
    yield Span(NO, labels[decal.id], edge.but(bold=True))
    yield Span(WHO if said else WHO + ON_IT, garment.who, edge)
    yield Span(SIZE, garment.blank.size, edge)
    if said:
        yield Span(ON_IT, decal.text or decal.piece, edge.but(bold=True))
    yield Span(SPOILED, f"{BOX} {decal.id}", edge)


def alike(work: Work, runs: Iterable[Run]) -> Iterator[str]:
    """One line for each text that is on several pieces of a film, so that none is taken for another."""
    same: dict[tuple[str, str], list[str]] = defaultdict(list)
    for run in runs:
        for strip in run.strips:
            for lying in strip.lying:
                decal = lying.decal
                if decal.texts and not decal.border:
                    group = work.garments[decal.garment_no].group
                    wide = printed_text(decal.width, work.unit)
                    says = listed(filter(None, [f"no. {decal.garment_no}", group, f"{wide} wide, strip {strip.batch}"]))
                    same[decal.piece, decal.text].append(says)
    for (_, text), them in same.items():
        if 1 < len(them) <= MOST_ALIKE:
            yield f"ALIKE  {text}:  {';  '.join(them)}"
