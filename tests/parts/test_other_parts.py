"""What stands about a shape and what goes with it, where it is no word: dots, welded letters, shapes alike, groups of
the file, paper under all. Drawn by hand on a page of 2,000 x 2,000."""

from dataclasses import replace

import pytest

from tests.parts.by_hand import Corners, block, drawing, ell, layer, star
from xlbatch.geometry.path import Box
from xlbatch.parts.find import parts_of
from xlbatch.parts.part import Part
from xlbatch.svg.layer import Layer, LiveText

BLACK, WHITE = "#000000", "#ffffff"


def no_text(_text: LiveText) -> Box:
    raise AssertionError


def parts(*layers: Layer) -> tuple[Part, ...]:
    return parts_of(drawing(*layers), no_text)


def found(*layers: Layer) -> list[tuple[str, int]]:
    """The kind of each part and how many shapes it has."""
    return [(part.kind, len(part.shapes)) for part in parts(*layers)]


@pytest.mark.parametrize("turned", [False, True])
@pytest.mark.parametrize(("high", "kind"), [(30, "word"), (20, "shape")])
def test_without_a_page_specks_are_small_beside_all_of_the_drawing(turned: bool, high: float, kind: str) -> None:
    """It is 2,000 long, across or up, and begins at 500."""
    bar = block(500, 500, 300, 2000) if turned else block(500, 900, 2000, 300)
    letters = [ell(1400 + 38 * at, 1400, 10 + 2 * at, high) for at in range(4)]
    layers = replace(drawing(layer(BLACK, bar), layer("#ff0000", *letters)), page=None)
    made = parts_of(layers, no_text)
    assert next(part.kind for part in made if part.color == "#ff0000") == kind


@pytest.mark.parametrize(
    ("element", "sizes"), [((1,), [6]), ((1, 1), [6]), ((), [3, 3])], ids=["one path", "a path in a group", "loose"]
)
def test_letters_that_the_file_holds_together_are_a_word_though_far_apart(
    element: tuple[int, ...], sizes: list[int]
) -> None:
    lefts = (500, 570, 650, 920, 990, 1070)  # 200 between the third and the fourth
    letters = [ell(left, 500, wide, 100) for left, wide in zip(lefts, (50, 60, 70, 55, 65, 75), strict=True)]
    own = [layer(BLACK, *letters, element=element)] if element else [layer(BLACK, each) for each in letters]
    made = parts(*own, layer(BLACK, block(500, 1500, 400, 30), element=(9,)))
    assert [len(part.shapes) for part in made if part.kind == "word"] == sizes


WIDE, HIGH = block(500, 500, 400, 100), block(500, 500, 100, 400)


@pytest.mark.parametrize(
    ("shape", "dot", "goes_with_it"),
    [
        (WIDE, block(600, 610, 30, 30), True),
        (WIDE, block(600, 610, 40, 40), False),  # too large
        (WIDE, block(600, 610, 40, 20), False),
        (WIDE, block(600, 619, 30, 30), True),
        (WIDE, block(600, 624, 30, 30), False),  # too far above
        (WIDE, block(600, 460, 30, 30), False),  # below
        (WIDE, block(462, 610, 30, 30), True),  # over its corner, nearly
        (WIDE, block(440, 610, 30, 30), False),
        (WIDE, block(908, 610, 30, 30), True),
        (WIDE, block(930, 610, 30, 30), False),
        (WIDE, block(475, 596, 24, 24), True),  # a little lower than the top
        (WIDE, star(600, 610, 30), False),
        (HIGH, block(520, 910, 50, 50), False),  # what is small above something high is no dot of it
    ],
)
def test_a_dot_right_above_a_wide_shape_goes_with_it(shape: Corners, dot: Corners, goes_with_it: bool) -> None:
    assert found(layer(BLACK, shape, dot)) == ([("shape", 2)] if goes_with_it else [("shape", 1)] * 2)


@pytest.mark.parametrize(("foot", "goes_with_it"), [(596, True), (590, False)])
def test_a_dot_may_reach_a_little_into_what_is_under_it(foot: float, goes_with_it: bool) -> None:
    made = found(layer(BLACK, WIDE), layer(BLACK, block(690, foot, 24, 24)))
    assert (made == [("shape", 2)]) is goes_with_it


