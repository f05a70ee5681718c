"""Words found in drawings: of the hundred, and of a hundred more with other seeds."""

from functools import partial
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.parts.drawn_shapes import box, letters, path, star, svg
from tests.parts.find_score import look
from tests.parts.more_drawings import more_drawings
from tests.parts.word_drawings import Made, drawings
from xlbatch.geometry.outline import Segment
from xlbatch.geometry.path import transform
from xlbatch.parts.find import parts_of
from xlbatch.parts.frame import Round, Straight
from xlbatch.parts.part import BROKEN
from xlbatch.parts.set_live import text_box
from xlbatch.svg.artwork import read_layers
from xlbatch.svg.layer import Layers


def test_the_part_is_exactly_the_word_or_is_doubted(tmp_path: Path) -> None:
    """At least 90 of the hundred; a part that is not the word, or not all of it, says so itself."""
    every = [look(made, tmp_path) for made in drawings()[::3]]
    wrong = [each for each in every if not each.exact]
    assert len(wrong) <= len(every) // 10
    assert [each.made.name for each in wrong if each.part and not each.part.doubts] == []


@pytest.mark.parametrize("made", more_drawings(), ids=lambda made: made.name)
def test_words_set_in_other_ways_are_found_too(made: Made, tmp_path: Path) -> None:
    """Or, where nothing can be put in their place, told so."""
    found = look(made, tmp_path)
    broken = [part.number for part in found.parts if BROKEN in part.doubts]
    assert (found.exact, broken) == ((False, [1]) if made.name == "through the edge" else (True, []))


def found(body: str, folder: Path) -> list[tuple[str, int]]:
    """The kind of each part and how many shapes it has."""
    file = folder / "drawing.svg"
    file.write_text(svg(body), encoding="utf-8")
    layers = read_layers(file)
    assert isinstance(layers, Layers)
    return [(part.kind, len(part.shapes)) for part in parts_of(layers, partial(text_box, folder=Path()))]


def test_a_row_of_trees_or_stars_is_no_word(tmp_path: Path) -> None:
    stars = "".join(path(star(60 + 40 * n, 200, 15), "#000000") for n in range(7))
    assert found(stars, tmp_path) == [("shape", 7)]


def test_what_the_file_holds_together_is_one_part(tmp_path: Path) -> None:
    group = "".join(path(box(20 * n, 20, 20 * n + 9 + n, 40), "#000000") for n in range(3))
    loose = "".join(path(box(60 * n, 200, 60 * n + 12 + 9 * n, 230 + 30 * n), "#000000") for n in range(4))
    assert ("shape", 3) in found(f"<g>{group}</g>{loose}", tmp_path)


@pytest.mark.parametrize("left", [85, 185])
def test_a_dot_that_juts_out_over_either_end_belongs_to_what_is_under_it(left: int, tmp_path: Path) -> None:
    """A dot 20 wide above the corner of a box from 100 to 200: ink lies under its inner quarter, or three."""
    body = path(box(100, 200, 200, 290), "#000000") + path(box(left, 170, left + 20, 190), "#000000")
    assert found(body, tmp_path) == [("shape", 2)]


def test_a_word_in_the_color_of_what_it_lies_on_is_a_part(tmp_path: Path) -> None:
    word = "".join(path(shape, "#000000") for shape in letters("Anton", "VORREL", 40, 200, 200, 220))
    assert found(path(box(50, 150, 350, 250), "#000000") + word, tmp_path) == [("word", 6), ("shape", 1)]


@pytest.mark.parametrize("degrees", [0, 1, 2, 4])
def test_a_word_a_little_off_the_level_keeps_its_slope(degrees: float, tmp_path: Path) -> None:
    """New words put in its place would stand crooked beside all else."""
    word = "".join(path(shape, "#000000") for shape in letters("Anton", "NIMH", 60, 300, 200, 220))
    file = tmp_path / "drawing.svg"
    file.write_text(svg(f'<g transform="rotate({-degrees} 200 220)">{word}</g>'), encoding="utf-8")
    layers = read_layers(file)
    assert isinstance(layers, Layers)
    (part,) = parts_of(layers, partial(text_box, folder=tmp_path))
    assert part.row
    assert isinstance(part.row.frame, Straight)
    assert np.degrees(np.angle(part.row.frame.along)) == pytest.approx(degrees, abs=0.01)


@pytest.mark.parametrize(("high", "one_word"), [(0.85, True), (0.72, False)])
def test_letters_that_bounce_are_a_word_where_they_are_about_as_high(
    high: float, one_word: bool, tmp_path: Path
) -> None:
    """Every other one 34 lower, and smaller: by more than a fifth they are not one word."""
    shapes = letters("Archivo Black", "MINNIFIL", 40, 300, 200, 215)
    small = (1, 0, 0, high, 0, 34 + 215 * (1 - high))
    body = "".join(path(transform(s, small) if at % 2 else s, "#000000") for at, s in enumerate(shapes))
    assert (("word", 8) in found(body, tmp_path)) is one_word


def test_many_shapes_are_forty_parts_and_the_last_holds_the_rest(tmp_path: Path) -> None:
    body = "".join(
        path(box(20 * (n % 19), 24 * (n // 19), 20 * (n % 19) + 5 + n / 9, 24 * (n // 19) + 12 + (n % 7)), "#000000")
        for n in range(60)
    )
    parts = found(body, tmp_path)
    assert len(parts) <= 40
    assert sum(shapes for _, shapes in parts) == 60


frames = st.one_of(
    st.builds(Straight, st.just(3 + 4j), st.floats(-0.7, 0.7).map(lambda angle: complex(np.exp(1j * angle)))),
    st.builds(
        Round,
        st.just(10 - 5j),
        st.one_of(st.floats(100, 900), st.floats(-900, -100)),
        st.floats(-3, 3).map(lambda angle: complex(np.exp(1j * angle))),
    ),
)


@settings(deadline=None)
@given(frames, st.floats(-90, 90), st.floats(0, 40))
def test_a_point_put_onto_a_line_is_found_there(frame: Straight | Round, along: float, above: float) -> None:
    line: tuple[Segment, ...] = (("M", (along, above)), ("L", (along, above + 1)), ("Z", ()))
    x, y = frame.placed(line)[0][1]
    back = frame.onto(np.array([complex(x, y)]))
    assert (float(back[0][0]), float(back[1][0])) == pytest.approx((along, above), abs=1e-6)
    assert abs(frame.point(along, above) - complex(x, y)) < 1e-6
