"""What is read back from a plan's own sheets: strips, orders, deliveries, prices told, checks; what a list means."""

from collections.abc import Callable, Sequence
from decimal import Decimal
from typing import Any

import pytest

from xlbatch.job.costs import Costs
from xlbatch.roster.read import Reading

Read = Callable[..., Reading]
PEOPLE = [["Garment no.", "Who", "Size"], *([no, f"Guest {no}", "M"] for no in (1, 2, 3))]


@pytest.mark.parametrize(
    ("spoiled", "read", "asked"),
    [
        (None, (), []), ("d003", ("D003",), []), ("D3, D4 and d5; D6", ("D3", "D4", "D5", "D6"), []),
        ("All", ("all",), []),
        ("D3 x", ("D3",), ["x"]), ("the blue one", (), ["the blue one"]),
    ],
)  # fmt: skip
def test_a_strip_and_what_was_spoiled(
    spoiled: object, read: tuple[str, ...], asked: list[str], reading_of: Read
) -> None:
    head = ["Run", "Strip", "Film", "Cut", "Weeded", "Spoiled"]
    rows = [
        [1, 2, "Black smooth", "x", None, spoiled],
        [None, 3, "Black smooth", "x"],
        [2, None, "Gold", None, "yes"],
        [3, 4, None, "x"],
    ]
    reading = reading_of(PEOPLE, **{"Cut list": [head, *rows]})
    marks = [(it.run, it.strip, it.film, it.cut, it.weeded, it.spoiled) for it in reading.marks.strips]
    assert marks == [(1, 2, "Black smooth", True, False, read), (2, 0, "Gold", False, True, ())]
    assert [each.found for each in reading.problems if each.code == "spoiled-unknown"] == asked


ORDERS = ["Kind", "Item", "Garment", "Size", "Color", "Needed", "Spares", "On hand", "On the way", "Ordered", "Arrived"]


@pytest.mark.parametrize(
    ("counts", "ordered", "arrived", "order", "came"),
    [
        ((5, 1, 2, 1), "x", None, (3, True, None), None),
        ((5, 1, 2, 1), None, "x", (3, None, True), 4),  # of an earlier edition: without what was on the way
        ((5, 1, 9, 0), None, "x", (0, None, True), 0),
        ((5, 0, 2, 0), 2, 3, (3, 2, 3), 3),
        ((5, 0, 2, 0), None, -1, (3, None, -1), -1),
        ((5, 0, 2, 0), None, -9, (3, None, -9), -2),  # no more than there is
        ((None, None, None, None), None, 0, (0, None, 0), None),
    ],
)
def test_what_was_ordered_and_came(
    counts: Sequence[object],
    ordered: object,
    arrived: object,
    order: tuple[Any, ...],
    came: int | None,
    reading_of: Read,
) -> None:
    rows = [["blank", None, "Tee", "M", "white", *counts, ordered, arrived], [None, "x"]]
    reading = reading_of(PEOPLE, **{"Shopping list": [ORDERS, *rows]})
    (mark,) = reading.marks.orders
    assert (mark.buy, mark.ordered, mark.arrived) == order
    assert (*mark.key, mark.row) == ("blank", "Tee", "Tee", "M", "white", "blank · Tee · M · white")
    assert [it.came for it in reading.job.deliveries] == [came]


def test_film_that_came(reading_of: Read) -> None:
    rows = [["film", name, None, None, None, 1, 0, 0, 0, None, arrived]
            for name, arrived in (("A roll", "x"), ("B roll", "no"), ("C roll", 2), ("D roll", None),
            ("E roll", "one of them"))]  # fmt: skip
    rows.append(["supply", "Bag", None, None, None, 1, 0, 0, 0, None, "x"])
    reading = reading_of(PEOPLE, **{"Shopping list": [ORDERS, *rows]})
    assert reading.job.film_came == ("A roll", "C roll", "E roll")
    assert reading.marks.orders[0].key.item == "A roll"


def test_prices_told_checks_and_answers(reading_of: Read) -> None:
    money = [["Garment no.", "Who", "Blank", "Film", "Price", "Told"], [1, "Guest 1", 4, 1.5, 8, "yes"],
             [2, "Guest 2", None, None, 9, None],
             [3, "Guest 3", 1, 1, None, "yes"], [None, "Everyone", 5, 2.5, 17, "yes"]]  # fmt: skip
    proof = [
        ["Garment no.", "Who", "Checked"],
        [1, "Guest 1", "☐"],
        [2, "Guest 2", "A. N."],
        [3, "Guest 3", None],
        [None, "x", "y"],
    ]
    problems = [["Level", "Code", "Garment no.", "Found", "Answer"], ["check", "who-twice", 1, "Ana", "ok"],
                ["check", "who-twice", 2, "Bo", None],
                ["check", None, 3, "Cy", "ok"]]  # fmt: skip
    reading = reading_of(PEOPLE, Money=money, Proof=proof, Problems=problems)
    assert reading.job.prices == {1: 8, 2: 9}
    assert reading.job.costs[1] == Costs(Decimal(4), Decimal("1.5"), None, None)
    assert reading.job.told == {1}
    assert {no: text for no, (text, _) in reading.marks.checked.items()} == {2: "A. N."}
    assert [(it.code, it.garment, it.found, it.answer) for it in reading.marks.answers] == [
        ("who-twice", "1", "Ana", "ok")
    ]


