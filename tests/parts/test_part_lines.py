"""Which line of Drawing parts is which part's, what a part looks like there, and parts as lines join them."""

from collections.abc import Sequence
from dataclasses import replace

import pytest

from tests.parts.by_hand import block, drawing, ell, layer, shape
from xlbatch.job.part_line import PartLine
from xlbatch.job.source import Source
from xlbatch.parts.find import parts_of
from xlbatch.parts.outlines import Shape
from xlbatch.parts.part import MOST_SINGLE, Copy, Part
from xlbatch.parts.part_lines import PartLooks, joined, looks_of, matched, place_text
from xlbatch.svg.layer import LiveText

HERE = Source("Drawing parts")
MARK = PartLooks("#ff0000", "", 100.0, 50.0, 40.0, 60.0)
TEXT = replace(MARK, text="CAMP 2031")
LINE = PartLine(HERE, "camp.svg", "1", "#ff0000", width=100.0, height=50.0, place="40 % across, 60 % down")


def test_what_a_part_looks_like() -> None:
    """In a drawing 400 wide and 200 high that begins at (100, 50), half a millimeter a unit."""
    part = Part(1, "shape", "#ff0000", (150.0, 70.0, 250.0, 110.0))
    looks = looks_of(part, (100.0, 50.0, 500.0, 250.0), 0.5)
    assert looks == PartLooks("#ff0000", "", 50.0, 20.0, 25.0, 80.0)
    assert place_text(looks) == "25 % across, 80 % down"
    assert place_text(replace(looks, across=24.5)) == "24.5 % across, 80 % down"
    nothing = looks_of(replace(part, box=(0.0, 0.0, 0.0, 0.0)), (0.0, 0.0, 0.0, 0.0), 1.0)
    assert (nothing.width, nothing.height, nothing.across) == (0, 0, 0)


@pytest.mark.parametrize(
    ("line", "looks", "found"),
    [
        (LINE, MARK, True),
        (replace(LINE, color="#FF0000"), MARK, True),
        (replace(LINE, color="#ff0001"), MARK, False),
        (replace(LINE, part=" 1 "), MARK, True),
        (replace(LINE, width=110.0), MARK, True),  # of another shape, a little
        (replace(LINE, width=115.0), MARK, False),
        (replace(LINE, width=90.0), MARK, True),
        (replace(LINE, width=86.0), MARK, False),
        (replace(LINE, height=46.0), MARK, True),
        (replace(LINE, height=43.0), MARK, False),
        (replace(LINE, width=200.0, height=100.0), MARK, True),  # at another size
        (replace(LINE, width=115.0, height=None), MARK, True),  # its shape is not known
        (replace(LINE, width=None, height=90.0), MARK, True),
        (replace(LINE, place="51 % across, 60 % down"), MARK, True),
        (replace(LINE, place="53 % across, 60 % down"), MARK, False),
        (replace(LINE, place="29 % across, 60 % down"), MARK, True),
        (replace(LINE, place="27 % across, 60 % down"), MARK, False),
        (replace(LINE, place="40 %, 71 %"), MARK, True),
        (replace(LINE, place="40, 73"), MARK, False),
        (replace(LINE, place="-40.0 60.0"), MARK, False),
        (replace(LINE, place="40.5 % across, 60.5 % down"), MARK, True),
        (replace(LINE, place="somewhere at 90"), MARK, True),  # no place that is understood
        (replace(LINE, text="CAMP 2031"), TEXT, True),
        (replace(LINE, text="CAMP 2032"), TEXT, False),
        (replace(LINE, text="CAMP 2031"), MARK, False),
        (replace(LINE, text="CAMP 2031", width=300.0, place="90 % across, 5 % down"), TEXT, True),  # wherever it went
        (PartLine(HERE, "camp.svg", "1"), MARK, True),  # it says nothing, and goes by its number
        (PartLine(HERE, "camp.svg", "2"), MARK, False),
        (replace(LINE, part="2"), MARK, True),  # by its looks
        (replace(LINE, part="1a"), MARK, False),  # a single shape is no part
        (replace(LINE, part=""), MARK, True),
    ],
)
def test_a_line_is_the_part_s_that_looks_as_it_says(line: PartLine, looks: PartLooks, found: bool) -> None:
    matches = matched([line], {"1": looks})
    assert matches.lines.keys() == ({"1"} if found else set())
    assert matches.lost == (() if found else (line,))
    assert all(own.part.strip() == "1" for own in matches.lines.values())


def test_numbers_go_first_and_then_the_likest() -> None:
    looks = {"1": MARK, "2": replace(MARK, across=45.0), "2a": MARK, "3": replace(MARK, across=42.0)}
    lines = [replace(LINE, part="7"), LINE, replace(LINE, part="8", replace_by="X"), replace(LINE, part="9")]
    matches = matched(lines, looks)
    assert matches.lines == {"1": LINE, "3": replace(lines[0], part="3"), "2": replace(lines[2], part="2")}
    assert matches.lost == (lines[3],)
    again = matched([LINE, replace(LINE, film="Red")], {"1": MARK})
    assert (again.lines, len(again.lost)) == ({"1": LINE}, 1)  # one line a part


def parts() -> tuple[Part, ...]:
    """A word of four letters, a bar, and five stripes."""

    def no_text(_text: LiveText) -> tuple[float, float, float, float]:
        raise AssertionError

    letters = [ell(800 + 90 * at, 900, 40 + 8 * at, 100) for at in range(4)]
    stripes = [block(100, 100 + 40 * at, 500, 12) for at in range(5)]
    return parts_of(
        drawing(layer("#ff0000", *letters), layer("#00ff00", *stripes), layer("#0000ff", block(900, 300, 300, 60))),
        no_text,
    )


