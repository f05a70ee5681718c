"""Turns a run into DXF, for programs that drive a cutter and read no SVG.

DXF as of release 2000, in mm. Only outlines to cut: a closed polyline a contour, near enough to its curve, on a layer a
strip, the polylines of a decal in a group of the decal's number. The run's leading end is at the bottom.
"""

from io import StringIO
from typing import TYPE_CHECKING

import numpy as np

from xlbatch.cutfiles.dxf_library import new_drawing
from xlbatch.film.cutting import cutting
from xlbatch.film.layout import Run
from xlbatch.geometry.flat import edges_of
from xlbatch.geometry.outline import Segments, pack
from xlbatch.geometry.path import transform
from xlbatch.trade.tables import practice

if TYPE_CHECKING:
    from ezdxf.document import Drawing

NEAR = practice("how far the straight edges of a cut file may leave a curve")
WHOLE = 1e9  # mm: straight edges are not divided
TEST_CUT = "Test cut"


def run_dxf(run: Run) -> str:
    """The text of the file."""
    drawing = new_drawing()
    if run.test_cut:
        drawing.layers.add(TEST_CUT)
        side, start = run.test_cut, run.test_along
        square = np.array(((0, start), (side, start), (side, start + side), (0, start + side)))
        drawing.modelspace().add_lwpolyline(square, close=True, dxfattribs={"layer": TEST_CUT})
    layers = {lying.decal.id: f"Strip {strip.batch}" for strip in run.strips for lying in strip.lying}
    for layer in dict.fromkeys(layers.values()):
        drawing.layers.add(layer)
    for piece in cutting(run).pieces:
        name = piece.lying.decal.id
        matrix = piece.lying.matrix(mirrored=run.mirrored)
        _add(drawing, pack(transform(piece.segments, matrix)), name, layers[name])
    corners = (0, 0, 0), (run.film.usable_width, run.length, 0)
    drawing.modelspace().reset_extents(*corners)  # some readers fit the drawing into the page
    drawing.header["$EXTMIN"], drawing.header["$EXTMAX"] = corners
    text = StringIO()
    drawing.write(text)
    return text.getvalue()


def _add(drawing: "Drawing", segments: Segments, name: str, layer: str) -> None:
    """The contours of a decal as closed polylines in a group, rounded to 0.001 mm."""
    edges = edges_of(segments, WHOLE, NEAR)
    points = np.column_stack((edges.start.real, edges.start.imag)).round(3) + 0.0  # + 0.0 makes -0 into 0
    attributes = {"layer": layer}
    sheet, group = drawing.modelspace(), drawing.groups.new(name)
    contours = np.split(points, edges.first[1:])
    group.extend([sheet.add_lwpolyline(contour, close=True, dxfattribs=attributes) for contour in contours])
