"""What people wrote beside steps and garments: it stays with them; what has no row any more goes to Changes."""

from collections.abc import Collection, Iterable, Iterator

from xlbatch.job.marks import Marks, StepMark
from xlbatch.kept.memory import KeptChange, KeptNote, Memory

LOG, PROOF = "Press log", "Proof"
TICKED = "yes"


def notes_now(memory: Memory, marks: Marks) -> tuple[KeptNote, ...]:
    """All notes: those in the plan dropped, and those of garments that had no row in it."""
    steps = [note for step in marks.steps for note in _of_step(step)]
    checked = {str(number): text for number, text in marks.checked.items()}
    old = (n for n in memory.notes if n.sheet == PROOF and n.key not in checked and n.key not in _proofed(marks))
    return (*steps, *(KeptNote(PROOF, number, "Checked", text) for number, text in checked.items()), *old)


def _proofed(marks: Marks) -> Collection[str]:
    """The garments that stood in the plan dropped: an emptied cell of theirs is meant so."""
    return {str(step.garment_no) for step in marks.steps}


def _of_step(step: StepMark) -> Iterator[KeptNote]:
    ticks = () if step.outcome else (("Pressed", step.pressed), ("Peeled", step.peeled))
    written = [("By", step.by), ("Note", step.note), *((heading, TICKED) for heading, ticked in ticks if ticked)]
    for heading, text in written:
        if text:
            yield KeptNote(LOG, step.decal, heading, text)


def parted(
    notes: Iterable[KeptNote], steps: Collection[str], marks: Marks, plan: int
) -> tuple[tuple[KeptNote, ...], tuple[KeptChange, ...]]:
    """The notes whose steps are still to do, and the others as lines for Changes. `steps`: the decals to press."""
    stay = [note for note in notes if note.sheet == PROOF or note.key in steps]
    at = {step.decal: step for step in marks.steps}
    gone = [note for note in notes if note not in stay]
    return tuple(stay), tuple(
        KeptChange(
            plan,
            LOG,
            at[note.key].source.at(note.heading).cell,
            f"No. {at[note.key].garment_no} {note.key}",
            note.heading,
            note.text,
            "",
            "kept here: its step is done",
        )
        for note in gone
        if note.key in at
    )
