"""Waits for a file that a cloud-synced folder or a virus scanner locks for a moment."""

import time
from collections.abc import Callable
from typing import TypeVar

WAITS = (0.1, 0.2, 0.4, 0.8, 1.6)  # s

_Made = TypeVar("_Made")


def patiently(do: Callable[[], _Made]) -> _Made:
    """What `do` returns, tried again as long as it is refused. Raises PermissionError where it is refused for good."""
    for wait in WAITS:
        try:
            return do()
        except PermissionError:
            time.sleep(wait)
    return do()
