"""Turns the rows of Problems and of Proof into what people wrote there."""

from collections.abc import Iterable, Mapping, Sequence

from xlbatch.job.marks import AnswerMark
from xlbatch.job.source import Source
from xlbatch.tables.line import Line

BOX = "☐"  # stands where nothing was written


def read_answers(given: Iterable[Line]) -> tuple[AnswerMark, ...]:
    """The problems that were answered."""
    return tuple(
        AnswerMark(
            line.source,
            line.any_text("Level"),
            line.any_text("Code"),
            line.any_text("Garment no."),
            line.any_text("Found"),
            line.any_text("Answer"),
        )
        for line in given
        if line.given("Answer") and line.given("Code")
    )


def sizes_in_doubt(given: Sequence[Line]) -> frozenset[str] | None:
    """The garment numbers whose size was asked about on a plan's Problems; None where there is no such sheet."""
    asked = (line.any_text("Garment no.") for line in given if line.any_text("Code") == "size-whose")
    return frozenset(asked) if given else None


def read_checked(given: Iterable[Line]) -> Mapping[int, tuple[str, Source]]:
    """What was written under Checked, and where, by garment number."""
    checked = {}
    for line in given:
        number = line.count("Garment no.") if line.given("Garment no.") else None
        written = line.any_text("Checked")
        if number and written not in ("", BOX):
            checked[number] = written, line.source
    return checked
