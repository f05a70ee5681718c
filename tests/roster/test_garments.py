"""What a row of Garments leaves open is as on the garment most like it; what it says counts; what lacks is asked."""

from collections.abc import Callable, Sequence
from typing import Any

import pytest

from xlbatch.job.job import Blank
from xlbatch.roster.read import Reading

Read = Callable[..., Reading]
IN = 25.4
MEASURES = ["Chest width (in)", "Body length (in)", "Collar drop front (in)", "Collar drop back (in)"]


def read(reading_of: Read, head: Sequence[object], *rows: Sequence[object]) -> tuple[list[Any], list[Any], Reading]:
    """The person's own blanks, and what is asked at which cell."""
    reading = reading_of([["Who", "Size"], ["Ana", "M"]], Garments=[list(head), *map(list, rows)])
    own = [blank for blank in reading.job.blanks if not blank.source.built_in]
    return own, [(each.code, each.where.cell) for each in reading.problems if each.where.sheet == "Garments"], reading


def built_in(reading: Reading, garment: str, size: str) -> Blank:
    return next(it for it in reading.job.blanks if it.source.built_in and (it.garment, it.size) == (garment, size))


def measures(it: Blank) -> Any:
    return it.chest, it.length, it.drop_front, it.drop_back


@pytest.mark.parametrize(
    ("cells", "like", "size"),
    [
        ({}, "Crew-neck tee", "M"), ({"For": "youth"}, "Crew-neck tee", "Youth M"),
        ({"Neckline": "V"}, "V-neck tee", "M"),
        ({"Size": "Youth M"}, "Crew-neck tee", "Youth M"), ({"For": "kids"}, "Crew-neck tee", "Youth M"),
        ({"For": "youthh"}, "Crew-neck tee", "Youth M"),
        ({"Neckline": "V", "Size": "2T"}, "Crew-neck tee", "2T"),
    ],
)  # fmt: skip
def test_a_garment_of_ones_own_has_the_measures_of_the_one_most_like_it(
    cells: dict[str, object], like: str, size: str, reading_of: Read
) -> None:
    row: dict[str, object] = {"Garment": "Fine tee", "Size": "M"} | cells
    (own,), asked, reading = read(reading_of, list(row), list(row.values()))
    assert asked == [("assumed", "A2")]
    other = built_in(reading, like, size)
    assert (measures(own), own.size, own.for_) == (measures(other), size, other.for_)
    assert (own.sleeve_length, own.sleeve_opening) == (other.sleeve_length, other.sleeve_opening)
    assert (own.keep_clear, own.between_armholes) == (other.keep_clear, other.between_armholes)
    assert (own.fabric, own.colors, own.neckline) == ("", (), cells.get("Neckline", "crew"))


def test_a_row_of_a_known_garment_changes_what_it_says_alone(reading_of: Read) -> None:
    head = ["Garment", "Size", "Chest width (in)", "Sleeve opening (in)"]
    (own,), asked, reading = read(reading_of, head, ["crew-neck TEE", "L", 23, 8])
    usual = next(it for it in reading.job.blanks if it.garment == "Crew-neck tee" and it.size == "M")
    assert asked == []
    assert (own.chest, own.sleeve_opening) == (pytest.approx(23 * IN), pytest.approx(8 * IN))
    assert own.between_armholes == pytest.approx(23 * IN * 0.8)  # as on the built-in one: 16 in of 20
    assert (own.fabric, own.colors, own.drop_front) == (usual.fabric, usual.colors, usual.drop_front)
    assert not any(it.garment == "Crew-neck tee" and it.size == "L" for it in reading.job.blanks)
    (own,), asked, _ = read(reading_of, ["Garment", "Size", *MEASURES], ["Fine tee", "M", 20, 28, 3, 1])
    assert (measures(own), asked) == (pytest.approx((20 * IN, 28 * IN, 3 * IN, 1 * IN)), [])


def test_what_is_said_counts(reading_of: Read) -> None:
    head = [
        "Garment",
        "Size",
        "Between armholes (in)",
        "Sleeve length (in)",
        "Colors",
        "Fabric",
        "Keep clear",
        "Iron dots",
    ]
    (own,), _, _ = read(reading_of, head, ["Crew-neck tee", "M", 15, 7, "red; blue", "silk", "nothing", 2])
    assert (own.between_armholes, own.sleeve_length) == (pytest.approx(15 * IN), pytest.approx(7 * IN))
    assert (own.colors, own.fabric, own.keep_clear, own.dots) == (("red", "blue"), "silk", (), 2)


@pytest.mark.parametrize(
    ("head", "row", "asked"),
    [
        (["Garment", "Size"], ["Fine tee", None], [("value-needed", "B2")] + [("value-needed", "A2")] * 4),
        (["Garment", "Size"], [None, "M"], [("value-needed", "A2")]),
        (["Garment", "Size"], ["Fine tee", "10XL"], [("size-unknown", "B2")] + [("value-needed", "A2")] * 4),
        (["Garment", "Size", *MEASURES], ["Fine tee", "M", "wide", 28, 3, 1], [("value-unclear", "C2")]),
        (["Garment", "Size", *MEASURES], ["Fine tee", "M", 20, 28, 3, None], [("assumed", "C2")]),
    ],
)
def test_what_can_not_be_told_is_asked_about(
    head: list[str], row: list[Any], asked: list[Any], reading_of: Read
) -> None:
    own, found, _ = read(reading_of, head, row)
    assert (found, len(own)) == (asked, 1 if asked[0][0] == "assumed" else 0)


def test_a_size_may_have_a_row_for_each_of_its_colors(reading_of: Read) -> None:
    head = ["Garment", "Size", "Colors"]
    for rows, asked in (
        ([["Crew-neck tee", "M", "red"], ["Crew-neck tee", "M", "blue"]], []),
        ([["Crew-neck tee", "M", "red"], ["Crew-neck tee", "L", "red"]], []),
        ([["Crew-neck tee", "M", "red; blue"], ["CREW-neck tee", "M", "gold; Blue"]], [("garment-twice", "A3")]),
        ([["Crew-neck tee", "M", None], ["Crew-neck tee", "M", None]], [("garment-twice", "A3")]),
        ([["Crew-neck tee", "M", None], ["Crew-neck tee", "M", "red"]], []),
    ):
        assert read(reading_of, head, *rows)[1] == asked


def test_what_is_assumed_of_a_garment_is_said_once(reading_of: Read) -> None:
    _, asked, _ = read(reading_of, ["Garment", "Size"], ["Fine tee", "M"], ["Fine tee", "L"], ["Other tee", "L"])
    assert asked == [("assumed", "A2"), ("assumed", "A4")]
