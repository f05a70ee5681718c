"""A list so large that two processes write its plan, and how much such processes have computed."""

import os
from contextlib import suppress
from itertools import islice, product
from pathlib import Path

GARMENTS = 3_000  # as many as two_workbooks.py has two processes for
SYLLABLES = tuple(map("".join, product("bdfgklmnprst", "aeiou")))
STRIDE = 4_001  # from one name to the next, so that they are unlike


def large_list() -> str:
    """A .csv of people with names of four syllables."""
    names = islice(product(SYLLABLES, repeat=4), 0, GARMENTS * STRIDE, STRIDE)
    return "Who,Size\n" + "".join(f"{a}{b} {c}{d}".title() + ",M\n" for a, b, c, d in names)


def computed(word: str) -> float:
    """The CPU seconds so far of the processes with a word in their command; on Linux."""
    ticks = 0
    for process in Path("/proc").glob("[0-9]*"):
        with suppress(OSError):
            if word in (process / "cmdline").read_text(encoding="utf-8", errors="replace"):
                fields = (process / "stat").read_text(encoding="utf-8", errors="replace").rpartition(")")[2].split()
                ticks += int(fields[11]) + int(fields[12])  # utime and stime: proc(5)
    return ticks / os.sysconf("SC_CLK_TCK")
