"""Cut files as DXF, read back by the library's own reader and audit: closed, measured, mirrored once."""

import io
import os
import subprocess
import sys
from dataclasses import replace
from pathlib import Path
from typing import Any

import ezdxf
import numpy as np
import pytest
from ezdxf import bbox
from numpy.typing import NDArray

from tests.cutfiles.test_run_svg import L_SHAPE, SETTINGS, decal, files_of, run_of
from xlbatch.cutfiles.run_dxf import NEAR, run_dxf
from xlbatch.cutfiles.run_svg import cut_files
from xlbatch.film.layout import Layout, Lying, Run, Strip
from xlbatch.geometry.outline import Outline, pack
from xlbatch.geometry.path import bounds, signed_area


def opened(run: Run) -> Any:
    drawing = ezdxf.read(io.StringIO(run_dxf(run)))  # type: ignore[attr-defined]
    audit = drawing.audit()
    assert not audit.has_errors
    assert not audit.fixes
    return drawing


def corners(line: Any) -> NDArray[np.float64]:
    return np.array(line.get_points("xy"))


@pytest.mark.parametrize("turned", [0, 90, 180, 270])
@pytest.mark.parametrize("mirrored", [True, False])
def test_it_measures_what_the_layout_says(turned: int, mirrored: bool) -> None:
    run = run_of(Lying(decal(1), 22.5, 31.25, turned), mirrored=mirrored)  # type: ignore[arg-type]
    box = bbox.extents(opened(run).modelspace())
    assert (box.extmin.x, box.extmin.y) == pytest.approx((22.5, 31.25), abs=0.01)
    assert (box.size.x, box.size.y) == pytest.approx(run.ink_box, abs=0.01)


def test_millimeters_release_2000_and_only_closed_outlines() -> None:
    drawing = opened(run_of(Lying(decal(1), 0, 10, 0)))
    assert drawing.dxfversion == "AC1015"
    assert (drawing.header["$INSUNITS"], drawing.header["$MEASUREMENT"]) == (4, 1)
    lines = list(drawing.modelspace())
    assert [(line.dxftype(), line.closed) for line in lines] == [("LWPOLYLINE", True)] * 2  # the L and the hole in it
    assert tuple(drawing.header["$EXTMIN"]) == (0, 0, 0)
    assert tuple(drawing.header["$EXTMAX"]) == (100, 140, 0)  # the page: else some readers make a point of it


def test_mirrored_once() -> None:
    """The L's stem lies at the left of its box; on film cut from the back, at the right."""
    for mirrored, stem in ((False, 20.0), (True, 20.0 + 40)):
        outer = max(opened(run_of(Lying(decal(1), 20, 30, 0), mirrored=mirrored)).modelspace(), key=len)
        points = corners(outer)
        assert set(points[points[:, 1] == 90][:, 0]) == {stem, stem + (-15 if mirrored else 15)}


def test_a_layer_a_strip_and_a_group_a_decal() -> None:
    first, second = Strip(1, 10, 60, (Lying(decal(1), 0, 10, 0),)), Strip(7, 76, 54, (Lying(decal(22), 0, 76, 0),))
    drawing = opened(replace(run_of(), strips=(first, second), test_cut=5.0))
    layers = {layer.dxf.name for layer in drawing.layers}
    assert {"Strip 1", "Strip 7", "Test cut"} <= layers
    groups = {name: {line.dxf.layer for line in group} for name, group in drawing.groups}
    assert groups == {"D001": {"Strip 1"}, "D022": {"Strip 7"}}
    square = next(line for line in drawing.modelspace() if line.dxf.layer == "Test cut")
    assert square.closed
    assert corners(square).tolist() == [[0, 2.5], [5, 2.5], [5, 7.5], [0, 7.5]]  # in the middle of the 10 mm of margin


def test_curves_are_followed_closely() -> None:
    """A disk of 25 mm, by four cubic curves: area and box within what the polyline may leave."""
    k, r = 0.5522847498 * 25, 25.0  # the usual handle of a quarter circle, from memory
    disk = pack(
        [
            ("M", (2 * r, r)),
            ("C", (2 * r, r + k, r + k, 2 * r, r, 2 * r)),
            ("C", (r - k, 2 * r, 0, r + k, 0, r)),
            ("C", (0, r - k, r - k, 0, r, 0)),
            ("C", (r + k, 0, 2 * r, r - k, 2 * r, r)),
            ("Z", ()),
        ]
    )
    round_one = replace(decal(1), width=50.0, height=50.0, outline=Outline(disk, 50, 50, 1, 157, 1963))
    (line,) = opened(run_of(Lying(round_one, 10, 20, 0))).modelspace()
    x, y = corners(line).T
    area = abs(np.dot(x, np.roll(y, -1)) - np.dot(y, np.roll(x, -1))) / 2
    assert 0 < abs(signed_area(disk)) - area < 2 * NEAR * np.pi * 2 * r / 2
    box = bounds(disk)
    assert box is not None
    assert np.ptp(x) == pytest.approx(box[2] - box[0], abs=2 * NEAR)


def test_the_library_leaves_nothing_in_the_home_and_needs_none(tmp_path: Path) -> None:
    code = "from xlbatch.cutfiles.dxf_library import new_drawing; print(new_drawing().dxfversion)"
    surroundings = {name: value for name, value in os.environ.items() if not name.startswith("XDG")}
    surroundings |= {"HOME": str(tmp_path), "PYTHONPATH": os.curdir}
    done = subprocess.run([sys.executable, "-c", code], env=surroundings, capture_output=True, text=True, check=True)
    assert done.stdout == "AC1015\n"
    assert list(tmp_path.iterdir()) == []


def test_the_same_run_gives_the_same_bytes() -> None:
    run = run_of(Lying(decal(1), 1 / 3, 10 + 2 / 3, 90))
    assert run_dxf(run) == run_dxf(run)


@pytest.mark.parametrize(
    ("kind", "endings", "named"), [("SVG", ["svg"], "svg"), ("DXF", ["dxf"], "dxf"), ("both", ["svg", "dxf"], "svg")]
)
def test_which_files_are_written(kind: str, endings: list[str], named: str) -> None:
    run = replace(run_of(Lying(decal(1), 0, 10, 0)), cut_file_kind=kind)  # type: ignore[arg-type]
    written = [file.name for file in cut_files(Layout((), (run,), ()), SETTINGS)]
    stem = "01 Black smooth - already mirrored"
    assert written == [*(f"{stem}.{ending}" for ending in endings), "01 Black smooth - guide.svg"]
    assert run.cut_file == f"{stem}.{named}"
    assert "D001" in files_of(run)["guide.svg"]


def test_what_rounding_strays_from_zero_is_written_as_zero() -> None:
    """A contour a billionth of a millimeter to the left is cut alike: its file is the same, without a sign before 0."""
    strayed = pack([(verb, tuple(number - 1e-9 for number in at)) for verb, at in L_SHAPE])
    texts = [
        run_dxf(run_of(Lying(replace(decal(1), outline=Outline(shape, 40, 60, 2, 280, 1500)), 0, 0, 0), mirrored=False))
        for shape in (pack(L_SHAPE), strayed)
    ]
    assert texts[0] == texts[1]
