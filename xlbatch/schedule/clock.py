"""Work time → the clock: days of so many hours, and breaks between the hours of work."""

from dataclasses import dataclass

from xlbatch.job.job import Job


@dataclass(frozen=True)
class Clock:
    """Lengths in s; `starts` in minutes after midnight."""

    starts: int
    a_day: float  # hands at work on a day, breaks left out
    between: float  # work from one break to the next; 0: no breaks
    pause: float

    def moment(self, work: float, *, opens: bool) -> tuple[int, int]:
        """Day and minute of the day of a moment of work time. Work that ends with the day, or with a break, ends so."""
        days = int(round(work / self.a_day, 9))
        rest = round(work - days * self.a_day, 6)
        if not opens and days and rest <= 0:
            days, rest = days - 1, self.a_day
        return days + 1, self.starts + round((rest + self._pauses(rest, opens=opens)) / 60)

    def breaks(self, work: float) -> float:
        """All breaks up to a moment of work time."""
        days = int(round(work / self.a_day, 9))
        return days * self._pauses(self.a_day, opens=False) + self._pauses(work - days * self.a_day, opens=False)

    def _pauses(self, work: float, *, opens: bool) -> float:
        """The breaks of a day before a moment of work; what begins after a break begins when it is over."""
        return _count(work, self.between, opens=opens) * self.pause


def clock_of(job: Job) -> Clock:
    """The job's clock: the hours of a day are its breaks' too."""
    between, pause = job.work_times.of("any", "work between breaks"), job.work_times.of("any", "break")
    day = job.settings.hours_a_day * 3600
    if between <= 0 or pause <= 0:
        return Clock(job.settings.start, day, 0.0, 0.0)
    whole, rest = divmod(day, between + pause)
    return Clock(job.settings.start, whole * between + min(rest, between), between, pause)


def _count(work: float, between: float, *, opens: bool) -> int:
    """How many breaks lie before a moment of work; one that begins at that moment counts where work begins then."""
    if not between:
        return 0
    whole = int(round(work / between, 9))
    return whole if opens or whole * between < work - 1e-6 or not whole else whole - 1
