"""Job: the settings, each with the value used and what it means."""

from collections.abc import Iterable, Mapping
from decimal import Decimal
from typing import Any

import pandas as pd

from xlbatch.job.job import Job, Settings
from xlbatch.kept.memory import KeptNote
from xlbatch.paper.cell import Value
from xlbatch.paper.page import Column, Page, tabled
from xlbatch.problems import Problem
from xlbatch.roster.settings import HEADING
from xlbatch.sheets.beside_rows import write_beside
from xlbatch.sheets.garments_input import listed
from xlbatch.sheets.input_cells import money_text
from xlbatch.sheets.inputs import FIRST, Spots, mark, offer
from xlbatch.trade.tables import Line, words
from xlbatch.trade.tables import table as trade_table
from xlbatch.units import exact_length_text

NAME = "Job"
COLUMNS = (Column("Setting", 2.2, ("text", "strong")), Column("Value", 1.5, ("text", "change")), Column("Meaning", 5.3))
FIELDS: Mapping[str, str] = {
    "Print": "print_",
    "Round sizes to": "round_sizes_to",
    "Narrowest letters": "narrowest_letters",
    "Widest letters": "widest_letters",
    "Gap in a drawing": "gap_in_drawing",
    "Clear of side seams": "clear_of_side",
    "Clear of the hem": "clear_of_hem",
    "Clear of sleeve edges": "clear_of_sleeve_edge",
    "Gap between decals": "gap",
    "Film end margin": "end_margin",
    "Turn decals": "turn",
    "Mirror the cut files": "mirror",
    "Join pieces": "join",
    "Save film by interlocking": "interlock",
    "Test cut": "test_cut",
    "Enough spares per 100 jobs": "sureness",
    "Margin or fixed price": "margin",
    "Last garment no.": "last_no",
}  # where the field is not simply the setting's name


def table(settings: Settings) -> pd.DataFrame:
    """The settings, each with its value and what it means."""
    return tabled(COLUMNS, ((line["Setting"], _value(line, settings), line["Meaning"]) for line in trade_table("job")))


def write(page: Page, job: Job, problems: Iterable[Problem]) -> None:
    """The settings as a table to change and drop again."""
    lines, frame = trade_table("job"), table(job.settings)
    page.lay_columns(COLUMNS, frame)
    page.title(NAME, "Change a value in the second column and drop this workbook again. Lengths may carry any unit.")
    page.table(frame)
    page.name_table(f"{NAME}_table")
    for row, line in enumerate(lines, FIRST):
        if line["Kind"] == HEADING:
            for column, text in enumerate((line["Setting"], None, line["Meaning"])):
                page.write(row, column, text, "cell", "text", "strong", "summed")
    own = _choices(job)
    for row, line in enumerate(lines, FIRST):
        if line["Kind"] in ("choice", "yes/no"):
            offer(page, row, 1, 1, words(line["Choices"]), strict=True)
        elif line["Kind"] == "text":
            offer(page, row, 1, 1, own.get(line["Setting"]) or words(line["Choices"]))
    mark(page, frame, spots(job), problems, _noted(job))
    beside = (KeptNote(NAME, note.key, note.heading, note.text) for note in job.beside_settings if not note.on_cell)
    write_beside(page, NAME, frame, beside)


def _noted(job: Job) -> Mapping[tuple[int, int], str]:
    """People's notes on settings, by row and column of the sheet."""
    rows = {line["Setting"]: row for row, line in enumerate(trade_table("job"), FIRST)}
    columns = {column.heading: place for place, column in enumerate(COLUMNS)}
    return {
        (rows[note.key], columns[note.heading]): note.text
        for note in job.beside_settings
        if note.on_cell and note.key in rows and note.heading in columns
    }


def _choices(job: Job) -> Mapping[str, Iterable[str]]:
    """Drop-downs that depend on the other sheets of this workbook."""
    blanks = listed(job)
    return {
        "Usual garment": [blank.garment for blank in blanks],
        "Usual color": [color for blank in blanks for color in blank.colors],
        "Usual design": [spec.design for spec in job.designs],
        "Font": [line["Font"] for line in trade_table("fonts")],
    }


def spots(job: Job) -> Spots:
    """Where each setting the person gave stands on the returned sheet."""
    rows = {line["Setting"]: row for row, line in enumerate(trade_table("job"), FIRST)}
    return {where: ((rows[name], 1),) for name, where in job.setting_cells.items() if name in rows}


def _value(line: Line, settings: Settings) -> Value:
    if line["Kind"] == HEADING:
        return None
    name = FIELDS.get(line["Setting"], line["Setting"].lower().replace(" ", "_"))
    held: Any = getattr(settings, name)
    match line["Kind"]:
        case "length":
            return exact_length_text(held, settings.length_unit)
        case "yes/no":
            return "yes" if held else "no"
        case "time":
            return f"{held // 60}:{held % 60:02d}"
        case "number or word":
            return words(line["Choices"])[0] if held is None else held
        case "margin":
            return margin_text(settings)
        case _:
            return held if isinstance(held, int | float | Decimal) else held or None


def margin_text(settings: Settings) -> str:
    """`30 %` added to the cost, or one price a garment."""
    if settings.fixed_price is not None:
        return money_text(settings.fixed_price)
    return f"{((settings.margin or Decimal(0)) * 100).normalize():f} %"
