"""How high and wide new words are set in a sample's room: sums of school arithmetic. In units."""

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

import pathops
import pytest

from tests.parts.by_hand import block, layer
from tests.parts.test_room import box
from xlbatch.parts.edit import Fit, Rules
from xlbatch.parts.fitting import Fitted, Fitting, Room
from xlbatch.parts.frame import Round, Straight
from xlbatch.parts.outlines import Shape
from xlbatch.parts.part import Copy, Part
from xlbatch.parts.stand import Stand

SKY = box(0, 300, 2000, 50)  # all the drawing is 2,000 wide
SAMPLE = box(900, 0, 200, 100)
STAND = Stand(Straight(0j), (900, 1100), 0.0, 100.0, [SAMPLE])
RULES = Rules(gap=20.0, least=40.0, narrowest=0.8, widest=1.4, font="", folder=Path())


class Solid:
    """Words that are one block, its feet on the line and its middle at 1,000."""

    def __init__(self, width: float, height: float = 10.0, *, small: bool = False) -> None:
        self.width, self.height, self.cap = width, height, 10.0
        self.small, self.text = small, "WORDS"

    def placed(self, across: float, up: float, middle: float | None = None) -> pathops.Path:
        assert middle is None
        return layer("", block(1000 - self.width * across / 2, 0, self.width * across, self.height * up)).path


def fitted(
    words: Solid, *others: Shape, stand: Stand = STAND, copies: Sequence[Copy] = (), fit: Fit = "height",
    doubts: tuple[str, ...] = (),
) -> tuple[Fitted | None, list[str]]:  # fmt: skip
    part = Part(1, "word", "", SAMPLE.box, copies=tuple(copies), doubts=doubts)
    fitting = Fitting(part, stand, Room([SKY, *others]), RULES)
    made = fitting.fitted(words, fit)
    sizes = [note.facts["size"] for note in fitting.notes if "size" in note.facts]
    return made, [note.code for note in fitting.notes] + [f"{size} %" for size in sizes]


@pytest.mark.parametrize(
    ("width", "others", "across", "up"),
    [
        (15, [], 10, 10),  # as high as the sample
        (60, [], 10, 10),  # wider than it, and free
        (80, [box(1420, 0, 50, 50)], 10, 10),  # to 1,400, 20 from its neighbor
        (100, [box(1420, 0, 50, 50)], 8, 10),  # narrower: 800 wide
        (125, [box(1420, 0, 50, 50)], 6.4, 8),  # and lower
        (125, [box(580 - 50, 0, 50, 50)], 6.4, 8),  # to the other side
        (100, [box(1420, -40, 50, 25)], 8, 10),  # where descenders may be
        (100, [box(1420, -60, 50, 30)], 10, 10),
        (100, [box(1420, 105, 50, 90)], 8, 10),  # where accents may be
        (100, [box(1420, 115, 50, 90)], 10, 10),
        (50, [box(1060, 10, 50, 50)], 4, 5),  # what stands within its span is no neighbor
        (196, [], 10, 10),  # from edge to edge, less the gaps
        (245, [], 8, 10),
    ],
)
def test_words_are_as_high_as_the_sample_then_narrower_then_lower(
    width: float, others: Sequence[Shape], across: float, up: float
) -> None:
    made, notes = fitted(Solid(width), *others)
    assert made
    assert (made.across, made.up) == pytest.approx((across, up), rel=0.01)
    assert (made.middle, notes) == (None, [])


def test_the_gap_is_counted_from_the_border() -> None:
    border = Copy(0, "", "border", 30.0)
    made, _ = fitted(Solid(100), box(1450, 0, 50, 50), copies=[border, Copy(0, "", "letters")])
    assert made
    assert made.across == pytest.approx(8, rel=0.01)


@pytest.mark.parametrize(("cap", "fits"), [(41, True), (39, False)])
def test_words_are_never_lower_than_the_least(cap: float, fits: bool) -> None:
    """Between neighbors that leave 400, so wide that at four fifths of their usual width they are `cap` high."""
    made, notes = fitted(Solid(400 / 0.8 / cap * 10), box(1220, 0, 50, 50), box(700, 0, 80, 50))
    assert bool(made) is fits
    assert notes == ([] if fits else ["part-too-long"])


def test_a_low_sample_s_words_may_be_as_low() -> None:
    low = replace(STAND, cap=30.0)
    made, notes = fitted(Solid(10), stand=low)
    assert made == Fitted(3.0, 3.0)
    assert not notes
    assert fitted(Solid(1000), stand=low) == (None, ["part-too-long"])


def test_words_are_as_wide_as_their_line_is_long() -> None:
    made, _ = fitted(Solid(50), stand=replace(STAND, longest=400.0))
    assert made
    assert (made.across, made.up) == pytest.approx((8, 10))


@pytest.mark.parametrize(("anchor", "width", "across"), [(0.0, 108, 10), (0.0, 135, 8), (1.0, 108, 10), (1.0, 135, 8)])
def test_words_put_at_one_end_have_the_room_to_the_other(anchor: float, width: float, across: float) -> None:
    """1,080 from 900 to 1,980, or from 20 to 1,100."""
    made, _ = fitted(Solid(width), stand=replace(STAND, anchor=anchor))
    assert made
    assert made.across == pytest.approx(across, rel=0.01)


