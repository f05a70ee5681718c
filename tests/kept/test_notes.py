"""What people write beside a plan's rows: what is taken along, what stays with its row, what goes to Changes."""

from dataclasses import replace

import pytest

from xlbatch.job.marks import Beside, Marks, OrderKey, OrderMark, StepMark
from xlbatch.job.source import Source
from xlbatch.kept.memory import NO_MEMORY, KeptChange, KeptNote
from xlbatch.kept.notes import GONE, notes_now, parted

LOG = Source("Press log", 9, {"By": "H9", "Note": "I9", "Pressed": "F9"})
STEP = StepMark(LOG, 1, "Front", "D003", True, "", "", "Kai", "edge lifted", True)
BY, NOTE = KeptNote("Press log", "D003", "By", "Kai"), KeptNote("Press log", "D003", "Note", "edge lifted")
TICKS = [KeptNote("Press log", "D003", heading, "yes") for heading in ("Pressed", "Peeled")]


def notes(step: StepMark) -> list[KeptNote]:
    return [note for note, _ in notes_now(Marks(steps=(step,)), {})]


def test_ticks_of_a_step_stay_until_it_has_a_result() -> None:
    assert notes(STEP) == [BY, NOTE, *TICKS]
    assert notes(replace(STEP, peeled=False)) == [BY, NOTE, TICKS[0]]
    assert notes(replace(STEP, pressed=False, by="")) == [NOTE, TICKS[1]]
    assert notes(replace(STEP, outcome="ok", note="")) == [BY]


@pytest.mark.parametrize(
    ("heading", "on_cell", "kept"), [("Mine", False, True), ("By", False, False), ("By", True, True)]
)
def test_what_stands_in_a_column_of_ones_own_or_on_a_cell_is_taken_along(
    heading: str, on_cell: bool, kept: bool
) -> None:
    beside = Beside(LOG, "Press log", "D003", heading, "look", on_cell)
    note = KeptNote("Press log", "D003", heading, "look", "yes" if on_cell else "")
    assert list(notes_now(Marks(beside=(beside,)), {"Press log": {"By"}})) == ([(note, LOG)] if kept else [])


def test_checked_on_the_proof_is_taken_along() -> None:
    proof = Source("Proof", 4)
    assert list(notes_now(Marks(checked={7: ("A. N.", proof)}), {})) == [
        (KeptNote("Proof", "7", "Checked", "A. N."), proof)
    ]


def test_notes_of_rows_that_are_gone_go_to_changes() -> None:
    memory = replace(NO_MEMORY, plan=3)
    proof, cell = KeptNote("Proof", "7", "Checked", "A. N."), KeptNote("Press log", "D009", "By", "first!", "yes")
    elsewhere = KeptNote("Film", "Gold", "Mine", "thin")
    placed = [(note, LOG) for note in (BY, proof, cell, elsewhere)]
    key = OrderKey("blank", "Tee", "Tee", "M", "white")
    shop = Source("Shopping list", 6, {"Note": "J6"})
    orders = [
        OrderMark(shop, key, 2, None, None, text, row) for text, row in (("lot 4", "a"), ("lot 5", "b"), ("", "c"))
    ]
    rows = {"Press log": {"D003"}, "Proof": set[str](), "Shopping list": {"a"}}
    stay, told = parted(memory, placed, orders, rows)
    assert stay == (BY, elsewhere)
    assert told == (
        KeptChange(4, "Proof", "A9", "No. 7", "Checked", "A. N.", "", GONE),
        KeptChange(4, "Press log", "H9", "D009", "note on By", "first!", "", GONE),
        KeptChange(4, "Shopping list", "J6", "b", "Note", "lot 5", "", GONE),
    )
