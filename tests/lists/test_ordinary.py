"""Ordinary lists and the examples get no more questions than they always did. Invented; by seed."""

import random
from collections import Counter
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.workbooks import Rows, write_workbook
from xlbatch.roster.read import Reading, read

EXAMPLES = Path(__file__).parents[2] / "example_workbooks"
FIRST = ("Ana", "Bo", "Cleo", "Dov", "Edda", "Finn", "Gwen", "Hal", "Ida", "Jon", "Kit", "Lou", "Mina", "Ned", "Orla")
LAST = ("Quill", "Rusk", "Tarn", "Vole", "Wick", "Marsh", "Dunn", "Hale", "Moss", "Pike", "Reed", "Sloan")
SIZES = ("S", "M", "L", "XL", "2XL", "Youth M", "Youth L")
HEADS = {  # of a column, the headings that people give it
    "name": ("Name", "Who", "Full name", "Player", "Participant"),
    "size": ("Size", "T-shirt size", "Shirt size", "Tee size"),
    "number": ("Number", "Jersey #", "No."),
    "color": ("Color", "Shirt color"),
    "paid": ("Paid", "Paid?"),
    "group": ("Team", "Group"),
    "note": ("Notes", "Comments"),
    "email": ("Email", "E-mail address"),
}


def ordinary(dice: random.Random) -> Rows:
    """Six to fourteen people, their sizes, and up to three further columns."""
    further = dice.sample([kind for kind in HEADS if kind not in ("name", "size")], dice.randint(0, 3))
    kinds = ["name", "size", *further]
    people = dice.sample([f"{first} {last}" for first in FIRST for last in LAST], dice.randint(6, 14))
    cells: dict[str, Callable[[int], object]] = {
        "name": lambda no: people[no],
        "size": lambda _: dice.choice(SIZES[:5]),
        "number": lambda no: 3 * no % 50 + 2,
        "color": lambda _: "navy",
        "paid": lambda _: dice.choice(("yes", "no", 15)),
        "group": lambda no: f"Team {1 + no % 2}",
        "note": lambda _: "",
        "email": lambda no: f"{people[no].split()[0].lower()}@example.org",
    }
    heads = [dice.choice(HEADS[kind]) for kind in kinds]
    return [heads, *([cells[kind](no) for kind in kinds] for no in range(len(people)))]


def questions(path: Path) -> Counter[str]:
    reading = read(path)
    assert isinstance(reading, Reading)
    return Counter(problem.code for problem in reading.problems if problem.level != "note")


def test_two_hundred_ordinary_lists_are_read_without_a_question(tmp_path: Path) -> None:
    asked: Counter[str] = Counter()
    for seed in range(200):
        rows = ordinary(random.Random(seed))
        asked += questions(write_workbook(tmp_path / "list.xlsx", {"Sheet1": rows}))
    assert asked == {}


@pytest.mark.parametrize(
    ("name", "asked"),
    [
        ("cove weekend", {"size-whose": 1, "note-asks": 1}),
        ("lantern walk", {"size-whose": 4}),
        ("relay squad", {"note-asks": 2}),
    ],
)
def test_the_examples_ask_what_they_are_made_to_ask(name: str, asked: dict[str, int]) -> None:
    assert questions(EXAMPLES / f"{name}.xlsx") == asked
