"""How long each stage of a large job takes, and the longest it says nothing: the longest a person waits after Stop.

Run: stop_benchmark.py [garments [effort]]. CPU seconds of the thread that plans; where other cores help, its waiting
counts as seconds. Nothing is asserted.
"""

import sys
import tempfile
import time
from datetime import datetime
from pathlib import Path

from tests.benchmarks.scale_benchmark import roster
from xlbatch.run import STAGES, Options, Step, run


class Watch:
    """Hears a run, and notes for each stage when it began and its longest silence."""

    def __init__(self) -> None:
        self.now, self.words = time.thread_time(), dict.fromkeys(STAGES, 0)
        self.silence = dict.fromkeys(STAGES, 0.0)
        self.began: dict[str, float] = {}
        self.stage = STAGES[0]

    def hear(self, step: Step) -> None:
        now = time.thread_time()
        self.silence[self.stage] = max(self.silence[self.stage], now - self.now)
        self.began.setdefault(step.stage, now)
        self.words[step.stage] += 1
        self.now, self.stage = now, step.stage


def main(garments: int = 1000, effort: int = 1) -> None:
    watch = Watch()
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder, "large.csv")
        path.write_text(roster(garments), encoding="utf-8")
        run(path, Options(effort=effort), watch.hear, datetime(2026, 1, 1))
    watch.hear(Step(watch.stage))
    ends = [*list(watch.began.values())[1:], watch.now]
    for (stage, began), end in zip(watch.began.items(), ends, strict=True):
        said = f"{watch.words[stage]:6} words, longest silence {watch.silence[stage]:.2f} s"
        print(f"{stage:28}{end - began:7.2f} s {said}")


if __name__ == "__main__":
    main(*map(int, sys.argv[1:]))
