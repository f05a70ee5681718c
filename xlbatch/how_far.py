"""How a long stage says how far it is, without knowing who listens; whoever listens may stop it."""

from collections.abc import Callable

Tell = Callable[[int, int], None]  # told how many items are done, and of how many; may raise Stopped


class Stopped(Exception):
    """The person wants no plan any more. Raised by whoever is told of the progress; nothing is left half-written."""


def quiet(done: int, of: int) -> None:
    """Tells no one."""
