"""What is asked of garments in hand whose row or design says otherwise now; each by its cell, and nothing else."""

from collections.abc import Sequence
from dataclasses import replace
from typing import Any

import pytest

from tests.art.conftest import ROW, SETTINGS, SPEC
from tests.kept.test_what_is_remembered import job as blank
from xlbatch.job.job import DecalSpec, Job
from xlbatch.job.marks import Marks, StepMark
from xlbatch.job.source import Source
from xlbatch.kept.begun import as_pressed, changed_after_pressing, design_changed, redone_under, set_text_changed
from xlbatch.kept.changes import ADDED, DELETED
from xlbatch.kept.memory import KeptChange, KeptDecal, KeptGarment
from xlbatch.kept.states import Standing

CELLS = ("Who", "Group", "Garment", "Size", "Color", "Design", "Print name", "Number", "Note", "Status")
SOURCE = Source("Roster", 2, {heading: f"{letter}2" for letter, heading in zip("ABCDEFGHIJ", CELLS, strict=True)})
AS_IT_WAS = KeptGarment(7, "Tee", "M", "white", "begun")
BORDERED = replace(SPEC, decal="Number", what="number", position="Back", outline_film="White smooth", outline_width=3.0)


def stood(*pressed: KeptDecal, specs: Sequence[DecalSpec] = (SPEC, BORDERED), **row: Any) -> Standing:
    row_ = replace(ROW, source=SOURCE, no=7, number="12", **row)
    return Standing(job(row_, specs), pressed, {7: AS_IT_WAS}, {}, ())


def job(row: Any, specs: Sequence[DecalSpec]) -> Job:
    settings = replace(SETTINGS, usual_garment="Tee", usual_color="white", usual_design="Name")
    return replace(blank(), settings=settings, designs=tuple(specs), roster=(row,))


def on_it(piece: str = "Name", text: str = "Ana Ruiz", state: Any = "pressed") -> KeptDecal:
    return KeptDecal("D003", 7, piece, text, "Black smooth", 40, 60, 1500, 1, 1, 1, state)


def asked(found: Any) -> list[tuple[str, str]]:
    """Cell and what stands there, or would."""
    return [(each.where.cell, each.found) for each in found]


def test_a_garment_in_hand_is_planned_as_it_was_pressed() -> None:
    row = replace(ROW, no=7, garment="Polo", size="L", color="navy")
    planned = as_pressed(job(row, [SPEC]), {7: AS_IT_WAS}).roster[0]
    assert (planned.garment, planned.size, planned.color) == ("Tee", "M", "white")
    for other, kept in (
        (row, {8: AS_IT_WAS}),
        (row, {7: replace(AS_IT_WAS, size="")}),  # of a plan that did not keep it
        (replace(row, status="done"), {7: AS_IT_WAS}),
    ):
        assert as_pressed(job(other, [SPEC]), kept).roster == (other,)


@pytest.mark.parametrize(
    ("row", "cells"),
    [
        ({}, []),
        ({"garment": "", "color": ""}, []),  # the usual ones
        ({"garment": "TEE", "color": "White"}, []),
        ({"garment": "Polo"}, [("C2", "Polo")]),
        ({"size": "L"}, [("D2", "L")]),
        ({"size": ""}, []),
        ({"color": "navy"}, [("E2", "navy")]),
        ({"color": "navy", "size": "L"}, [("D2", "L"), ("E2", "navy")]),
        ({"color": "navy", "status": "cancelled"}, []),
        ({"color": "navy", "source": Source("Roster")}, []),  # its row was deleted, which is asked about
        ({"color": "navy", "no": 8}, []),
    ],
)
def test_another_blank_is_asked_about(row: dict[str, Any], cells: list[tuple[str, str]]) -> None:
    now = stood(on_it(), on_it("Number border", "12"), on_it("Number", "12"))
    now = replace(now, job=replace(now.job, roster=(replace(now.job.roster[0], **row),)))
    assert asked(changed_after_pressing(now)) == cells


def test_it_is_told_what_was_pressed_and_what_the_list_says() -> None:
    (found,) = changed_after_pressing(stood(color="navy"))
    assert found.wrong == "No. 7: the color of its blank was pressed as white; the list now says navy."
    assert found.rows == (2,)


