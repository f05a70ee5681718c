"""What a result in a Press log counts for: its row, a garment's blank rows above it, the rows under a banner."""

from collections.abc import Callable, Sequence

import pytest

from xlbatch.job.marks import StepMark
from xlbatch.roster.read import Reading

Read = Callable[..., Reading]
HEAD = ["Step", "Garment no.", "Decal", "Piece", "Pressed", "Peeled", "Result", "By", "Note"]
Row = tuple[object, ...]


def step(
    no: int, decal: int, result: str = "", pressed: str = "", peeled: str = "", by: str = "", note: str = ""
) -> Row:
    return (decal, no, f"D{decal:03d}", f"P{decal}", pressed, peeled, result, by, note)


def banner(text: str, result: str = "", by: str = "", note: str = "") -> Row:
    return (text, None, None, None, None, None, result, by, note)


def read(reading_of: Read, *rows: Row) -> tuple[list[StepMark], list[tuple[str, str]]]:
    """The steps, and the codes of what is asked with their cells; the first row is 2."""
    people = [["Garment no.", "Who", "Size"], *([no, f"Guest {no}", "M"] for no in (1, 2, 3))]
    reading = reading_of(people, **{"Press log": [HEAD, *map(list, rows)]})
    asked = [(each.code, each.where.cell) for each in reading.problems if each.where.sheet == "Press log"]
    return list(reading.marks.steps), asked


def outcomes(steps: Sequence[StepMark]) -> list[str]:
    return [each.outcome for each in steps]


ONE, TWO, PART = banner("Batch 1, Black"), banner("Batch 2, Black"), banner("then Red")


@pytest.mark.parametrize(
    ("rows", "counted"),
    [
        ([ONE, step(1, 1, "ok"), step(1, 2), step(2, 3)], ["ok", "", ""]),
        ([ONE, step(1, 1), step(1, 2, "ok"), step(2, 3)], ["ok", "ok", ""]),
        ([ONE, step(1, 1, "redo film"), step(1, 2, "ok"), step(2, 3)], ["redo film", "ok", ""]),
        ([ONE, step(1, 1), PART, step(1, 2, "ok")], ["ok", "ok"]),  # the garment's last row of the batch
        ([ONE, step(1, 1), TWO, step(1, 2, "ok")], ["", "ok"]),
        ([ONE, step(1, 1), banner("Press 2 · batch 2"), step(1, 2, "ok")], ["", "ok"]),
        ([banner("Batch 1", "ok"), step(1, 1), step(2, 2, "redo film"), PART, step(1, 3)], ["ok", "redo film", "ok"]),
        ([ONE, step(1, 1), banner("then Red", "ok"), step(1, 2), step(2, 3)], ["", "ok", "ok"]),
        ([banner("Batch 1", "redo film"), step(1, 1), banner("then Red", "ok"), step(1, 2)], ["redo film", "ok"]),
        ([banner("Batch 1", "ok"), step(1, 1), TWO, step(2, 2)], ["ok", ""]),
        ([ONE, banner("beside it", "ok"), step(1, 1), PART, step(1, 2)], ["ok", ""]),
        ([step(1, 1), step(1, 2, "ok")], ["ok", "ok"]),  # without a banner
        ([ONE, step(1, 1, "ok"), banner("Batch 2", "redo film"), step(1, 2)], ["ok", "redo film"]),
    ],
)
def test_what_a_result_counts_for(rows: Sequence[Row], counted: list[str], reading_of: Read) -> None:
    steps, asked = read(reading_of, *rows)
    assert (outcomes(steps), asked) == (counted, [])


@pytest.mark.parametrize(
    ("rows", "counted", "asked"),
    [
        ([ONE, step(1, 1, "ok"), TWO, step(1, 1, "redo film")], ["", ""], [("result-contradicts", "G5")]),
        ([ONE, step(1, 1, "ok"), TWO, step(1, 1, "ok")], ["ok", "ok"], []),
        ([ONE, step(1, 1, "redo garment"), step(2, 2, "ok"), step(1, 3, "ok")], ["redo garment", "ok", "ok"],
         [("result-contradicts", "G5")]),
        ([ONE, step(1, 1, "ok"), step(1, 2, "redo garment")], ["ok", "redo garment"], []),
        ([banner("Batch 1", "ok"), banner("Batch 1", "redo film"), step(1, 1)], ["ok"],
         [("result-contradicts", "G3")]),
        ([banner("Batch 1", "ok"), banner("Batch 1", "ok"), step(1, 1)], ["ok"], []),
        ([ONE, banner("x", "ok"), banner("y", "redo film"), step(1, 1)], ["ok"], [("result-contradicts", "G4")]),
        ([ONE, step(1, 1, "oki")], [""], [("result-unknown", "G3")]),
        ([ONE, step(1, 1, pressed="x"), step(1, 2, pressed="x"), step(2, 3)], ["", "", ""],
         [("pressed-no-result", "G4")]),
        ([ONE, step(1, 1, pressed="x"), step(1, 2)], ["", ""], []),
        ([ONE, step(1, 1, "redo film", pressed="x"), step(1, 2, "ok", pressed="x")], ["redo film", "ok"], []),
    ],
)  # fmt: skip
def test_results_that_do_not_go_together_are_asked_about(
    rows: Sequence[Row], counted: list[str], asked: list[tuple[str, str]], reading_of: Read
) -> None:
    steps, found = read(reading_of, *rows)
    assert (outcomes(steps), found) == (counted, asked)


def test_by_and_note_of_a_banner_are_for_its_steps(reading_of: Read) -> None:
    rows = [banner("Batch 1", by="Kai", note="at 320"), step(1, 1, note="edge"), step(1, 2, by="Ana", note="soft"),
            PART,
            step(2, 3), banner("Batch 2"), banner("Black", by="Bo", note="new"), step(2, 4)]  # fmt: skip
    steps, _ = read(reading_of, *rows)
    assert [(each.by, each.note) for each in steps] == [
        ("Kai", "at 320 · edge"), ("Ana", "soft"), ("", ""), ("Bo", "new"),
    ]  # fmt: skip


def test_what_a_step_says(reading_of: Read) -> None:
    rows = (ONE, (1, 1, "d001", "", "x", "", "", "", ""), (2, 1, "", "Back", "", "x", "ok", "", ""))
    (first, second), _ = read(reading_of, *rows)
    assert (first.decal, first.piece, first.pressed, first.peeled, first.result) == ("D001", "d001", True, False, "")
    assert (second.decal, second.piece, second.result) == ("", "Back", "ok")
    assert (second.pressed, second.peeled) == (False, True)


def test_a_result_that_can_not_be_read_is_never_taken_for_ok(reading_of: Read) -> None:
    people = [["Garment no.", "Who", "Size"], [1, "Ana", "M"]]
    for typed, suggestion in (("oki", ""), ("redo garmnt please", "redo garment")):
        reading = reading_of(people, **{"Press log": [HEAD, list(ONE), list(step(1, 1, typed))]})
        assert [each.suggestion for each in reading.problems if each.code == "result-unknown"] == [suggestion]
