"""One line of the sheet Drawing parts."""

from dataclasses import dataclass
from typing import Literal

from xlbatch.job.source import Source


@dataclass(frozen=True)
class PartLine:
    """What a part of a drawing looks like, and what is to become of it. Lengths in mm, on the shirt."""

    source: Source
    artwork: str
    part: str  # 3, or 3a for one of its shapes
    color: str = ""  # #rrggbb, or open
    text: str = ""  # of live text
    width: float | None = None
    height: float | None = None
    place: str = ""  # of its middle in the drawing: 50 %, 20 %
    use: bool = True
    replace_by: str = ""
    font: str = ""
    fit: Literal["height", "box"] = "height"
    join: str = ""  # the part it belongs to
    film: str = ""  # blank: its color's

    @property
    def typed(self) -> bool:
        """Whether a person wants something of the part."""
        return bool(self.replace_by or self.font or self.join or self.film or self.fit != "height")
