"""A decal: one piece of film for one garment, as it is to be cut."""

from dataclasses import dataclass

from xlbatch.geometry.outline import Outline
from xlbatch.geometry.path import Box
from xlbatch.job.job import JOINED, DecalSpec


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
    condensed: float = 1.0  # of lettering: its width over what it would be at this height
    shift: float = 0.0  # how far to the right as read (left where negative) it looks centered
    thin: tuple[tuple[float, float], ...] = ()  # places of the outline too thin for the film
    rooms: tuple[Box, ...] = ()  # of a drawing: where its texts of this garment lie, from the outline's corner
    base: Box | None = None  # of a drawing: what its width is measured by, whatever texts are set; from there too
    parts: tuple["Decal", ...] = ()  # of a joined piece, in design order, each with its offset in this decal's box
    drawing: str = ""  # what it is a part of with other films, where that is not its artwork alone

    @property
    def piece(self) -> str:
        """What the piece is called at the press: the design's name for it, or its parts' names."""
        if self.parts:
            return JOINED.join(part.piece for part in self.parts)
        return self.spec.border if self.border else self.spec.decal

    @property
    def texts(self) -> tuple[str, ...]:
        """What it says, part by part."""
        return tuple(part.text for part in self.parts or (self,) if part.text)

    @property
    def specs(self) -> tuple[DecalSpec, ...]:
        """The rows of the design it is made for."""
        return tuple(part.spec for part in self.parts) or (self.spec,)

    @property
    def titled(self) -> str:
        """The piece and what it says: Back name “Ana”."""
        return f"{self.piece} “{self.text}”" if self.text else self.piece
