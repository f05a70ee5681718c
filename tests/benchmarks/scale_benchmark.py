"""What a large job costs, stage by stage: CPU seconds of the run and its processes, and in how many floors that is.

Run: -m tests.benchmarks.scale_benchmark [garments [effort [1]]]; a list of names and sizes, the usual design;
with a last 1 a drawing of two colors too. The floor is the bare writing of the plan's own cells and pictures, measured
in the same run; the pages to print are no part of it. Exit code 1 where a goal is missed.
"""

import random
import resource
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from contextlib import ExitStack, contextmanager
from datetime import datetime
from functools import reduce
from importlib import import_module
from io import BytesIO
from pathlib import Path
from typing import Any
from unittest.mock import patch

import xlsxwriter
from openpyxl import load_workbook

from xlbatch.run import Options, Outcome, run

SYLLABLES = ("an", "be", "chi", "do", "el", "fa", "gu", "ho", "is", "jo", "ka", "lu", "mi", "no", "or", "pe", "ri")
SIZES = ("S", "M", "L", "XL", "Youth M")
DRAWING = (
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 60"><circle cx="30" cy="30" r="28" fill="#c00000"/>'
    '<path d="M60 2 L98 58 H62 Q80 40 60 2z" fill="#103080"/></svg>'
)
STAGES = {  # what is timed: the function's own time, without that of others named here
    "reading": ("roster.read:read",),
    "checking": ("check.check:check", "kept.recall:recall"),
    "drawing": ("parts.take_up:with_drawings", "art.draw:draw"),
    "placing, joining": ("placement.put:place", "placement.register:registered", "film.join:join"),
    "film": ("film.lay:lay",),
    "press order": ("press.order:press_order",),
    "time, shopping, money": (
        "schedule.plan_time:plan_time",
        "shopping.buy:shopping_list",
        "shopping.buy:spare_choices",
        "shopping.prices:money",
    ),
    "memory": ("kept.remember:remember", "kept.lasting:numbered", "kept.tell:tell"),
    "cut files": ("cutfiles.run_svg:cut_files",),
    "messages": ("messages.group_messages:group_files",),
    "sheets": ("sheets.write:write_plan",),
    "pages to print": ("pages.write_pages:write_pages", "film.cores:OtherCore.result"),
}
WRITING = ("cut files", "messages", "sheets", "pages to print")
PAGES_MORE = 1.25  # what the pages to print may add to the cost of writing
WRITING_GOAL, GOALS = 4.0, (9.0, 15.0)  # times the floor: of writing, and of the whole run at effort 0, and above
MEMORY_GOAL = 800  # MB


def cpu() -> float:
    """The seconds that this process and those it started have computed."""
    used = (resource.getrusage(whose) for whose in (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN))
    return sum(each.ru_utime + each.ru_stime for each in used)


class Watch:
    """The CPU seconds of each stage, what it calls of another stage not counted."""

    def __init__(self) -> None:
        self.seconds = dict.fromkeys(STAGES, 0.0)
        self._inner = [0.0]

    def timed(self, stage: str, work: Callable[..., Any]) -> Callable[..., Any]:
        def timing(*args: Any, **options: Any) -> Any:
            began = cpu()
            self._inner.append(0.0)
            try:
                return work(*args, **options)
            finally:
                took = cpu() - began
                self.seconds[stage] += took - self._inner.pop()
                self._inner[-1] += took

        return timing


@contextmanager
def watching(watch: Watch) -> Iterator[None]:
    """Times the stages of a run; their modules are loaded before."""
    with ExitStack() as stack:
        for stage, functions in STAGES.items():
            for function in functions:
                module, path = function.split(":")
                *classes, name = path.split(".")
                home = reduce(getattr, classes, import_module(f"xlbatch.{module}"))
                stack.enter_context(patch.object(home, name, watch.timed(stage, getattr(home, name))))
        yield


def roster(garments: int) -> str:
    dice = random.Random(garments)
    rows = (f"{_name(dice)} {_name(dice)},{dice.choice(SIZES)}" for _ in range(garments))
    return "\n".join(("Who,Size", *rows, ""))


def _name(dice: random.Random) -> str:
    return "".join(dice.choice(SYLLABLES) for _ in range(dice.randint(2, 4))).title()


