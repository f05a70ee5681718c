"""Pictures: SVG drawn to PNG, the same drawing only once."""

from dataclasses import dataclass
from functools import lru_cache
from io import BytesIO

import resvg_py
from PIL import Image

from xlbatch.how_far import alive
from xlbatch.paper.measure import ARIMO

CRISP, PLAIN = 2.0, 1.25  # dots a point: 144 dots per inch in print, fewer where there is very much to draw
COLORS = 48
_SHADES = bytes(shade // 16 for shade in range(256))
_GRAYS = [17 * shade for shade in range(16) for _ in range(3)]
_IMAGE_POINT = 72 / 96  # an unscaled picture's dot in points


@dataclass(frozen=True)
class Picture:
    """A PNG, the scale that gives it its size on the sheet, and what it says to someone who cannot see it."""

    png: bytes
    says: str
    scale: float

    @property
    def height(self) -> float:
        """Its height on the sheet, in points."""
        return int.from_bytes(self.png[20:24]) * self.scale * _IMAGE_POINT  # a PNG's height: ISO/IEC 15948, 11.2.2


@lru_cache(maxsize=1024)
def drawn(svg: str, says: str, dots: float = CRISP, *, gray: bool = False) -> Picture:
    """The picture of an SVG whose width and height are in points; `gray`: it has no colors."""
    alive()
    png = resvg_py.svg_to_bytes(
        svg_string=svg,
        zoom=dots,
        background="white",
        skip_system_fonts=True,
        font_files=[str(ARIMO)],
        font_family="Arimo",
    )
    return Picture(_small(bytes(png), gray=gray), says, 1 / (dots * _IMAGE_POINT))


def _small(png: bytes, *, gray: bool) -> bytes:
    """The picture in few colors, which takes about a third of the room; without any, in 16 grays."""
    with Image.open(BytesIO(png)) as image, BytesIO() as file:
        if gray:
            few = Image.frombytes("P", image.size, image.convert("L").tobytes().translate(_SHADES))
            few.putpalette(_GRAYS)
            few.save(file, "PNG", bits=4, compress_level=6)
            return file.getvalue()
        few = image.convert("RGB").quantize(COLORS, method=Image.Quantize.FASTOCTREE, dither=Image.Dither.NONE)
        few.save(file, "PNG", compress_level=6)
        return file.getvalue()
