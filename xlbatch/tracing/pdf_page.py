"""The first page of a PDF → its dots, the drawing on it as large as is worked with."""

import re
import zlib
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from xlbatch.problems.phrases import phrase
from xlbatch.tracing.palette import Dots
from xlbatch.tracing.picture_faults import Unfit
from xlbatch.tracing.raster import ACROSS, Raster, dots_of

if TYPE_CHECKING:
    from pypdfium2 import PdfPage

_FIRST_LOOK = 500  # dots across, to see where on the page the drawing is
_FAINT = 10  # levels: less is no ink
_LARGEST = 50_000_000  # bytes of a file
_MOST = 200_000_000  # bytes that all of it unpacks to
_STREAM = re.compile(rb"stream\r?\n(.*?)endstream", re.DOTALL)


def read_pdf(path: Path) -> Raster:
    """The dots of a PDF's first page. Raises Unfit, OSError."""
    import pypdfium2

    data = _sound(path)
    try:
        document = pypdfium2.PdfDocument(data)
    except pypdfium2.PdfiumError as error:
        locked = error.err_code == pypdfium2.raw.FPDF_ERR_PASSWORD and b"/Encrypt" in data
        raise Unfit("locked" if locked else "broken") from error
    with document:
        try:
            pages, page = len(document), document[0]
        except (pypdfium2.PdfiumError, IndexError) as error:
            raise Unfit("empty page") from error
        dots = _drawing(page)
    changes = (phrase("first page", pages=pages),) if pages > 1 else ()
    return Raster(dots, dots.shape[1], changes, is_sharp=True)


def _sound(path: Path) -> bytes:
    """The bytes of a file that does not unpack to more than any drawing needs. Raises Unfit, OSError."""
    with path.open("rb") as file:
        data = file.read(_LARGEST + 1)
    left = _MOST if len(data) <= _LARGEST else 0
    for stream in _STREAM.finditer(data):
        unpacker = zlib.decompressobj()
        try:
            packed = stream[1]
            while packed and left > 0:
                left -= len(unpacker.decompress(packed, 1 << 20))
                packed = unpacker.unconsumed_tail
        except zlib.error:
            continue
        if left <= 0:
            break
    if left <= 0:
        raise Unfit("too much")
    return data


def _drawing(page: "PdfPage") -> Dots:
    """What is drawn on a page, with a little of the page around it."""
    wide, high = page.get_size()
    if not (wide > 0 and high > 0):
        raise Unfit("empty page")
    small = _render(page, _FIRST_LOOK / max(wide, high), (0, 0, 0, 0)).astype(np.int16)
    inked = (np.abs(small - small[0, 0]) > _FAINT).any(axis=2)
    if not inked.any():
        raise Unfit("empty page")
    down, across = (np.flatnonzero(inked.any(axis=axis)) for axis in (1, 0))
    rows, columns = small.shape[:2]
    left, right = max(0, across[0] - 2) / columns * wide, max(0, columns - across[-1] - 3) / columns * wide
    top, bottom = max(0, down[0] - 2) / rows * high, max(0, rows - down[-1] - 3) / rows * high
    scale = ACROSS / max(wide - left - right, high - top - bottom)
    return _render(page, scale, (left, bottom, right, top))


def _render(page: "PdfPage", scale: float, crop: tuple[float, float, float, float]) -> Dots:
    import pypdfium2

    try:
        bitmap = page.render(scale=scale, crop=crop, fill_color=(255, 255, 255, 0), rev_byteorder=True)
    except pypdfium2.PdfiumError as error:
        raise Unfit("empty page") from error
    try:
        return dots_of(bitmap.to_pil())
    finally:
        bitmap.close()
