"""Artwork of several layers: drawn assembled, once a size, with how each layer lies on the lowest."""

import re
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path

import pytest

from tests.pages.cells import texts_of
from xlbatch.pages.layer_drawings import LIES
from xlbatch.pages.leaf import COLUMN
from xlbatch.pages.page_looks import WORK
from xlbatch.pages.write_pages import write_pages
from xlbatch.paper.measure import text_width
from xlbatch.paper.widths import PAD
from xlbatch.pictures.layers_picture import layers_svg
from xlbatch.placement.register import drawings
from xlbatch.plan import Plan

Box = tuple[int, int, int, int]  # x, y, wide, high
SHAPES: dict[str, Box] = {"#1f3a93": (0, 60, 200, 40), "#c0392b": (30, 20, 75, 35), "#f0b429": (110, 10, 40, 50)}
FILMS = ("Navy smooth", "Red smooth", "Gold glitter")
SIZES = ("M", "L", "M", "Youth M", "L")


@pytest.fixture
def plan(plan_of: Callable[..., Plan], tmp_path: Path) -> Plan:
    return layered(plan_of, tmp_path, ("Sea", "Boat", "Sun"), SHAPES, FILMS)


def layered(
    plan_of: Callable[..., Plan], folder: Path, pieces: Sequence[str], shapes: Mapping[str, Box], films: Sequence[str]
) -> Plan:
    """The plan of a drawing of boxes by color, the lowest first, each in its film."""
    drawn = "".join(
        f'<rect x="{x}" y="{y}" width="{wide}" height="{high}" fill="{color}"/>'
        for color, (x, y, wide, high) in shapes.items()
    )
    svg = f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 200 100">{drawn}</svg>'
    (folder / "sea.svg").write_text(svg, encoding="utf-8")
    designs = [
        ["Design", "Decal", "What", "Artwork", "Artwork color", "Film", "Layer", "Position", "Width"],
        *(
            ["Trip", piece, "artwork", "sea.svg", color, film, layer, "full front", "9 in"]
            for layer, (piece, color, film) in enumerate(zip(pieces, shapes, films, strict=True), 1)
        ),
    ]
    roster = [["Who", "Size", "Design"], *([f"Ana {no}", size, "Trip"] for no, size in enumerate(SIZES))]
    return plan_of(roster, Designs=designs)


def test_one_drawing_a_size(plan: Plan) -> None:
    alike = drawings(plan.places)
    garments = sorted(sorted(drawing[0].garment.no for drawing in them) for them in alike)
    assert garments == [[1, 3], [2, 5], [4]]
    assert all([place.decal.piece for place in drawing] == ["Sea", "Boat", "Sun"] for them in alike for drawing in them)


def test_the_page_has_each_size_once_with_its_garments_and_measures(plan: Plan, tmp_path: Path) -> None:
    write_pages(tmp_path / "pages.xlsx", plan, "plan.xlsx")
    cells = [text.replace("\u00a0", " ") for text in texts_of(tmp_path / "pages.xlsx", "Placement pictures")]
    table = cells[cells.index("1 Sea") - 1 :]
    assert table[:4] == ["Size", "1 Sea", "2 Boat", "3 Sun"]
    assert table[4::4][:3] == ["Youth M", "M", "L"]
    assert table[9].startswith("9 × ")
    # the boat's box begins 40 of 200 units above that of the sea and 30 to the right of it, 9 in being 200 units
    assert table[10] == "1 13/16↑ 1 3/8→ in"


@pytest.mark.parametrize("layers", [4, 5])
def test_more_layers_than_have_room_for_their_measures_are_left_to_the_press_cards(
    plan_of: Callable[..., Plan], tmp_path: Path, layers: int
) -> None:
    """A quarter of the room is as wide as a measure, in which no line is broken; a fifth is not."""
    pieces = ("Sea", "Boat", "Sun", "Isle", "Kite")[:layers]
    shapes = SHAPES | dict([("#1f4630", (0, 0, 20, 20)), ("#6a1b9a", (160, 0, 33, 20))][: layers - 3])
    films = (*FILMS[:2], "Gold smooth", "Forest smooth", "Purple smooth")[:layers]
    write_pages(tmp_path / "pages.xlsx", layered(plan_of, tmp_path, pieces, shapes, films), "plan.xlsx")
    cells = texts_of(tmp_path / "pages.xlsx", "Placement pictures")
    heads = cells[cells.index("1 Sea") :][:5]
    assert heads == ["1 Sea", "2 Boat", "3 Sun", "4 Isle", "Youth M"]
    assert (cells[-1] == "More sizes or layers: see Press cards.") is (layers == 5)
    measure = text_width("1 3/8→ in", WORK, bold=True) + PAD
    assert LIES // 5 * COLUMN < measure < LIES // 4 * COLUMN


def test_sizes_that_do_not_tell_which_is_meant_have_their_numbers(plan_of: Callable[..., Plan], tmp_path: Path) -> None:
    """A drawing with each one's own name in it is not alike on two garments of a size."""
    svg = (
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 200 60"><rect fill="#1f3a93" y="30" width="200" '
        'height="30"/><text x="20" y="20" font-size="20" fill="#c0392b">{Who}</text></svg>'
    )
    (tmp_path / "sign.svg").write_text(svg, encoding="utf-8")
    designs = [
        ["Design", "Decal", "What", "Artwork", "Artwork color", "Film", "Layer", "Position", "Width"],
        ["Trip", "Bar", "artwork", "sign.svg", "#1f3a93", "Navy smooth", 1, "full front", "9 in"],
        ["Trip", "Name", "artwork", "sign.svg", "#c0392b", "Red smooth", 2, "full front", "9 in"],
    ]
    plan = plan_of([["Who", "Size", "Design"], ["Ana", "M", "Trip"], ["Wilhelmina", "M", "Trip"]], Designs=designs)
    write_pages(tmp_path / "pages.xlsx", plan, "plan.xlsx")
    cells = texts_of(tmp_path / "pages.xlsx", "Placement pictures")
    assert {"M: no. 1", "M: no. 2"} <= set(cells)


def test_the_layers_are_drawn_as_they_lie(plan: Plan) -> None:
    """The path of each layer begins where its box lies beside the lowest one's."""
    drawing = drawings(plan.places)[0][0]
    svg = layers_svg(drawing, 300, 200)
    paths = re.findall(r'<path d="(M[^"]*Z?)" fill="#', svg)
    corners = []
    for path in paths:
        numbers = [float(number) for number in re.findall(r"-?[\d.]+", path)]
        corners.append((min(numbers[::2]), min(numbers[1::2])))
    (left, top), *others = corners
    width = 9 * 25.4
    scale = (max(float(x) for x in re.findall(r"-?[\d.]+", paths[0])[::2]) - left) / width
    for (x, y), place in zip(others, drawing[1:], strict=True):
        assert place.register is not None
        assert (x - left) / scale == pytest.approx(place.register.from_left, abs=0.05)
        assert (y - top) / scale == pytest.approx(place.register.from_top, abs=0.05)
