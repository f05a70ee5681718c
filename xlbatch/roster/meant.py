"""Which garment a roster's words mean, and which design is meant where the roster names none."""

from collections.abc import Iterable, Sequence
from dataclasses import replace

from xlbatch.job.job import Blank, RosterRow
from xlbatch.problems import Problem, problem
from xlbatch.tables.built_in import is_built_in
from xlbatch.tables.line import Line
from xlbatch.tables.sizes import wearer
from xlbatch.trade.answer_words import garment_meant
from xlbatch.trade.contrast import shade


def garments_meant(
    roster: Sequence[RosterRow], blanks: Iterable[Blank]
) -> tuple[tuple[RosterRow, ...], tuple[Problem, ...]]:
    """The roster with each garment named as on Garments, asked once for the list."""
    listed = {blank.garment.casefold(): blank.garment for blank in blanks}
    meant: dict[str, str] = {}
    for row in roster:
        if row.garment and row.garment.casefold() not in listed:
            garment = garment_meant(_bare(row.garment))
            if garment.casefold() in listed:
                meant[row.garment] = listed[garment.casefold()]
    if not meant:
        return tuple(roster), ()
    first = next(row for row in roster if row.garment in meant)
    read = ", ".join(f"“{typed}” as {garment}" for typed, garment in meant.items())
    named = tuple(replace(row, garment=meant.get(row.garment, row.garment)) for row in roster)
    return named, (problem("garment-read-as", first.source.at("Garment"), first.garment, read=read),)


def _bare(garment: str) -> str:
    """A garment without the words for its color or wearer: `navy hoodie`, `women's tee`."""
    return (
        " ".join(word for word in garment.split() if garment_meant(word) or (shade(word) is None and not wearer(word)))
        or garment
    )


def design_meant(
    given: Sequence[Line], roster: Sequence[RosterRow], usual: str, *, chosen: bool
) -> tuple[str, tuple[Problem, ...]]:
    """The usual design: the setting's, where the person set it or has such a design; else the only one on Designs, or
    the likeliest of several, which is asked. That a setting names the built-in design says nothing: a blank workbook's
    does."""
    own: dict[str, Line] = {}
    for line in given:
        if line.given("Design"):
            own.setdefault(line.text("Design").casefold(), line)
    without = tuple(row.source.row for row in roster if not row.design and not row.status)
    chosen = chosen and not is_built_in(usual)
    if chosen or not own or usual.casefold() in own or not without or any(row.design for row in roster):
        return usual, ()
    likely = next(iter(own.values()))
    name, where = likely.text("Design"), likely.source.at("Design")
    if len(own) == 1:
        return name, (problem("design-only", where, name),)
    others = ", ".join(line.text("Design") for line in own.values() if line is not likely)
    return name, (problem("design-chosen", where, name, rows=without, others=others),)
