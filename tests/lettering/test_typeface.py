"""Setting a line: extents, kerning, welding. Published extents, and fontTools with shapely as independent judges."""

import importlib.util
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
import pytest
import shapely
import uharfbuzz as hb
from fontTools.misc.transform import Offset
from fontTools.pens.basePen import BasePen
from fontTools.pens.boundsPen import BoundsPen
from fontTools.pens.transformPen import TransformPen
from fontTools.ttLib import TTFont
from numpy.typing import NDArray

from xlbatch.geometry.ink import outline
from xlbatch.geometry.path import contours
from xlbatch.lettering.fonts import find_font, font_names
from xlbatch.lettering.typeface import Typeface, lacking, open_typeface, set_line
from xlbatch.trade.tables import table

NAMES = (
    "Ana Ruiz", "Wolfgang Åström", "AVATAR To fi", "Jean-Luc O’Neill", "Zoë Łukasz", "MÖRK & Co. 42", "Ty 7", "iíjÿ",
    "Ångström", "García-Peña", "0123456789", "Ðóra Þór", "Çelik Ğ", "ffi ffl", "S", "“Bo”", "Q.", "Mc’Vay",
)  # fmt: skip


def package_font(package: str, file: str) -> Path:
    spec = importlib.util.find_spec(package)
    assert spec is not None
    assert spec.submodule_search_locations
    return Path(spec.submodule_search_locations[0]) / "files" / file


@cache
def reference(name: str) -> tuple[TTFont, hb.Font, Any]:
    """The font opened anew by fontTools and HarfBuzz, and its glyphs."""
    line = next(line for line in table("fonts") if line["Font"] == name)
    path = package_font(line["Package"], line["File"])
    font, shaper = TTFont(path), hb.Font(hb.Face(hb.Blob.from_file_path(path)))
    location = {"wght": float(line["Weight"])} if line["Weight"] else None
    if location:
        shaper.set_variations(location)
    return font, shaper, font.getGlyphSet(location=location)


def placed(name: str, text: str) -> Iterator[tuple[Any, int, int]]:
    """The fontTools glyphs of a text and where HarfBuzz puts them."""
    font, shaper, glyphs = reference(name)
    buffer = hb.Buffer()
    buffer.add_str(text)
    buffer.guess_segment_properties()
    hb.shape(shaper, buffer)
    x = 0
    for info, at in zip(buffer.glyph_infos, buffer.glyph_positions, strict=True):
        yield glyphs[font.getGlyphName(info.codepoint)], x + at.x_offset, at.y_offset
        x += at.x_advance


