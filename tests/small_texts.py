"""What is read of lists, sign-up forms, drawings and pictures, and how film is laid, kept as text beside the small
jobs: every third list, and drawings whose words, shapes, strokes, copies and dots need most of the reading."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import fields
from pathlib import Path

import pathops
from openpyxl import load_workbook
from PIL import ImageFilter

from tests.book_texts import sheets_text
from tests.film.layout_texts import layouts_text
from tests.film.packing_texts import choices_text, packings_text
from tests.lists.score import HARD_TABLES, TABLES
from tests.lists.table_of_lists import lists_in
from tests.parts.more_drawings import more_drawings
from tests.parts.word_drawings import drawings
from tests.svg.small_drawings import read_text
from tests.tracing.pictures import BADGE, FADES, PLAIN, TWO, drawn, saved
from xlbatch.files.raw import UnreadableFile
from xlbatch.geometry.weld import segments_of
from xlbatch.job.job import RosterRow
from xlbatch.parts.looked import Looked, look_at
from xlbatch.problems import Problem
from xlbatch.roster.read import Reading, read
from xlbatch.sign_up.form import CONSENT, HOUSEHOLD, NAME
from xlbatch.sign_up.together import read_together
from xlbatch.sign_up.write_sign_up import write_sign_ups

LISTS = Path(__file__).parent / "lists"
EVERY = 3  # list
# household, whether children's names may be printed, and who, for whom, size, printed, how many, contact, paid, note
SIGN_UPS: tuple[tuple[str, str, Sequence[Sequence[str | int | None]]], ...] = (
    (
        "Hale",
        "yes",
        (("Ida Hale", "youth", "Youth M", "IDA", 1, None, 15, "no itchy tags"), ("Tom Hale", "adult", "L")),
    ),
    ("Rusk", "no", (("Bea Rusk", "ladies", "Ladies L", None, 2), ("Cy Rusk", "toddler", "3T", "CY"))),
    ("Hale", "yes", (("Ida Hale", "youth", "Youth L", "IDA"), ("Tom Hale", "adult", "lrge"))),
)
_UNSAID: Mapping[str, object] = {"no": 0, "paid": None, "confirmed": False, "unclear": {}, "done_so_far": ()}
STROKES = Path(__file__).parent / "data" / "strokes.svg"


def lists_text(folder: Path) -> Iterator[tuple[str, str]]:
    """The rows read of each list, and what is asked about it."""
    lines: list[str] = []
    for table in (*TABLES, *HARD_TABLES, "ordinary_kinds.txt"):
        for peoples in lists_in(LISTS / table)[::EVERY]:
            lines.append(f"\n== {table} {peoples.kind}: {peoples.shows}")
            lines += _read(read(peoples.write(folder)))
    yield "lists.txt", "\n".join(lines) + "\n"


def sign_ups_text(folder: Path) -> Iterator[tuple[str, str]]:
    """What is read of three filled forms, one of them sent in twice."""
    write_sign_ups(folder / "Harbor picnic.xlsx", None)
    yield "sign up form.txt", "".join(f"{line}\n" for line in sheets_text(folder / "Harbor picnic.xlsx", " | "))
    forms = [_filled(folder, *filled) for filled in SIGN_UPS]
    yield "sign ups.txt", "\n".join(_read(read_together(folder / "Harbor picnic.xlsx", forms))) + "\n"


def _filled(folder: Path, household: str, consent: str, people: Sequence[Sequence[str | int | None]]) -> Path:
    book = load_workbook(folder / "Harbor picnic.xlsx")
    sheet = book[NAME]
    labels = {cell.value: cell.row for (cell,) in sheet.iter_rows(max_col=1) if cell.value}
    sheet.cell(labels[HOUSEHOLD], 3, household)
    sheet.cell(labels[CONSENT], 3, consent)
    for row, person in enumerate(people, labels["Who"] + 1):
        for column, value in enumerate(person, 1):
            sheet.cell(row, column, value)
    path = folder / f"{household}{len(list(folder.iterdir()))}.xlsx"
    book.save(path)
    return path


def _read(reading: Reading | UnreadableFile) -> Iterator[str]:
    if isinstance(reading, UnreadableFile):
        yield reading.sentence
        return
    yield from map(_row, reading.job.roster)
    yield from map(_problem, reading.problems)
    yield from (f"~ {heading.cell} {heading.found}: {heading.meaning}" for heading in reading.job.headings)


def _row(row: RosterRow) -> str:
    values = {field.name: getattr(row, field.name) for field in fields(row) if field.name != "source"}
    texts = [f"{name} {value}" for name, value in values.items() if value and value != _UNSAID.get(name)]
    return " | ".join([*texts, *(f"{heading}: {text}" for heading, text in row.source.extra.items())])


def _problem(problem: Problem) -> str:
    where = f"{problem.where.sheet} {problem.where.cell}"
    return f"! {problem.code} {where} {problem.found} → {problem.suggestion}: {problem.wrong}"


def drawings_text(folder: Path) -> Iterator[tuple[str, str]]:
    """The parts found in drawings whose words were drawn as shapes, and the layers of one with all kinds of strokes."""
    made = {drawing.name: drawing.svg for drawing in (*drawings()[::9], *more_drawings())}
    made["strokes"] = STROKES.read_text(encoding="utf-8")
    for name, svg in made.items():
        (folder / f"{name}.svg").write_text(svg, encoding="utf-8")
    yield "drawings.txt", "".join(f"{line}\n" for name in made for line in _looked(folder / f"{name}.svg"))


def pictures_text(folder: Path) -> Iterator[tuple[str, str]]:
    """The layers traced of pictures: black, in colors, on clear ground, soft, fading."""
    saved(drawn(PLAIN, width=300), folder / "plain.png")
    saved(drawn(BADGE, width=300), folder / "badge.png")
    saved(drawn(TWO, background=None, width=240), folder / "clear.png")
    saved(drawn(TWO, width=320).filter(ImageFilter.GaussianBlur(1.2)), folder / "soft.jpg", quality=80)
    saved(drawn(FADES, width=240), folder / "fading.png")
    yield "pictures.txt", "".join(f"{line}\n" for file in sorted(folder.iterdir()) for line in _looked(file))


def small_drawings_text(folder: Path) -> Iterator[tuple[str, str]]:
    """What is read of small drawings, each of one thing that SVG can say."""
    yield "small drawings.txt", "".join(f"{line}\n" for line in read_text(folder))


def _looked(file: Path) -> Iterator[str]:
    looked = look_at(file)
    yield f"\n== {file.name}"
    if not isinstance(looked, Looked):
        yield from (f"! {fault.reason}: {fault.remedy}" for fault in looked)
        return
    layers = looked.layers
    yield f"{layers.mm:.5g} mm a unit, page {_numbers(layers.page or ())}, widest {layers.widest}"
    yield from (f"! {note.code} {dict(note.facts)}" for note in layers.notes)
    yield from (f"~ {layer.color} use {layer.use} {layer.element} {_path(layer.path)}" for layer in layers.layers)
    for part in looked.parts:
        copies = [(copy.layer, copy.color, copy.kind) for copy in part.copies]
        yield (
            f"{part.label} {part.kind} {part.color} {_numbers(part.box)} use {part.use} shapes {len(part.shapes)}"
            f" holes {len(part.holes)} copies {copies} doubts {', '.join(part.doubts)}"
        )


def _path(path: pathops.Path) -> str:
    verbs = [verb for verb, _ in segments_of(path)]
    return f"{len(verbs)} segments, area {path.area:.5g}, box {_numbers(path.bounds)}" if verbs else "nothing"


def _numbers(values: tuple[float, ...]) -> str:
    return " ".join(f"{value:.5g}" for value in values)


SMALL: Mapping[str, Callable[[Path], Iterator[tuple[str, str]]]] = {
    "lists": lists_text, "sign ups": sign_ups_text, "drawings": drawings_text, "small drawings": small_drawings_text,
    "pictures": pictures_text, "layouts": layouts_text, "packings": packings_text, "film choices": choices_text,
}  # fmt: skip
