"""The first page of a PDF becomes outlines; what keeps it from that is told in a sentence."""

import zlib
from pathlib import Path

import numpy as np
import pytest

from xlbatch.geometry.path import bounds
from xlbatch.geometry.weld import segments_of
from xlbatch.svg.layer import Layers
from xlbatch.tracing.pdf_page import read_pdf
from xlbatch.tracing.trace import trace

# a red rectangle of 100 × 200 points and a blue triangle beside it
SHAPES = b"0.8 0 0 rg 200 300 100 200 re f 0 0 0.6 rg 320 300 m 420 300 l 320 500 l f"


def pdf(*pages: bytes, encrypted: bool = False) -> bytes:
    """A PDF with one content stream a page (ISO 32000-1, 7.5)."""
    kids = " ".join(f"{3 + 2 * number} 0 R" for number in range(len(pages)))
    objects = [b"<< /Type /Catalog /Pages 2 0 R >>", f"<< /Type /Pages /Kids [{kids}] /Count {len(pages)} >>".encode()]
    for number, stream in enumerate(pages):
        content = f"/Contents {4 + 2 * number} 0 R"
        objects.append(f"<< /Type /Page /Parent 2 0 R /MediaBox [0 0 612 792] {content} >>".encode())
        packed = zlib.compress(stream, 9)
        head = f"<< /Length {len(packed)} /Filter /FlateDecode >>".encode()
        objects.append(head + b"\nstream\n" + packed + b"\nendstream")
    if encrypted:
        secret = b"<" + b"5a" * 32 + b">"
        objects.append(b"<< /Filter /Standard /V 1 /R 2 /P -4 /O " + secret + b" /U " + secret + b" >>")
    data, places = b"%PDF-1.4\n", []
    for number, body in enumerate(objects, 1):
        places.append(len(data))
        data += f"{number} 0 obj\n".encode() + body + b"\nendobj\n"
    table = "".join(f"{place:010} 00000 n \n" for place in places)
    lock = f" /Encrypt {len(objects)} 0 R /ID [<00> <00>]" if encrypted else ""
    return (
        data
        + (
            f"xref\n0 {len(objects) + 1}\n0000000000 65535 f \n{table}trailer\n"
            f"<< /Size {len(objects) + 1} /Root 1 0 R{lock} >>\nstartxref\n{len(data)}\n%%EOF\n"
        ).encode()
    )


def traced(data: bytes, folder: Path) -> Layers | str:
    path = folder / "drawing.pdf"
    path.write_bytes(data)
    found = trace(path)
    return found if isinstance(found, Layers) else found[0].reason


def test_the_drawing_on_the_page_is_traced_as_large_as_is_worked_with(tmp_path: Path) -> None:
    found = traced(pdf(SHAPES), tmp_path)
    assert isinstance(found, Layers)
    boxes = {layer.color: bounds(segments_of(layer.path)) for layer in found.layers}
    assert set(boxes) == {"#cc0000", "#000099"}
    red, blue = boxes["#cc0000"], boxes["#000099"]
    assert red is not None
    assert blue is not None
    assert (red[2] - red[0]) / (red[3] - red[1]) == pytest.approx(0.5, abs=0.001)
    assert (blue[0] - red[0]) / (red[2] - red[0]) == pytest.approx(1.2, abs=0.001)
    assert max(blue[2] - red[0], red[3] - red[1]) > 3000
    assert found.widest is None


@pytest.mark.parametrize(
    ("corner", "down_to", "across_to"), [(b"0 0", (271, 1716), (0, 2890)), (b"572 772", (0, 1445), (309, 3199))]
)
def test_a_little_of_the_page_stands_around_the_drawing(
    corner: bytes, down_to: tuple[int, int], across_to: tuple[int, int], tmp_path: Path
) -> None:
    """Two dots of a first look at 500 across, here 1.6 points each; none beyond the corner of the page."""
    (tmp_path / "a.pdf").write_bytes(pdf(b"0 0 0 rg " + corner + b" 40 20 re f"))
    raster = read_pdf(tmp_path / "a.pdf")
    assert (raster.dots.shape, raster.across, raster.is_sharp) == ((1717, 3200, 4), 3200, True)
    inked = raster.dots[:, :, 3] > 100
    down, across = (np.flatnonzero(inked.any(axis=axis)) for axis in (1, 0))
    assert (down[0], down[-1]) == pytest.approx(down_to, abs=3)
    assert (across[0], across[-1]) == pytest.approx(across_to, abs=3)


@pytest.mark.parametrize(("wide", "high"), [(1, 0.5), (0.5, 1), (0.5, 0.75)])
def test_a_page_may_be_smaller_than_a_point(wide: float, high: float, tmp_path: Path) -> None:
    data = pdf(b"0 0 0 rg 0 0 0.4 0.2 re f").replace(b"0 0 612 792", f"0 0 {wide} {high}".encode().ljust(11))
    found = traced(data, tmp_path)
    assert isinstance(found, Layers)
    box = bounds(segments_of(found.layers[0].path))
    assert box is not None
    assert (box[2] - box[0]) / (box[3] - box[1]) == pytest.approx(2, abs=0.01)


@pytest.mark.parametrize("cropped", [b"612 0 700 792", b"0 792 612 800", b"700 0 800 792"])
def test_a_page_cropped_to_nothing_is_empty(cropped: bytes, tmp_path: Path) -> None:
    data = pdf(SHAPES).replace(b"/MediaBox", b"/CropBox [" + cropped + b"] /MediaBox")
    assert "empty" in str(traced(data, tmp_path))


def test_further_pages_are_told(tmp_path: Path) -> None:
    found = traced(pdf(SHAPES, b"", b""), tmp_path)
    assert isinstance(found, Layers)
    assert [(note.code, note.facts["what"]) for note in found.notes] == [
        ("picture-changed", "of its 3 pages the first was taken")
    ]


@pytest.mark.parametrize(
    ("data", "words"),
    [
        (pdf(SHAPES, encrypted=True), "password"),
        (pdf(b""), "empty"),
        (pdf(), "damaged"),
        (pdf(b" " * 250_000_000), "far more than a drawing"),
        (pdf(SHAPES)[:200], "damaged"),
        (b"%PDF-1.4", "damaged"),
        (b"", "damaged"),
    ],
    ids=["locked", "empty page", "no page", "bomb", "cut off", "head only", "nothing"],
)
def test_what_cannot_be_used_is_told(data: bytes, words: str, tmp_path: Path) -> None:
    found = traced(data, tmp_path)
    assert isinstance(found, str)
    assert words in found
