"""How far a stage is: counts, signs of life, parts of a stage, and stopping from wherever one is told."""

import threading
from datetime import datetime
from pathlib import Path

import pytest

from tests.workbooks import write_workbook
from xlbatch.film import cores
from xlbatch.how_far import Stopped, alive, counted, hear, listening, percent
from xlbatch.outcome import DRAWING, STAGES, WRITING
from xlbatch.run import Options, Step, run


def told(work: object) -> list[tuple[float, int]]:
    words: list[tuple[float, int]] = []
    with listening():
        hear(lambda done, of: words.append((round(done, 2), of)))
        work()  # type: ignore[operator]
    return words


def test_items_are_counted_as_they_are_done() -> None:
    assert told(lambda: list(counted("ab"))) == [(0, 2), (1, 2), (2, 2)]


def test_signs_of_life_move_on_within_an_item_and_never_past_it() -> None:
    def work() -> None:
        for _ in counted("ab"):
            for _ in range(100):
                alive()

    words = told(work)
    assert words == sorted(words)
    assert len(set(words[:50])) > 30
    assert max(done for done, _ in words[:102]) <= 1


def test_a_part_of_a_stage_is_told_in_percent() -> None:
    def work() -> None:
        with percent(0, 50):
            list(counted("ab"))
        with percent(50, 100), percent(0, 40):
            list(counted("a"))

    assert told(work) == [(0, 100), (0, 100), (25, 100), (50, 100), (50, 100), (50, 100), (50, 100), (70, 100)]


def test_each_thread_tells_its_own_listener() -> None:
    words: list[tuple[float, int]] = []
    with listening():
        hear(lambda done, of: words.append((done, of)))
        other = threading.Thread(target=lambda: list(counted("abc")))
        other.start()
        other.join()
    alive()
    assert words == []


def test_words_and_share() -> None:
    assert Step(DRAWING, 412.7, 1000).words == "412 of 1,000 drawn"
    assert Step(WRITING).words == "…"
    shares = [Step(stage, done, 10).share for stage in STAGES for done in range(10)]
    assert shares == sorted(shares)
    assert 0 <= min(shares) <= max(shares) <= 1


def _slow(part: int) -> int:
    return sum(range(part))


def test_work_on_several_cores_stops(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("os.cpu_count", lambda: 2)

    def stop(_done: float, _of: int) -> None:
        raise Stopped

    parts = [10**7] * 8
    with listening():
        hear(stop)
        with pytest.raises(Stopped):
            cores.spread(_slow, parts, pays=True)
    assert cores.spread(_slow, [10, 20], pays=True) == [45, 190]


@pytest.mark.parametrize("stage", STAGES)
def test_it_stops_in_every_stage_and_leaves_nothing(tmp_path: Path, stage: str) -> None:
    path = write_workbook(
        tmp_path / "roster.xlsx", {"Roster": [["Who", "Size"], *([f"Ana {no}", "M"] for no in range(9))]}
    )
    words: list[Step] = []

    def progress(step: Step) -> None:
        words.append(step)
        if step.stage == stage and (step.of or stage not in (DRAWING, WRITING)):
            raise Stopped

    with pytest.raises(Stopped):
        run(path, Options(effort=0), progress, datetime(2026, 1, 1))
    assert words[-1].stage == stage
    assert [each.name for each in tmp_path.iterdir()] == ["roster.xlsx"]