@pytest.mark.parametrize(
    ("width", "height", "across", "up"),
    [
        (20, 10, 10, 10),
        (16, 10, 12.5, 10),  # widened
        (10, 10, 14, 10),  # no further than allowed
        (24, 10, 200 / 24, 10),  # made narrower
        (40, 10, 5, 6.25),  # no further than allowed
        (20, 12, 10, 100 / 12),  # with descenders
    ],
)
def test_words_fill_a_box(width: float, height: float, across: float, up: float) -> None:
    made, notes = fitted(Solid(width, height), fit="box")
    assert made
    assert (made.across, made.up, made.middle) == pytest.approx((across, up, 50))
    assert not notes


def test_the_box_of_a_sample_that_reaches_below_its_line() -> None:
    made, _ = fitted(Solid(20), stand=replace(STAND, low=-20.0), fit="box")
    assert made
    assert (made.across, made.up, made.middle) == pytest.approx((10, 12, 40))


@pytest.mark.parametrize(("width", "height", "scale"), [(40, 10, 5), (10, 10, 12)])
def test_where_no_line_is_told_words_lie_in_the_middle_of_the_box_and_this_is_told(
    width: float, height: float, scale: float
) -> None:
    untold = replace(STAND, told=False, low=-20.0)
    assert fitted(Solid(width, height, small=True), stand=untold) == (Fitted(scale, scale, 40.0), ["part-no-line"])


@pytest.mark.parametrize(("small", "capitals", "asked"), [(1, 1, 1), (1, 0, 0), (0, 1, 0), (0, 0, 0)])
def test_small_letters_for_a_sample_of_capitals_are_asked(small: bool, capitals: bool, asked: bool) -> None:
    made, notes = fitted(Solid(15, small=bool(small)), stand=replace(STAND, capitals=bool(capitals)))
    assert made
    assert notes == ["part-capitals"] * asked


def test_doubts_are_told_with_the_words() -> None:
    assert fitted(Solid(15), doubts=("near", "covered"))[1] == ["part-doubtful"] * 2


@pytest.mark.parametrize(
    ("other", "copies", "steps"),
    [
        (box(800, 103, 400, 10), [], 0),  # just above
        (box(800, 99, 400, 10), [], 1),
        (box(800, 95, 400, 10), [], 2),  # 0.96 of 0.96
        (box(1050, 95, 30, 10), [], 2),  # a little of it
        (box(800, 101.5, 400, 10), [Copy(0, "", "border")], 0),
        (box(800, 100.5, 400, 10), [Copy(0, "", "holes")], 1),  # openings stay clear of edges
        (box(800, 101.5, 400, 10), [Copy(0, "", "holes")], 0),
    ],
)
def test_words_that_would_touch_what_the_sample_did_not_are_made_smaller(
    other: Shape, copies: Sequence[Copy], steps: int
) -> None:
    made, notes = fitted(Solid(15), other, stand=replace(STAND, sample=[box(900, 0, 200, 60)]), copies=copies)
    assert made
    assert made.up == pytest.approx(10 * 0.96**steps)
    assert made.across == pytest.approx(made.up)
    assert notes == (["part-made-smaller", f"{(100, 96, 92)[steps]} %"] if steps else [])


def test_what_the_sample_touched_may_be_touched() -> None:
    made, notes = fitted(Solid(15), box(800, 50, 400, 100))
    assert made == Fitted(10.0, 10.0)
    assert not notes


def test_words_stay_within_what_the_sample_lay_within() -> None:
    """A ground to 99 above the line; the sample is 60 high."""
    low = replace(STAND, sample=[box(900, 0, 200, 60)])
    made, notes = fitted(Solid(15), box(850, -20, 300, 119), stand=low)
    assert made
    assert (made.across, made.up) == pytest.approx((9.6, 9.6))
    assert notes == ["part-made-smaller", "96 %"]
    assert fitted(Solid(15), box(850, -20, 300, 121), stand=low) == (Fitted(10.0, 10.0), [])


def test_words_that_touch_however_small_are_told_as_too_long() -> None:
    assert fitted(Solid(15), box(990, 20, 20, 10), stand=replace(STAND, sample=[box(900, 0, 50, 100)])) == (
        None,
        ["part-too-long"],
    )


@pytest.mark.parametrize(("radius", "high", "room"), [(400, 110, 1047), (-400, 110, 1047)])
def test_the_room_of_an_arc_is_the_same_for_heads_in_and_out(radius: float, high: float, room: float) -> None:
    far = [box(x, y, 10, 10) for x in (-3000, 3000) for y in (-3000, 3000)]
    stand = Stand(Round(0j, radius), (-100, 100), 0.0, 100.0, [box(-100, 400, 200, 100)])
    assert Room(far).beside(stand, -25.0, high) == pytest.approx((-room, room), abs=4)
