"""The thread that works while the window stays alive. What it has to tell, it puts into a queue."""

import threading
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from pathlib import Path
from queue import SimpleQueue

from xlbatch.each_list import jobs_in, plan_list
from xlbatch.how_far import Stopped
from xlbatch.run import Options, Outcome, Step


@dataclass(frozen=True)
class Doing:
    """The list in hand, how far it is, and how much of the whole is behind, all lists together: 0 to 1."""

    name: str
    step: Step
    share: float


@dataclass(frozen=True)
class ListDone:
    """What became of one list."""

    path: Path
    outcome: Outcome


@dataclass(frozen=True)
class Done:
    """The work has ended: by itself, stopped by the person, or on a fault, which is told in `words`."""

    stopped: bool = False
    words: str = ""


Word = Doing | ListDone | Done
Say = Callable[[Word], None]  # may raise Stopped
Job = Callable[[Say], None]


class Worker:
    """One job at a time. Its results are read from `said`, the last word there a Done; `doing` is what it does now."""

    def __init__(self) -> None:
        self.said = SimpleQueue[ListDone | Done]()
        self.doing: Doing | None = None
        self.busy = False
        self._stop = threading.Event()

    def start(self, job: Job) -> None:
        """Starts a job; the one before must have ended."""
        self.busy, self.doing = True, None
        self._stop.clear()
        threading.Thread(target=self._run, args=(job,), daemon=True).start()

    def stop(self) -> None:
        """Asks the job to stop, which it does when it next has something to say."""
        self._stop.set()

    def _run(self, job: Job) -> None:
        done = Done()
        try:
            job(self._say)
        except Stopped:
            done = Done(stopped=True)
        except Exception as fault:
            done = Done(words=str(fault) or type(fault).__name__)
        self.busy = False
        self.said.put(done)

    def _say(self, word: Word) -> None:
        if not isinstance(word, Doing):  # what is written is told, even late
            self.said.put(word)
        elif self._stop.is_set():
            raise Stopped
        else:
            self.doing = word


def planning(given: Iterable[Path], options: Options) -> Job:
    """The job of planning lists, one after another."""

    def job(say: Say) -> None:
        lists = jobs_in(given, options)
        for list_no, (path, how) in enumerate(lists):

            def progress(step: Step, list_no_: int = list_no, name: str = path.name) -> None:
                say(Doing(name, step, (list_no_ + step.share) / len(lists)))

            say(ListDone(path, plan_list(path, how, progress)))

    return job
