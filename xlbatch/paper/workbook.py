"""A workbook being written: the same bytes each time for the same plan."""

from copy import deepcopy
from datetime import datetime
from pathlib import Path
from types import TracebackType

from xlbatch.job.job import Job
from xlbatch.paper.living_workbook import LivingBytes, LivingWorkbook
from xlbatch.paper.page import Page
from xlbatch.paper.paging import BOTTOM, FOOTER, HEADER, SIDE, TOP, paper
from xlbatch.paper.style import FONT, Formats

CREATED = datetime(2026, 1, 1)  # one fixed day for every workbook: the time of the run stands on the job sheet alone
_OPTIONS = {
    "in_memory": True,
    "strings_to_numbers": False,
    "strings_to_formulas": False,
    "strings_to_urls": False,
    "default_format_properties": {"font_name": FONT, "font_size": 11},
    "default_row_height": 19,  # pixels, for Arial 11
    "default_column_width": 72,
}


class Book:
    """A new workbook at `path`; written when the `with` block ends."""

    def __init__(self, path: Path, job: Job) -> None:
        self.settings = job.settings
        self.name = job.settings.job_name or job.path.stem
        self._path, self._bytes = path, LivingBytes()  # whole before the disk sees it: a full one must not meet a half
        self._workbook = LivingWorkbook(self._bytes, deepcopy(_OPTIONS))  # the writer adds to what it is given
        self._workbook.set_properties(
            {"title": self.name, "subject": "A batch of personalized garments", "created": CREATED}
        )
        self._workbook.set_size(1600, 1000)
        self._formats = Formats(self._workbook, job.settings)

    def __enter__(self) -> "Book":
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, traceback: TracebackType | None
    ) -> None:
        if kind is None:
            self._workbook.close()
            self._path.write_bytes(self._bytes.getvalue())

    def page(self, name: str, *, landscape: bool = False, form: bool = False) -> Page:
        """A new sheet. A `form` shows no gridlines."""
        sheet = self._workbook.add_worksheet(name)
        size = paper(self.settings.paper, landscape)
        sheet.set_paper(size.number)
        if landscape:
            sheet.set_landscape()
        sheet.set_margins(left=SIDE, right=SIDE, top=TOP, bottom=BOTTOM)
        sheet.set_footer(_footer(self.name), {"margin": FOOTER, "scale_with_doc": False})
        sheet.set_header(f'&R&"{FONT},Regular"&8&F', {"margin": HEADER, "scale_with_doc": False})  # plan 2 is no plan 3
        sheet.fit_to_pages(1, 0)
        sheet.center_horizontally()
        sheet.ignore_errors({"number_stored_as_text": "A1:XFD1048576"})  # 07 is meant to be text
        if form:
            sheet.hide_gridlines(2)
        return Page(self._workbook, sheet, self._formats, size)


def _footer(job_name: str) -> str:
    """Job, sheet and page number; the job's name short enough for a footer's 255 characters."""
    small = f'&"{FONT},Regular"&9 '  # the space keeps a job named 2026 from being read as a size
    return f"&L{small}{job_name[:80].replace('&', '&&')}&C{small}&A&R{small}Page &P of &N"
