"""Reading SVG: shapes, units and colors; what cannot be cut; hostile files. resvg is the independent judge."""

import io
import math
from pathlib import Path

import numpy as np
import pytest
import resvg_py
from numpy.typing import NDArray
from PIL import Image

from tests.drawings import read_artwork
from xlbatch.geometry.ink import InkPart, outline
from xlbatch.geometry.path import Box, path_data
from xlbatch.problems.unreadable_drawings import FAULTS
from xlbatch.svg.artwork import Drawing
from xlbatch.svg.paint import css_color
from xlbatch.trade.tables import table

SVG = 'xmlns="http://www.w3.org/2000/svg"'


def drawing(folder: Path, body: str, root: str = 'viewBox="0 0 100 100"') -> Drawing:
    found = read(folder, f"<svg {SVG} {root}>{body}</svg>")
    assert isinstance(found, Drawing), found
    return found


def read(folder: Path, text: str | bytes) -> Drawing | tuple[str, ...]:
    """The drawing, or the keys of its faults."""
    file = folder / "logo.svg"
    file.write_bytes(text.encode() if isinstance(text, str) else text)
    found = read_artwork(file)
    if isinstance(found, Drawing):
        return found
    return tuple(key for key, fault in FAULTS.items() if fault in found)


def faults(folder: Path, body: str) -> tuple[str, ...]:
    found = read(folder, f'<svg {SVG} viewBox="0 0 100 100">{body}</svg>')
    assert not isinstance(found, Drawing)
    return found


def mm_box(found: Drawing, color: str) -> Box:
    left, bottom, right, top = (value * found.mm for value in found.fills[color].box)
    return left, bottom, right, top


def area(found: Drawing, color: str) -> float:
    return found.fills[color].area * found.mm**2


# CSS 2.1 4.3.2 and SVG 1.1: 96 px are an inch, 1 mm is 96/25.4 px


@pytest.mark.parametrize(
    ("width", "height"),
    [("96", "192"), ("96px", "192px"), ("1in", "2in"), ("25.4mm", "50.8mm"), ("2.54cm", "5.08cm"), ("72pt", "144pt")],
)
def test_an_inch_is_an_inch_in_every_unit(tmp_path: Path, width: str, height: str) -> None:
    found = drawing(tmp_path, '<rect width="100%" height="100%"/>', f'width="{width}" height="{height}"')
    assert (found.width, found.height) == pytest.approx((25.4, 50.8), abs=1e-4)


def test_a_view_box_scales_and_keeps_its_shape(tmp_path: Path) -> None:
    """20 × 10 units in 4 in × 4 in: 5.08 mm a unit, centered, one inch free above and below."""
    root = 'viewBox="-10 0 20 10" width="4in" height="4in"'
    found = drawing(tmp_path, '<rect x="-10" y="0" width="20" height="10" fill="red"/>', root)
    assert mm_box(found, "#ff0000") == pytest.approx((0, 25.4, 101.6, 76.2), abs=1e-3)


def test_y_points_up(tmp_path: Path) -> None:
    found = drawing(tmp_path, '<rect width="10" height="10" fill="red"/><rect y="90" width="10" height="10"/>')
    assert found.fills["#ff0000"].box[1] > found.fills["#000000"].box[3]


def test_a_style_may_be_in_capitals(tmp_path: Path) -> None:
    """CSS 2.1 4.1.3: all of it but ids, class names and, in XML, element names is read in any case."""
    style = "<style>RECT{fill:none} path{FILL:NONE;Stroke:RED;stroke-width:5MM;stroke-linecap:Butt}</style>"
    found = drawing(
        tmp_path, style + '<path d="M0 50H100"/><rect y="80" width="9" height="9"/>', 'width="100mm" height="100mm"'
    )
    assert set(found.fills) == {"#ff0000", "#000000"}
    assert area(found, "#ff0000") == pytest.approx(100 * 25.4 / 96 * 5, rel=1e-4)


