"""What is read of lists, drawings and pictures, kept as text beside the small jobs: every eighth list, and drawings
whose words, shapes, strokes, copies and dots need most of the reading."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import fields
from pathlib import Path

import pathops
from PIL import ImageFilter

from tests.lists.score import HARD_TABLES, TABLES
from tests.lists.table_of_lists import lists_in
from tests.parts.more_drawings import more_drawings
from tests.parts.word_drawings import drawings
from tests.tracing.pictures import BADGE, FADES, PLAIN, TWO, drawn, saved
from xlbatch.files.raw import UnreadableFile
from xlbatch.geometry.weld import segments_of
from xlbatch.job.job import RosterRow
from xlbatch.parts.looked import Looked, look_at
from xlbatch.problems import Problem
from xlbatch.roster.read import read

LISTS = Path(__file__).parent / "lists"
EVERY = 8  # list
_UNSAID: Mapping[str, object] = {"no": 0, "paid": None, "confirmed": False, "unclear": {}, "done_so_far": ()}
STROKES = Path(__file__).parent / "data" / "strokes.svg"


def lists_text(folder: Path) -> Iterator[tuple[str, str]]:
    """The rows read of each list, and what is asked about it."""
    lines: list[str] = []
    for table in (*TABLES, *HARD_TABLES, "ordinary_kinds.txt"):
        for peoples in lists_in(LISTS / table)[::EVERY]:
            lines.append(f"\n== {table} {peoples.kind}: {peoples.shows}")
            reading = read(peoples.write(folder))
            if isinstance(reading, UnreadableFile):
                lines.append(reading.sentence)
                continue
            lines += map(_row, reading.job.roster)
            lines += map(_problem, reading.problems)
            lines += [f"~ {heading.cell} {heading.found}: {heading.meaning}" for heading in reading.job.headings]
    yield "lists.txt", "\n".join(lines) + "\n"


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
    "lists": lists_text, "drawings": drawings_text, "pictures": pictures_text,
}  # fmt: skip
