"""The sheet writer, giving signs of life while it puts a workbook together, which takes seconds where there are many
rows: so the bar moves on, and the person can stop it."""

from io import BytesIO
from typing import Any

from xlsxwriter import Workbook
from xlsxwriter.worksheet import Worksheet

from xlbatch.how_far import alive


class LivingSheet(Worksheet):  # type: ignore[misc]  # carries no types
    """A sheet."""

    def _write_row(self, *args: Any, **options: Any) -> None:
        alive()
        super()._write_row(*args, **options)


class LivingWorkbook(Workbook):  # type: ignore[misc]
    """A workbook."""

    def __init__(self, file: BytesIO, options: dict[str, object]) -> None:
        super().__init__(file, options)
        self.worksheet_class = LivingSheet


class LivingBytes(BytesIO):
    """The file in memory. It stays open: after a failure the writer's unfinished archive is still ended in it."""

    def write(self, data: bytes) -> int:  # type: ignore[override]
        """Writes; not on where the person has stopped it."""
        alive()
        return super().write(data)

    def close(self) -> None:
        """Does nothing; the memory is given back with the object."""
