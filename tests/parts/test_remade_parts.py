"""A drawing by hand with its parts left out, on films of their own, or replaced: what is then cut, measured."""

from collections.abc import Sequence
from pathlib import Path

import numpy as np
import pytest

from tests.parts.by_hand import block, drawing, ell, layer
from xlbatch.geometry.weld import tidy
from xlbatch.lettering.fonts import find_font
from xlbatch.parts.edit import Edit, Remade, Rules
from xlbatch.parts.find import parts_of
from xlbatch.parts.frame import Frame, Round, Straight
from xlbatch.parts.grow import grown, lined
from xlbatch.parts.outline_words import OutlineWords
from xlbatch.parts.part import OPEN, Part
from xlbatch.parts.remake import remade
from xlbatch.parts.stand import Stand
from xlbatch.svg.layer import Layer

RED, GREEN, BLUE = "#ff0000", "#00ff00", "#0000ff"
RULES = Rules(gap=20.0, least=20.0, narrowest=0.8, widest=1.4, font="Anton", folder=Path())
LETTERS = [ell(800, 900, 40, 100), ell(880, 900, 50, 100), ell(970, 900, 60, 100), ell(1070, 900, 70, 100)]
WORD, BAR, GROUND = layer(RED, *LETTERS), block(100, 100, 1600, 50), block(600, 700, 800, 500)


def made(layers: Sequence[Layer], *edits: Edit) -> Remade:
    whole = drawing(*layers)
    return remade(whole, parts(layers), edits, RULES)


def parts(layers: Sequence[Layer]) -> tuple[Part, ...]:
    return parts_of(drawing(*layers), lambda _text: (0.0, 0.0, 0.0, 0.0))


def bounds(remake: Remade) -> list[tuple[str, tuple[int, ...]]]:
    return [(each.color, tuple(map(round, each.path.bounds))) for each in remake.layers.layers]


WORD_BOX, BAR_BOX = (800, 900, 1140, 1000), (100, 100, 1700, 150)


def test_parts_left_out_or_emptied_are_gone_and_only_the_former_count_no_more_for_the_width() -> None:
    layers = [WORD, layer(GREEN, BAR)]
    assert bounds(made(layers)) == [(RED, WORD_BOX), (GREEN, BAR_BOX)]
    assert made(layers).base == (100, 100, 1700, 1000)
    out = made(layers, Edit("2", use=False))
    assert (bounds(out), out.base) == ([(RED, WORD_BOX)], WORD_BOX)
    empty = made(layers, Edit("2", text=""))
    assert (bounds(empty), empty.base) == ([(RED, WORD_BOX)], (100, 100, 1700, 1000))
    nothing = made(layers, Edit("1", use=False), Edit("2", use=False))
    assert (bounds(nothing), nothing.base) == ([], (0, 0, 2000, 2000))
    assert (out.texts, out.rooms, out.notes) == ((), (), ())


def test_what_is_proposed_to_be_left_out_is_unless_it_is_wanted() -> None:
    layers = [WORD, layer(GREEN, BAR, use=False)]
    assert (bounds(made(layers)), made(layers).base) == ([(RED, WORD_BOX)], WORD_BOX)
    wanted = made(layers, Edit("2"))
    assert (bounds(wanted), wanted.base) == ([(RED, WORD_BOX), (GREEN, BAR_BOX)], (100, 100, 1700, 1000))
    assert all(each.use for each in wanted.layers.layers)


def test_a_part_on_a_film_of_its_own_has_a_color_of_its_own() -> None:
    layers = [layer(RED, *LETTERS, BAR)]
    assert bounds(made(layers, Edit("2", apart=True))) == [(RED, WORD_BOX), ("part 2", BAR_BOX)]
    border = Layer(GREEN, tidy(grown(WORD.path, 10)))
    apart = made([border, WORD], Edit("1", apart=True))  # its border stays on its own film
    assert bounds(apart) == [(GREEN, (790, 890, 1150, 1010)), ("part 1", WORD_BOX)]
    new = made([border, WORD], Edit("1", apart=True, text="NIM"))
    assert [each.color for each in new.layers.layers] == [GREEN, "part 1"]


def test_new_words_stand_in_the_middle_of_the_sample_s_line_with_their_border_and_shadow() -> None:
    shadow = Layer(BLUE, tidy(WORD.path.transform(1, 0, 0, 1, 12, -8)))
    border = Layer(GREEN, tidy(grown(WORD.path, 10)))
    remake = made([shadow, border, WORD], Edit("1", text="NIM"))
    assert (remake.texts, remake.notes, remake.base) == (("NIM",), (), (790, 890, 1152, 1010))
    (_, s), (_, b), (_, w) = ((each.color, np.array(each.path.bounds)) for each in remake.layers.layers)
    assert w[0] + w[2] == pytest.approx(800 + 1140, abs=1)
    assert (w[1], w[3]) == pytest.approx((900, 1000), abs=1)
    assert remake.rooms[0] == pytest.approx(tuple(w), abs=0.01)
    assert b - w == pytest.approx(np.array((-10, -10, 10, 10)), abs=0.2)
    assert s - w == pytest.approx(np.array((12, -8, 12, -8)), abs=0.1)


