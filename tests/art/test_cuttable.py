"""What is told of pieces too thin for their film: how thin, of how many, and which size would do."""

from dataclasses import replace
from typing import Any

import pytest

from xlbatch.art.bench import Bench
from xlbatch.art.cuttable import check_cuttable
from xlbatch.art.decal import Decal
from xlbatch.art.thin import Thin
from xlbatch.geometry.outline import Outline
from xlbatch.problems import Problem

IN = 25.4
GROW_NOT = "choose another font."


def told(
    make: Any, *found: tuple[Decal, Thin | None], fine: bool = False
) -> tuple[tuple[Decal, ...], tuple[Problem, ...]]:
    """What is told where the decals' outlines, each of its own, are measured so."""
    decals = [decal for decal, _ in found]
    garments = [make.garment(decal.spec, no=decal.garment_no) for decal in decals]
    bench = Bench(make.job(), garments)
    thin_of: dict[int, tuple[Thin, ...]] = {id(decal.outline): (thin,) if thin else () for decal, thin in found}

    def thin(outline: Outline, limit: float) -> tuple[tuple[Thin, ...], bool]:
        assert limit == 1.0  # mm, of both films
        return thin_of[id(outline)], fine

    bench.thin = thin  # type: ignore[method-assign]
    return check_cuttable(bench, garments, decals)


@pytest.fixture
def letters(make: Any) -> Decal:
    """Letters 1 in high and 2 in wide on a tee with 17 in of room."""
    decals: tuple[Decal, ...] = make.drawn(make.spec(scale=False), who="H")[0]
    return replace(decals[0], width=2 * IN, height=IN, cap_height=IN)


def other(decal: Decal, no: int, **changes: Any) -> Decal:
    """The same on another garment."""
    assert decal.outline
    return replace(decal, garment_no=no, outline=replace(decal.outline), **changes)


def gap(width: float, grow: float) -> Thin:
    return Thin("gap", width, grow, ((1.0, 2.0),))


@pytest.mark.parametrize(
    ("grow", "size", "todo"),
    [
        (2.0, (2, 1), "It passes with letters 2 in high"),
        (2.01, (2, 1), "It passes with letters 2 1/8 in high"),  # never less than would do
        (2.9, (2, 1), "It passes with letters 3 in high"),
        (3.1, (2, 1), GROW_NOT),  # more would be another design
        (2.0, (8.4, 1), "It passes with letters 2 in high"),
        (2.0, (8.6, 1), GROW_NOT),  # wider than the garment has room for
        (2.5, (5, 4.5), "It passes with letters 2 1/2 in high"),
        (2.6, (5, 4.5), GROW_NOT),  # film is 11 1/2 in wide
    ],
)
def test_letters_are_told_the_height_at_which_they_pass(
    make: Any, letters: Decal, grow: float, size: tuple[float, float], todo: str
) -> None:
    decal = replace(letters, width=size[0] * IN, height=size[1] * IN)
    (marked,), (found,) = told(make, (decal, gap(0.5, grow)))
    assert marked.thin == ((1.0, 2.0),)
    assert found.rows == (2,)
    assert todo in found.todo
    assert ("It passes" in found.todo) == ("It passes" in todo)


def test_one_problem_tells_the_thinnest_and_the_size_at_which_all_pass(make: Any, letters: Decal) -> None:
    found = (letters, gap(0.8, 1.5)), (other(letters, 2), gap(0.3, 1.2)), (other(letters, 3), gap(0.5, 2.0))
    _, (problem,) = told(make, *found)
    assert problem.code == "gap-thin"
    assert problem.rows == (2, 3, 4)
    assert "“H” and 2 more: a gap is only 0.011 in wide" in problem.wrong  # 0.3 mm is 0.0118 in
    assert "from 0.039 in" in problem.wrong  # 1 mm
    assert "It passes with letters 2 in high" in problem.todo
    _, (problem,) = told(make, *found, (other(letters, 4), gap(0.9, 4.0)))
    assert "It passes" not in problem.todo
    for count, more in ((1, "“H”:"), (2, "“H” and 1 more:")):
        assert more in told(make, *found[:count])[1][0].wrong


def test_kinds_films_and_borders_are_told_apart(make: Any, letters: Decal) -> None:
    found = [
        (letters, gap(0.8, 1.5)),
        (other(letters, 2), Thin("stroke", 0.8, 1.5, ((1, 2),))),
        (other(letters, 3, border=True), gap(0.8, 1.5)),
        (other(letters, 4, film="Gold smooth"), Thin("dot", 0.8, 1.5, ((1, 2),))),
    ]
    _, problems = told(make, *found)
    assert [(each.code, each.rows) for each in problems] == [
        ("gap-thin", (2,)), ("stroke-thin", (3,)), ("gap-thin", (4,)), ("dot-small", (5,)),
    ]  # fmt: skip


def test_artwork_is_told_the_width_of_its_whole_drawing(make: Any, letters: Decal) -> None:
    spec = make.artwork(artwork="", width=2 * IN, height=IN, scale=False)
    part = replace(letters, spec=spec, text="", cap_height=None, whole=(4 * IN, 2 * IN))
    _, (found,) = told(make, (part, gap(0.8, 1.5)))
    assert "It passes at 6 in wide" in found.todo
    assert found.where == spec.source.at("Width")
    _, (found,) = told(make, (replace(part, whole=None), gap(0.8, 1.5)))
    assert "It passes at 3 in wide" in found.todo
    _, (found,) = told(make, (replace(part, whole=(8.6 * IN, IN)), gap(0.8, 2.0)))
    assert "Draw it bolder" in found.todo


def test_what_would_not_hold_is_told_of_each_piece_by_itself(make: Any, letters: Decal) -> None:
    _, problems = told(make, (letters, gap(0.2, 2.0)), (other(letters, 2), gap(0.2, 4.0)), fine=True)
    assert [(each.code, each.rows) for each in problems] == [("decal-too-fine", (2,)), ("decal-too-fine", (3,))]
    assert problems[0].where == letters.spec.source.at("Height")
    assert "It passes with letters 2 in high" in problems[0].todo
    assert "It passes" not in problems[1].todo


def test_a_box_without_an_outline_or_of_an_unknown_film_is_not_measured(make: Any, letters: Decal) -> None:
    for decal in (replace(letters, outline=None), replace(letters, film="Nosuch")):
        assert told(make, (decal, gap(0.2, 2.0))) == ((decal,), ())
    assert told(make, (letters, None), fine=True) == ((letters,), ())  # its places alone would not tear
