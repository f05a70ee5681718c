"""A PNG, JPEG or WebP picture → its dots, upright, red, green and blue, at most 3,200 across."""

import warnings
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TypeVar

import numpy as np
from PIL import Image, ImageOps

from xlbatch.problems.phrases import phrase
from xlbatch.tracing.palette import Dots
from xlbatch.tracing.picture_faults import Unfit

ACROSS = 3200  # dots worked with at most
MOST_DOTS = 25_000_000  # more would take more memory than the rest of the program
FEWEST_ACROSS = 64  # dots: a drawing of fewer has no shapes to speak of
_KINDS = ("PNG", "JPEG", "WEBP")
_LARGEST = 100_000_000  # bytes
_TURNED = 0x0112  # the EXIF tag of how a camera was held
_FAULTS = (SyntaxError, ValueError, EOFError, OSError, IndexError, TypeError)  # what Pillow raises at damage

_Read = TypeVar("_Read")


@dataclass(frozen=True, eq=False)
class Raster:
    """The dots of a picture, and how many there were across before it was made smaller. `changes` says in words what
    had to be done to it."""

    dots: Dots
    across: int
    changes: tuple[str, ...] = ()
    is_sharp: bool = False  # drawn from outlines, as finely as is worked with


def read_raster(path: Path) -> Raster:
    """The dots of a picture file. Raises Unfit, OSError."""
    _known(path)
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # damage in the notes beside a picture does not matter
        with _read(lambda: Image.open(path, formats=(*_KINDS, "GIF"))) as image:
            return _raster(image)


def _read(read: Callable[[], _Read]) -> _Read:
    """What Pillow reads. Raises Unfit."""
    try:
        return read()
    except Image.DecompressionBombError as bomb:
        raise Unfit("far too many") from bomb
    except _FAULTS as damage:
        raise Unfit("broken") from damage


def _known(path: Path) -> None:
    """Raises Unfit where the first bytes are of no kind of picture that is read."""
    with path.open("rb") as file:
        head = file.read(32)
    if path.stat().st_size > _LARGEST:
        raise Unfit("far too many")
    if head[4:8] == b"ftyp":
        raise Unfit("heic")
    if not head:
        raise Unfit("broken")
    known = head.startswith((b"\x89PNG", b"\xff\xd8", b"GIF8")) or (head[:4] == b"RIFF" and head[8:12] == b"WEBP")
    if not known:
        raise Unfit("other")


def _raster(image: Image.Image) -> Raster:
    if image.format == "GIF":
        raise Unfit("gif")
    if _read(lambda: getattr(image, "is_animated", False)):
        raise Unfit("moving")
    across, down = image.size
    if across * down > MOST_DOTS:
        raise Unfit("too many dots", f"{across:,}", f"{down:,}")
    if max(across, down) < FEWEST_ACROSS:
        raise Unfit("too few dots", f"{across:,}", f"{down:,}")
    _read(image.load)
    changes = tuple(_changes(image))
    upright = _read(lambda: ImageOps.exif_transpose(image)) if _is_turned(image) else image
    return Raster(dots_of(upright), upright.size[0], changes)


def _changes(image: Image.Image) -> Iterator[str]:
    if image.mode == "CMYK":
        yield phrase("cmyk")
    if image.mode.startswith("I"):
        yield phrase("16 bits")
    if _is_turned(image):
        yield phrase("turned")


def _is_turned(image: Image.Image) -> bool:
    return bool(_read(image.getexif).get(_TURNED, 1) != 1)


def dots_of(image: Image.Image) -> Dots:
    """The dots of an opened picture, made smaller where it is larger than what is worked with."""
    if image.mode.startswith("I"):
        shades = np.asarray(image, dtype=np.int64)
        image = Image.fromarray((shades >> 8 if shades.max(initial=0) > 255 else shades).astype(np.uint8))
    if image.has_transparency_data:
        image = image.convert("RGBA").convert("RGBa")
    elif image.mode != "RGB":
        image = image.convert("RGB")
    most = max(image.size)
    if most > ACROSS:
        across, down = (max(1, round(side * ACROSS / most)) for side in image.size)
        image = image.resize((across, down), Image.Resampling.BOX)
    return np.array(image if image.mode == "RGBa" else image.convert("RGBA"))


def smaller(raster: Raster, part: float) -> Raster:
    """The picture with fewer dots across and down."""
    high, wide = raster.dots.shape[:2]
    size = max(1, round(wide * part)), max(1, round(high * part))
    dots = np.array(Image.fromarray(raster.dots, "RGBa").resize(size, Image.Resampling.BOX))
    return replace(raster, dots=dots)
