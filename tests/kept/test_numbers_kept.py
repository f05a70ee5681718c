"""Which decal of before is taken for one drawn now: by its piece, its text, its film, and its size within 0.3 mm and
2 % of its area."""

from dataclasses import replace
from typing import Any

import pytest

from tests.cutfiles.test_run_svg import decal
from xlbatch.kept.lasting import cut_pieces, fits, numbered
from xlbatch.kept.memory import KeptDecal

DRAWN = replace(decal(0), spec=replace(decal(0).spec, decal="Chest"))  # 40 by 60 mm, 1,500 mm² of film


def kept(number: int, state: str = "cut", **other: Any) -> KeptDecal:
    before = KeptDecal(f"D{number:03d}", 1, "Chest", "Ana", "Black smooth", 40, 60, 1500, 1, 1, 1, state)  # type: ignore[arg-type]
    return replace(before, **other)


@pytest.mark.parametrize(
    ("other", "same"),
    [
        ({}, True),
        ({"film": "BLACK smooth"}, True),
        ({"film": "White smooth"}, False),
        ({"text": "Anna"}, False),
        ({"width": 40.29}, True),
        ({"width": 39.71}, True),
        ({"width": 40.31}, False),
        ({"height": 59.69}, False),
        ({"height": 60.29}, True),
        ({"area": 1470.5}, True),  # 2 % of 1,500 is 30
        ({"area": 1469.0}, False),
        ({"area": 1530.0}, True),  # 2 % of the larger, 30.6
        ({"area": 1531.0}, False),
    ],
)
def test_what_was_cut_is_used_where_it_is_what_is_drawn_now(other: dict[str, Any], same: bool) -> None:
    assert fits(kept(7, **other), DRAWN) is same
    result = numbered([DRAWN], [kept(7, **other)], 20)
    assert [drawn.id for drawn in result.decals] == (["D007"] if same else ["D021"])
    assert (list(result.ready), result.last, len(result.to_cut)) == ((["D007"], 20, 0) if same else ([], 21, 1))


def test_a_decal_not_cut_yet_keeps_its_number_whatever_it_says_now() -> None:
    result = numbered([DRAWN], [kept(7, "to cut", text="Eve", width=90)], 20)
    assert ([drawn.id for drawn in result.decals], result.ready, result.last) == (["D007"], {}, 20)


def test_what_is_pressed_or_spoiled_is_no_longer_there() -> None:
    for state in ("pressed", "spoiled"):
        assert [drawn.id for drawn in numbered([DRAWN], [kept(7, state)], 20).decals] == ["D021"]


def test_two_alike_take_one_each_the_cut_one_first() -> None:
    result = numbered([DRAWN, DRAWN, DRAWN], [kept(3, "to cut"), kept(4, "weeded")], 9)
    assert [drawn.id for drawn in result.decals] == ["D004", "D003", "D010"]
    assert [drawn.id for drawn in result.to_cut] == ["D003", "D010"]
    assert result.last == 10


def test_a_decal_of_another_garment_or_piece_is_not_taken() -> None:
    others = [kept(3, garment_no=2), kept(4, piece="Back")]
    assert [drawn.id for drawn in numbered([DRAWN], others, 9).decals] == ["D010"]
    assert cut_pieces([*others, kept(5), kept(6, "to cut")]) == {2: ["Chest"], 1: ["Back", "Chest"]}
