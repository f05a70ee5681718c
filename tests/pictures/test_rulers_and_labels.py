"""A ruler at its true size: a point is 1/72 in. And where labels stand."""

import re

import pytest

from xlbatch.paper.picture import Picture
from xlbatch.pictures import ruler as ruler_module
from xlbatch.pictures.labels import Box, label_boxes
from xlbatch.pictures.ruler import TOP, plain_ruler, ruler, ruler_height

INCH, MM = 72.0, 72 / 25.4  # points


@pytest.fixture
def svgs(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """What is drawn, instead of the picture."""
    written: list[str] = []

    def kept(svg: str, says: str) -> Picture:
        written.append(svg)
        return Picture(b"", says, 1.0)

    monkeypatch.setattr(ruler_module, "drawn", kept)
    return written


def ticks(svg: str) -> list[tuple[float, int]]:
    """Points below zero and length of each tick."""
    marks = re.findall(r'<rect x="0" y="([\d.]+)" width="(\d+)" height=".6"/>', svg)
    return [(float(y) + 0.3 - TOP, int(long)) for y, long in marks]


def numbers(svg: str) -> list[tuple[float, str]]:
    marks = re.findall(r'<text x="21.5" y="([\d.]+)" font-size="11" font-weight="700">(\d+)</text>', svg)
    return [(float(y) - 3.9 - TOP, number) for y, number in marks]


@pytest.mark.parametrize(
    ("longest", "unit", "says"),
    [
        (0.0, "in", "5 in"),  # at least an inch more than the 4 in to check it by
        (6.2 * 25.4, "in", "8 in"),
        (7 * 25.4, "in", "8 in"),
        (0.0, "mm", "110 mm"),
        (151.0, "mm", "170 mm"),
        (150.0, "cm", "16 cm"),
    ],
)
def test_a_plain_ruler_is_a_whole_longer_than_what_it_measures(longest: float, unit: str, says: str) -> None:
    assert plain_ruler(longest, unit).says == f"A ruler at its true size, {says} long"


def test_a_plain_ruler_ends_where_the_paper_does(svgs: list[str]) -> None:
    plain_ruler(900.0, "mm")
    assert ticks(svgs[0])[-1][0] == pytest.approx(220 * MM)  # 222 mm of paper less 7 points, a 2.5th of an inch
    (height,) = re.findall(r'height="([\d.]+)" font-family', svgs[0])
    assert float(height) == pytest.approx(TOP + 222 * MM + 2, abs=0.01)


def test_inches_have_eighths_and_millimeters_have_fives_and_tens(svgs: list[str]) -> None:
    plain_ruler(0.0, "in")
    plain_ruler(0.0, "mm")
    plain_ruler(0.0, "cm")
    inches, millimeters, centimeters = svgs
    assert [long for _, long in ticks(inches)[:9]] == [20, 7, 7, 7, 13, 7, 7, 7, 20]
    assert [y for y, _ in ticks(inches)[:3]] == pytest.approx([0, INCH / 8, INCH / 4], abs=0.001)
    assert [long for _, long in ticks(millimeters)[:11]] == [20, 7, 7, 7, 7, 13, 7, 7, 7, 7, 20]
    assert ticks(millimeters)[100][0] == pytest.approx(100 * MM, abs=0.001)
    assert [number for _, number in numbers(inches)] == ["1", "2", "3", "4", "5"]
    assert numbers(inches)[3][0] == pytest.approx(4 * INCH, abs=0.001)
    for svg, printed in ((millimeters, "10"), (centimeters, "1")):
        y, number = numbers(svg)[0]
        assert y == pytest.approx(10 * MM, abs=0.001)
        assert number == printed


@pytest.mark.parametrize(("unit", "height"), [("in", 12 + 8.75 * 72 + 4), ("mm", 12 + 222 * MM + 4)])
def test_how_high_the_ruler_is(unit: str, height: float) -> None:
    assert ruler_height(unit) == pytest.approx(height)


def test_drops_are_marked_where_they_lie_and_their_words_stay_apart(svgs: list[str]) -> None:
    """Drops 3 in, 3 1/8 in and 8 3/4 in down; none at 0, and none beyond the paper."""
    drops = {
        3.125 * 25.4: ["Number"],
        3 * 25.4: ["Crest", "Name"],
        0.0: ["Nothing"],
        8.75 * 25.4: ["Low"],
        300.0: ["X"],
    }
    told = ruler(drops, "in")
    arrows = [float(y) - TOP for y in re.findall(r'<path d="M42.0 ([\d.]+) l4', svgs[0])]
    assert arrows == pytest.approx([3 * INCH, 3.125 * INCH, 8.75 * INCH], abs=0.001)
    texts = re.findall(r'<text x="52.0" y="([\d.]+)" font-size="8">([^<]*)</text>', svgs[0])
    assert [words for _, words in texts] == ["3  Crest, Name", "3 1/8  Number", "8 3/4  Low"]
    below = [float(y) - 2.3 - TOP for y, _ in texts]
    assert below == pytest.approx([3 * INCH, 3 * INCH + 9.5, 8.75 * INCH], abs=0.001)
    assert "4 in from 0" in told.says


FRAME = Box(0, 0, 400, 300)


@pytest.mark.parametrize(
    ("pieces", "labels"),
    [
        # on the middle of a piece much larger than the label
        ([Box(100, 100, 300, 200)], [Box(190, 145, 210, 155)]),
        # of a piece as small as the label: beside it, to its right
        ([Box(100, 100, 120, 110)], [Box(120, 100, 140, 110)]),
        # at the frame's right end: to its left
        ([Box(380, 100, 400, 110)], [Box(360, 100, 380, 110)]),
        # a smaller piece on its middle: a quarter of its width from its left
        ([Box(100, 100, 300, 200), Box(190, 140, 210, 160)], [Box(140, 145, 160, 155), None]),
    ],
)
def test_a_label_stands_on_its_piece_where_there_is_room_and_else_beside_it(
    pieces: list[Box], labels: list[Box | None]
) -> None:
    boxes = label_boxes(pieces, [(20.0, 10.0)] * len(pieces), FRAME)
    assert [box for box, label in zip(boxes, labels, strict=True) if label] == [label for label in labels if label]


def test_two_labels_of_one_place_do_not_hide_one_another() -> None:
    pieces = [Box(100, 100, 300, 200), Box(100, 100, 300, 200)]
    first, second = label_boxes(pieces, [(60.0, 20.0)] * 2, FRAME)
    assert first.shared(second) == 0


def test_the_area_two_boxes_share() -> None:
    box = Box(0, 0, 10, 10)
    assert (box.area, box.middle) == (100, (5, 5))
    assert box.shared(Box(6, 7, 20, 20)) == 12
    assert box.shared(Box(10, 0, 20, 10)) == box.shared(Box(20, 20, 30, 30)) == 0
    assert Box(20, 30, 30, 50).area == 200
