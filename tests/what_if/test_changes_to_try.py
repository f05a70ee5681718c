"""How a change is set: what a smaller piece measures, which film takes the place of another, and from where on."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest

from tests.art.conftest import SPEC
from xlbatch.plan import Plan
from xlbatch.roster.read import Reading
from xlbatch.what_if.changes_to_try import _made_smaller, _refilmed, _size, changes

IN = 25.4
ARTWORK = replace(SPEC, what="artwork", widest=None)


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ({"width": 200.0, "height": None}, {"width": 180.0, "height": None}),
        ({"width": None, "height": 203.0}, {"width": None, "height": 182.0}),  # 182.7, as is easily typed
        ({"width": 200.0, "height": 100.0}, {"width": 180.0, "height": 100.0}),  # its width says how large it is
        ({"width": None, "height": None, "position": "left chest"}, {"width": 80.0}),  # usually 3.5 in: 80.01
    ],
)
def test_artwork_is_made_smaller_by_the_measure_it_was_given(before: dict[str, Any], after: dict[str, Any]) -> None:
    spec = replace(ARTWORK, **before)
    assert _made_smaller(spec, 0.9, 1.0) == replace(spec, **after)


def test_lettering_is_made_smaller_in_height_and_in_how_wide_it_may_be() -> None:
    spec = replace(SPEC, height=100.0, widest=250.0)
    assert _made_smaller(spec, 0.9, 1.0) == replace(spec, height=90.0, widest=225.0)
    assert _made_smaller(replace(spec, widest=None), 0.9, 1.0) == replace(spec, height=90.0, widest=None)
    usual = _made_smaller(replace(spec, height=None), 0.5, 1.0).height
    assert usual == 25.0  # of 2 in: 25.4
    assert _size(replace(spec, height=2 * IN, widest=11 * IN), "in") == "Height 2 in, Widest 11 in"


def test_a_film_is_replaced_in_decals_and_outlines_and_no_other_is(reading_of: Callable[..., Reading]) -> None:
    reading = reading_of([["Who", "Size"], ["Ana", "M"]])
    specs = (
        replace(SPEC, film="gold SMOOTH", outline_film="Black smooth"),
        replace(SPEC, film="Red flock", outline_film="Gold smooth"),
    )
    changed = _refilmed(replace(reading, job=replace(reading.job, designs=specs)), "Gold smooth", "White smooth")
    assert [(spec.film, spec.outline_film) for spec in changed.job.designs] == [
        ("White smooth", "Black smooth"), ("Red flock", "White smooth"),
    ]  # fmt: skip


def test_the_film_with_the_fewest_decals_is_the_one_left_out(
    reading_of: Callable[..., Reading], plan_of: Callable[..., Plan]
) -> None:
    roster = [["Who", "Size", "Design"], ["Ana", "M", "Gold"], ["Ivo", "L", "Plain"], ["Mei", "S", "Plain"]]
    designs = [
        ["Design", "Decal", "What", "Film", "Position", "Height"],
        ["Gold", "Name", "print name", "Gold smooth", "full front", "2 in"],
        ["Plain", "Name", "print name", "Black smooth", "full front", "2 in"],
    ]
    tried = changes(reading_of(roster, Designs=designs), plan_of(roster, Designs=designs))
    (fewer,) = [change for change in tried if change.name == "One film fewer"]
    assert fewer.how == "Designs: Black smooth in place of Gold smooth"
    assert {spec.film for spec in fewer.reading.job.designs} == {"Black smooth"}


def test_what_is_set_so_already_is_not_tried(reading_of: Callable[..., Reading], plan_of: Callable[..., Plan]) -> None:
    roster = [["Who", "Size"], ["Ana", "M"], ["Ivo", "L"]]
    job = [
        ["Setting", "Value"], ["Save film by interlocking", "yes"], ["Enough spares per 100 jobs", 0],
        ["Sizes", "one size for all"],
    ]  # fmt: skip
    names = {change.name for change in changes(reading_of(roster, Job=job), plan_of(roster, Job=job))}
    assert not names & {
        "Interlock the decals",
        "No spares",
        "One size for all",
        "Pieces a little smaller, in fewer sections",
    }
    usual = {change.name for change in changes(reading_of(roster), plan_of(roster))}
    assert {"Interlock the decals", "No spares", "One size for all"} <= usual


@pytest.mark.parametrize(
    ("longest", "people", "counts"),
    [(2, 12, [3, 5]), (2, 4, [3]), (2, 2, []), (9, 30, [10, 12]), (10, 30, [11]), (12, 30, [])],
)
def test_a_strip_takes_one_or_three_shirts_more_up_to_twelve_and_all_people(
    longest: int, people: int, counts: list[int], reading_of: Callable[..., Reading], plan_of: Callable[..., Plan]
) -> None:
    roster = [["Who", "Size"], ["Ana", "M"]]
    plan = plan_of(roster)
    (batch,) = plan.layout.batches
    batches = (batch, replace(batch, garments=batch.garments * longest))
    plan = replace(plan, garments=plan.garments * people, layout=replace(plan.layout, batches=batches))
    more = [change for change in changes(reading_of(roster), plan) if change.name == "More shirts a strip"]
    assert [change.reading.job.settings.shirts_per_strip for change in more] == counts


def test_only_what_is_pressed_in_sections_is_made_smaller(
    reading_of: Callable[..., Reading], plan_of: Callable[..., Plan]
) -> None:
    """A plate of 10 in: 10 1/2 in of artwork take two sections, 95 % of it, 9 7/8 in, one."""
    sheets = {
        "Designs": [
            ["Design", "Decal", "What", "Text", "Film", "Position", "Height", "Width"],
            ["Name", "Camp", "text", "CAMP", "Black smooth", "full front", "3 in", None],
            ["Name", "Year", "text", "1", "Black smooth", "back number", "3 in", None],
        ],
        "Press": [["Press", "Kind", "Plate width", "Plate depth"], ["Plate", "hand-held plate", "6 in", "6 in"]],
    }
    roster = [["Who", "Size"], ["Ana", "M"]]
    plan = plan_of(roster, **sheets)
    assert [place.presses > 1 for place in plan.places] == [True, False]
    tried = [change for change in changes(reading_of(roster, **sheets), plan) if change.name.startswith("Pieces")]
    assert [change.how.count("Name, Camp") for change in tried] == [1]
    assert "Year" not in tried[0].how
