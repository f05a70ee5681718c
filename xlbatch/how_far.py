"""How a long stage says how far it is, without knowing who listens; whoever listens may stop it by raising Stopped.

Each thread has its own listener, so that stages need not hand one on from function to function.
"""

from collections.abc import Callable, Collection, Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from typing import NamedTuple, TypeVar

Tell = Callable[[float, int], None]  # told how many items are done, the one in hand in part, and of how many

_HALF = 50  # signs of life after which an item in hand is shown as half done

_Item = TypeVar("_Item")


class Stopped(Exception):
    """The person wants no plan any more. Nothing is left half-written."""


class _Count(NamedTuple):
    done: float = 0.0
    of: int = 0
    signs: int = 0  # of life since then


_NOTHING = _Count()


def _no_one(done: float, of: int) -> None:
    pass


_listener: ContextVar[Tell] = ContextVar("listener", default=_no_one)
_last: ContextVar[_Count] = ContextVar("last", default=_NOTHING)


@contextmanager
def listening() -> Iterator[None]:
    """Whoever is set inside to hear what is told hears nothing that comes after."""
    before = _listener.set(_listener.get())
    try:
        yield
    finally:
        _listener.reset(before)


def hear(listener: Tell) -> None:
    """From here on `listener` hears what is told."""
    _listener.set(listener)
    _last.set(_NOTHING)


def tell(done: float, of: int) -> None:
    """Says that so many items of the stage are done."""
    _last.set(_Count(done, of))
    _listener.get()(done, of)


def counted(items: Collection[_Item]) -> Iterator[_Item]:
    """The items of the stage, counted as they are done."""
    tell(0, len(items))
    for done, item in enumerate(items, 1):
        yield item
        tell(done, len(items))


def alive() -> None:
    """A sign of life from within an item, for work that takes long: the bar moves, and whoever listens may stop it."""
    done, of, signs = _last.get()
    _last.set(_Count(done, of, signs + 1))
    _listener.get()(min(done + signs / (signs + _HALF), of), of)


@contextmanager
def percent(begin: float, end: float) -> Iterator[None]:
    """What is counted inside is told as its part of the stage, from `begin` to `end` of a hundred."""
    outer = _listener.get()
    before = _listener.set(lambda done, of: outer(begin + (end - begin) * (done / of if of else 0), 100))
    tell(0, 1)
    try:
        yield
    finally:
        _listener.reset(before)
        _last.set(_Count(end, 100))