def test_work_times_presses_and_positions_of_ones_own(reading_of: Read) -> None:
    usual = reading_of(PEOPLE).job
    times = [["Stage", "Work", "Value", "Unit"],
             ["press", "tack a lower layer", 9, None],
             ["press", "heat the plate by a degree", None, None],
             ["press", "let the plate cool by a degree", 0, None]]  # fmt: skip
    presses = [
        ["Press", "Kind", "Plate width (in)", "Plate depth (in)"],
        ["Own", None, 10, None],
        ["Two", "hand-held plate", None, 8],
    ]
    positions = [["Position", "For", "Measured from", "Distance (in)", "Under"],
                 ["full front", "adult", "front collar seam", 5, None],
                 ["own place", "adult", "hem", None, "Full Front; hem"],
                 ["bad", "adult", "the moon", 1, None]]  # fmt: skip
    job = reading_of(PEOPLE, **{"Work times": times}, Press=presses, Positions=positions).job
    assert job.work_times.of("press", "tack a lower layer") == 9
    assert job.work_times.of("press", "let the plate cool by a degree") == 0
    heat = "heat the plate by a degree"
    assert job.work_times.of("press", heat) == usual.work_times.of("press", heat)
    own, two = job.presses
    first = usual.presses[0]
    assert (own.width, own.depth, own.overlap, own.hottest) == (254, first.depth, first.overlap, first.hottest)
    assert (two.kind, round(two.depth, 3)) == ("hand-held plate", 203.2)
    assert usual.presses[0].source.built_in
    moved, place = job.positions[:2]
    assert (moved.distance, moved.side, moved.neckline, moved.gap, moved.under) == (127, "front", "any", 0, ())
    assert (place.distance, place.across, place.under) == (0, 0, ("full front", "hem"))
    assert sum(it.key == moved.key for it in job.positions) == 1
    assert "bad" not in job.position_names


@pytest.mark.parametrize(
    ("designs", "wanted", "setting", "usual", "asked"),
    [
        (["Camp"], [None, None], None, "Camp", ["design-only"]),
        (["Camp", "Walk"], [None, None], None, "Camp", ["design-chosen"]),
        (["Camp", "Walk"], ["Walk", None], None, "Name", []),
        (["Camp"], ["Camp", "Camp"], None, "Name", []),
        (["Camp", "name"], [None, None], None, "Name", []),
        (["Camp", "Walk"], [None, None], "Walk", "Walk", []),
        (["Camp"], [None, None], "Name", "Camp", ["design-only"]),  # as a blank workbook has it
        (["Camp"], [None, None], "Other", "Other", []),
    ],
)
def test_the_design_that_is_meant(
    designs: Sequence[str],
    wanted: Sequence[object],
    setting: str | None,
    usual: str,
    asked: list[str],
    reading_of: Read,
) -> None:
    sheet = [
        ["Design", "Decal", "What", "Text", "Film"],
        *([name, "x", "text", "GO", "Black smooth"] for name in designs),
    ]
    people = [["Who", "Size", "Design"], *([f"Guest {no}", "M", design] for no, design in enumerate(wanted))]
    more: dict[str, Any] = {"Job": [["Setting", "Value"], ["Usual design", setting]]} if setting else {}
    reading = reading_of(people, Designs=sheet, **more)
    assert reading.job.settings.usual_design == usual
    assert [each.code for each in reading.problems if each.code in ("design-only", "design-chosen")] == asked


def test_garments_by_any_word_for_them_are_asked_about_once(reading_of: Read) -> None:
    words = ["navy hoodie", "Crew-neck tee", "t-shirt", "polo", "women's tee", "spaceship"]
    reading = reading_of([["Who", "Size", "Garment"], *([f"Guest {word}", "L", word] for word in words)])
    named = [row.garment for row in reading.job.roster]
    assert named == ["Hooded sweatshirt", "Crew-neck tee", "Crew-neck tee", "polo", "Crew-neck tee", "spaceship"]
    (asked,) = [each for each in reading.problems if each.code == "garment-read-as"]
    assert (asked.where.cell, asked.found, "“t-shirt” as Crew-neck tee" in asked.wrong) == ("C2", "navy hoodie", True)
