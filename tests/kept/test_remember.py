"""What a plan takes along for the next: where decals lie, how much film a strip took, numbers given, garments."""

from dataclasses import replace
from typing import Any

import pytest

from tests.art.conftest import FILM, ROW, SETTINGS
from tests.kept.test_follows import BLANK, decal
from tests.kept.test_numbers_kept import kept
from tests.kept.test_what_is_remembered import job as blank_job
from xlbatch.check.garment import Garment
from xlbatch.film.layout import Batch, Layout, Lying, Run, Strip
from xlbatch.job.source import Source
from xlbatch.kept.input_rows import GivenRow
from xlbatch.kept.lasting import Numbered
from xlbatch.kept.memory import NO_MEMORY, KeptChange, KeptDecal, KeptFilm, KeptGarment, KeptNote, KeptStrip, Memory
from xlbatch.kept.remember import Told, remember
from xlbatch.kept.renumber import press_batches, renumbered, retired
from xlbatch.kept.states import Standing

NOTHING = Told((), (), (), ())
STRIPS = (Strip(5, 10, 100.1236, (Lying(decal(8, 1), 0, 0, 0),)), Strip(6, 120, 50, (Lying(decal(9, 2), 0, 0, 90),)))
LAYOUT = Layout((Batch(5, (1,)), Batch(6, (2,))), (Run(4, FILM, 171.1236, STRIPS, True, "roll"),), ())


def remembered(
    before: Memory = NO_MEMORY,
    decals: tuple[KeptDecal, ...] = (),
    layout: Layout = LAYOUT,
    told: Told = NOTHING,
    rows: tuple[Any, ...] = (),
    in_hand: tuple[KeptGarment, ...] = (),
    given: tuple[GivenRow, ...] = (),
    given_before: tuple[int, int] = (3, 4),
) -> Memory:
    settings = replace(SETTINGS, usual_garment="Tee", usual_color="white")
    stood = Standing(
        replace(blank_job(), settings=settings, roster=rows), decals, {each.no: each for each in in_hand}, {}, ()
    )
    garments = (Garment(replace(ROW, no=1), replace(BLANK, garment="Tee", size="M"), "navy", "Ana", (), (), True),)
    numbers = Numbered((), {}, 12)
    return remember(before, stood, numbers, layout, LAYOUT.batches, garments, given_before, given, told)


def test_decals_are_remembered_where_they_lie_and_what_is_not_laid_lies_nowhere() -> None:
    after = remembered(decals=(kept(9, "to cut", run=1), kept(3, "to cut", run=1), kept(4, "weeded", run=2), kept(101)))
    places = [(each.id, each.state, each.run, each.strip, each.batch) for each in after.decals]
    assert places == [
        ("D003", "to cut", 0, 0, 0), ("D004", "weeded", 2, 1, 1), ("D008", "to cut", 4, 5, 5),
        ("D009", "to cut", 4, 6, 6), ("D101", "cut", 1, 1, 1),
    ]  # fmt: skip
    laid = after.decals[2]
    assert (laid.garment_no, laid.piece, laid.text, laid.width, laid.height, laid.area) == (
        1,
        "Front",
        "Ana",
        40,
        60,
        1500,
    )


def test_a_strip_takes_its_share_of_the_margins_and_those_cut_stay() -> None:
    old = KeptStrip("Black smooth", 1, 1, 300, "roll")
    after = remembered(
        replace(NO_MEMORY, strips=(old, replace(old, run=2))), decals=(kept(3), kept(4, "to cut", run=2))
    )
    assert after.strips == (
        old, KeptStrip("Black smooth", 4, 5, 110.624, "roll"), KeptStrip("Black smooth", 4, 6, 60.5, "roll")
    )  # fmt: skip


