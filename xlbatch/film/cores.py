"""Work on independent parts of a job on all of the machine's cores; the results are those of one core."""

import os
from collections.abc import Callable, Collection, Sequence
from concurrent.futures import BrokenExecutor, Executor, Future, wait
from functools import partial
from typing import Generic, ParamSpec, TypeVar

from xlbatch.how_far import Stopped, alive, counted, tell

LOOK = 0.1  # s between two looks at what the processes have done
P = ParamSpec("P")
T = TypeVar("T")
R = TypeVar("R")


def processes(count: int) -> Executor:
    """So many processes, which start afresh, on every system alike: one that is split off may hang in a solver's
    threads. Raises OSError where none can be started."""
    from concurrent.futures import ProcessPoolExecutor  # few jobs are so large
    from multiprocessing import get_context

    return ProcessPoolExecutor(count, mp_context=get_context("spawn"))


def spread(work: Callable[[T], R], parts: Sequence[T], *, pays: bool) -> list[R]:
    """What `work` makes of each part, in order. Processes take about a second to start: `pays` says it is worth it.

    Where they can't be started, or are stopped, this process does the work."""
    cores = min(os.cpu_count() or 1, len(parts))
    if cores < 2 or not pays:
        return [work(part) for part in counted(parts)]
    try:
        with processes(cores) as pool:
            return _gathered(pool, [pool.submit(work, part) for part in parts])
    except (BrokenExecutor, OSError):
        return [work(part) for part in counted(parts)]


def _gathered(pool: Executor, parts: Sequence[Future[R]]) -> list[R]:
    """What became of the parts. Where whoever listens stops it, those that run are left to end by themselves."""
    try:
        waiting: Collection[Future[R]] = parts
        while waiting:
            tell(len(parts) - len(waiting), len(parts))
            waiting = wait(waiting, LOOK).not_done
    except Stopped:
        pool.shutdown(wait=False, cancel_futures=True)
        raise
    return [part.result() for part in parts]


class OtherCore(Generic[R]):
    """Work that another core does while this one goes on. Where no process can be started, or it is stopped, this one
    does the work when its result is asked for."""

    def __init__(self, work: Callable[P, R], *args: P.args, **options: P.kwargs) -> None:
        self._work = partial(work, *args, **options)
        self._pool: Executor | None = None
        try:
            self._pool = processes(1)
            self._future = self._pool.submit(work, *args, **options)
        except (BrokenExecutor, OSError):
            self.leave()

    def result(self) -> R:
        """What the work made."""
        if self._pool is None:
            return self._work()
        try:
            while wait([self._future], LOOK).not_done:
                alive()
            result = self._future.result()
            self._pool.shutdown()
        except (BrokenExecutor, OSError):
            self.leave()
            return self._work()
        return result

    def leave(self) -> None:
        """The result is not wanted any more: what runs is left to end by itself."""
        if self._pool:
            self._pool.shutdown(wait=False, cancel_futures=True)
        self._pool = None
