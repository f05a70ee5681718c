"""Work done side by side: the results of one core, whether processes can be started or not."""

import math
import os

import pytest

import xlbatch.film.cores
from xlbatch.film.cores import spread


def test_two_cores_give_what_one_gives(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(os, "cpu_count", lambda: 2)
    parts = [1.0, 4.0, 9.0, 2.0]
    assert spread(math.sqrt, parts, pays=True) == spread(math.sqrt, parts, pays=False) == [math.sqrt(x) for x in parts]


def test_where_no_process_can_be_started_this_one_does_the_work(monkeypatch: pytest.MonkeyPatch) -> None:
    def refused(*_: object, **__: object) -> None:
        raise PermissionError

    monkeypatch.setattr(os, "cpu_count", lambda: 2)
    monkeypatch.setattr(xlbatch.film.cores, "ProcessPoolExecutor", refused)
    assert spread(math.sqrt, [4.0, 9.0], pays=True) == [2.0, 3.0]