def test_even_odd_and_nonzero(tmp_path: Path) -> None:
    both_clockwise = "M0 0H100V100H0z M20 20H80V80H20z"
    root = 'viewBox="0 0 100 100" width="100mm" height="100mm"'
    whole = drawing(tmp_path, f'<path d="{both_clockwise}"/>', root)
    holed = drawing(tmp_path, f'<path d="{both_clockwise}" style="fill-rule:evenodd"/>', root)
    assert area(whole, "#000000") == pytest.approx(10_000, rel=1e-6)
    assert area(holed, "#000000") == pytest.approx(10_000 - 3_600, rel=1e-6)


@pytest.mark.parametrize(
    "corners", ["M0 0V100L50 50", "M0 0L50 50V100", "M50 50L0 0V100", "M50 50L50 100L0 0", "M0 0H90L0 9"]
)
def test_a_shape_left_open_is_closed_as_it_is_filled(tmp_path: Path, corners: str) -> None:
    """SVG 1.1, 11.3: filling closes every subpath."""
    root = 'viewBox="0 0 100 100" width="100mm" height="100mm"'
    found = drawing(tmp_path, f'<path d="{corners}"/>', root)
    closed = drawing(tmp_path, f'<path d="{corners}z"/>', root)
    assert found.fills["#000000"].verbs.endswith("Z")
    assert area(found, "#000000") == pytest.approx(area(closed, "#000000"))
    assert area(found, "#000000") > 0


def test_shapes_of_one_color_are_welded(tmp_path: Path) -> None:
    root = 'viewBox="0 0 100 100" width="100mm" height="100mm"'
    found = drawing(tmp_path, '<rect width="60" height="50"/><g><rect x="40" width="60" height="50"/></g>', root)
    assert area(found, "#000000") == pytest.approx(100 * 50, rel=1e-6)
    assert found.fills["#000000"].verbs.count("M") == 1


def test_each_color_has_its_own_ink_in_drawing_order(tmp_path: Path) -> None:
    body = '<g fill="navy"><rect width="9" height="9"/><circle fill="#FD0" cx="50" cy="50" r="9"/></g>'
    found = drawing(
        tmp_path, body + '<path fill="rgb(0%, 0%, 50%)" d="M0 90h9v9z"/><rect fill="none" width="5" height="5"/>'
    )
    assert list(found.fills) == ["#000080", "#ffdd00"]


def coverage(svg: str, size: int = 400) -> NDArray[np.float64]:
    """How much of each pixel resvg inks, 0 to 1."""
    png = bytes(resvg_py.svg_to_bytes(svg_string=svg, width=size, height=size))
    return np.asarray(Image.open(io.BytesIO(png)).convert("RGBA"), dtype=float)[:, :, 3] / 255


