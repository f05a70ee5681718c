"""A plan without a memory: each row's standing by the log, the blanks used, the film to measure."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from tests.art.conftest import FILM, ROW, SPEC
from xlbatch.check.progress import designs_by_name, pieces_wanted, up_to_date
from xlbatch.check.stock import film_to_measure
from xlbatch.job.job import NO_NAME, FilmPiece, Job
from xlbatch.job.marks import Delivery, Result
from xlbatch.job.source import Source
from xlbatch.roster.read import blank_job

FRONT, BACK = replace(SPEC, decal="Front"), replace(SPEC, decal="Back")
TEE = replace(blank_job(Path("list.xlsx")).blanks[0], garment="Tee", size="M", colors=("white", "navy"))
IN_HAND = "blank in hand"
OUTLINED = replace(FRONT, film="Gold", outline_film="BLACK smooth")


def job(**changes: Any) -> Job:
    own = blank_job(Path("list.xlsx"))
    settings = replace(own.settings, usual_garment="Tee", usual_color="white", usual_design="Name")
    usual: dict[str, Any] = {"settings": settings, "designs": (FRONT, BACK), "blanks": (TEE,), "films": (FILM,)}
    return replace(own, **usual | changes)


def results(*them: tuple[str, str]) -> tuple[Result, ...]:
    return tuple(Result(1, piece, result) for piece, result in them)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("row", "log", "after"),
    [
        ({}, (), ("", ())),
        ({"done_so_far": (IN_HAND,)}, (), ("", (IN_HAND,))),
        ({}, (("Front", "ok"),), ("", (IN_HAND, "Front"))),
        ({}, (("Back", "ok"),), ("", (IN_HAND, "Back"))),
        ({}, (("Front", "ok"), ("Back", "ok")), ("done", ())),
        ({}, (("Front + Back", "ok"),), ("done", ())),  # a joined piece
        ({}, (("Fro", "ok"),), ("", (IN_HAND,))),
        ({}, (("Front", "redo film"),), ("", (IN_HAND,))),
        ({"done_so_far": (IN_HAND, "Front")}, (("Back", "ok"),), ("done", ())),
        ({"done_so_far": (IN_HAND, "Front")}, (("Front", "redo film"),), ("", (IN_HAND,))),
        ({"done_so_far": (IN_HAND, "Front")}, (("Back", "redo garment"),), ("", ())),
        ({"status": "redo garment", "done_so_far": ("Front",)}, (("Back", "ok"),), ("", ())),
        ({"status": "redo film"}, (("Back", "ok"),), ("", (IN_HAND,))),
        ({"status": "done"}, (("Back", "redo film"),), ("done", ())),
        ({"status": "cancelled"}, (("Back", "ok"),), ("cancelled", ())),
        ({"design": "Unknown"}, (("Back", "ok"),), ("", (IN_HAND,))),
    ],
)
def test_where_a_garment_stands(
    row: dict[str, Any], log: tuple[tuple[str, str], ...], after: tuple[str, tuple[str, ...]]
) -> None:
    own, _ = up_to_date(job(roster=(replace(ROW, **row),), results=results(*log)))
    assert (own.roster[0].status, own.roster[0].done_so_far) == after


def test_a_garment_gets_no_empty_text_and_no_name_where_none_is_asked_for() -> None:
    group = replace(SPEC, decal="Group", what="text", text="{Group}")
    number = replace(SPEC, decal="Number", what="number")
    own = job(designs=(FRONT, group, number))
    by_name = designs_by_name(own)
    for row, pieces in (
        (replace(ROW, group="Novak"), ["Front", "Group", "Number"]),
        (ROW, ["Front", "Number"]),
        (replace(ROW, print_name=NO_NAME), ["Number"]),
    ):
        assert [spec.decal for spec in pieces_wanted(row, own, by_name)] == pieces


LIST = Source("Shopping list", 4, {"Arrived": "H4"})


@pytest.mark.parametrize(
    ("stock", "came", "row", "log", "left", "asked"),
    [
        ({"white": 3}, None, {}, ("Front", "ok"), {"white": 2}, False),
        ({"white": 3}, None, {}, ("Front", "redo garment"), {"white": 2}, False),
        ({"white": 3}, None, {"status": "done"}, (), {"white": 2}, False),
        ({"white": 3}, None, {"status": "cancelled"}, (), {"white": 3}, False),
        ({"white": 3}, None, {"done_so_far": (IN_HAND,)}, ("Front", "ok"), {"white": 3}, False),  # taken off before
        ({"white": 3}, None, {"color": ""}, ("Front", "ok"), {"white": 2}, False),
        ({"white": 3}, 2, {}, ("Front", "ok"), {"white": 2}, False),  # as the list says: 1 was there, 2 came, 1 is used
        ({"white": 0}, None, {}, ("Front", "ok"), {"white": 0}, True),
        ({"white": 1}, None, {}, ("Front", "ok"), {"white": 0}, False),
        ({}, None, {}, ("Front", "ok"), {}, True),
        ({}, 0, {}, (), {"white": 1}, False),
        ({"": 2}, None, {}, ("Front", "ok"), {"": 1}, False),
    ],
)  # fmt: skip
def test_the_blanks_that_are_left(
    stock: Mapping[str, int],
    came: int | None,
    row: dict[str, Any],
    log: Sequence[str],
    left: Mapping[str, int],
    asked: bool,
) -> None:
    own = job(
        roster=(replace(ROW, **row),), results=results((log[0], log[1])) if log else (), in_log=frozenset({1}),
        blanks=(TEE if not stock else replace(TEE, on_hand=stock),),
        deliveries=(Delivery(LIST, "Tee", "M", "White", 1, came),),
    )  # fmt: skip
    now, problems = up_to_date(own)
    assert now.blanks[0].on_hand == left
    unmarked = [(each.where.cell, "Tee M White" in each.wrong) for each in problems if each.code == "arrived-unmarked"]
    assert unmarked == ([("H4", True)] if asked else [])
    elsewhere = replace(own, in_log=frozenset({2}), deliveries=())
    assert up_to_date(elsewhere)[0].blanks[0].on_hand == stock


@pytest.mark.parametrize(
    ("changes", "asked"),
    [
        ({}, False), ({"film_came": ("Black smooth, 12 in × 5 yd roll",)}, True),
        ({"film_came": ("Black, roll",)}, False),
        ({"results": results(("Front", "ok"))}, False),
        ({"films": (replace(FILM, on_hand=(FilmPiece(300, 500),)),), "results": results(("Front", "ok"))}, True),
        ({"films": (replace(FILM, on_hand=(FilmPiece(300, 500),)),)}, False),
        ({"film_came": ("Black smooth, roll",), "designs": (replace(FRONT, film="Gold"),)}, False),
        ({"film_came": ("Black smooth, roll",), "designs": (OUTLINED,)}, True),
    ],
)  # fmt: skip
def test_film_that_came_or_was_cut_is_to_be_measured(changes: dict[str, Any], asked: bool) -> None:
    assert len(film_to_measure(job(**changes))) == asked