PHOTO = replace(SPEC, what="artwork", artwork="a.svg")


@pytest.mark.parametrize(
    ("decal", "specs", "row", "cells"),
    [
        (on_it(), (SPEC,), {}, []),
        (on_it(), (SPEC,), {"who": "Ana Rus"}, [("A2", "Ana Rus")]),
        (on_it(), (SPEC,), {"print_name": "Rus"}, [("G2", "Rus")]),
        (on_it(state="weeded"), (SPEC,), {"print_name": "Rus"}, []),
        (on_it(), (SPEC,), {"print_name": "Rus", "status": "cancelled"}, []),
        (on_it(text="11"), (replace(BORDERED, decal="Name"),), {}, [("H2", "12")]),
        (on_it("Name + Number", "Ana Ruiz / 12"), (SPEC, BORDERED), {}, []),
        (on_it("Name + Number", "Ana Ruiz / 11"), (SPEC, BORDERED), {}, [("A2", "Ana Ruiz / 12")]),
        (on_it("Name + Back", "Ana Ruiz / 12"), (SPEC, BORDERED), {}, [("F2", "Name")]),
        (on_it("Name"), (), {"design": "Other"}, [("F2", "Other")]),
        (on_it(text="The Ruizes"), (PHOTO,), {}, []),  # a drawing may have texts of its own
        (on_it("Name + Number", "The Ruizes / 12"), (PHOTO, BORDERED), {}, []),
        (on_it("Name + Number", "The Ruizes / 11"), (PHOTO, BORDERED), {}, [("F2", "12")]),
        (on_it(text="Go"), (replace(SPEC, what="text", text="Go on"),), {}, [("F2", "Go on")]),
    ],
)
def test_another_text_or_piece_is_asked_about(
    decal: KeptDecal, specs: tuple[DecalSpec, ...], row: dict[str, Any], cells: list[tuple[str, str]]
) -> None:
    assert asked(changed_after_pressing(stood(decal, specs=specs, **row))) == cells


@pytest.mark.parametrize(
    ("pieces", "row", "lacking"),
    [
        (("Name", "Number border", "Number"), {}, []),
        (("Name", "Number border"), {}, ["Number"]),
        (("Number border",), {}, ["Name, Number"]),
        (("Number border",), {"status": "", "done_so_far": ("Number border",)}, []),
        (("Number border",), {"no": 8}, []),
    ],
)
def test_what_a_garment_that_is_done_lacks_is_asked_about(
    pieces: tuple[str, ...], row: dict[str, Any], lacking: list[str]
) -> None:
    decals = [on_it(piece, "Ana Ruiz" if piece == "Name" else "12") for piece in pieces]
    now = stood(*decals, **{"status": "done"} | {key: value for key, value in row.items() if key != "no"})
    now = replace(now, job=replace(now.job, roster=(replace(now.job.roster[0], no=row.get("no", 7)),)))
    found = list(changed_after_pressing(now))
    assert [each.found for each in found] == lacking
    assert all(f"write “{'; '.join(pieces)}” into" in each.todo and each.where.cell == "F2" for each in found)
    nothing = replace(now, decals=tuple(replace(decal, state="weeded") for decal in now.decals))
    assert list(changed_after_pressing(nothing)) == []


def change(sheet: str = "Designs", who: str = "NAME · Name", what: str = "Height", now: str = "2 in") -> KeptChange:
    return KeptChange(2, sheet, "H3", who, what, "1 in", now, "")


def test_a_design_changed_is_asked_about_once_for_all_that_have_it_on() -> None:
    now = stood(on_it(), replace(on_it(), garment_no=8), replace(on_it(), garment_no=9), on_it("Number"), design="")
    row = now.job.roster[0]
    others = (replace(row, no=8, design="name"), replace(row, no=9, design="Other"), replace(row, no=10, design="Camp"))
    gone = replace(row, no=11, status="cancelled")
    now = replace(now, job=replace(now.job, roster=(row, *others, gone)))
    now = replace(now, decals=(*now.decals, *(replace(on_it(), garment_no=no) for no in (10, 11))))
    (found,) = design_changed(now, [change()])
    assert (found.where.sheet, found.where.cell, found.found, found.rows) == ("Designs", "H3", "2 in", (2,))
    assert found.wrong == "Height was 1 in and is 2 in now; 2 garments were pressed as it was before."
    for other in (change("Film"), change(what=ADDED), change(what=DELETED), change(who="Walk · Name")):
        assert list(design_changed(now, [other])) == []


