"""Steps of small jobs made by hand: who waits for the plate, which press has which batch, what a step is told as."""

from collections.abc import Sequence
from dataclasses import replace

import pytest

from tests.art.conftest import FILM, ROW, SPEC
from tests.kept.test_what_is_remembered import job as blank_job
from xlbatch.art.decal import Decal
from xlbatch.check.garment import Garment
from xlbatch.film.layout import Batch
from xlbatch.job.job import Job
from xlbatch.placement.place import Place
from xlbatch.placement.sections import Section
from xlbatch.press.order import plate_of, press_order
from xlbatch.press.step import PressPlan

HOT, COOL = replace(FILM, name="Hot", temperature=160), replace(FILM, name="Cool", temperature=130)


def job(*, people: int = 1, worth: float | None = None) -> Job:
    own = blank_job()
    settings = replace(own.settings, people_pressing=people, worth_changing_the_order=worth)
    return replace(own, settings=settings, films=(HOT, COOL))


def place(no: int, film: str, at: float = 0, *, done: tuple[str, ...] = (), fabric: str = "cotton") -> Place:
    """A piece 100 mm wide and 50 high, so far below the collar."""
    spec = replace(SPEC, decal=f"{film}{at:g}", film=film)
    row = replace(ROW, no=no, done_so_far=done)
    garment = Garment(row, replace(blank_job().blanks[0], fabric=fabric), "white", "Ana", (spec,), (spec,), not done)
    decal = Decal(f"D{no}{film}{at:g}", no, spec, "", film, "", 100, 50, None)
    return Place(garment, decal, "front", "hem", at, None, None, 0.0, 100, 600 - at, (Section(0, 0),))


def ordered(places: Sequence[Place], batches: Sequence[Sequence[int]], own: Job) -> PressPlan:
    return press_order(own, tuple(Batch(no, tuple(each)) for no, each in enumerate(batches, 1)), tuple(places))


def told(plan: PressPlan) -> list[tuple[int, int, str]]:
    return [(step.lane, step.place.garment.no, step.film.name) for step in plan.steps]


TWO = [place(no, film) for no in (1, 2, 3, 4) for film in ("Hot", "Cool")]


def test_the_order_is_changed_where_that_saves_more_than_it_is_worth() -> None:
    """Two batches of hot and cool: batch by batch the plate cools twice and heats once, heat by heat it cools once."""
    up, down = plate_of(job())
    plan = ordered(TWO, [(1, 2), (3, 4)], job())
    assert (plan.by_heat, plan.waiting_by_heat) == (False, 30 * down)
    assert plan.waiting_by_batch == 60 * down + 30 * up
    assert plan.least_waiting == 30 * down
    saved = (plan.waiting_by_batch - plan.waiting_by_heat) / 60
    for worth, by_heat in ((saved, False), (saved - 0.01, True), (0, True)):
        assert ordered(TWO, [(1, 2), (3, 4)], job(worth=worth)).by_heat is by_heat
    hot_first = ordered(TWO, [(1, 2), (3, 4)], job(worth=0))
    assert told(hot_first) == [(1, no, film) for film in ("Hot", "Cool") for no in (1, 2, 3, 4)]
    assert [step.wait for step in hot_first.steps] == [0, 0, 0, 0, 30 * down, 0, 0, 0]
    assert [step.wait for step in plan.steps] == [0, 0, 30 * down, 0, 30 * up, 0, 30 * down, 0]
    assert [step.no for step in plan.steps] == [1, 2, 3, 4, 5, 6, 7, 8]


@pytest.mark.parametrize(
    ("people", "pieces", "lanes"),
    [
        (1, (4, 1, 1, 2), (1, 1, 1, 1)),
        (2, (4, 1, 1, 2), (1, 2, 2, 2)),
        (2, (3, 1, 1, 3), (1, 1, 2, 2)),
        (2, (1, 5, 1, 1), (1, 1, 2, 2)),
        (3, (2, 2, 2, 2, 1), (1, 1, 2, 3, 3)),
        (2, (1, 1, 0), (1, 2, 2)),
        (4, (1, 1), (1, 2)),
    ],
)
def test_each_press_has_batches_next_to_one_another_and_about_as_much_to_do(
    people: int, pieces: Sequence[int], lanes: Sequence[int]
) -> None:
    """By closings of the plate: pieces too far apart for one."""
    places = [place(no, "Hot", 1000 * at) for no, count in enumerate(pieces, 1) for at in range(count)]
    plan = ordered(places, [(no,) for no, _ in enumerate(pieces, 1)], job(people=people))
    of_garment = {step.place.garment.no: step.lane for step in plan.steps}
    assert of_garment == {no: lane for no, (lane, count) in enumerate(zip(lanes, pieces, strict=True), 1) if count}
    firsts = [next(step.wait for step in plan.steps if step.lane == lane) for lane in set(of_garment.values())]
    assert set(firsts) == {0.0}


def test_pieces_under_one_plate_are_one_closing_and_each_layer_goes_on_all_shirts_first() -> None:
    places = [place(no, "Hot", at) for no in (1, 2) for at in (0, 60, 1000)]
    plan = ordered(places, [(1, 2)], job())
    steps = [(step.place.garment.no, step.place.decal.piece, step.with_step, step.trial) for step in plan.steps]
    assert steps == [
        (1, "Hot0", None, True), (1, "Hot60", 1, False), (2, "Hot0", None, False), (2, "Hot60", 3, False),
        (1, "Hot1000", None, False), (2, "Hot1000", None, False),
    ]  # fmt: skip
    assert [step.first for step in plan.steps] == [True, False, True, False, False, False]
    assert [step.last for step in plan.steps] == [False, False, False, False, True, True]
    assert [step.warm_up for step in plan.steps] == [5, 5, 5, 5, 0, 0]
    assert [step.cover for step in plan.steps] == [(), (), (), (), ("D1Hot0", "D1Hot60"), ("D2Hot0", "D2Hot60")]


@pytest.mark.parametrize(("done", "warm_up"), [((), 5), (("blank in hand",), 5), (("blank in hand", "Back"), 0)])
def test_only_a_bare_garment_is_warmed_up(done: tuple[str, ...], warm_up: float) -> None:
    assert [step.warm_up for step in ordered([place(1, "Hot", done=done)], [(1,)], job()).steps] == [warm_up]


def test_each_film_is_tried_on_each_fabric() -> None:
    places = [
        place(1, "Hot"),
        place(2, "Hot", fabric="nylon"),
        place(3, "Hot"),
        place(3, "Cool"),
        place(2, "Cool", fabric="nylon"),
    ]
    plan = ordered(places, [(1, 2, 3)], job())
    assert [(step.place.garment.no, step.film.name) for step in plan.steps if step.trial] == [
        (1, "Hot"), (2, "Hot"), (2, "Cool"), (3, "Cool"),
    ]  # fmt: skip


def test_how_often_a_plate_is_set_anew() -> None:
    """Not from the last step of one press to the first of the next."""
    assert ordered(TWO, [(1, 2), (3, 4)], job()).settings_changed == 3
    assert ordered(TWO, [(1, 2), (3, 4)], job(people=2)).settings_changed == 2
