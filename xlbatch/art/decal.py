"""A decal: one piece of film for one garment, as it is to be cut."""

from dataclasses import dataclass

from xlbatch.roster.job import DecalSpec

# ("M", (x, y)) ("L", (x, y)) ("Q", (x1, y1, x, y)) ("C", (x1, y1, x2, y2, x, y)) ("Z", ())
Segment = tuple[str, tuple[float, ...]]


@dataclass(frozen=True)
class Outline:
    """Closed, welded outlines in mm, upright, y upward, the ink box's lower-left corner at (0, 0)."""

    segments: tuple[Segment, ...]
    width: float
    height: float
    contours: int
    cut_length: float  # mm along all contours
    area: float  # mm² of film that stays


@dataclass(frozen=True)
class Decal:
    """One piece of film. `width` and `height` are the upright ink box; `outline` is None where only they are known."""

    id: str  # D017
    garment_no: int
    spec: DecalSpec
    text: str  # the exact text, "" for artwork
    film: str
    font: str  # the font used, "" for artwork
    width: float
    height: float
    outline: Outline | None
