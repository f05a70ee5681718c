"""The plan's two workbooks: the pages to print, then the plan. Of a large job two cores make them side by side, and
each process has less to hold: the pages are a quarter of all work. A small one would wait for a process to start."""

from pathlib import Path

from xlbatch.film.cores import OtherCore
from xlbatch.how_far import percent
from xlbatch.outcome import PAGES_TAKE
from xlbatch.pages import write_pages
from xlbatch.plan import Plan
from xlbatch.sheets import write

LARGE = 3_000  # garments: a process takes as long to start as the pages of 300 take


class TwoWorkbooks:
    """What is written, in this order: `print_` the pages, `write` the plan."""

    def __init__(self, plan: Plan) -> None:
        self._plan = plan
        self._late: tuple[Path, OtherCore[bytes]] | None = None  # pages that another core makes

    def print_(self, path: Path, plan_name: str) -> None:
        """The pages to print; of a large job they are in place once the plan is written."""
        if len(self._plan.garments) >= LARGE:
            self._late = path, OtherCore(write_pages.pages_of, self._plan, plan_name)
            return
        with percent(0, PAGES_TAKE):
            write_pages.write_pages(path, self._plan, plan_name)

    def write(self, path: Path) -> None:
        """The plan, and the pages that were made meanwhile."""
        try:
            with percent(0 if self._late else PAGES_TAKE, 100):
                write.write_plan(path, self._plan)
            if self._late:
                pages, made = self._late
                pages.write_bytes(made.result())
        finally:
            if self._late:
                self._late[1].leave()