SHAPES = (
    '<rect x="10" y="20" width="70" height="50" rx="20" ry="10"/>',
    '<rect x="10" y="20" width="70" height="50" rx="400"/>',
    '<circle cx="50" cy="50" r="30"/>',
    '<circle cx="50%" cy="50%" r="20%"/>',
    '<ellipse cx="50" cy="40" rx="40" ry="15" transform="rotate(30 50 40)"/>',
    '<polygon points="10,10 90 20, 50,90"/>',
    '<polyline points="10 10 90 20 50 90 20 30" fill-rule="evenodd"/>',
    '<path d="M10 80C40 10 65 10 95 80S10 20 10 50z"/>',
    '<path d="m10 50 q 20 -60 40 0 t 40 0 v30 h-80 z"/>',
    '<path d="M20 50a30 20 -30 1 1 30 30A10 10 0 0 0 20 50"/>',
    '<g transform="translate(50,50) scale(.5) rotate(45)"><rect transform="skewX(20)" width="60" height="60"/></g>',
    '<g transform="matrix(.7 .3 -.3 .7 30 10)"><path d="M0 0H60V60H0zM10 10V50H50V10z"/></g>',
    '<path d="M50 5 L80 95 L5 35 H95 L20 95z"/>',
    '<path fill-rule="evenodd" d="M50 5 L80 95 L5 35 H95 L20 95z"/>',
    '<g transform="skewY(-10) translate(0 20)"><circle cx="40" cy="40" r="25"/></g>',
    '<path d="M-50 -50H60V40z"/>',
    '<path d="M10 10H90V50" fill="none" stroke="black" stroke-width="8"/>',
    '<path d="M10 80L50 20L90 80" fill="none" stroke="#000" stroke-width="12" '
    'stroke-linejoin="round" stroke-linecap="round"/>',
    '<path d="M10 80L50 20L90 80z" stroke="#000" stroke-width="9" stroke-linejoin="bevel"/>',
    '<path d="M10 80L20 20L30 80" fill="none" stroke="#000" stroke-width="4" stroke-miterlimit="20"/>',
    '<circle cx="50" cy="50" r="30" fill="none" stroke="#000" stroke-width="6" '
    'stroke-dasharray="20 8 4" stroke-dashoffset="5"/>',
    '<g transform="scale(3 1)"><circle cx="16" cy="50" r="12" fill="none" stroke="#000" stroke-width="4"/></g>',
    '<line x1="10" y1="10" x2="90%" y2="80" stroke="#000" stroke-width="5%" stroke-linecap="square"/>',
    '<defs><path id="a" d="M0 0H20V20z"/></defs><use href="#a" x="10" y="10"/>'
    '<use href="#a" transform="translate(60 60)"/>',
    '<symbol id="s" viewBox="0 0 10 10"><circle cx="5" cy="5" r="9"/></symbol>'
    '<use href="#s" x="20" y="30" width="60" height="40"/>',
    '<svg x="10" y="20" width="50" height="60" viewBox="0 0 10 10" preserveAspectRatio="xMaxYMin slice">'
    '<rect width="20" height="5"/></svg>',
    '<svg x="10" y="20" width="50" height="60" overflow="visible"><circle r="30"/></svg>',
    '<clipPath id="c"><circle cx="40" cy="40" r="25"/><rect x="60" y="60" width="30" height="30"/></clipPath>'
    '<g clip-path="url(#c)"><rect x="10" y="10" width="80" height="70"/></g>',
    '<clipPath id="c"><path clip-rule="evenodd" d="M0 0H80V80H0zM20 20V60H60V20z"/></clipPath>'
    '<rect width="90" height="90" clip-path="url(#c)" transform="rotate(10)"/>',
    '<clipPath id="c" clipPathUnits="objectBoundingBox" transform="translate(2 3)"><circle cx=".5" cy=".4" r=".4"/>'
    '<rect x=".8" width=".1" height="1"/></clipPath><ellipse clip-path="url(#c)" cx="50" cy="40" rx="40" ry="30" '
    'transform="rotate(20 50 50)"/>',
    '<clipPath id="c" clipPathUnits="objectBoundingBox"><rect width="1" height=".5"/></clipPath>'
    '<clipPath id="d" clip-path="url(#c)" transform="translate(10 0)"><circle cx="40" cy="50" r="30"/></clipPath>'
    '<path d="M10 10H90V90H20z" clip-path="url(#d)"/>',
    '<clipPath id="c"><rect x="20" width="30" height="90"/></clipPath>'
    '<clipPath id="d" clip-path="url(#c)" transform="translate(20 0)"><circle cx="40" cy="50" r="30"/></clipPath>'
    '<path d="M10 10H90V90H20z" clip-path="url(#d)"/>',
    '<path d="M10 10l50.5.5-10-.5e1 20 60.25h-5.5zm20 50a30 20-30 1130 10Z"/>',
    '<g fill="red" stroke="red"><path style="fill:initial;stroke:hsl(0,0%,0%);stroke-width:4" d="M9 9H70V40z"/></g>'
    '<rect x="60" y="60" width="20" height="20" fill="rgba(0 0 0 / 1)"/><rect width="9" height="9" fill="#000f"/>',
    '<style>.a{fill:none} #b{fill:#000} g rect.c{visibility:hidden}</style><circle class="a" r="90"/>'
    '<rect id="b" width="40" height="30"/><g><rect class="c" x="50" y="50" width="40" height="40"/></g>',
    '<g color="black"><path fill="currentColor" d="M0 0H50V70z"/></g>',
    '<switch><g systemLanguage="xx"><circle r="80"/></g><rect width="50" height="20"/></switch>',
)


