"""A decal: one piece of film for one garment, as it is to be cut."""

from dataclasses import dataclass

from xlbatch.geometry.outline import Outline
from xlbatch.job.job import DecalSpec


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
    offset: tuple[float, float] = (0.0, 0.0)  # its lower-left corner in the box of the whole drawing
    whole: tuple[float, float] | None = None  # that box's width and height; None where it is the whole drawing
    border: bool = False  # the outline piece, pressed under the rest of the same drawing
    cap_height: float | None = None  # of lettering, as it came out
    shift: float = 0.0  # how far to the right as read (left where negative) it looks centered
    thin: tuple[tuple[float, float], ...] = ()  # places of the outline too thin for the film

    @property
    def piece(self) -> str:
        """What the piece is called at the press: the design's name for it."""
        return self.spec.border if self.border else self.spec.decal

    @property
    def titled(self) -> str:
        """The piece and what it says: Back name “Ana”."""
        return f"{self.piece} “{self.text}”" if self.text else self.piece
