"""What goes with a word besides its letters: borders, shadows, lines about them and openings of their shape; and what
makes it unsure that the letters are a word. Four L of 100 units, drawn by hand."""

import pytest

from tests.parts.by_hand import Corners, block, drawing, ell, layer, shape
from xlbatch.geometry.weld import path_of, segments_in, tidy
from xlbatch.parts.find import parts_of
from xlbatch.parts.grow import grown
from xlbatch.parts.left_over import is_what_letters_left
from xlbatch.parts.letter_rows import rows_of
from xlbatch.parts.part import BROKEN, OPEN, Part
from xlbatch.svg.layer import Layer, LiveText

RED, BLUE = "#ff0000", "#0000ff"
LETTERS = [ell(800, 900, 40, 100), ell(880, 900, 50, 100), ell(970, 900, 60, 100), ell(1070, 900, 70, 100)]  # to 1140


def no_text(_text: LiveText) -> tuple[float, float, float, float]:
    raise AssertionError


def word_with(*layers: Layer, element: tuple[int, ...] = (), over: bool = True) -> Part:
    """The part of the letters, in a drawing with other layers under them, or over them."""
    letters = layer(RED, *LETTERS, element=element)
    made = parts_of(drawing(*layers, letters) if over else drawing(letters, *layers), no_text)
    return next(part for part in made if part.kind == "word" and part.color == RED)


def moved(corners: Corners, by: complex) -> Corners:
    return [corner + by for corner in corners]


def bordered(wide: float, by: complex = 0, left_out: int = 0) -> Layer:
    """The letters grown, in blue; of the first ones none."""
    path = grown(layer(BLUE, *LETTERS[left_out:]).path, wide)
    return Layer(BLUE, tidy(path.transform(1, 0, 0, 1, by.real, by.imag)))


@pytest.mark.parametrize(
    ("under", "wide"),
    [
        (bordered(8), 8),
        (bordered(0.7), 0.7),
        (bordered(40), 40),
        (bordered(50), None),  # too wide for one
        (bordered(8, 4), 8),
        (bordered(8, -4j), 8),
        (bordered(8, 6), None),  # off to the side
        (bordered(8, 6j), None),
        (bordered(8, left_out=1), None),
        (layer(BLUE, block(790, 890, 360, 120)), None),  # a box about them
    ],
)
def test_letters_grown_are_their_border(under: Layer, wide: float | None) -> None:
    part = word_with(under)
    if wide is None:
        assert [copy.kind for copy in part.copies] == ["letters"]
        assert len(part.shapes) == 4
    else:
        letters, border = part.copies
        assert (letters.kind, letters.color, letters.layer) == ("letters", RED, 1)
        assert (border.kind, border.color, border.layer) == ("border", BLUE, 0)
        assert border.grown == pytest.approx(wide, abs=0.1)
        assert border.moved == 0


def test_letters_hardly_larger_are_the_letters_once_more() -> None:
    assert [copy.kind for copy in word_with(bordered(0.3)).copies] == ["letters", "letters"]


def test_letters_hardly_larger_and_other_ink_are_no_border() -> None:
    other = bordered(0.3)
    other.path.addPath(layer(BLUE, block(820, 930, 18, 60)).path)
    assert [copy.kind for copy in word_with(other).copies] == ["letters"]


def test_a_border_of_other_bits_is_none() -> None:
    """As wide about the letters, but not lying under them, or of other shapes."""
    frame = [*LETTERS, block(780, 880, 380, 140)]
    assert [copy.kind for copy in word_with(layer(BLUE, *frame)).copies if copy.kind == "border"] == []
    lines = [block(780, 880, 380, 30), block(780, 990, 380, 30)]
    assert [copy.kind for copy in word_with(layer(BLUE, *lines)).copies] == ["letters"]


def test_a_box_about_letters_with_a_slot_through_them_is_no_border() -> None:
    """It has as much ink as the letters 20 wider, but a quarter of them lies on none."""
    slotted = [780 + 880j, 1160 + 880j, 1160 + 930j, 800 + 930j, 800 + 970j, 1160 + 970j, 1160 + 1020j, 780 + 1020j]
    assert [copy.kind for copy in word_with(layer(BLUE, slotted)).copies] == ["letters"]


@pytest.mark.parametrize(
    ("by", "shadow"), [(10 - 6j, True), (-8j, True), (44, True), (-44j, True), (48, False), (48j, False), (-48, False)]
)
def test_letters_once_more_and_moved_are_their_shadow(by: complex, shadow: bool) -> None:
    part = word_with(layer(BLUE, *(moved(letter, by) for letter in LETTERS)))
    others = part.copies[1:]
    assert [(copy.kind, copy.color, copy.layer) for copy in others] == [("letters", BLUE, 0)] * shadow
    assert [copy.moved for copy in others] == pytest.approx([by] * shadow)
    assert len(part.shapes) == (8 if shadow else 4)


