"""Lengths, pages and paints of drawings as SVG 1.1 and CSS 2.1 have them, worked out by hand; px."""

from pathlib import Path

import pathops
import pytest

from tests.svg.test_artwork import drawing, faults
from xlbatch.svg.faults import Unreadable
from xlbatch.svg.layer import Letters, LiveText, Spot, TextSpan
from xlbatch.svg.paint import is_opaque, is_stroked
from xlbatch.svg.safe_xml import parse_svg
from xlbatch.svg.set_text import _Line, line_length, line_points
from xlbatch.svg.stroke import _dashes
from xlbatch.svg.viewport import View, fitted, length, numbers, page_of


@pytest.mark.parametrize(
    ("text", "px"),
    [
        ("12", 12),
        (" -1.5e1px ", -15),
        (".5in", 48),
        ("2.54cm", 96),
        ("25.4mm", 96),
        ("101.6Q", 96),
        ("72pt", 96),
        ("6pc", 96),
        ("25%", 50),
        ("auto", 7),
        (None, 7),
    ],
)
def test_a_length_is_in_px_or_a_part_of_the_whole(text: str | None, px: float) -> None:
    """6 picas and 72 points are an inch, 40 Q a centimeter; the whole is 200."""
    assert length(text, 200.0, 7.0) == pytest.approx(px)


@pytest.mark.parametrize("text", ["", "12 p x", "1e999", "wide", "12em", "1,5"])
def test_what_is_no_length_is_told(text: str) -> None:
    with pytest.raises(Unreadable):
        length(text, 200.0)


def test_numbers_of_a_list() -> None:
    assert numbers("0,0 10 -20.5.5e1") == [0, 0, 10, -20.5, 5]
    assert numbers("none") == []


@pytest.mark.parametrize(
    ("aspect", "matrix"),
    [  # a box of 20 x 10 from (5, 3) in a view of 100 x 100
        ("", (5, 0, 0, 5, -25, 10)),  # in the middle: 50 free, half of it above
        ("xMidYMid", (5, 0, 0, 5, -25, 10)),
        ("xMidYMin meet", (5, 0, 0, 5, -25, -15)),
        ("xMidYMax", (5, 0, 0, 5, -25, 35)),
        ("none", (5, 0, 0, 10, -25, -30)),
        ("xMidYMid slice", (10, 0, 0, 10, -100, -30)),  # 200 wide: half of what is too much goes to the left
        ("xMinYMid slice", (10, 0, 0, 10, -50, -30)),
        ("xMaxYMid slice", (10, 0, 0, 10, -150, -30)),
        ("defer xMidYMax", (5, 0, 0, 5, -25, 35)),
    ],
)
def test_a_view_box_is_fitted_as_it_says(aspect: str, matrix: tuple[float, ...]) -> None:
    assert fitted(View(100, 100), (5, 3, 20, 10), aspect) == pytest.approx(matrix)


@pytest.mark.parametrize(
    ("root", "width", "height"),
    [
        ('viewBox="5 5 40 20"', 40, 20),  # its own size where nothing else is said
        ('viewBox="5 5 40 20" width="100%" height="100%"', 40, 20),
        ('viewBox="5 5 40 20" width="80"', 80, 40),  # its shape is kept
        ('viewBox="5 5 40 20" height="80"', 160, 80),
        ('viewBox="5 5 40 20" width="80" height="80"', 80, 80),
        ('viewBox="0 0 .8 .4" width="80"', 80, 40),
        ('viewBox="0 0 0 20" width="80" height="60"', 80, 60),  # a box without a width is none
        ('viewBox="0 0 40" height="60"', 300, 60),
        ('width="80"', 80, 150),
        ("", 300, 150),  # CSS 2.1, 10.3.2
    ],
)
def test_how_large_a_page_is(root: str, width: float, height: float) -> None:
    """`matrix` goes to the units welded in: 2,000 across the longer side, `mm` each."""
    page = page_of(parse_svg(f'<svg xmlns="http://www.w3.org/2000/svg" {root}/>'.encode()))
    assert page.mm == pytest.approx(max(width, height) * 25.4 / 96 / 2000)
    if page.clip:
        _, _, right, top = page.clip
        assert (right * page.mm, top * page.mm) == pytest.approx((width * 25.4 / 96, height * 25.4 / 96))


def test_100_percent_of_a_radius() -> None:
    """SVG 1.1, 7.10: the square root of half the sum of the squares: of 30 x 40, 50 over the square root of 2."""
    assert View(30, 40).diagonal == pytest.approx(35.3553, abs=1e-4)
    assert View(80, 80).diagonal == pytest.approx(80)


@pytest.mark.parametrize(
    ("text", "opaque", "seen"),
    [
        ("1", True, True),
        ("100%", True, True),
        ("2", True, True),
        ("0.5", False, True),
        ("50%", False, True),
        ("99%", False, True),
        ("0", False, False),
        ("0%", False, False),
        ("-1", False, False),
        ("any", True, True),
        ("nan", True, True),
    ],
)
def test_what_is_opaque_and_what_can_be_seen(text: str, opaque: bool, seen: bool) -> None:
    assert (is_opaque(text), is_opaque(text, least=0)) == (opaque, seen)