def welded(thick: float = 30, wide: float = 300) -> tuple[Corners, Corners]:
    """Two uprights 100 high on a bar, as letters welded together are, and the belly of the first one."""
    left, foot, right = 500.0, 500.0, 500.0 + wide
    corners = [
        complex(left, foot), complex(right, foot), complex(right, foot + 100), complex(right - 20, foot + 100),
        complex(right - 20, foot + thick), complex(left + 60, foot + thick), complex(left + 60, foot + 100),
        complex(left, foot + 100),
    ]  # fmt: skip
    return corners, block(520, 540, 20, 40)


@pytest.mark.parametrize(
    ("thick", "wide", "belly", "kind"),
    [
        (30, 300, True, "word"),
        (30, 300, False, "shape"),  # no letter has a belly
        (68, 300, True, "word"),
        (76, 300, True, "shape"),  # nearly full between its uprights
        (20, 135, True, "word"),
        (20, 125, True, "shape"),  # hardly wider than high
    ],
)
def test_what_is_wide_and_open_and_has_a_belly_is_a_word_of_welded_letters(
    thick: float, wide: float, belly: bool, kind: str
) -> None:
    outer, inner = welded(thick, wide)
    (part,) = parts(layer(BLACK, outer, *[inner] * belly))
    assert (part.kind, len(part.shapes), len(part.copies), part.doubts) == (kind, 1, int(kind == "word"), ())
    assert part.box == (500, 500, 500 + wide, 600)


@pytest.mark.parametrize(
    ("other", "goes_on"),
    [
        (block(810, 500, 50, 100), True),
        (block(820, 500, 50, 100), False),  # too far
        (block(440, 500, 50, 100), True),
        (block(430, 500, 50, 100), False),
        (block(810, 500, 50, 45), True),
        (block(810, 500, 50, 35), False),  # too low
        (block(810, 500, 50, 145), True),
        (block(810, 500, 50, 155), False),  # too high
        (block(810, 542, 50, 100), True),
        (block(810, 548, 50, 100), False),  # too much of it is above the others
        (block(810, 458, 50, 100), True),
        (block(810, 452, 50, 100), False),
        (star(810, 500, 100), False),
    ],
)
def test_a_letter_beside_welded_ones_is_of_their_word(other: Corners, goes_on: bool) -> None:
    """With the dot above it, and not with another's."""
    assert found(layer(BLACK, *welded(), other)) == ([("word", 2)] if goes_on else [("word", 1), ("shape", 1)])
    left, _foot, right, top = (
        min(c.real for c in other), 0, max(c.real for c in other), max(c.imag for c in other),
    )  # fmt: skip
    dot = block((left + right) / 2 - 7, top + 5, 14, 14)
    with_dot = found(layer(BLACK, *welded(), other, dot))
    assert (("word", 3) in with_dot) is goes_on


@pytest.mark.parametrize(
    ("others", "sizes"),
    [
        ([block(900, 500, 100, 40)], [1, 1]),  # two alike are no kind
        ([block(900, 500, 100, 40), block(500, 900, 40, 100)], [3]),
        ([block(900, 500, 100, 40), block(500, 900, 40, 98)], [3]),
        ([block(900, 500, 100, 40), block(500, 900, 40, 95)], [1, 1, 1]),  # smaller
        ([block(900, 500, 100, 40), block(500, 900, 80, 50)], [1, 1, 1]),  # as large but not as long around
    ],
)
def test_three_shapes_alike_are_one_part(others: list[Corners], sizes: list[int]) -> None:
    kinds = found(layer(BLACK, block(500, 500, 100, 40), *others))
    assert kinds == [("shape", size) for size in sizes]


GROUPED = [block(100, 100, 100, 30), block(900, 100, 60, 60)]
OTHERS = [block(100, 900, 80, 50), block(900, 900, 200, 20)]
LOOSE = layer(BLACK, block(100, 1500, 30, 150), element=(9,))