@pytest.mark.parametrize(("thin", "shadow"), [(29.5, True), (26, False)])
def test_a_shadow_has_as_much_ink(thin: float, shadow: bool) -> None:
    """The letters' uprights are 0.3 of their width; those of one with less ink are no copy."""
    others = [
        [c.real + (thin / 30 - 1) * 0.3 * wide * (0 < c.real - x < wide * 0.9) + 1j * c.imag + 10 for c in letter]
        for letter, x, wide in zip(LETTERS, (800, 880, 970, 1070), (40, 50, 60, 70), strict=True)
    ]
    assert (len(word_with(layer(BLUE, *others)).copies) == 2) is shadow


@pytest.mark.parametrize(("element", "kind"), [((1,), "stroke"), ((2,), "border")])
def test_a_line_about_letters_is_of_their_own_element(element: tuple[int, ...], kind: str) -> None:
    _letters, line = word_with(bordered(8)._replace(element=element), element=(1,)).copies
    assert line.kind == kind
    assert line.grown == pytest.approx(8, abs=0.1)


def thick(left: float, wide: float) -> Corners:
    """An L as large as a letter, with 70 % more ink."""
    corners = (0, wide, wide + 50j, 0.5 * wide + 50j, 0.5 * wide + 100j, 100j)
    return [left + 900j + corner for corner in corners]


PANEL = block(700, 800, 600, 300)


@pytest.mark.parametrize(
    ("openings", "found"),
    [
        (LETTERS, 4),
        (LETTERS[1:], 3),
        (LETTERS[2:], 0),  # too few
        ([moved(letter, 4) for letter in LETTERS], 4),
        ([moved(letter, 6) for letter in LETTERS], 0),
        ([moved(letter, -6j) for letter in LETTERS], 0),
        ([thick(letter[0].real, wide) for letter, wide in zip(LETTERS, (40, 50, 60, 70), strict=True)], 0),
        ([block(letter[0].real, 900, wide, 100) for letter, wide in zip(LETTERS, (40, 50, 60, 70), strict=True)], 0),
    ],
)
def test_openings_of_the_letters_shape_go_with_them(openings: list[Corners], found: int) -> None:
    """In a panel under them, with what lies in the openings."""
    island = block(809, 960, 1, 20)
    part = word_with(layer(BLUE, PANEL, *openings, *[island] * (found == 4 and openings == LETTERS)))
    assert len(part.holes) == found
    assert [(copy.kind, copy.color, copy.layer) for copy in part.copies[1:]] == [("holes", BLUE, 0)] * bool(found)


@pytest.mark.parametrize(("openings", "found"), [(2, 0), (3, 3), (5, 5)])
def test_three_openings_of_five_are_enough(openings: int, found: int) -> None:
    letters = [*LETTERS, ell(1160, 900, 45, 100)]
    made = parts_of(drawing(layer(BLUE, PANEL, *letters[:openings]), layer(RED, *letters)), no_text)
    assert len(next(part for part in made if part.color == RED).holes) == found


def test_what_lies_in_an_opening_goes_with_it_and_what_lies_beside_it_does_not() -> None:
    island, beside = block(802, 930, 8, 40), block(840, 950, 30, 30)
    with_both = word_with(layer(BLUE, PANEL, *LETTERS, island, beside), over=False)
    assert sorted(shape.box[0] for shape in with_both.shapes if shape.layer) == [802]


def test_letters_that_are_openings_are_a_word_with_their_bellies() -> None:
    belly = block(1080, 950, 6, 20)
    made = parts_of(drawing(layer(BLUE, PANEL, *LETTERS, belly, block(20, 20, 30, 300))), no_text)
    word = next(part for part in made if part.color == OPEN)
    assert (word.kind, len(word.holes), [s.box[0] for s in word.shapes]) == ("word", 4, [1080])
    assert [(copy.kind, copy.layer, copy.color) for copy in word.copies] == [("holes", 0, BLUE)]
    assert word.box == (800.0, 900.0, 1140.0, 1000.0)
    assert [(part.kind, part.doubts) for part in made] == [("word", ()), ("shape", ()), ("shape", ())]