class Flattened(BasePen):  # type: ignore[misc]
    """Contours as polygons, 24 points a curve."""

    def __init__(self, glyphs: Any) -> None:
        super().__init__(glyphs)
        self.rings: list[list[tuple[float, float]]] = []

    def _moveTo(self, at: tuple[float, float]) -> None:  # noqa: N802 - fontTools' name
        self.rings.append([at])

    def _lineTo(self, at: tuple[float, float]) -> None:  # noqa: N802 - fontTools' name
        self.rings[-1].append(at)

    def _curveToOne(self, b: Any, c: Any, d: Any) -> None:  # noqa: N802 - fontTools' name
        points = np.array((self._getCurrentPoint(), b, c, d))
        t = np.linspace(0, 1, 25)[1:, None]
        blend = ((1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3)
        self.rings[-1] += map(tuple, sum(part * point for part, point in zip(blend, points, strict=True)))


def winding(ring: NDArray[np.float64], x: float, y: float) -> int:
    """How often a ring goes round a point, counterclockwise."""
    here, there = ring - (x, y), np.roll(ring, -1, axis=0) - (x, y)
    side = here[:, 0] * there[:, 1] - there[:, 0] * here[:, 1]
    up, down = (here[:, 1] <= 0) & (there[:, 1] > 0), (here[:, 1] > 0) & (there[:, 1] <= 0)
    return int((up & (side > 0)).sum() - (down & (side < 0)).sum())


def filled_area(rings: list[NDArray[np.float64]]) -> float:
    """The area with nonzero winding: shapely cuts the plane into faces, each is counted or not."""
    lines = shapely.union_all([shapely.LinearRing(ring) for ring in rings if len(ring) > 2])
    faces = shapely.polygonize([lines]).geoms
    inside = ((face, face.representative_point()) for face in faces)
    return sum(face.area for face, at in inside if sum(winding(ring, at.x, at.y) for ring in rings))


def face(name: str) -> Typeface:
    found = find_font(name, Path())
    assert found is not None
    return found


# Published extents, font units: the fonts' own tables, read by HarfBuzz (advance) and fontTools (ink, area); PyPI
# packages font-lato 0.1.0 (Lato 1.104) and font-fjallaone 0.1.7 (Fjalla One 1.001).


def published(package: str, file: str) -> Typeface:
    found = open_typeface(file, package_font(package, file))
    assert found is not None
    return found


def test_lato_bold_h() -> None:
    lato = published("font_lato", "Lato-Bold.ttf")
    (piece,) = set_line(lato, "H").pieces
    assert list(piece.ink.box) == [146, 0, 1366, 1446]
    assert piece.ink.area == 913_908
    assert lato.cap_height == 1446


def test_lato_bold_kerning() -> None:
    lato = published("font_lato", "Lato-Bold.ttf")
    assert set_line(lato, "AVAH").pieces[-1].x == 3922  # A and H are not kerned
    assert sum(lato.font.get_glyph_h_advance(lato.font.get_nominal_glyph(ord(letter))) for letter in "AVA") == 4260


def test_fjalla_one() -> None:
    fjalla = published("font_fjallaone", "FjallaOne-Regular.ttf")
    assert set_line(fjalla, "AVAH").pieces[-1].x == 2889
    assert set_line(fjalla, "H").pieces[0].ink.area == 947_372


@pytest.mark.parametrize("name", font_names())
@pytest.mark.parametrize("text", NAMES)
def test_the_ink_box_is_that_of_fonttools_glyphs_where_harfbuzz_puts_them(name: str, text: str) -> None:
    pen = BoundsPen(reference(name)[2])
    for glyph, x, y in placed(name, text):
        glyph.draw(TransformPen(pen, Offset(x, y)))
    line = set_line(face(name), text)
    assert not line.lacks
    mm = 50.8 / face(name).cap_height
    assert np.array(line.box) * mm == pytest.approx(np.array(pen.bounds) * mm, abs=0.05)


@pytest.mark.parametrize("name", font_names())
@pytest.mark.parametrize("text", NAMES)
def test_the_welded_area_is_that_of_shapely(name: str, text: str) -> None:
    pen = Flattened(reference(name)[2])
    for glyph, x, y in placed(name, text):
        glyph.draw(TransformPen(pen, Offset(x, y)))
    expected = filled_area([np.array(ring) for ring in pen.rings])
    assert outline(set_line(face(name), text).pieces).area == pytest.approx(expected, rel=0.001)


@pytest.mark.parametrize("name", font_names())
def test_every_contour_is_closed_and_none_overlap(name: str) -> None:
    for text in NAMES:
        drawn = outline(set_line(face(name), text).pieces, 0.05, 0.05)
        parts = contours(drawn.segments)
        assert len(parts) == drawn.contours
        assert all([verb for verb, _ in part].count("M") == 1 and part[-1] == ("Z", ()) for part in parts)


@pytest.mark.parametrize(("name", "text"), [("Arimo Bold", "ww"), ("Anton", "Kx")])
def test_letters_that_touch_become_one_outline(name: str, text: str) -> None:
    alone = [outline(set_line(face(name), letter).pieces) for letter in text]
    together = outline(set_line(face(name), text).pieces)
    assert [each.contours for each in alone] == [1, 1]
    assert together.contours == 1
    assert together.area < sum(each.area for each in alone)


def test_letters_that_only_overlap_in_their_boxes_stay_as_they_are() -> None:
    line = set_line(face("Arimo Bold"), "AV")
    (_, _, right, _), (left, _, _, _) = (piece.box for piece in line.pieces)
    assert left < right


def test_a_letter_and_its_accent_typed_apart_are_composed() -> None:
    assert set_line(face("Anton"), "Zoe\u0308").box == set_line(face("Anton"), "Zoë").box


def test_the_variable_font_is_drawn_bold() -> None:
    line = next(line for line in table("fonts") if line["Font"] == "Arimo Bold")
    regular = open_typeface("Arimo", package_font(line["Package"], line["File"]), 400)
    assert regular is not None
    assert outline(set_line(face("Arimo Bold"), "H").pieces).area > 1.3 * outline(set_line(regular, "H").pieces).area


@pytest.mark.parametrize("name", font_names())
@pytest.mark.parametrize("text", ["Ana", "Zoë 07", "Иван", "שלום Ana", "नमस्ते", "王 Wu", "e\u0301", ""])
def test_what_a_font_lacks_is_told_without_drawing(name: str, text: str) -> None:
    face = find_font(name, Path())
    assert face
    assert lacking(face, text) == set_line(face, text).lacks
