"""Python's own search for unused objects, made seldom while records are made by the thousand."""

import gc
from collections.abc import Iterator
from contextlib import contextmanager

# Objects made before the next search: a job's records hold no circles, and searching them costs a fifth of the time of
# a large plan and a third of reading a long list (measured at 400 garments and 10,000 rows; 10 times as many objects
# win nothing more).
OBJECTS = 200_000


@contextmanager
def seldom_searched() -> Iterator[None]:
    """A stretch of work, or as a decorator a function, during which that search comes seldom."""
    usual = gc.get_threshold()
    gc.set_threshold(OBJECTS, *usual[1:])
    try:
        yield
    finally:
        gc.set_threshold(*usual)
