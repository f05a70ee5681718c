"""Lists in a line of text, and in the next line what a careful reader makes of them: `Name|Size/Ana|M`, and `Ana|M B2`.
Behind @ the sheet's name, behind || a further sheet. Invented; common practice, no source."""

import tempfile
from pathlib import Path

from tests.workbooks import write_workbook
from xlbatch.roster.read import Reading, read

FIELDS = ("who", "group", "garment", "size", "color", "print_name", "number", "status", "note")


def cases(table: str) -> list[tuple[str, str]]:
    """The lists of a table beside this module, and what is read of each."""
    lines = Path(__file__).with_name(table).read_text(encoding="utf-8").splitlines()
    return list(zip(lines[::2], lines[1::2], strict=True))


def read_short(text: str) -> str:
    """Each garment's values with the cell of its size, and after ! the code and cell of each question and note."""
    parted = [sheet.partition(" @ ") for sheet in text.split(" || ")]
    sheets = {
        name or "Sheet1": [[int(cell) if cell.isdigit() else cell or None for cell in row.split("|")] for row in rows]
        for cells, _, name in parted
        for rows in [cells.split("/")]
    }
    with tempfile.TemporaryDirectory() as folder:
        reading = read(write_workbook(Path(folder) / "list.xlsx", sheets))
    assert isinstance(reading, Reading)
    people = (
        "|".join([str(value) for name in FIELDS if (value := getattr(row, name))])
        + f" {row.source.at('Size').cell}".rstrip()
        for row in reading.job.roster
    )
    told = ", ".join(f"{each.code} {each.where.cell}".strip() for each in reading.problems)
    return " / ".join(people) + (f" ! {told}" if told else "")
