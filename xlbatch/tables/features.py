"""A cell that names the places of a garment to keep clear: `placket front 2 in x 6 in from collar; …`."""

import re
from typing import Literal, cast

from xlbatch.files.raw import Raw
from xlbatch.job.feature import Feature
from xlbatch.tables.cells import Unclear, shown_value
from xlbatch.units import parse_length

NOTHING = ("nothing", "none", "no", "-")
_FEATURE = re.compile(
    r"(?P<name>\S.*?)\s+(?P<side>front|back)\s+(?P<width>.+?)\s*[x×*]\s*(?P<height>.+?)\s+from\s+(?:the\s+)?"
    r"(?P<at>collar|hem)",
    re.IGNORECASE,
)


def features(cell: Raw, unit: str) -> tuple[Feature, ...] | Unclear:
    """Each place: its name, side, width x height, and whether it lies from the collar down or from the hem up."""
    typed = shown_value(cell)
    if typed.casefold() in NOTHING:
        return ()
    read = [_feature(part.strip(), unit) for part in typed.split(";") if part.strip()]
    known = tuple(feature for feature in read if feature)
    return known if known and len(known) == len(read) else Unclear()


def _feature(part: str, unit: str) -> Feature | None:
    match = _FEATURE.fullmatch(part)
    if match is None:
        return None
    width, height = (parse_length(match[side], unit) for side in ("width", "height"))
    if not width or not height or width < 0 or height < 0:
        return None
    side = cast(Literal["front", "back"], match["side"].casefold())
    return Feature(match["name"], side, width, height, cast(Literal["collar", "hem"], match["at"].casefold()))