@pytest.mark.parametrize(
    ("decal", "row", "changed", "asks"),
    [
        (on_it(text="The Novaks"), {}, ("No. 7 Ana", "Group", "Novak"), True),
        (on_it("Number + Name", text="The Novaks"), {}, ("No. 7 Ana", "Group", "Novak"), True),
        (on_it("Number", text="The Novaks"), {}, ("No. 7 Ana", "Group", "Novak"), False),  # no drawing
        (on_it(text="The Novaks", state="weeded"), {}, ("No. 7 Ana", "Group", "Novak"), False),
        (on_it(text="The Novaks"), {"status": "cancelled"}, ("No. 7 Ana", "Group", "Novak"), False),
        (on_it(text="The Novaks"), {"no": 8}, ("No. 7 Ana", "Group", "Novak"), False),
        (on_it(text="The Novaks"), {}, ("No. 8 Ana", "Group", "Novak"), False),
        (on_it(text="The Novaks"), {}, ("No. 7 Ana", "Note", "Novak"), False),
        (on_it(text="The Novaks"), {}, ("No. 7 Ana", "Group", ""), False),
        (on_it(text="The Novaks"), {}, ("No. 7 Ana", "Group", "Berg"), False),
        (on_it(text="The Novaks"), {}, ("Camp · Name", "Group", "Novak"), False),
        (on_it(text="The Novaks"), {"design": "Other"}, ("No. 7 Ana", "Group", "Novak"), False),
    ],
)
def test_a_cell_that_a_pressed_drawing_sets_is_asked_about(
    decal: KeptDecal, row: dict[str, Any], changed: tuple[str, str, str], asks: bool
) -> None:
    now = stood(decal, specs=(PHOTO, BORDERED))
    now = replace(now, job=replace(now.job, roster=(replace(now.job.roster[0], **row),)))
    who, heading, before = changed
    line = KeptChange(2, "Roster", "B2", who, heading, before, "Nowak", "")
    assert asked(set_text_changed(now, [line])) == ([("B2", "Nowak")] if asks else [])


@pytest.mark.parametrize(
    ("upper", "over", "under", "stops"),
    [
        ({"layer": 2}, "Top", "Name", True),
        ({"layer": 2, "position": "FULL front"}, "Top", "Name", True),
        ({"layer": 2, "position": "full back"}, "Top", "Name", False),
        ({"layer": 1}, "Top", "Name", False),
        ({"layer": 0}, "Top", "Name", False),
        ({"layer": 1}, "Top", "Name border", True),  # a border lies under all of its layer
        ({"layer": 2}, "Top", "Other + Name", True),
        ({"layer": 2}, "Top", "Unknown", False),
        ({"layer": 2}, "Other", "Name", False),  # what is on it is no piece of the design
    ],
)
def test_what_lies_under_something_pressed_can_not_be_made_anew(
    upper: dict[str, Any], over: str, under: str, stops: bool
) -> None:
    specs = (replace(SPEC, outline_film="White smooth"), replace(SPEC, decal="Top", **upper))
    mark = StepMark(Source("Press log", 9, {"Result": "K9"}), 7, under, "D003", True, "", "redo film", "", "", False)
    now = stood(specs=specs, done_so_far=(over,))
    found = list(redone_under(now, Marks(steps=(mark,))))
    assert asked(found) == ([("K9", under)] if stops else [])
    assert all(each.rows == (2,) and "but Top, which" in each.wrong for each in found)
    for other in (replace(mark, outcome="ok"), replace(mark, garment_no=8)):
        assert list(redone_under(now, Marks(steps=(other,)))) == []
    done = replace(now, job=replace(now.job, roster=(replace(now.job.roster[0], status="done"),)))
    assert list(redone_under(done, Marks(steps=(mark,)))) == []