@pytest.mark.parametrize("shape", SHAPES)
def test_shapes_cover_what_resvg_draws(tmp_path: Path, shape: str) -> None:
    """The read outline, drawn again, covers the same as the drawing: intersection over union at least 0.98."""
    found = drawing(tmp_path, shape)
    ink = found.fills["#000000"]
    unit = 100 / (26.4583333333 / found.mm)  # user units: the page is 100 of them, 100 px or 26.458 mm wide
    left, bottom = ink.box[0] * unit, ink.box[1] * unit
    data = path_data(outline((InkPart(ink),), unit, unit).segments, (1, 0, 0, -1, left, 100 - bottom))
    again = coverage(f'<svg {SVG} viewBox="0 0 100 100"><path d="{data}"/></svg>')
    first = coverage(f'<svg {SVG} viewBox="0 0 100 100">{shape}</svg>')
    assert np.minimum(first, again).sum() / np.maximum(first, again).sum() > 0.99


def test_a_circle_is_round(tmp_path: Path) -> None:
    found = drawing(tmp_path, '<circle cx="50" cy="50" r="40"/>', 'viewBox="0 0 100 100" width="100mm" height="100mm"')
    assert area(found, "#000000") == pytest.approx(math.pi * 40**2, rel=5e-4)


def test_css_colors_are_those_resvg_knows() -> None:
    names = [line["Color"] for line in table("css_colors") if line["Color"] != "rebeccapurple"]  # newer than SVG 1.1
    rects = "".join(f'<rect x="{at}" width="1" height="1" fill="{name}"/>' for at, name in enumerate(names))
    svg = f'<svg {SVG} width="{len(names)}" height="1">{rects}</svg>'
    pixels = np.asarray(Image.open(io.BytesIO(bytes(resvg_py.svg_to_bytes(svg_string=svg)))).convert("RGB"))
    assert len(names) == 147  # SVG 1.1, 4.4
    assert [css_color(name.upper()) for name in names] == ["#" + bytes(pixel).hex() for pixel in pixels[0]]


@pytest.mark.parametrize(
    ("typed", "color"),
    [("#FA0", "#ffaa00"), (" Gold ", "#ffd700"), ("rgb(255,0,16)", "#ff0010"), ("rgb(100%, 0%, 50%)", "#ff0080"),
     ("#12345", None), ("reddish", None), ("", None)],
)  # fmt: skip
def test_colors_are_read_as_css_writes_them(typed: str, color: str | None) -> None:
    assert css_color(typed) == color