@pytest.mark.parametrize(
    ("elements", "sizes"),
    [
        (((1, 1), (1, 2), (2, 1), (3, 1)), [2, 1, 1]),
        (((1, 1), (1, 2), (2, 1), (2, 2)), [2, 2]),
        (((1, 1), (2, 1), (3, 1), (4, 1)), [1, 1, 1, 1]),
        (((1, 1), (1, 2), (1, 3), (2, 1)), [1, 1, 1, 1]),  # a group of most of them says nothing
        (((1, 1, 1), (1, 1, 2), (1, 2, 1), (1, 2, 2)), [2, 2]),  # the innermost
        (((1,), (1,), (2,), (3,)), [1, 1, 1, 1]),  # one element of two shapes, in no group
        (((1, 1, 1), (1, 2, 1), (2, 1), (3, 1)), [2, 1, 1]),  # the outer one where the inner hold one each
    ],
)
def test_shapes_of_one_group_are_one_part(elements: tuple[tuple[int, ...], ...], sizes: list[int]) -> None:
    shapes = [*GROUPED, *OTHERS]
    made = parts(*(layer(BLACK, s, element=element) for s, element in zip(shapes, elements, strict=True)), LOOSE)
    assert sorted((len(part.shapes) for part in made), reverse=True) == [*sizes, 1]
    if sizes[0] == 2:
        pair = next(part for part in made if any(shape.box[:2] == (100, 100) for shape in part.shapes))
        assert sorted(shape.box[0] for shape in pair.shapes) == [100, 900]


def test_a_group_of_two_colors_is_no_part() -> None:
    layers = [
        layer(color, s, element=(at // 2, at))
        for at, (s, color) in enumerate(zip([*GROUPED, *OTHERS], (BLACK, "#ff0000", BLACK, BLACK), strict=True))
    ]
    assert sorted(len(part.shapes) for part in parts(*layers)) == [1, 1, 2]


@pytest.mark.parametrize(
    ("paper", "color", "background"),
    [
        (block(0, 0, 2000, 2000), WHITE, True),
        (block(0, 0, 2000, 2000), "#f4f4f4", True),
        (block(0, 0, 2000, 2000), "#f3ffff", False),  # each of its colors must be nearly white
        (block(0, 0, 2000, 2000), "#fff3ff", False),
        (block(0, 0, 2000, 2000), "#fffff3", False),
        (block(10, 10, 1980, 1980), WHITE, True),
        (block(20, 20, 1960, 1960), WHITE, False),  # the page is larger
        (block(0, 0, 1980, 600), WHITE, True),  # all the drawing is on it
        (block(0, 0, 1980, 300), WHITE, False),
        (block(500, 0, 300, 1980), WHITE, False),
        ([0, 2000, 2000 + 2000j, 1000 + 1960j, 2000j], WHITE, True),  # hardly dented
        ([0, 2000, 2000 + 2000j, 1000 + 1900j, 2000j], WHITE, False),
    ],
)
def test_white_paper_under_all_of_a_drawing_is_proposed_to_be_left_out(
    paper: Corners, color: str, background: bool
) -> None:
    made = parts(layer(color, paper), layer(BLACK, block(600, 200, 150, 200)), layer(BLACK, block(800, 250, 90, 300)))
    found_ = next(part for part in made if part.color == color)
    assert (found_.use, found_.doubts) == ((False, ("background",)) if background else (True, ()))
    assert all(part.use for part in made if part.color != color)


def test_white_over_others_or_alone_is_no_paper() -> None:
    paper = layer(WHITE, block(0, 0, 2000, 2000))
    assert [part.use for part in parts(paper)] == [True]
    assert [part.use for part in parts(paper, layer(BLACK, block(600, 200, 150, 200)))] == [False, True]
    assert [part.use for part in parts(layer(BLACK, block(600, 200, 150, 200)), paper)] == [True, True]


def test_what_its_reader_leaves_out_stays_so_with_no_doubt() -> None:
    (part,) = parts(layer(WHITE, block(0, 0, 500, 300), use=False))
    assert (part.use, part.doubts) == (False, ())


def test_parts_are_numbered_words_from_the_top_then_the_others_by_their_size() -> None:
    upper, belly = ([corner + 400j for corner in corners] for corners in welded())
    made = parts(
        layer(BLACK, block(100, 100, 90, 200)), layer(BLACK, block(1000, 1500, 500, 300)), layer(BLACK, *welded()),
        layer(BLACK, upper, belly),
    )  # fmt: skip
    assert [(part.label, part.kind, part.box[1]) for part in made] == [
        ("1", "word", 900), ("2", "word", 500), ("3", "shape", 1500), ("4", "shape", 100),
    ]  # fmt: skip
