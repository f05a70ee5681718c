"""A drawing for one garment: what becomes of its parts, and the ink of its colors."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from xlbatch.check.garment import Garment
from xlbatch.check.names import same
from xlbatch.check.placeholders import looks_like_sample
from xlbatch.check.text import LEFT_EMPTY, braces_problems, filled, has_braces
from xlbatch.files.beside import folder_of
from xlbatch.job.job import DecalSpec, Job
from xlbatch.job.part_line import PartLine
from xlbatch.parts.edit import Edit, Remade, Rules, film_color
from xlbatch.parts.looked import Looked
from xlbatch.parts.part import Part
from xlbatch.parts.part_lines import joined
from xlbatch.parts.remake import remade
from xlbatch.problems import Problem, problem
from xlbatch.problems.unreadable_drawings import Fault
from xlbatch.svg.artwork import Drawing, drawing_of, faulted
from xlbatch.svg.live_text import braces_in
from xlbatch.units import length_text


@dataclass(frozen=True, eq=False)
class DrawingSheet:
    """A drawing as its lines on Drawing parts have it: its parts, joined as they say, and the line of each."""

    looked: Looked
    parts: tuple[Part, ...]
    lines: Mapping[str, PartLine]

    @property
    def colors(self) -> tuple[str, ...]:
        """Its colors, the lowest first, then the parts with a film of their own."""
        own = tuple(film_color(label) for label, line in self.lines.items() if line.film and line.use)
        return (*self.looked.colors(self.used), *own)

    @property
    def used(self) -> frozenset[str]:
        """The numbers of the parts whose colors count."""
        return self.looked.used({label: line.use for label, line in self.lines.items()})


@dataclass(frozen=True)
class Wanted:
    """A drawing as it is wanted once: what becomes of its parts, laid how, and which of its colors are cut."""

    file: Path
    edits: tuple[Edit, ...]
    rules: Rules
    apart: bool
    cut: frozenset[str]


def sheet_of(job: Job, name: str, looked: Looked) -> DrawingSheet:
    """A drawing's parts and lines."""
    lines = {line.part: line for line in job.drawing_parts if same(line.artwork, name)}
    return DrawingSheet(looked, joined(looked.parts, lines), lines)


def rules_of(job: Job, looked: Looked, width: float) -> Rules:
    """How words are fitted into a drawing that is `width` mm wide."""
    unit, settings = width / max(looked.box[2] - looked.box[0], 1e-9), job.settings
    return Rules(
        gap=round(settings.gap_in_drawing / unit, 3),
        least=round(settings.least_letter_height / unit, 3),
        narrowest=settings.narrowest_letters / 100,
        widest=settings.widest_letters / 100,
        font=settings.font,
        folder=folder_of(job.path),
    )


def edits_of(
    job: Job, garment: Garment, spec: DecalSpec, sheet: DrawingSheet
) -> tuple[tuple[Edit, ...], tuple[Problem, ...]]:
    """What becomes of the drawing's parts on a garment, and what is wrong with the words asked for."""
    edits: list[Edit] = []
    problems: list[Problem] = []
    for part in sheet.parts:
        line = sheet.lines.get(part.label)
        use = line.use if line else part.use
        text: str | None = None
        words: tuple[tuple[str, str], ...] = ()
        if use and line and line.replace_by:
            where = line.source.at("Replace by")
            problems += braces_problems(line.replace_by, garment.row, job.settings, where)
            text = filled(line.replace_by, garment.row, job.settings).text
            text = "" if text == LEFT_EMPTY else text
        elif use and part.text:
            words, text, faults = _own_words(job, garment, spec, part.text.words)
            problems += faults
        if not use or not part.use or text is not None or words or (line and (line.film or line.font)):
            font, fit, apart = (line.font, line.fit, bool(line.film)) if line else ("", "height", False)
            edits.append(Edit(part.label, use, text, words, font, fit, apart))
    return tuple(edits), tuple(problems)


def _own_words(
    job: Job, garment: Garment, spec: DecalSpec, text: str
) -> tuple[tuple[tuple[str, str], ...], str | None, list[Problem]]:
    """What stands for the braces of a live text, or "" where its room is left empty."""
    rows = (garment.row.source.row,)
    if not has_braces(text):
        sample = looks_like_sample(text)
        faults = [problem("sample-text", spec.source.at("Artwork"), text, rows=rows)] if sample else []
        return (), None, faults
    faults = list(braces_problems(text, garment.row, job.settings, spec.source.at("Artwork")))
    values = {name: filled(f"{{{name}}}", garment.row, job.settings) for name in braces_in(text)}
    if any(not value.text and not value.blank and not value.unknown for value in values.values()):
        return (), "", faults
    return tuple((name, value.text) for name, value in values.items()), None, faults


def made_drawing(
    looked: Looked, parts: tuple[Part, ...], wanted: Wanted
) -> tuple[Drawing | tuple[Fault, ...], Remade | None]:
    """The drawing after its edits, and what came of them."""
    made = faulted(lambda: remade(looked.layers, parts, wanted.edits, wanted.rules))
    if not isinstance(made, Remade):
        return made, None
    return drawing_of(made.layers, wanted.apart, made.base, wanted.cut), made


def note_problems(job: Job, garment: Garment, spec: DecalSpec, sheet: DrawingSheet, made: Remade) -> Iterator[Problem]:
    """What came of the edits, as problems at the lines they were asked for in."""
    least = length_text(job.settings.least_letter_height, job.settings.length_unit)
    for note in made.notes:
        line = sheet.lines.get(note.part)
        where = (
            line.source.at("Replace by") if line and line.replace_by and line.source.row else spec.source.at("Artwork")
        )
        capitals = line.replace_by.upper() if line else ""
        facts: dict[str, object] = {"part": note.part, "least": least, "capitals": capitals} | dict(note.facts)
        text, rows = note.facts.get("text", ""), (garment.row.source.row,)
        yield problem(note.code, where, text, suggestion="", rows=rows, **facts)
