"""Every cut file of the examples, SVG and DXF, as programs open it that no one here wrote: Inkscape, LibreOffice Draw.

As wide and long as `Runs` says within 0.1 mm, as many closed outlines as the plan cuts. LibreOffice 7.4 is less near:
it fits a DXF into a page of its own, a hundred mm high or wide, in whole hundredths, and makes an SVG up to 1.1 mm
longer. What each also checks of the DXF by its own library: test_run_dxf.
"""

import os
import re
import shutil
import subprocess
from collections.abc import Iterator, Mapping
from dataclasses import replace
from datetime import datetime
from pathlib import Path
from typing import Any, NamedTuple
from xml.etree import ElementTree

import ezdxf
import pytest
from ezdxf import bbox

from xlbatch.cutfiles.run_svg import cut_files
from xlbatch.each_list import lists_in
from xlbatch.film.layout import Run
from xlbatch.resources import examples
from xlbatch.roster.read import UnreadableFile, read
from xlbatch.run import make_plan

DXF_INPUT = Path("/usr/share/inkscape/extensions/dxf_input.py")
PIXEL = 25.4 / 96  # mm, Inkscape's unit
NEAR = 0.1  # mm
FITTED = 100.0  # mm: the longer side of the page into which LibreOffice fits a DXF
LONGER = 1.5  # mm by which LibreOffice may make an SVG longer
PATIENCE = 240  # s


class Made(NamedTuple):
    """A run, and its cut files by their endings."""

    run: Run
    files: Mapping[str, Path]


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> tuple[Made, ...]:
    return tuple(_made(tmp_path_factory.mktemp("cut files")))


def _made(folder: Path) -> Iterator[Made]:
    for list_no, example in enumerate(lists_in([examples()])):
        reading = read(example)
        assert not isinstance(reading, UnreadableFile)
        settings = replace(reading.job.settings, cut_file_kind="both")
        reading = replace(reading, job=replace(reading.job, settings=settings))
        plan = make_plan(reading, 0, lambda _step: None, datetime(2026, 1, 1))
        texts = {file.name: file.text for file in cut_files(plan.layout, settings)}
        for run in plan.layout.runs:
            files = {}
            for name in run.cut_files:
                path = folder / f"{list_no}-{run.no:02d}{Path(name).suffix}"
                path.write_text(texts[name], encoding="utf-8", newline="\n")
                files[path.suffix] = path
            yield Made(run, files)


def outlines(run: Run) -> int:
    return sum(each.decal.outline.contours for each in run.outlined if each.decal.outline) + bool(run.test_cut)


def measured(path: Path) -> tuple[float, float]:
    """How wide and high Inkscape finds the drawing, in mm."""
    command: list[str | Path] = ["inkscape", "--query-all", path]
    said = subprocess.run(command, capture_output=True, text=True, check=True, timeout=PATIENCE).stdout
    _, _, _, width, height = said.splitlines()[0].split(",")
    return float(width) * PIXEL, float(height) * PIXEL


needs_inkscape = pytest.mark.skipif(not shutil.which("inkscape"), reason="needs Inkscape")
needs_draw = pytest.mark.skipif(not shutil.which("soffice"), reason="needs LibreOffice Draw")


@needs_inkscape
def test_inkscape_opens_the_svg(made: tuple[Made, ...]) -> None:
    for run, files in made:
        assert measured(files[".svg"]) == pytest.approx(run.ink_box, abs=NEAR)


@needs_inkscape
@pytest.mark.skipif(not DXF_INPUT.exists(), reason="needs Inkscape's reader of DXF")
def test_inkscape_opens_the_dxf(made: tuple[Made, ...]) -> None:
    for run, files in made:
        command: list[str | Path] = ["/usr/bin/python3", DXF_INPUT, "--scalemethod=file", files[".dxf"]]
        plain = {
            name: value for name, value in os.environ.items() if not name.startswith("PYTHON")
        }  # it imports siblings
        done = subprocess.run(command, capture_output=True, text=True, timeout=PATIENCE, check=False, env=plain)
        if "ModuleNotFoundError" in done.stderr:
            pytest.skip("needs what Inkscape's reader of DXF needs (python3-lxml, python3-numpy, python3-cssselect)")
        svg = files[".dxf"].with_suffix(".inkscape.svg")
        svg.write_text(done.stdout.replace("stroke:#000000", "stroke:none"), encoding="utf-8")
        assert measured(svg) == pytest.approx(run.ink_box, abs=NEAR)
        paths = [path.get("d") or "" for path in drawn(svg)]
        assert len(paths) == outlines(run)
        assert all(path.strip().lower().endswith("z") for path in paths)


@needs_draw
@pytest.mark.parametrize("kind", [".svg", ".dxf"])
def test_libreoffice_draw_opens_both(made: tuple[Made, ...], tmp_path: Path, kind: str) -> None:
    command = ["soffice", "--headless", f"-env:UserInstallation={(tmp_path / 'profile').as_uri()}"]
    command += ["--convert-to", "svg:draw_svg_Export", "--outdir", str(tmp_path)]
    done = subprocess.run(
        [*command, *(files[kind] for _, files in made)], capture_output=True, timeout=PATIENCE, check=False
    )
    written = sorted(tmp_path.glob("*.svg"))
    if done.returncode or not written:
        pytest.skip("needs libreoffice-draw")
    assert len(written) == len(made)
    for run, files in made:
        subpaths = [
            part for path in drawn(tmp_path / f"{files[kind].stem}.svg") for part in _subpaths(path.get("d") or "")
        ]
        assert len(subpaths) == outlines(run)
        assert run.ink_box is not None
        scale, near = 1.0, LONGER
        if kind == ".dxf":
            scale = max(run.film.usable_width, run.length) / FITTED
            near = NEAR + 0.02 * scale  # each end is rounded to a hundredth
        points = [point for part in subpaths for point in part]
        sides = [(max(values) - min(values)) / 100 * scale for values in zip(*points, strict=True)]
        assert sides == pytest.approx(run.ink_box, abs=near)


def test_the_library_s_own_boxes(made: tuple[Made, ...]) -> None:
    for run, files in made:
        drawing = ezdxf.readfile(files[".dxf"])  # type: ignore[attr-defined]
        audit = drawing.audit()
        assert not audit.has_errors
        assert not audit.fixes
        lines: list[Any] = list(drawing.modelspace())
        assert [line.closed for line in lines] == [True] * outlines(run)
        box = bbox.extents(lines)
        assert (box.size.x, box.size.y) == pytest.approx(run.ink_box, abs=NEAR)


def drawn(svg: Path) -> list[ElementTree.Element]:
    """The paths of a drawing, its definitions apart."""
    root = ElementTree.parse(svg).getroot()
    apart = {path for definitions in root.findall(".//{*}defs") for path in definitions.iter()}
    return [path for path in root.findall(".//{*}path") if path not in apart]


def _subpaths(data: str) -> list[list[tuple[float, float]]]:
    """The points of each closed part of path data that LibreOffice wrote: M, L and C in absolute numbers, Z."""
    parts = []
    for part in data.split("M")[1:]:
        numbers = [float(number) for number in re.findall(r"-?\d+(?:\.\d+)?", part)]
        points = list(zip(numbers[::2], numbers[1::2], strict=True))
        if "Z" in part or points[0] == points[-1]:
            parts.append(points)
    return parts