@pytest.mark.parametrize(
    ("stroke", "width", "opacity", "drawn"),
    [
        ("red", "1", "1", True),
        ("none", "1", "1", False),
        ("transparent", "1", "1", False),
        ("red", "0", "1", False),
        ("red", "0.0px", "1", False),
        ("red", "0.05", "1", True),
        ("red", "0.5", "1", True),
        ("red", "05", "1", True),
        ("red", "1", "0", False),
        ("red", "1", "0.3", True),
    ],
)
def test_which_strokes_can_be_seen(stroke: str, width: str, opacity: str, drawn: bool) -> None:
    assert is_stroked({"stroke": stroke, "stroke-width": width, "stroke-opacity": opacity}) is drawn


@pytest.mark.parametrize(
    ("text", "dashes"),
    [
        ("none", []),
        ("4 2", [4, 2]),
        ("4, 2,1", [4, 2, 1, 4, 2, 1]),  # an odd list is gone through twice (SVG 1.1, 11.4)
        ("5", [5, 5]),
        ("10%", [8, 8]),  # of a view of 80 x 80
        ("0 0", []),
        ("4 -2", []),  # not valid: the line is whole
        ("0 3", [0, 3]),
    ],
)
def test_dashes_and_gaps_by_turns(text: str, dashes: list[float]) -> None:
    assert list(_dashes(text, View(80, 80))) == pytest.approx(dashes)


@pytest.mark.parametrize(
    ("body", "fault"),
    [
        ('<rect width="9" height="9" fill="rgba(1, 2, 3, .5)"/>', "see-through"),
        ('<rect width="9" height="9" fill="lch(50 30 20)"/>', "color"),
        ('<rect width="9" height="9" fill="url(#p)"/><defs><pattern id="p"/></defs>', "pattern"),
        ('<rect width="9" height="9" fill="url(#p)"/><defs><radialGradient id="p"/></defs>', "gradient"),
    ],
)
def test_why_a_paint_cannot_be_cut(body: str, fault: str, tmp_path: Path) -> None:
    assert faults(tmp_path, body) == (fault,)


@pytest.mark.parametrize(
    ("rules", "attributes", "color"),
    [
        ("", 'fill="red"', "#ff0000"),
        ("rect{fill:blue}", 'fill="red"', "#0000ff"),  # a sheet goes before an attribute
        ("rect{fill:blue}", 'style="fill:red"', "#ff0000"),  # a style attribute goes before a sheet
        ("rect{fill:blue!important}", 'style="fill:red"', "#0000ff"),
        ("#a{fill:lime} rect{fill:blue}", 'id="a"', "#00ff00"),  # the more exact one
        ("rect{fill:blue} rect{fill:lime}", "", "#00ff00"),  # of equals the later
        ("@media print{rect{fill:blue}}", 'fill="red"', "#ff0000"),
        ("@media screen, print{rect{fill:blue}}", 'fill="red"', "#0000ff"),
        ("rect::before{fill:blue}", 'fill="red"', "#ff0000"),
        ("", 'fill="url(#nowhere) lime"', "#00ff00"),  # its second choice
        ("", 'fill="currentColor" color="lime"', "#00ff00"),
        ("", 'fill="red icc-color(any, 1)"', "#ff0000"),
    ],
)
def test_which_of_several_colors_holds(rules: str, attributes: str, color: str, tmp_path: Path) -> None:
    """CSS 2.1, 6.4; SVG 1.1, 6.4 and 11.2."""
    read = drawing(tmp_path, f'<style>{rules}</style><rect width="9" height="9" {attributes}/>')
    assert list(read.fills) == [color]


def corner() -> pathops.Path:
    """A line 30 to the right and then 40 up the page (y is downward)."""
    path = pathops.Path()
    pen = path.getPen()
    pen.moveTo((0, 0))
    pen.lineTo((30, 0))
    pen.lineTo((30, -40))
    pen.endPath()
    return path


@pytest.mark.parametrize(
    ("far", "place"),
    [
        (0, (0, 0, 0)),
        (10, (10, 0, 0)),
        (45, (30, -15, -1.5708)),
        (69, (30, -39, -1.5708)),
        (71, None),
        (-1, None),
    ],
)
def test_a_place_so_far_along_a_line_and_its_direction(far: float, place: tuple[float, ...] | None) -> None:
    assert line_length(corner()) == pytest.approx(70)
    far_along, points = line_points(corner())
    assert far_along[[0, -1]].tolist() == pytest.approx([0, 70])
    assert points[[0, -1]].tolist() == pytest.approx([0, 30 - 40j])
    there = _Line(corner()).at(far)
    assert there == (None if place is None else pytest.approx(place, abs=0.01))


def test_the_words_and_colors_of_a_text() -> None:
    def look(*colors: str) -> Letters:
        return Letters(("Anton",), False, False, 20, 0, 0, "start", 0, tuple((color, 0.0) for color in colors))

    spans = (TextSpan("Two  ", look("#ff0000")), TextSpan(" words ", look("#0000ff", "#ff0000"), (Spot(),)))
    text = LiveText(spans, (1, 0, 0, 1, 0, 0))
    assert text.words == "Two words"
    assert text.colors == ("#ff0000", "#0000ff")
