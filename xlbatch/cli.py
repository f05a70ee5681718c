"""The command: reads its arguments, plans each workbook, prints what came of it, and gives the exit code."""

import argparse
import platform
import sys
import traceback
from collections.abc import Iterator, Sequence
from datetime import datetime
from pathlib import Path

from xlbatch import __version__
from xlbatch.run import Options, Outcome, run
from xlbatch.saving import CannotSave, is_returned, save_new

INTERNAL_FAULT = 70
LISTED = 12  # problems shown in the console; the rest stand in the workbook
WORKBOOKS = (".xlsx", ".xlsm", ".ods", ".csv")


def main(arguments: Sequence[str] | None = None) -> int:
    """Runs the program and returns its exit code. No traceback is ever shown."""
    given = _parser().parse_args(arguments)
    try:
        if given.blank:
            return _blank(given.blank, given.metric)
        if not given.workbooks:
            return _no_workbook(given.no_window)
        return max([_plan(path, given) for path in _workbooks(given.workbooks)], default=0)
    except KeyboardInterrupt:
        print("Stopped. Nothing half-written was left.", file=sys.stderr)
        return 3
    except Exception as fault:
        print(_report(fault, given.to or Path.cwd()), file=sys.stderr)
        return INTERNAL_FAULT


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="xlbatch", description="Turns a roster workbook into the sheets and cut files for a batch of shirts."
    )
    parser.add_argument("workbooks", nargs="*", type=Path, metavar="WORKBOOK", help="a roster workbook, .csv or folder")
    parser.add_argument("--to", type=Path, metavar="FOLDER", help="where to write (default: beside the workbook)")
    parser.add_argument("--blank", type=Path, metavar="FILE", help="write a fresh roster workbook and stop")
    parser.add_argument("--metric", action="store_true", help="with --blank: in cm and °C, for A4 paper")
    parser.add_argument("--check", action="store_true", help="check only: list the problems, make no plan")
    parser.add_argument(
        "--effort", type=int, default=1, choices=range(10), metavar="N",
        help="how hard to search for less film: 0 fastest, 1 default, 2 to 9 more",
    )  # fmt: skip
    parser.add_argument("--no-window", action="store_true", help="stay in the console")
    parser.add_argument("--version", action="version", version=f"xlbatch {__version__}")
    return parser


def _workbooks(given: Sequence[Path]) -> Iterator[Path]:
    """Each workbook; of a folder its rosters, not the plans and problems this program wrote there."""
    for path in given:
        if path.is_dir():
            inside = sorted(each for each in path.iterdir() if each.suffix.lower() in WORKBOOKS)
            yield from (each for each in inside if not is_returned(each) and not each.name.startswith(("~$", ".")))
        else:
            yield path


def _plan(path: Path, given: argparse.Namespace) -> int:
    show = sys.stderr.isatty()
    options = Options(folder=given.to, effort=given.effort, check_only=given.check)
    outcome = run(path, options, lambda stage: print(f"  {stage} …", file=sys.stderr) if show else None, datetime.now())
    _print(path, outcome)
    return outcome.code


def _print(path: Path, outcome: Outcome) -> None:
    if outcome.code == 3:
        print(outcome.message, file=sys.stderr)
        return
    print(f"{path.name}: {outcome.message}")
    worth_telling = [found for found in outcome.problems if found.level != "note"]
    for found in worth_telling[:LISTED]:
        print(f"  {found.level}: {found.sentence}")
    if len(worth_telling) > LISTED:
        print(f"  and {len(worth_telling) - LISTED} more on the Problems sheet")
    if outcome.written:
        kind = "Plan" if outcome.cut_files else "Problems"
        print(f"{kind + ':':<11}{outcome.written}")
    if outcome.cut_files:
        print(f"Cut files: {outcome.cut_files}")


def _blank(path: Path, metric: bool) -> int:
    from xlbatch.roster.read import blank_job
    from xlbatch.sheets.write import write_blank

    target = path if path.suffix else path.with_suffix(".xlsx")
    try:
        save_new(target, lambda to: write_blank(to, blank_job(target, metric=metric)))
    except CannotSave as cannot:
        print(cannot, file=sys.stderr)
        return 3
    print(f"Blank roster workbook: {target}")
    return 0


def _no_workbook(no_window: bool) -> int:
    if not no_window:
        from xlbatch.window import open_window

        if open_window():
            return 0
    _parser().print_help()
    return 0


def _report(fault: Exception, folder: Path) -> str:
    """Writes what a maintainer needs, and nothing from the roster; says where."""
    places = traceback.extract_tb(fault.__traceback__)
    lines = [f"{Path(place.filename).name}:{place.lineno} {place.name}" for place in places]
    text = "\n".join([f"xlbatch {__version__}", platform.platform(), type(fault).__name__, *lines, ""])
    file = folder / "xlbatch fault report.txt"
    try:
        file.write_text(text, encoding="utf-8")
        where = f"A short report without your list is in {file}."
    except OSError:
        where = text
    return f"Something went wrong inside the program; your workbook is unchanged. {where}"
