"""Cut and weed: run by run and strip by strip, each strip's picture beside the names of its pieces."""

from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Mapping

from xlbatch.film.layout import Lying, Run, Strip
from xlbatch.pages.leaf import ACROSS, COLUMN, Leaf, Shown, Span, Under
from xlbatch.pages.look import ACCENT, BAND, FINE, HAIRLINE, HEAD, KEY, PLAIN, STRONG, THIN, TITLE, Look, Part
from xlbatch.pages.work import Work, listed
from xlbatch.paper.style import BOX
from xlbatch.pictures.strip_picture import strip_picture
from xlbatch.units import printed_text

NAME = "Cut and weed"
TELLS = "Cutter: one run at a time. Weeder: one strip at a time; each strip keeps its number."
TABLE = 1200.0  # mm: a longer run hangs off a usual table; common practice, no source
LINE_HEIGHT, LEAST_STRIP = 18.0, 62.0  # points; a strip's number and boxes need the latter
MOST_DRAWN = 300  # garments: with more, strips are not drawn, so that the workbook stays small
PICTURE = 14  # columns
WIDTHS = (8, 3, 12, 7, 9, 6, PICTURE)
HEADS = ("Strip", "No.", "Who", "Size", "On it", "Spoiled", "As it lies, to scale")
RULE = PLAIN.but(bottom=HAIRLINE)


def write(leaf: Leaf, work: Work) -> None:
    """Every run: what to load and which file to cut, then its strips; after a film's runs, what is alike in it."""
    heads = zip(WIDTHS, HEADS, strict=True)
    leaf.row(18, *(Span(width, text, HEAD) for width, text in heads))
    leaf.repeat()
    runs = work.plan.layout.runs
    for run, after in zip(runs, (*runs[1:], None), strict=True):
        _write_run(leaf, work, run)
        if after is None or after.film != run.film:
            for line in alike(work, (each for each in runs if each.film == run.film)):
                leaf.line(line, STRONG.but(color=ACCENT))


def _write_run(leaf: Leaf, work: Work, run: Run) -> None:
    band = Look(fill=BAND, top=THIN)
    length = printed_text(run.length, work.unit, up=True)
    leaf.row(
        22,
        Span(37, f"RUN {run.no}   {run.film.name}   load {length}", band.but(size=KEY, bold=True)),
        Span(22, _files(run), band.but(align="right")),
        joined=True,
    )
    leaf.line(" ".join(_minded(run)), PLAIN.but(bottom=THIN), joined=True)
    scale, shapes = _scale(run), len(work.plan.garments) <= MOST_DRAWN
    labels = dict(_labels(run))
    for strip in run.strips:
        _write_strip(leaf, work, (run, strip), labels, scale if shapes else None)


def _files(run: Run) -> str:
    return f"cut file {run.no:02d}, guide {run.no:02d}" if run.cut_file else f"guide {run.no:02d}: sizes only"


def _minded(run: Run) -> Iterator[str]:
    """What to mind before a run is cut."""
    yield f"From {run.cut_from if run.cut_from != 'roll' else 'the roll'}, carrier side down."
    yield "The file is already mirrored: do not mirror again." if run.mirrored else "Your cutter must mirror the file."
    if run.length > TABLE:
        yield "Longer than most tables: put something behind the cutter to catch it."


def _scale(run: Run) -> float:
    """Points a mm: one for all strips of a run, so that the longest fits its column and few rows are stretched."""
    lines = sum(len(strip.lying) for strip in run.strips) / len(run.strips)
    high = max(LEAST_STRIP, lines * LINE_HEIGHT) - 5
    return min((PICTURE * COLUMN - 5) / max(strip.length for strip in run.strips), high / run.film.usable_width)


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
    leaf: Leaf, work: Work, strip_of_run: tuple[Run, Strip], labels: Mapping[str, str], scale: float | None
) -> None:
    run, strip = strip_of_run
    pieces = sorted(strip.lying, key=lambda lying: (lying.decal.garment_no, lying.decal.id))
    high = run.film.usable_width * scale + 5 if scale else 0.0
    least = max(LINE_HEIGHT, LEAST_STRIP / len(pieces), high / len(pieces))
    gap = work.plan.job.settings.gap if work.plan.job.settings.interlock else None
    for at, lying in enumerate(pieces):
        last = at == len(pieces) - 1
        edge = RULE.but(bottom=THIN) if last else RULE
        first = (
            Span(WIDTHS[0], _strip_cell(strip, work), PLAIN.but(bottom=THIN), down=len(pieces))
            if at == 0
            else Under(WIDTHS[0])
        )
        picture = Span(PICTURE, None, PLAIN.but(bottom=THIN), down=len(pieces)) if at == 0 else Under(PICTURE)
        shown = [Shown(strip_picture(run, strip, labels, scale, gap), (ACROSS - PICTURE) * COLUMN + 2)] if scale else []
        leaf.row(
            least, first, *_piece_cells(work, lying, labels, edge), picture,
            pictures=shown if at == 0 else (), joined=not last,
        )  # fmt: skip


def _strip_cell(strip: Strip, work: Work) -> tuple[Part, ...]:
    length = printed_text(strip.length, work.unit, up=True)
    return (
        Part(f"{strip.batch}", TITLE, bold=True),
        Part(f"   {length}\n{BOX} cut\n{BOX} weeded", FINE),
    )


def _piece_cells(work: Work, lying: Lying, labels: Mapping[str, str], edge: Look) -> Iterator[Span]:
    decal = lying.decal
    garment = work.garments[decal.garment_no]
    yield Span(WIDTHS[1], labels[decal.id], edge.but(bold=True))
    yield Span(WIDTHS[2], garment.who, edge)
    yield Span(WIDTHS[3], garment.blank.size, edge)
    yield Span(WIDTHS[4], decal.text or decal.piece, edge.but(bold=True))
    yield Span(WIDTHS[5], f"{BOX} {decal.id}", edge)


def alike(work: Work, runs: Iterable[Run]) -> Iterator[str]:
    """One line for each text that is on several pieces of a film, so that none is taken for another."""
    same: dict[tuple[str, str], list[str]] = defaultdict(list)
    for run in runs:
        for strip in run.strips:
            for lying in strip.lying:
                decal = lying.decal
                if decal.text:
                    group = work.garments[decal.garment_no].group
                    wide = printed_text(decal.width, work.unit)
                    says = listed(filter(None, [f"no. {decal.garment_no}", group, f"{wide} wide, strip {strip.batch}"]))
                    same[decal.piece, decal.text].append(says)
    for (_, text), them in same.items():
        if len(them) > 1:
            yield f"ALIKE  {text}:  {';  '.join(them)}"
