"""Places of a garment not to press on: a placket, a pocket, a hood lying on the back."""

from typing import Literal, NamedTuple


class Feature(NamedTuple):
    """A box about the center line, `width` × `height` mm, from the collar seam of its side down or from the hem up."""

    name: str
    side: Literal["front", "back"]
    width: float
    height: float
    at: Literal["collar", "hem"]