@pytest.mark.parametrize(
    ("body", "fault"),
    [
        ('<image href="photo.png" width="5" height="5"/>', "image"),
        ('<image href="http://example.com/photo.png"/>', "image"),
        ('<path d="M0 0H9V9z" stroke="red" vector-effect="non-scaling-stroke"/>', "stroke"),
        ('<line x2="9" y2="9" stroke="red" stroke-linecap="pointed"/>', "stroke"),
        ('<path d="M0 0H9V9z" marker-end="url(#m)"/>', "marker"),
        ('<rect width="9" height="9" fill="url(#nowhere)"/>', "missing color"),
        ('<rect width="9" height="9" fill="url(colors.svg#red)"/>', "external"),
        ('<use href="http://example.com/shapes.svg#a"/>', "external"),
        ('<style>@import "http://example.com/a.css";</style>', "external"),
        ('<g id="a"><use href="#a"/></g>', "use"),
        ('<g id="a"><use href="#b"/></g><g id="b"><use href="#a"/></g>', "use"),
        (
            '<clipPath id="c" clip-path="url(#c)"><rect/></clipPath>'
            '<g clip-path="url(#c)"><rect width="9" height="9"/></g>',
            "clip",
        ),
        ('<switch><g requiredFeatures="x"/></switch>', "unknown"),
        ('<path d="M0 0H9#V9z"/>', "path"),
        ('<linearGradient id="g"/><rect width="9" height="9" fill="url(#g)"/>', "gradient"),
        ('<defs><pattern id="p"/></defs><rect width="9" height="9" fill="url(#p)"/>', "pattern"),
        ('<rect width="9" height="9" mask="url(#m)"/>', "mask"),
        ('<g clip-path="url(#c)"><rect width="9" height="9"/></g>', "clip"),
        ('<rect width="9" height="9" style="filter:url(#f)"/>', "filter"),
        ('<use href="#a"/>', "use"),
        ('<rect width="9" height="9" opacity=".5"/>', "see-through"),
        ('<rect width="9" height="9" fill="rgba(0,0,0,.5)"/>', "see-through"),
        ('<rect width="9" height="9" fill-opacity="50%"/>', "see-through"),
        ("<style>rect:any-such{fill:red}</style>", "style sheet"),
        ("<script>alert(1)</script>", "moving"),
        ("<foreignObject/>", "text box"),
        ("<blob/>", "unknown"),
        ('<rect width="9" height="9" fill="reddish"/>', "color"),
        ('<rect width="9 apples" height="9"/>', "number"),
        ('<path d="M0 0 L"/>', "path"),
        ('<path d="M0 0L1e 5L9 9z"/>', "path"),
        ('<path d="M0 0C1e20 1e20 -1e20 3 5 5z"/>', "path"),
        ('<rect width="9PX" height="9"/>', "number"),
        ('<rect style="width:9px" height="9"/>', "placed by style"),
        ('<rect width="9" height="9" style="transform:rotate(45deg)"/>', "placed by style"),
        ('<rect width="9" height="9" transform="rotate(45)" transform-origin="5 5"/>', "placed by style"),
        ('<rect width="9" height="9" style="mix-blend-mode:multiply"/>', "see-through"),
        ('<rect width="9" height="9" fill="hsla(9, 50%, 50%, .5)"/>', "see-through"),
        ('<rect width="9" height="9" clip-path="circle(5px)"/>', "clip"),
        ('<rect width="9" height="9" fill="url()"/>', "missing color"),
        ('<style>g{rect{fill:red}}</style><g><rect width="9" height="9"/></g>', "style sheet"),
        ('<style>g:has(rect){fill:red}</style><g><rect width="9" height="9"/></g>', "style sheet"),
        (f'<rect width="9" height="9" style="fill:{"(" * 9_999}"/>', "too deep"),
        ('<path d="M1e300 0 L9 9 L0 9z"/>', "path"),
        ('<g transform="rotate()"><rect width="9" height="9"/></g>', "number"),
        ("", "no ink"),
        ('<rect width="9" height="9" fill="none"/>', "no ink"),
    ],
)
def test_what_cannot_be_cut_is_named(tmp_path: Path, body: str, fault: str) -> None:
    assert faults(tmp_path, body) == (fault,)


def test_all_faults_are_named_at_once(tmp_path: Path) -> None:
    assert faults(tmp_path, '<image/><g><use href="#a"/></g><image/>') == ("image", "use")


def test_what_is_not_shown_is_no_fault(tmp_path: Path) -> None:
    unseen = '<defs><text/></defs><g display="none"><image/></g><title>x</title><linearGradient id="unused"/>'
    notes = (
        '<n:view xmlns:n="http://example.com/notes"><n:grid/></n:view><rect visibility="hidden" width="9" height="9"/>'
    )
    rect = '<rect width="9" height="9" stroke="red" stroke-width="0"/>'
    assert list(drawing(tmp_path, unseen + notes + rect).fills) == ["#000000"]