def test_letters_open_in_two_layers_are_cut_anew_in_both() -> None:
    made = parts_of(drawing(layer(BLUE, PANEL, *LETTERS), layer("#00ff00", PANEL, *LETTERS)), no_text)
    word = made[0]
    assert (word.color, [(copy.kind, copy.layer) for copy in word.copies]) == (OPEN, [("holes", 0), ("holes", 1)])
    assert (len(word.holes), [part.kind for part in made[1:]]) == (8, ["shape", "shape"])


def test_letters_drawn_one_by_one_are_cut_in_the_topmost_layer() -> None:
    made = parts_of(drawing(*(layer(RED, letter) for letter in LETTERS), layer(BLUE, block(50, 50, 90, 300))), no_text)
    assert [(copy.kind, copy.layer) for copy in made[0].copies] == [("letters", 3)]


# doubts


@pytest.mark.parametrize(
    ("over", "doubts"),
    [
        (block(790, 940, 300, 20), ("covered",)),
        (block(790, 860, 300, 20), ()),  # beside them
        (block(400, 940, 1000, 150), ("covered",)),
        (block(50, 940, 1800, 1000), ()),  # it lies over more than the word
    ],
)
def test_a_word_that_something_lies_over_is_doubted(over: Corners, doubts: tuple[str, ...]) -> None:
    assert word_with(layer(BLUE, over), over=False).doubts == doubts
    assert word_with(layer(BLUE, over)).doubts == ()


@pytest.mark.parametrize(
    ("elements", "doubts"),
    [
        (((1,),) * 5, ("near",)),
        (((1, 1), (1, 2), (1, 3), (1, 4), (2,)), ()),  # a group of the letters alone
        (((1, 1), (1, 2), (1, 3), (1, 4), (1, 5)), ("near",)),
        (((1, 1, 1), (1, 1, 2), (1, 1, 3), (1, 1, 4), (1, 2)), ()),
        (((), (), (), (), ()), ("near",)),
        (((1,), (2,), (3,), (4,), (5,)), ("near",)),
    ],
)
def test_a_letter_that_may_belong_to_a_word_is_asked_unless_the_file_holds_the_word_together(
    elements: tuple[tuple[int, ...], ...], doubts: tuple[str, ...]
) -> None:
    shapes = [*LETTERS, ell(1170, 930, 45, 100)]
    made = parts_of(drawing(*(layer(RED, s, element=e) for s, e in zip(shapes, elements, strict=True))), no_text)
    word = next(part for part in made if part.kind == "word")
    assert (len(word.shapes), word.doubts) == (4, doubts)


BETWEEN = [ell(100, 0, 50, 100), ell(200, 0, 60, 100)]
END_LEFT, END_RIGHT = block(0, 0, 70, 100), block(300, 0, 80, 100)


@pytest.mark.parametrize(
    ("first", "last", "bar"),
    [
        (END_LEFT, END_RIGHT, True),
        (ell(0, 0, 70, 100), END_RIGHT, False),
        (END_LEFT, ell(300, 0, 70, 100), False),
        (block(0, 0, 55, 100), END_RIGHT, False),  # too narrow
        (block(0, 0, 65, 100), block(300, 0, 55, 100), False),
        ([0, 70, 70 + 20j, 65 + 50j, 70 + 80j, 70 + 100j, 100j], END_RIGHT, True),  # it is eaten at its inner end
        ([0, 70, 70 + 20j, 30 + 50j, 70 + 80j, 70 + 100j, 100j], END_RIGHT, False),
        (END_LEFT, [300, 380, 380 + 100j, 300 + 100j, 300 + 80j, 305 + 50j, 300 + 20j], True),
        (END_LEFT, [300, 380, 380 + 100j, 300 + 100j, 300 + 80j, 350 + 50j, 300 + 20j], False),
    ],
)
def test_the_ends_of_a_bar_are_no_word(first: Corners, last: Corners, bar: bool) -> None:
    """What letters that broke through a bar left of it: solid where it ends."""
    marks = [shape(corners) for corners in (first, *BETWEEN, last)]
    (row,) = rows_of(marks, 2000.0)
    assert is_what_letters_left(row) is bar
    made = parts_of(drawing(layer(RED, *(moved(m, 500 + 500j) for m in (first, *BETWEEN, last)))), no_text)
    assert [part.doubts for part in made] == [(BROKEN,) if bar else ()]


def test_a_path_grown_is_larger_by_as_much_on_every_side() -> None:
    path = layer(RED, block(10, 20, 100, 50)).path
    assert grown(path, 8).bounds == pytest.approx((2, 12, 118, 78), abs=0.01)
    assert grown(path, 0).bounds == (10, 20, 110, 70)
    assert not len(grown(path_of(()), 8))
    assert segments_in(grown(path, -1)) == segments_in(path)
