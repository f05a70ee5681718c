"""How the least film for the same boxes is searched: many ways where they are few, one sweep where they are many."""

from collections.abc import Callable
from typing import Any

import pytest

from xlbatch.film import purchase


@pytest.mark.parametrize(("decals", "called"), [(3, "pack"), (4, "sweep")])
def test_few_boxes_are_packed_and_many_are_swept(
    decals: int, called: str, shop: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(purchase, "FEW", 3)
    calls: list[str] = []

    def watched(name: str) -> Callable[..., Any]:
        real = getattr(purchase, name)

        def watch(*arguments: Any) -> Any:
            calls.append(name)
            return real(*arguments)

        return watch

    for name in ("pack", "sweep"):
        monkeypatch.setattr(purchase, name, watched(name))
    for _ in range(decals):
        shop.decals([(100, 50)])
    shop.lay()
    assert set(calls) == {called}
