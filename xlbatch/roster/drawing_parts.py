"""Turns the sheet Drawing parts into its lines."""

from collections.abc import Iterable
from typing import Literal, cast

from xlbatch.job.part_line import PartLine
from xlbatch.problems import Problem
from xlbatch.tables.line import Line


def read_drawing_parts(given: Iterable[Line]) -> tuple[tuple[PartLine, ...], tuple[Problem, ...]]:
    """The lines of Drawing parts, and what was wrong. A bad line is left out."""
    rows = tuple(given)
    lines = tuple(line for line in map(_line, rows) if line)
    return lines, tuple(dict.fromkeys(problem for line in rows for problem in line.problems))


def _line(line: Line) -> PartLine | None:
    use, width, height = line.yes("Use"), line.length("Width"), line.length("Height")
    fit = cast(Literal["height", "box"], line.choice("Fit") or "height")
    found = PartLine(
        source=line.source,
        artwork=line.needed("Artwork"),
        part=line.needed("Part").strip().casefold(),
        color=line.text("Color").casefold(),
        text=line.text("Text"),
        width=width,
        height=height,
        place=line.text("Place"),
        use=True if use is None else use,
        replace_by=line.text("Replace by"),
        font=line.text("Font"),
        fit=fit,
        join=line.any_text("Join").strip().casefold(),
        film=line.text("Film"),
    )
    return None if line.stopped or line.unclear else found
