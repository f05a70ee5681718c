"""What people wrote on a plan's own sheets, beside its rows: it stays there as long as the row does, then goes to
Changes."""

from collections.abc import Collection, Iterable, Iterator, Mapping

from xlbatch.job.marks import Marks, OrderMark, StepMark
from xlbatch.job.source import Source
from xlbatch.kept.memory import KeptChange, KeptNote, Memory

LOG, PROOF, SHOPPING = "Press log", "Proof", "Shopping list"
TICKED = "yes"
ON_CELL = "yes"
GONE = "kept here: its row is done or gone"
Placed = tuple[KeptNote, Source]
Rows = Mapping[str, Collection[str]]  # what the rows of each sheet are called; a sheet not named keeps all


def notes_now(marks: Marks, own: Mapping[str, Collection[str]]) -> Iterator[Placed]:
    """All that was written into the plan dropped, and where. `own`: the headings of a plan's own columns, by sheet."""
    for step in marks.steps:
        for heading, text in _of_step(step):
            yield KeptNote(LOG, step.decal, heading, text), step.source
    for number, (text, source) in marks.checked.items():
        yield KeptNote(PROOF, str(number), "Checked", text), source
    for note in marks.beside:
        if note.on_cell or note.heading not in own.get(note.sheet, ()):
            on_cell = ON_CELL if note.on_cell else ""
            yield KeptNote(note.sheet, note.key, note.heading, note.text, on_cell), note.source


def _of_step(step: StepMark) -> Iterator[tuple[str, str]]:
    ticks = () if step.outcome else (("Pressed", step.pressed), ("Peeled", step.peeled))
    written = [("By", step.by), ("Note", step.note), *((heading, TICKED) for heading, ticked in ticks if ticked)]
    return ((heading, text) for heading, text in written if text)


def parted(
    memory: Memory, notes: Iterable[Placed], orders: Iterable[OrderMark], rows: Rows
) -> tuple[tuple[KeptNote, ...], tuple[KeptChange, ...]]:
    """The notes whose rows are still there, and the others as lines for Changes; those of a row that comes back, as
    one held back does, are kept too."""
    beside = dict(notes)
    of_orders = {_of_order(order): order.source for order in orders if order.note}
    gone = {note: source for note, source in (beside | of_orders).items() if not _has_row(note, rows)}
    told = (_told(note, source, memory.plan + 1) for note, source in gone.items())
    return tuple(note for note in beside if note not in gone), tuple(told)


def _of_order(order: OrderMark) -> KeptNote:
    return KeptNote(SHOPPING, order.row, "Note", order.note)


def _has_row(note: KeptNote, rows: Rows) -> bool:
    return note.sheet not in rows or note.key in rows[note.sheet]


def _told(note: KeptNote, source: Source, plan: int) -> KeptChange:
    what = f"note on {note.heading}" if note.on_cell else note.heading
    cell = source.at(note.heading).cell
    return KeptChange(plan, note.sheet, cell, owner_of(note), what, note.text, "", GONE)


def owner_of(note: KeptNote) -> str:
    """Whose a note is, as Changes says it."""
    return f"No. {note.key}" if note.sheet in (PROOF, "Money") else note.key
