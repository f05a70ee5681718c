"""Work done side by side: the results of one core, whether processes can be started or not, and however busy it is."""

import math
import os
import subprocess
import sys
import threading
from collections.abc import Iterator
from concurrent.futures import Executor, ThreadPoolExecutor
from contextlib import contextmanager
from typing import Any

import pytest

import xlbatch.film.batches
import xlbatch.film.cores
import xlbatch.film.drop
from xlbatch.film.cores import OtherCore, processes, spread
from xlbatch.how_far import Stopped, hear, listening


def test_two_cores_give_what_one_gives(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(os, "cpu_count", lambda: 2)
    parts = [1.0, 4.0, 9.0, 2.0]
    assert spread(math.sqrt, parts, pays=True) == spread(math.sqrt, parts, pays=False) == [math.sqrt(x) for x in parts]


def _refused(*_: object, **__: object) -> None:
    raise PermissionError


def test_where_no_process_can_be_started_this_one_does_the_work(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(os, "cpu_count", lambda: 2)
    monkeypatch.setattr(xlbatch.film.cores, "processes", _refused)
    assert spread(math.sqrt, [4.0, 9.0], pays=True) == [2.0, 3.0]


class _Pool(ThreadPoolExecutor):
    """Remembers how it was left: whether what runs was waited for, and whether what waits still runs."""

    def __init__(self) -> None:
        super().__init__(1)
        self.left: list[tuple[bool, bool]] = []

    def shutdown(self, wait: bool = True, *, cancel_futures: bool = False) -> None:
        self.left.append((wait, cancel_futures))
        super().shutdown(wait, cancel_futures=cancel_futures)


def test_where_it_is_stopped_what_runs_is_left_to_end_by_itself(monkeypatch: pytest.MonkeyPatch) -> None:
    pool, words, go_on = _Pool(), list[tuple[float, int]](), threading.Event()
    monkeypatch.setattr(os, "cpu_count", lambda: 2)
    monkeypatch.setattr(xlbatch.film.cores, "processes", lambda _: pool)

    def stop(done: float, of: int) -> None:
        words.append((done, of))
        if len(words) > 2:
            go_on.set()
            raise Stopped

    with listening():
        hear(stop)
        with pytest.raises(Stopped):
            spread(lambda _: go_on.wait(), [1, 2], pays=True)
    assert words == [(0, 2)] * 3
    assert pool.left[0] == (False, True)


def test_what_another_core_does_not_do_this_one_does(monkeypatch: pytest.MonkeyPatch) -> None:
    pool = _Pool()
    monkeypatch.setattr(xlbatch.film.cores, "processes", lambda _: pool)
    assert OtherCore(math.pow, 2.0, 3.0).result() == 8
    assert pool.left == [(True, False)]
    monkeypatch.setattr(xlbatch.film.cores, "processes", _refused)
    assert OtherCore(math.pow, 2.0, 4.0).result() == 16


def test_work_that_is_not_wanted_is_not_waited_for(monkeypatch: pytest.MonkeyPatch) -> None:
    pool = _Pool()
    monkeypatch.setattr(xlbatch.film.cores, "processes", lambda _: pool)
    OtherCore(math.pow, 2.0, 3.0).leave()
    assert pool.left == [(False, True)]


@contextmanager
def busy() -> Iterator[None]:
    """Others use all cores meanwhile."""
    others = [subprocess.Popen([sys.executable, "-c", "while True: pass"]) for _ in range(os.cpu_count() or 1)]
    try:
        yield
    finally:
        for other in others:
            other.kill()
            other.wait()


@pytest.mark.usefixtures("_small_work_is_spread")
def test_a_job_is_laid_the_same_on_one_core_on_two_and_on_a_busy_machine(
    shop: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    for at in range(8):
        shop.decals([(200 + 7 * (at % 5), 160), (90 + 13 * at, 50)])
    layouts = []
    for cores in (1, 2):
        monkeypatch.setattr(os, "cpu_count", lambda cores=cores: cores)
        layouts.append(shop.lay(1))
    with busy():
        layouts.append(shop.lay(1))
    assert layouts[1:] == layouts[:1] * 2


@pytest.fixture
def _small_work_is_spread(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """Even small work is worth starting processes for; in the end it is seen that some were started."""
    started = []

    def counted(count: int) -> Executor:
        started.append(count)
        return processes(count)

    monkeypatch.setattr(xlbatch.film.drop, "MUCH", 20_000)
    monkeypatch.setattr(xlbatch.film.batches, "BLOCKS_PAY", 2)
    monkeypatch.setattr(xlbatch.film.batches, "BLOCK", 4)
    monkeypatch.setattr(xlbatch.film.cores, "processes", counted)
    yield
    assert started
