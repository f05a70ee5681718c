"""Compares what two runs wrote: everything equal but the time of the run, line ends, and pictures by a few shades."""

# mypy: disable-error-code=import-not-found
# (the modules beside a script are found when it runs)

import io
from collections.abc import Iterator
from pathlib import Path

from PIL import Image, ImageChops
from try_bundle import outputs

SHADES = 40  # of 255: what another compiler's rounding changes at an outline's edge, or in the choice of few colors
PART = 0.005  # of a picture's dots that may differ by more


def differences(ours: Path, theirs: Path) -> Iterator[str]:
    """What differs between the outputs in two folders, a line each."""
    here, there = outputs(ours), outputs(theirs)
    yield from (f"only in {ours}: {name}" for name in sorted(here.keys() - there.keys()))
    yield from (f"only in {theirs}: {name}" for name in sorted(there.keys() - here.keys()))
    for name in sorted(here.keys() & there.keys()):
        one, other = here[name], there[name]
        if isinstance(one, bytes) and isinstance(other, bytes):
            if not _alike(name, one, other):
                yield f"{name} differs"
        elif isinstance(one, bytes) or isinstance(other, bytes):
            yield f"{name} is of another kind"
        elif one.keys() != other.keys():
            yield f"{name} has other parts"
        else:
            yield from (f"{name}: {part} differs" for part in one if not _alike(part, one[part], other[part]))


def _alike(part: str, one: bytes, other: bytes) -> bool:
    if part.endswith(".png"):
        pictures = [Image.open(io.BytesIO(data)).convert("RGB") for data in (one, other)]
        return pictures[0].size == pictures[1].size and _unlike(*pictures) <= PART
    return one.replace(b"\r\n", b"\n") == other.replace(b"\r\n", b"\n")


def _unlike(one: Image.Image, other: Image.Image) -> float:
    """The part of the dots that differ by more than SHADES in a color."""
    red, green, blue = ImageChops.difference(one, other).split()
    dots = ImageChops.lighter(ImageChops.lighter(red, green), blue).histogram()
    return sum(dots[SHADES + 1 :]) / sum(dots)