def test_numbers_go_on_from_the_last_given() -> None:
    after = remembered()
    assert (after.last_decal, after.last_run, after.last_strip, after.retired_run, after.retired_strip) == (
        12,
        4,
        6,
        3,
        4,
    )
    after = remembered(layout=Layout((), (), ()))
    assert (after.last_run, after.last_strip) == (3, 4)
    after = remembered(layout=Layout((), (), ()), given_before=(0, 0))
    assert (after.last_run, after.last_strip) == (0, 0)


def test_a_plan_with_changes_is_the_next_and_its_changes_come_first() -> None:
    line = KeptChange(4, "Job", "B2", "Gap", "Value", "1", "2", "")
    before = replace(
        NO_MEMORY, plan=3, changes=(replace(line, plan=2),), films=(KeptFilm("Red", ()), KeptFilm("Gold", ()))
    )
    after = remembered(before)
    assert (after.plan, after.changes) == (3, before.changes)
    assert [film.film for film in after.films] == ["Gold", "Red"]
    after = remembered(before, told=replace(NOTHING, changes=(line,)))
    assert (after.plan, [each.plan for each in after.changes]) == (4, [4, 2])


def test_every_garment_is_remembered_with_the_blank_it_is_on_or_will_be() -> None:
    rows = [
        replace(ROW, no=1, size="S"), replace(ROW, no=2), replace(ROW, no=3, garment="", color="", status="done"),
        replace(ROW, no=4, garment="Polo", size="L", color="red", done_so_far=("Front",)),
    ]  # fmt: skip
    after = remembered(rows=tuple(rows), in_hand=(KeptGarment(2, "Tee", "XL", "black", "begun"),))
    assert after.garments == (
        KeptGarment(1, "Tee", "M", "navy", ""), KeptGarment(2, "Tee", "XL", "black", "begun"),
        KeptGarment(3, "Tee", "M", "white", "done"), KeptGarment(4, "Polo", "L", "red", "begun"),
    )  # fmt: skip


def test_notes_on_cells_of_the_roster_alone_are_remembered_by_row() -> None:
    rows = tuple(
        GivenRow(sheet, "7", {"Who": "Ana"}, Source(sheet, 2, notes={"Size": text}))
        for sheet, text in (("Film", "thin"), ("Roster", "ask again"))
    )
    own = KeptNote("Proof", "7", "Checked", "yes")
    after = remembered(given=rows, told=replace(NOTHING, notes=(own,)))
    assert after.notes == (own, KeptNote("Roster", "7", "Size", "ask again", "yes"))


@pytest.mark.parametrize(
    ("now", "numbers"), [("to cut", (2, 3)), ("cut", (6, 8)), ("spoiled", (6, 8)), ("pressed", (6, 8)), ("", (6, 8))]
)
def test_numbers_are_given_for_good_once_anything_is_marked(now: str, numbers: tuple[int, int]) -> None:
    before = replace(NO_MEMORY, last_run=6, last_strip=8, retired_run=2, retired_strip=3, decals=(kept(3, "to cut"),))
    assert retired(before, [kept(3, now)] if now else []) == numbers
    older = replace(before, decals=(kept(3, "weeded"),))  # marked in a plan before
    assert retired(older, [kept(3, "pressed")]) == (2, 3)


def test_runs_and_batches_are_numbered_on() -> None:
    now = renumbered(LAYOUT, 10, 20)
    assert [run.no for run in now.runs] == [14]
    assert [strip.batch for strip in now.runs[0].strips] == [batch.no for batch in now.batches] == [25, 26]


def test_a_garment_stays_in_the_batch_of_what_lies_cut_for_it() -> None:
    laid = (Batch(5, (2, 1)), Batch(6, (3,)))
    ready = {each.id: each for each in (kept(3, batch=4, garment_no=3), kept(4, batch=2, garment_no=3))}
    assert press_batches([3, 2, 1, 7], laid, ready) == (Batch(4, (3,)), Batch(5, (2, 1)))
    assert press_batches([3, 1, 2], laid, {}) == laid