def test_a_line_about_new_words_is_as_wide() -> None:
    stroke = Layer(GREEN, tidy(grown(WORD.path, 10)), (1,))
    remake = made([stroke, WORD._replace(element=(1,))], Edit("1", text="NIM"))
    line, words = (each.path for each in remake.layers.layers)
    assert np.array(line.bounds) - np.array(words.bounds) == pytest.approx(np.array((-10, -10, 10, 10)), abs=0.2)
    assert abs(line.area) == pytest.approx(abs(lined(words, 10).area), rel=0.01)


def test_open_letters_are_cut_anew_and_left_out_they_are_closed() -> None:
    layers = [layer(GREEN, GROUND, *LETTERS)]
    assert parts(layers)[0].color == OPEN
    (closed,) = made(layers, Edit("1", use=False)).layers.layers
    assert abs(closed.path.area) == pytest.approx(800 * 500)
    (new,) = made(layers, Edit("1", text="NIM")).layers.layers
    assert new.path.bounds == (600, 700, 1400, 1200)
    assert 0.9 * 800 * 500 < abs(new.path.area) < 0.98 * 800 * 500
    assert not made(layers, Edit("1", text="NIM")).notes  # openings are seen on their own film


@pytest.mark.parametrize(
    ("ground", "told"),
    [
        ([layer(RED, GROUND)], True),
        ([layer(GREEN, GROUND)], False),
        ([layer(RED, GROUND), layer(GREEN, block(650, 750, 700, 400))], False),  # on another color between
        ([layer(GREEN, GROUND), layer(RED, block(650, 750, 700, 400))], True),
        ([layer(RED, block(600, 700, 800, 230))], False),  # less than half of them lie on it
        ([layer(RED, BAR)], False),
    ],
)
def test_words_that_would_lie_on_their_own_color_are_told_and_not_cut(ground: list[Layer], told: bool) -> None:
    remake = made([*ground, WORD], Edit("1", text="NIM"))
    assert [note.code for note in remake.notes] == ["part-same-film"] * told
    assert bool(remake.texts) is not told


def test_under_the_words_is_what_counts_and_a_border_is_seen_around_them() -> None:
    over = made([WORD, layer(RED, block(600, 880, 800, 8))], Edit("1", text="NIM"))
    assert not over.notes
    bordered = made([layer(RED, GROUND), Layer(GREEN, tidy(grown(WORD.path, 10))), WORD], Edit("1", text="NIM"))
    assert not bordered.notes


def test_what_letters_left_of_a_bar_is_told_and_nothing_is_cut() -> None:
    pieces = [block(500, 500, 70, 100), ell(600, 500, 50, 100), ell(700, 500, 60, 100), block(800, 500, 80, 100)]
    remake = made([layer(RED, *pieces)], Edit("1", text="NIM"))
    assert ([note.code for note in remake.notes], remake.texts) == (["part-broken"], ())


def test_other_words_keep_their_distance_from_what_stays() -> None:
    """To 1,700 on the right, a bar at 720 on the left: both sides end 60 from the sample, 20 from the bar."""
    post = layer(GREEN, block(690, 850, 30, 300))
    remake = made([post, WORD, layer(BLUE, BAR)], Edit("1", text="HILLEMANTHEIM"))
    assert remake.rooms[0][0] == pytest.approx(740, abs=1)
    assert remake.rooms[0][2] == pytest.approx(1200, abs=1)
    gone = made([post, WORD, layer(BLUE, BAR)], Edit("1", text="HILLEMANTHEIM"), Edit("3", use=False))
    assert {part.color: part.label for part in parts([post, WORD, layer(BLUE, BAR)])}[GREEN] == "3"
    assert gone.rooms[0][0] < 740


@pytest.mark.parametrize("frame", [Straight(500 + 700j), Straight(500 + 700j, 0.8 - 0.6j), Round(500 + 700j, 900.0),
                                   Round(500 + 700j, -900.0, -1j), Round(500 + 700j, 900.0, 1.0)])  # fmt: skip
@pytest.mark.parametrize(("span", "anchor"), [((0.0, 200.0), 0.5), ((300.0, 500.0), 0.0), ((-200.0, -100.0), 1.0)])
def test_words_are_set_about_their_place_on_the_line(frame: Frame, span: tuple[float, float], anchor: float) -> None:
    face = find_font("Anton", Path())
    assert face
    words = OutlineWords(face, "NIM", Stand(frame, span, 0.0, 100.0, [], anchor=anchor))
    assert (words.small, words.cap) == (False, face.cap_height)
    assert OutlineWords(face, "Nim", Stand(frame, span, 0.0, 100.0, [])).small
    across, up = 150 / words.width, 100 / words.cap
    at = span[0] + anchor * (span[1] - span[0])
    for middle in (None, 80.0):
        path = words.placed(across, up, middle)
        points = np.array([complex(*place) for _, places in path.segments for place in places])
        along, above = frame.onto(points)
        assert (along.min(), along.max()) == pytest.approx((at - 75, at + 75), abs=1)
        wanted = (0, 100) if middle is None else (30, 130)
        assert (above.min(), above.max()) == pytest.approx(wanted, abs=2)
