"""Work on independent parts of a job on all of the machine's cores; the results are those of one core."""

import multiprocessing
import os
from collections.abc import Callable, Sequence
from concurrent.futures import BrokenExecutor, ProcessPoolExecutor
from typing import TypeVar

T = TypeVar("T")
R = TypeVar("R")


def spread(work: Callable[[T], R], parts: Sequence[T], *, pays: bool) -> list[R]:
    """What `work` makes of each part, in order. Processes take about a second to start: `pays` says it is worth it.

    They start afresh, on every system alike: one that is split off may hang in a solver's threads. Where they can't be
    started, or are stopped, this process does the work."""
    cores = min(os.cpu_count() or 1, len(parts))
    if cores < 2 or not pays:
        return [work(part) for part in parts]
    try:
        with ProcessPoolExecutor(cores, mp_context=multiprocessing.get_context("spawn")) as pool:
            return list(pool.map(work, parts))
    except (BrokenExecutor, OSError):
        return [work(part) for part in parts]
