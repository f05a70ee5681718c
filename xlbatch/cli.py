"""The command: reads its arguments, plans each workbook, prints what came of it, and gives the exit code."""

import argparse
import os
import sys
from collections.abc import Callable, Iterable, Sequence
from contextlib import suppress
from io import TextIOWrapper
from pathlib import Path
from typing import TextIO

from xlbatch import __version__
from xlbatch.each_list import jobs_in, plan_list
from xlbatch.fault import report
from xlbatch.run import Options, Outcome, Progress, Step
from xlbatch.saving import CannotSave

INTERNAL_FAULT = 70
LISTED = 12  # problems shown in the console; the rest stand in the workbook
BAR = 30  # characters


def main(arguments: Sequence[str] | None = None) -> int:
    """Runs the program and returns its exit code. No traceback is ever shown."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, TextIOWrapper):  # a console may lack a name's letters; another program reads UTF-8
            stream.reconfigure(encoding=None if stream.isatty() else "utf-8", errors="replace")
    given = _parser().parse_args(arguments)
    try:
        return _do(given)
    except KeyboardInterrupt:
        _say("Stopped. Nothing half-written was left.", sys.stderr)
        return 3
    except Exception as fault:
        _say(report(fault, given.to or Path.cwd()), sys.stderr)
        return INTERNAL_FAULT


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="xlbatch", description="Turns a roster workbook into the sheets and cut files for a batch of shirts."
    )
    parser.add_argument("workbooks", nargs="*", type=Path, metavar="WORKBOOK", help="a roster workbook, .csv or folder")
    parser.add_argument("--to", type=Path, metavar="FOLDER", help="where to write (default: beside the workbook)")
    parser.add_argument("--blank", type=Path, metavar="FILE", help="write a fresh roster workbook and stop")
    parser.add_argument("--metric", action="store_true", help="with --blank: in cm and °C, for A4 paper")
    parser.add_argument("--sign-up", type=Path, metavar="FILE", help="write a sign-up workbook to send round and stop")
    parser.add_argument(
        "--from", type=Path, dest="source", metavar="WORKBOOK",
        help="with --sign-up: for this list or plan, its garments and people",
    )  # fmt: skip
    parser.add_argument("--check", action="store_true", help="check only: list the problems, make no plan")
    parser.add_argument(
        "--anew", action="store_true", help="plan an old list or plan although a later plan of it has marks"
    )
    parser.add_argument(
        "--effort", type=int, default=1, choices=range(10), metavar="N",
        help="how hard to search for less film: 0 fastest, 1 default, 2 to 9 more",
    )  # fmt: skip
    parser.add_argument("--what-if", action="store_true", help="also plan it with single changes: what each would save")
    parser.add_argument("--no-window", action="store_true", help="stay in the console")
    parser.add_argument("--window", action="store_true", help=argparse.SUPPRESS)  # how a dropped file starts it
    parser.add_argument("--version", action="version", version=f"xlbatch {__version__}")
    return parser


def _do(given: argparse.Namespace) -> int:
    if given.blank:
        return _blank(given.blank, given.metric)
    if given.sign_up:
        return _sign_up(given.sign_up, given.source, given.metric)
    options = Options(
        folder=given.to, effort=given.effort, check_only=given.check, anew=given.anew, what_if=given.what_if
    )
    if not given.no_window and (given.window or not given.workbooks):
        from xlbatch.window.window import open_window

        code = open_window(given.workbooks, options)
        if code is not None:
            return code
    if not given.workbooks:
        _parser().print_help()
    return max([_plan(path, how) for path, how in jobs_in(given.workbooks, options)], default=0)


def _plan(path: Path, options: Options) -> int:
    outcome = plan_list(path, options, _progress())
    _end_progress()
    _print(path, outcome)
    return outcome.code


def _progress() -> Progress:
    """Shows one line, drawn over when it changes; quiet where no one watches."""
    if sys.stderr is None or not sys.stderr.isatty():
        return lambda _step: None
    shown = ""

    def show(step: Step) -> None:
        nonlocal shown
        line = f"[{'#' * round(BAR * step.share):<{BAR}}] {step.stage} {step.words}"
        if line != shown:
            _say_over(line)
        shown = line

    return show


def _end_progress() -> None:
    if sys.stderr is not None and sys.stderr.isatty():
        _say_over("")


def _say_over(line: str) -> None:
    with suppress(OSError):
        print(f"\r\033[K{line}", end="", file=sys.stderr, flush=True)


def _print(path: Path, outcome: Outcome) -> None:
    if outcome.code in (3, INTERNAL_FAULT):
        _say(outcome.message, sys.stderr)
        return
    _say(f"{path.name}: {outcome.message}")
    worth_telling = [problem for problem in outcome.problems if problem.level != "note"]
    for told in worth_telling[:LISTED]:
        _say(f"  {told.level}: {told.sentence}")
    if len(worth_telling) > LISTED:
        _say(f"  and {len(worth_telling) - LISTED} more on the Problems sheet")
    for line in outcome.in_short:
        _say(line)
    if outcome.written:
        kind = "Plan" if outcome.cut_files else "Problems"
        _say(f"{kind + ':':<11}{outcome.written}")
    if outcome.to_print:
        _say(f"To print:  {outcome.to_print}")
    if outcome.cut_files:
        _say(f"Cut files: {outcome.cut_files}")


def _say(text: str, stream: TextIO | None = None) -> None:
    """Prints a line; where nobody takes it any more (a pipe that was closed), the work goes on in silence."""
    stream = stream or sys.stdout
    if stream is None:  # a program without a console on Windows
        return
    try:
        print(text, file=stream, flush=True)
    except OSError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), stream.fileno())


def _blank(path: Path, metric: bool) -> int:
    from xlbatch.blank_workbook import write_blank_workbook

    target = _workbook(path)

    def write() -> tuple[Path, ...]:
        write_blank_workbook(target, metric=metric)
        return (target,)

    return _written("Blank roster workbook", write)


def _sign_up(path: Path, source: Path | None, metric: bool) -> int:
    from xlbatch.sign_up.write_sign_up import write_sign_ups

    return _written("Sign-up workbook", lambda: write_sign_ups(_workbook(path), source, metric=metric))


def _workbook(path: Path) -> Path:
    return path if path.suffix else path.with_suffix(".xlsx")


def _written(what: str, write: Callable[[], Iterable[Path]]) -> int:
    """Tells what was written, or why nothing could be."""
    try:
        for path in write():
            _say(f"{what}: {path}")
    except CannotSave as cannot:
        _say(str(cannot), sys.stderr)
        return 3
    return 0