def list_with_artwork(folder: Path, garments: int) -> Path:
    """The same list as a workbook whose design has a drawing below the name."""
    (folder / "badge.svg").write_text(DRAWING, encoding="utf-8")
    path = folder / "large.xlsx"
    with xlsxwriter.Workbook(path) as book:
        sheet = book.add_worksheet("Roster")
        for row, line in enumerate(roster(garments).splitlines()):
            sheet.write_row(row, 0, line.split(","))
        designs = book.add_worksheet("Designs")
        designs.write_row(0, 0, ("Design", "Decal", "What", "Artwork", "Position", "Width (in)"))
        designs.write_row(1, 0, ("Club", "Name", "print name", "", "full front", ""))
        designs.write_row(2, 0, ("Club", "Badge", "artwork", "badge.svg", "full back", 8))
    return path


def planned(path: Path, effort: int, folder: Path) -> tuple[Outcome, float, Watch]:
    """The list planned into the folder; its CPU seconds, in all and by stage."""
    watch = Watch()
    with watching(watch):
        began = cpu()
        outcome = run(path, Options(folder, effort), lambda _: None, datetime(2026, 1, 1))
        took = cpu() - began
    assert outcome.written, outcome.message
    return outcome, took, watch


def floor(plan: Path) -> tuple[float, int, int]:
    """The CPU seconds of writing the plan's cells and pictures again without any looks; how many there are of each."""
    book = load_workbook(plan)
    cells = [(sheet.title, list(_values(sheet)), list(_pictures(sheet))) for sheet in book.worksheets]
    began = cpu()
    with xlsxwriter.Workbook(BytesIO()) as bare:
        for title, values, pictures in cells:
            sheet = bare.add_worksheet(title)
            for row, column, value in values:
                sheet.write(row, column, value)
            for row, column, data in pictures:
                sheet.insert_image(row, column, "picture.png", {"image_data": BytesIO(data)})
    return cpu() - began, sum(len(values) for _, values, _ in cells), sum(len(them) for _, _, them in cells)


def _values(sheet: Any) -> Iterator[tuple[int, int, Any]]:
    return ((cell.row - 1, cell.column - 1, cell.value) for row in sheet for cell in row if cell.value is not None)


def _pictures(sheet: Any) -> Iterator[tuple[int, int, bytes]]:
    return ((image.anchor._from.row, image.anchor._from.col, image._data()) for image in sheet._images)


def main(garments: int = 1000, effort: int = 0, artwork: int = 0) -> int:
    began = time.perf_counter()
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        path = list_with_artwork(folder, garments) if artwork else folder / "large.csv"
        if not artwork:
            path.write_text(roster(garments), encoding="utf-8")
        outcome, took, watch = planned(path, effort, folder / "out")
        whose = resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN
        peak, beside = (resource.getrusage(each).ru_maxrss // 1024 for each in whose)
        assert outcome.written
        bare, cells, pictures = floor(outcome.written)
    print(f"{outcome.message} effort {effort}; {cells:,} cells and {pictures} pictures in the plan")
    print(f"{'stage':24}{'CPU s':>8}{'of floor':>10}")
    rest = took - sum(watch.seconds.values())
    for stage, seconds in {**watch.seconds, "all else": rest, "whole run": took, "floor": bare}.items():
        print(f"{stage:24}{seconds:8.2f}{seconds / bare:10.2f}")
    own, pages = (sum(watch.seconds[stage] for stage in these) for these in (WRITING, WRITING[-1:]))
    print(f"peak {peak} MB, of a process beside it {beside} MB, {time.perf_counter() - began:.0f} s by the clock")
    figures = (
        ("writing, without the pages", (own - pages) / bare, WRITING_GOAL),
        ("writing", own / bare, WRITING_GOAL * PAGES_MORE),
        ("whole run", took / bare, GOALS[min(effort, 1)]),
        ("memory of a process (MB)", max(peak, beside), MEMORY_GOAL),
    )
    for what, figure, goal in figures:
        print(f"{'met' if figure <= goal else 'MISSED'}: {what}: {figure:.2f} (goal {goal:g})")
    return int(any(figure > goal for _, figure, goal in figures))


if __name__ == "__main__":
    sys.exit(main(*map(int, sys.argv[1:])))
