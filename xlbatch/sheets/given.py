"""Every input row as text, in millimeters and °C whatever the job's units: what the memory keeps, and compares with."""

from collections import Counter
from collections.abc import Iterator
from dataclasses import replace
from decimal import Decimal

from xlbatch.job.job import Job
from xlbatch.job.source import Source
from xlbatch.kept.input_rows import GivenRow
from xlbatch.roster.settings import HEADING
from xlbatch.sheets import input_cells, inputs, job_input
from xlbatch.sheets.all_sheets import INPUTS
from xlbatch.trade.tables import table

# what a row is called, sheet by sheet; elsewhere the first column
KEYS = {
    "Designs": ("Design", "Decal"),
    "Garments": ("Garment", "For", "Size"),
    "Positions": ("Position", "For", "Neckline"),
    "Drawing parts": ("Artwork", "Part"),
}
WORKED_OUT = {"Drawing parts": ("Width", "Height", "Place")}  # what the program tells of a row, as the drawing now is


def given_rows(job: Job) -> tuple[GivenRow, ...]:
    """The rows of all input sheets."""
    plain = replace(job, settings=replace(job.settings, length_unit="mm", temperature_unit="°C"))
    return (*_tables(plain), *_settings(job))


def _tables(job: Job) -> Iterator[GivenRow]:
    for sheet in INPUTS:
        columns = sheet.headings(job)
        names = KEYS.get(sheet.name, (columns[0].heading,))
        seen: Counter[str] = Counter()
        frame = inputs.table(sheet, job)
        for record, values in zip(sheet.rows(job), frame.itertuples(index=False, name=None), strict=True):
            told = WORKED_OUT.get(sheet.name, ())
            texts = {
                column.heading: _text(value)
                for column, value in zip(columns, values, strict=True)
                if column.heading not in told
            }
            key = " · ".join(filter(None, (texts[name] for name in names)))
            seen[key] += 1
            yield GivenRow(sheet.name, key if seen[key] == 1 else f"{key} ({seen[key]})", texts, record.source)


def _settings(job: Job) -> Iterator[GivenRow]:
    frame = job_input.table(replace(job.settings, length_unit="mm"))
    for line, values in zip(table("job"), frame.itertuples(index=False, name=None), strict=True):
        name = line["Setting"]
        if line["Kind"] == HEADING:
            continue
        value = job.settings.length_unit if name == "Length unit" else values[1]
        where = job.setting_cells.get(name)
        source = Source(where.sheet if where else "Job", 0, {"Value": where.cell} if where else {})
        yield GivenRow("Job", name, {"Value": _text(value)}, source)


def _text(value: object) -> str:
    if isinstance(value, float):
        return f"{value:.2f}".rstrip("0").rstrip(".")
    if isinstance(value, Decimal):
        return input_cells.money_text(value)
    return "" if value is None else str(value)
