"""Turns the Designs sheet into decals; with no usable sheet, or none for the usual design, into the built-in design."""

from collections.abc import Iterable
from dataclasses import replace
from typing import cast

from xlbatch.job.job import DecalSpec, RosterRow, What
from xlbatch.problems import Problem
from xlbatch.tables.built_in import built_in
from xlbatch.tables.line import Line

USUAL_POSITION = "full front"
USUAL_SIZE = "M"


def read_designs(
    given: Iterable[Line], roster: Iterable[RosterRow], usual: str
) -> tuple[tuple[DecalSpec, ...], tuple[Problem, ...]]:
    """The decals of all designs, and what was wrong.

    A design with a bad row would be printed in part, so that row's problems hold back the garments of that design.
    The built-in design is added where the person's sheet has no rows for the `usual` one."""
    rows = tuple(given)
    own = tuple(spec for spec in map(_spec, rows) if spec)
    _note_twice(rows)
    listed = {line.text("Design").casefold() for line in rows}
    added = () if usual.casefold() in listed else tuple(s for s in map(_spec, built_in("designs", "Designs")) if s)
    wearers: dict[str, dict[int, None]] = {}
    for row in roster:
        wearers.setdefault((row.design or usual).casefold(), {})[row.source.row] = None
    problems = [problem for line in rows for problem in _problems(line, wearers)]
    return own + added, tuple(dict.fromkeys(problems))


def _note_twice(rows: Iterable[Line]) -> None:
    """A decal's name is how the press log tells it from the design's others."""
    seen: set[tuple[str, str]] = set()
    for line in rows:
        design, decal = line.text("Design"), line.text("Decal")
        key = (design.casefold(), decal.casefold())
        if decal and key in seen:
            line.found("decal-twice", "Decal", decal, design=design)
        seen.add(key)


def _problems(line: Line, wearers: dict[str, dict[int, None]]) -> list[Problem]:
    """What is wrong with a row, at the garments that wear its design: at all of them where it does not say which."""
    design = line.text("Design").casefold()
    held = tuple(wearers.get(design, ()) if design else dict.fromkeys(row for rows in wearers.values() for row in rows))
    return [replace(problem, rows=held) if problem.level == "stop" else problem for problem in line.problems]


def _spec(line: Line) -> DecalSpec | None:
    """The decal of a row, or None where something on it cannot be read or lacks."""
    design, decal = line.needed("Design"), line.needed("Decal")
    layer, scale, arch = line.count("Layer"), line.yes("Scale with size"), line.number("Arch")
    spec = DecalSpec(
        source=line.source,
        design=design,
        decal=decal,
        what=cast(What, _what(line)),
        artwork=line.text("Artwork"),
        artwork_color=line.text("Artwork color"),
        text=line.text("Text"),
        font=line.text("Font"),
        film=line.text("Film"),
        layer=1 if layer is None else layer,
        position=line.text("Position") or USUAL_POSITION,
        width=line.length("Width"),
        height=line.length("Height"),
        widest=line.length("Widest"),
        sized_for=line.size("Sized for") or USUAL_SIZE,
        scale=True if scale is None else scale,
        arch=arch or 0.0,
        outline_film=line.text("Outline film"),
        outline_width=line.length("Outline width"),
    )
    return None if line.stopped else spec


def _what(line: Line) -> str:
    """What the decal shows; where blank, told by the Artwork or Text given."""
    what = line.choice("What")
    if not what and not line.given("What"):
        what = "artwork" if line.given("Artwork") else "text" if line.given("Text") else ""
        if not what:
            line.found("value-needed", "What", heading="What")
    return what
