"""Turns the sheet Drawing parts into its lines."""

from collections.abc import Iterable
from dataclasses import replace
from typing import Literal, cast

from xlbatch.job.job import DecalSpec, RosterRow
from xlbatch.job.part_line import PartLine
from xlbatch.problems import Problem
from xlbatch.tables.line import Line


def read_drawing_parts(
    given: Iterable[Line], designs: Iterable[DecalSpec], roster: Iterable[RosterRow], usual: str
) -> tuple[tuple[PartLine, ...], tuple[Problem, ...]]:
    """The lines of Drawing parts, and what was wrong. A bad line is left out, and would leave its part as it is: a stop
    holds back the garments that wear the drawing, or where it does not say which, any drawing."""
    rows = tuple(given)
    lines = tuple(line for line in map(_line, rows) if line)
    drawn = {(spec.design.casefold(), spec.artwork.strip().casefold()) for spec in designs if spec.artwork}
    worn = [((row.design or usual).casefold(), row.source.row) for row in roster]

    def held(line: Line) -> tuple[int, ...]:
        artwork = line.text("Artwork").strip().casefold()
        wearing = {design for design, name in drawn if not artwork or name == artwork}
        return tuple(row for design, row in worn if design in wearing)

    problems = (replace(problem, rows=held(line)) if problem.level == "stop" else problem
                for line in rows for problem in line.problems)  # fmt: skip
    return lines, tuple(dict.fromkeys(problems))


def _line(line: Line) -> PartLine | None:
    use, width, height = line.yes("Use"), line.length("Width"), line.length("Height")
    fit = cast(Literal["height", "box"], line.choice("Fit") or "height")
    part_line = PartLine(
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
    return None if line.stopped or line.unclear else part_line
