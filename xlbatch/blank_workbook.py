"""Makes a fresh roster workbook, in inches or in centimeters."""

from pathlib import Path

from xlbatch.saving import save_new


def write_blank_workbook(path: Path, *, metric: bool) -> None:
    """Writes a blank roster workbook with every default, for inches, °F and Letter paper or cm, °C and A4.

    Raises CannotSave."""
    from xlbatch.roster.read import blank_job
    from xlbatch.sheets.write import write_blank

    save_new(path, lambda to: write_blank(to, blank_job(path, metric=metric)))