def line(part: str, **cells: object) -> PartLine:
    return replace(PartLine(HERE, "camp.svg", part), **cells)  # type: ignore[arg-type]


def sizes(*lines: PartLine) -> dict[str, int]:
    return {part.label: len(part.shapes) for part in joined(parts(), {each.part: each for each in lines})}


def test_the_parts_of_the_drawing() -> None:
    assert sizes() == {"1": 4, "2": 5, "3": 1}
    assert [len(part.single) for part in parts()] == [4, 5, 0]


@pytest.mark.parametrize("wanted", [{"use": False}, {"film": "Red"}, {"replace_by": "X"}])
def test_a_single_shape_of_which_something_is_wanted_is_a_part_of_its_own(wanted: dict[str, object]) -> None:
    made = joined(parts(), {"1b": line("1b", **wanted)})
    assert {part.label: len(part.shapes) for part in made} == {"1": 3, "1b": 1, "2": 5, "3": 1}
    assert made[0].row is None  # what is left is no word that others are put in the place of
    assert made[0].shapes + made[-1].shapes != ()
    assert made[-1].shapes[0] not in made[0].shapes


def test_a_single_shape_of_which_nothing_is_wanted_stays() -> None:
    assert sizes(line("1b")) == {"1": 4, "2": 5, "3": 1}


@pytest.mark.parametrize(
    ("lines", "parts_then"),
    [
        ([line("3", join="1")], {"1": 5, "2": 5}),
        ([line("3", join=" 2 ")], {"1": 4, "2": 6}),
        ([line("3", join="3")], {"1": 4, "2": 5, "3": 1}),
        ([line("3", join="9")], {"1": 4, "2": 5, "3": 1}),
        ([line("2", join="1"), line("3", join="1")], {"1": 10}),
        ([line("2c", join="3")], {"1": 4, "2": 4, "3": 2}),
    ],
)
def test_parts_are_joined(lines: list[PartLine], parts_then: dict[str, int]) -> None:
    assert sizes(*lines) == parts_then


def test_what_is_joined_to_a_word_stands_on_its_line() -> None:
    word, stripes, bar = parts()
    together = joined((word, stripes, bar), {"3": line("3", join="1")})[0]
    assert word.row
    assert together.row is word.row
    assert (together.kind, together.copies) == ("word", word.copies)
    assert together.box == (800.0, 300.0, 1200.0, 1000.0)
    assert joined(parts(), {"1": line("1", join="3")})[-1].row is None
    two_words = joined((word, replace(word, number=2)), {"2": line("2", join="1")})
    assert [part.row for part in two_words] == [None]  # on which of both lines?
    copied = joined((stripes, replace(bar, copies=word.copies)), {"3": line("3", join="2")})
    assert copied[0].copies == word.copies


# the shapes of a part


def marks(count: int, *layers: int) -> tuple[Shape, ...]:
    made = (shape(block(100 * (count - at), 10 * (at % 2), 20, 20)) for at in range(count))
    return tuple(replace(each, layer=layers[at % len(layers)] if layers else 0) for at, each in enumerate(made))


@pytest.mark.parametrize(
    ("kind", "count", "listed"),
    [("word", 4, 4), ("shape", 4, 4), ("rest", 4, 0), ("text", 4, 0), ("word", 1, 0), ("word", 2, 2), ("word", 12, 12),
     ("word", 13, 0)],
)  # fmt: skip
def test_the_few_shapes_of_a_part_are_listed_from_left_to_right(kind: str, count: int, listed: int) -> None:
    assert MOST_SINGLE == 12
    part = Part(3, kind, "#ff0000", (0, 0, 1, 1), shapes=marks(count), use=False)  # type: ignore[arg-type]
    assert [single.label for single in part.single] == [f"3{letter}" for letter in "abcdefghijkl"[:listed]]
    lefts = [single.box[0] for single in part.single]
    assert lefts == sorted(lefts)
    assert all((s.kind, s.use, s.color, len(s.shapes)) == ("shape", False, "#ff0000", 1) for s in part.single)
    assert all(single.shapes[0].box == single.box for single in part.single)


def test_of_shapes_above_one_another_the_upper_is_listed_first() -> None:
    upper, lower = shape(block(0, 100, 20, 20)), shape(block(0, 0, 20, 20))
    part = Part(1, "shape", "#ff0000", (0, 0, 20, 120), shapes=(lower, upper))
    assert [single.box[1] for single in part.single] == [100, 0]


def test_only_the_letters_are_listed_not_their_copies() -> None:
    copies = (Copy(1, "#ff0000", "letters"), Copy(0, "#0000ff", "border", 8.0))
    part = Part(1, "word", "#ff0000", (0, 0, 1, 1), shapes=marks(8, 0, 1), copies=copies)
    assert [single.shapes[0].layer for single in part.single] == [1] * 4


@pytest.mark.parametrize(("used", "unseen"), [((True, False), 4), ((True, True), 0), ((False, False), 0)])
def test_background_seen_through_letters_is_not_cut(used: Sequence[bool], unseen: int) -> None:
    """But where all of a part is proposed to be left out, it is this that is asked."""
    layers = [layer("#ff0000", block(0, 0, 9, 9), use=use) for use in used]
    part = Part(1, "word", "#ff0000", (0, 0, 1, 1), shapes=marks(8, 0, 1))
    assert len(part.unseen(layers)) == unseen
    assert all(each.layer == 1 for each in part.unseen(layers))
