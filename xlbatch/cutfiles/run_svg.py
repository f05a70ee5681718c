"""Turns runs into SVG: one file to cut and one guide a run.

A page is as wide as the film's usable width and as long as the run, in mm. SVG counts downward, so the run's leading
end is at the bottom. Positions are the layout's, which is what lies on the cutter: only outlines are mirrored here.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from jinja2 import Environment, FileSystemLoader, StrictUndefined

from xlbatch.film.cutting import cutting
from xlbatch.film.layout import Layout, Lying, Run
from xlbatch.film.profile import cut_out
from xlbatch.geometry.path import path_data
from xlbatch.how_far import alive
from xlbatch.job.job import Settings
from xlbatch.resources import templates
from xlbatch.trade.tables import practice
from xlbatch.units import mm_per

NOT_XML = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")  # XML 1.0, production 2
LETTERS = practice("the highest lettering on a guide")


@dataclass(frozen=True)
class CutFile:
    """A file to write beside the plan."""

    name: str
    text: str


def cut_files(layout: Layout, settings: Settings) -> tuple[CutFile, ...]:
    """The file to cut of every run that has outlines, and every run's guide."""
    drawing = Environment(
        loader=FileSystemLoader(templates()), autoescape=True, undefined=StrictUndefined, keep_trailing_newline=True
    )
    cut, guide = drawing.get_template("cut.svg.j2"), drawing.get_template("guide.svg.j2")
    files: list[CutFile] = []
    for run in layout.runs:
        alive()
        page = _page(run, settings)
        for name in run.cut_files:
            if name.endswith(".dxf"):
                from xlbatch.cutfiles.run_dxf import run_dxf  # its library takes half a second to load

                files.append(CutFile(name, run_dxf(run)))
            else:
                files.append(CutFile(name, cut.render(page=page, test=_test_cut(run), decals=list(_outlines(run)))))
        guided = guide.render(
            page=page, decals=list(_boxes(run, settings)), strips=list(_strips(run)), inch=mm_per("in")
        )
        files.append(CutFile(run.guide_file, guided))
    return tuple(files)


def _number(mm: float) -> str:
    return f"{round(mm, 3) + 0.0:.10g}"


def _page(run: Run, settings: Settings) -> dict[str, str]:
    title = _plain(f"{settings.job_name}, run {run.no}, {run.film.name}")
    return {"width": _number(run.film.usable_width), "height": _number(run.length), "title": title}


def _plain(text: str) -> str:
    """A text without what XML can't carry, on one line."""
    return " ".join(NOT_XML.sub("", text).split())


def _title(run: Run, lying: Lying) -> str:
    return _plain(f"{lying.decal.id} {lying.decal.text or lying.decal.spec.decal}, {run.film.name}")


def _outlines(run: Run) -> Iterator[dict[str, str]]:
    for piece in cutting(run).pieces:
        path = path_data(piece.segments, run.matrix(piece.lying))
        yield {"id": piece.lying.decal.id, "title": _title(run, piece.lying), "path": path}


def _test_cut(run: Run) -> dict[str, str]:
    """The square to try the blade on; nothing where none is asked for."""
    if not run.test_cut:
        return {}
    return {"side": _number(run.test_cut), "end": _number(run.length - run.test_along)}


def _boxes(run: Run, settings: Settings) -> Iterator[dict[str, str | bool]]:
    """The decals as boxes, or interlocked as the pieces to cut out of the strip: dashed where an outline is cut, whole
    where only the size is known."""
    for lying in run.lying:
        around = (
            cut_out(lying, settings.gap, mirrored=run.mirrored) if settings.interlock and lying.decal.outline else ()
        )
        top = run.length - lying.along - lying.length
        letters = min(LETTERS, lying.length / 2, lying.width / max(len(lying.decal.id), 1))
        yield {
            "id": lying.decal.id,
            "title": _title(run, lying),
            "x": _number(lying.across),
            "y": _number(top),
            "width": _number(lying.width),
            "height": _number(lying.length),
            "middle_x": _number(lying.across + lying.width / 2),
            "middle_y": _number(top + (lying.length + letters) / 2),
            "letters": _number(letters),
            "cut": lying.decal.outline is not None,
            "piece": " ".join(f"{_number(x)},{_number(run.length - y)}" for x, y in around),
        }


def _strips(run: Run) -> Iterator[dict[str, str]]:
    """Each strip's number at its beginning, and the straight cut, in the middle of the gap, after it."""
    ends = [(strip.start + strip.length + after.start) / 2 for strip, after in pairwise(run.strips)]
    for strip, end in zip(run.strips, [*ends, None], strict=True):
        yield {
            "no": str(strip.batch),
            "y": _number(run.length - strip.start - 1),
            "cut": "" if end is None else _number(run.length - end),
        }
