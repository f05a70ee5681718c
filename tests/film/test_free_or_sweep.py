"""How the least film for the same boxes is searched: many ways where they are few, one sweep where they are many."""

from collections.abc import Callable
from typing import Any

import pytest

from xlbatch.film import purchase


@pytest.mark.parametrize(
    ("decals", "called"), [(1, ("pack", 12)), (2, ("pack", 6)), (3, ("pack", 4)), (4, ("sweep", 1))]
)
def test_few_boxes_are_packed_the_fewer_the_longer_and_many_are_swept_once(
    decals: int, called: tuple[str, int], shop: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(purchase, "FEW", 3)
    monkeypatch.setattr(purchase, "FREE_TRIES", 12)
    calls: list[tuple[str, int]] = []

    def watched(name: str) -> Callable[..., Any]:
        real = getattr(purchase, name)

        def watch(*arguments: Any) -> Any:
            calls.append((name, arguments[2]))
            return real(*arguments)

        return watch

    for name in ("pack", "sweep"):
        monkeypatch.setattr(purchase, name, watched(name))
    for _ in range(decals):
        shop.decals([(100, 50)])
    shop.lay()
    assert set(calls) == {called}
