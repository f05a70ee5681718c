"""Lays boxes with one public library, in a process of its own: peers.py LIBRARY SECONDS < boxes as JSON > length.

In: {"width": …, "boxes": [[across, along], …]}. Out: a length, or nothing where the library is missing or found none.
Every library may turn boxes, except rectangle-packer, which cannot.
"""

import importlib
import json
import sys
import time
from collections.abc import Callable, Sequence
from typing import Any

Box = tuple[int, int]
LONG = 10**9


def rectpack(boxes: Sequence[Box], width: int, seconds: float) -> float | None:
    """The best of all its algorithms and orders that come to an end in the time."""
    library = importlib.import_module("rectpack")
    names = [name for name in dir(library) if name.startswith(("MaxRects", "Skyline", "Guillotine"))]
    orders = [library.SORT_AREA, library.SORT_LSIDE, library.SORT_SSIDE, library.SORT_PERI, library.SORT_DIFF]
    best, until = None, time.monotonic() + seconds
    for name in sorted(names, key=lambda name: not name.startswith("Skyline")):
        for order in orders:
            if time.monotonic() > until or not isinstance(getattr(library, name), type):
                continue
            packer = library.newPacker(
                mode=library.PackingMode.Offline, pack_algo=getattr(library, name), sort_algo=order, rotation=True
            )
            for box in boxes:
                packer.add_rect(*box)
            packer.add_bin(width, LONG)
            packer.pack()
            laid = packer.rect_list()
            if len(laid) == len(boxes) and time.monotonic() <= until:
                length = max(y + h for _, _, y, _, h, _ in laid)
                best = length if best is None else min(best, length)
                print(best, flush=True)
    return best


def rectangle_packer(boxes: Sequence[Box], width: int, _: float) -> float | None:
    library = importlib.import_module("rpack")
    upright = [box if box[0] <= width else box[::-1] for box in boxes]
    places = library.pack(upright, max_width=width)
    return max(float(y + h) for (_, y), (_, h) in zip(places, upright, strict=True))


def spyrrow(boxes: Sequence[Box], width: int, seconds: float) -> float | None:
    library = importlib.import_module("spyrrow")
    items = [
        library.Item(str(at), [(0, 0), (w, 0), (w, h), (0, h)], demand=1, allowed_orientations=[0, 90])
        for at, (w, h) in enumerate(boxes)
    ]
    config = library.StripPackingConfig(total_computation_time=max(2, round(seconds)), num_workers=1, seed=0)
    return float(library.StripPackingInstance("", strip_height=width, items=items).solve(config).width)


def packingsolver(boxes: Sequence[Box], width: int, seconds: float) -> float | None:
    library: Any = importlib.import_module("packingsolver.rectangle")
    builder = library.InstanceBuilder()
    builder.set_objective(library.Objective.OpenDimensionX)
    builder.add_bin_type(sum(max(box) for box in boxes), width)
    for box in boxes:
        builder.add_item_type(*box, copies=1)
    how = library.OptimizeParameters()
    how.time_limit, how.verbosity_level = seconds, 0
    found = library.optimize(builder.build(), how).solution
    return float(found.x_max()) if found.full() else None


PEERS: dict[str, Callable[[Sequence[Box], int, float], float | None]] = {
    "rectpack": rectpack,
    "rectangle-packer": rectangle_packer,
    "spyrrow": spyrrow,
    "packingsolver": packingsolver,
}

if __name__ == "__main__":
    asked = json.load(sys.stdin)
    length = PEERS[sys.argv[1]]([(w, h) for w, h in asked["boxes"]], asked["width"], float(sys.argv[2]))
    print("" if length is None else length)
