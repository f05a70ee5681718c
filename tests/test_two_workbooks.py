"""A large job's two workbooks are made by two cores: the same files, and nothing left over where one can't be made."""

from collections.abc import Iterator
from datetime import datetime
from pathlib import Path

import pytest

import xlbatch.film.cores
from xlbatch.how_far import Stopped
from xlbatch.resources import examples
from xlbatch.run import Options, Outcome, run

LIST = examples() / "pottery class.csv"
NOW = datetime(2026, 1, 1)


def planned(folder: Path) -> Outcome:
    return run(LIST, Options(folder, effort=0), lambda _step: None, NOW)


def contents(folder: Path) -> Iterator[tuple[str, bytes]]:
    return ((str(file.relative_to(folder)), file.read_bytes()) for file in sorted(folder.rglob("*")) if file.is_file())


@pytest.fixture
def _all_are_large(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("xlbatch.two_workbooks.LARGE", 1)


def test_two_cores_write_what_one_writes(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    planned(tmp_path / "one")
    monkeypatch.setattr("xlbatch.two_workbooks.LARGE", 1)
    monkeypatch.setattr("xlbatch.pages.write_pages.write_pages", None)  # this core makes no pages
    planned(tmp_path / "two")
    assert list(contents(tmp_path / "two")) == list(contents(tmp_path / "one"))


@pytest.mark.usefixtures("_all_are_large")
def test_where_no_process_can_be_started_this_one_makes_the_pages(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refused(*_: object, **__: object) -> None:
        raise PermissionError

    monkeypatch.setattr(xlbatch.film.cores, "processes", refused)
    assert (planned(tmp_path).to_print or LIST).stat().st_size > 10_000


@pytest.mark.usefixtures("_all_are_large")
@pytest.mark.parametrize("stopped", [Stopped(), OSError(28, "No space left on device")])
def test_a_plan_that_is_not_written_leaves_nothing(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, stopped: BaseException
) -> None:
    def write_plan(*_: object) -> None:
        raise stopped

    monkeypatch.setattr("xlbatch.sheets.write.write_plan", write_plan)
    if isinstance(stopped, Stopped):
        with pytest.raises(Stopped):
            planned(tmp_path)
    else:
        assert planned(tmp_path).code == 3
    assert list(tmp_path.iterdir()) == []
