"""Live text of drawings, set in the program's own lettering. resvg, given the same font, is the independent judge."""

import io
import re
from dataclasses import replace
from importlib.resources import files
from pathlib import Path

import numpy as np
import pytest
import resvg_py
from numpy.typing import NDArray
from PIL import Image

from tests.drawings import W3C, drawn_again
from xlbatch.lettering.fonts import find_font
from xlbatch.lettering.named_font import named_font
from xlbatch.problems.unreadable_drawings import FAULTS
from xlbatch.svg.artwork import Drawing, drawing_of, read_layers
from xlbatch.svg.layer import Layers, LiveText
from xlbatch.svg.live_text import reworded
from xlbatch.svg.safe_xml import parse_svg
from xlbatch.svg.set_text import set_text
from xlbatch.svg.viewport import page_of

FONT = "Archivo Black"
FILE = str(files("fontpkg_archivo_black") / "files" / "ArchivoBlack-Regular.ttf")
SVG = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 200 100" width="200" height="100">{}</svg>'
WIDE = 1920  # pixels across
# with text of their own, besides the line with their revision that every W3C file has
TEXTS = (
    *("coords-trans-01-b", "coords-trans-02-t", "coords-trans-03-t", "coords-trans-05-t", "coords-trans-06-t"),
    *("coords-trans-07-t", "coords-trans-08-t", "coords-trans-09-t", "coords-viewattr-03-b", "shapes-intro-01-t"),
    *("struct-group-03-t", "text-align-01-b", "text-align-02-b", "text-align-03-b", "text-fonts-02-t"),
    *("text-text-08-b", "text-text-10-t", "text-tref-01-b", "painting-stroke-04-t", "paths-data-12-t"),
)


def inks(text: str) -> NDArray[np.uint8]:
    svg = text.replace(' shape-rendering="crispEdges"', "")
    svg = re.sub(r"<svg\b", '<svg shape-rendering="crispEdges" text-rendering="geometricPrecision"', svg, count=1)
    png = resvg_py.svg_to_bytes(
        svg_string=svg,
        width=WIDE,
        skip_system_fonts=True,
        font_files=[FILE],
        font_family=FONT,
        serif_family=FONT,
        sans_serif_family=FONT,
    )
    return np.asarray(Image.open(io.BytesIO(bytes(png))).convert("RGBA"))


def differing(text: str, folder: Path) -> float | tuple[str, ...]:
    """The part of the inked pixels that differ from what resvg draws; or why the drawing is not read."""
    file = folder / "text.svg"
    file.write_text(text, encoding="utf-8")
    layers = read_layers(file)
    if not isinstance(layers, Layers):
        return tuple(key for key, fault in FAULTS.items() if fault in layers)
    face = find_font(FONT, folder)
    assert face
    made = []
    for layer in layers.layers:
        if layer.text:
            made += [layer._replace(color=color, path=ink) for color, ink in set_text(layer.text, lambda _look: face)]
        else:
            made.append(layer)
    found = drawing_of(replace(layers, layers=tuple(made)), apart=True)
    assert isinstance(found, Drawing)
    theirs, ours = inks(text), inks(drawn_again(found, page_of(parse_svg(text.encode()))))
    inked, again = theirs[:, :, 3] > 127, ours[:, :, 3] > 127
    alike = (np.abs(theirs[:, :, :3].astype(int) - ours[:, :, :3]) <= 8).all(axis=2)
    return 1 - float((inked & again & alike).sum() / max((inked | again).sum(), 1))


def in_one_font(svg: str) -> str:
    """A drawing with all its text in one font, its own drawn fonts left out."""
    svg = re.sub(r"<!--.*?-->", "", svg, flags=re.DOTALL)
    svg = re.sub(r"<font-face(?=[\s/>])(?:[^>]*/>|.*?</font-face\s*>)", "", svg, flags=re.DOTALL)
    svg = re.sub(r"\bshape-rendering=\"[^\"]*\"", "", svg)
    svg = re.sub(r"font-family\s*=\s*(\"[^\"]*\"|'[^']*')", f"font-family='{FONT}'", svg)
    return re.sub(r"font-family\s*:\s*[^;\"'}]+", f"font-family:{FONT}", svg)


@pytest.mark.skipif(not W3C.exists(), reason="the W3C drawings (Debian librsvg2-tests) are not on this computer")
def test_w3c_drawings_with_text_are_set_as_resvg_sets_them_or_told_why(tmp_path: Path) -> None:
    near = 0
    for name in TEXTS:
        file = W3C / f"{name}.svg"
        found = differing(in_one_font(file.read_text(encoding="utf-8", errors="replace")), tmp_path)
        assert isinstance(found, tuple) or found < 0.06, name
        near += isinstance(found, float) and found <= 0.01
    assert near >= 15


@pytest.mark.parametrize(
    "body",
    [
        '<text x="10" y="60" font-size="30">Wobbin</text>',
        '<text x="100" y="60" font-size="30" text-anchor="middle">Ávo</text>',
        '<text x="190" y="60" font-size="30" text-anchor="end">AV <tspan fill="red">To</tspan></text>',
        '<text x="10" y="60" font-size="24" letter-spacing="4">Wobbin</text>',
        '<text x="10" y="60" font-size="24" word-spacing="8">To be</text>',
        '<text x="10 40 70" y="60" font-size="24">abc</text>',
        '<text x="10" y="60" font-size="24" rotate="20">abc</text>',
        '<text x="10" y="60" font-size="24" dx="0 5 5" dy="0 -5">abc</text>',
        '<text transform="rotate(-20 50 50) scale(1.5 1)" x="10" y="60" font-size="20">Slope</text>',
        '<text x="10" y="60" font-size="40" stroke="red" stroke-width="3" paint-order="stroke">Hut</text>',
        '<path id="a" d="M20 80A80 80 0 0 1 180 80" fill="none"/>'
        '<text font-size="24"><textPath href="#a" startOffset="20">Along</textPath></text>',
        '<g font-size="2em"><text x="10" y="60" font-size="150%">Em</text></g>',
        '<text x="10" y="60" style="font:bold 30px Archivo Black">Short</text>',
        '<text x="10" y="60" font-size="24" textLength="150">Wobbin</text>',
        '<text x="100" y="60" font-size="24" text-anchor="middle" textLength="90">Wobbin</text>',
        '<text x="10" y="60" font-size="24" textLength="170" lengthAdjust="spacingAndGlyphs">Wobbin</text>',
        '<text text-anchor="middle" font-size="20"><tspan x="100" y="40">Line one</tspan>'
        '<tspan x="100" dy="1.2em">and two</tspan></text>',
    ],
)
def test_set_as_resvg_sets_it(body: str, tmp_path: Path) -> None:
    """Thin lines have many edge pixels, and along a line each program walks in steps of its own."""
    found = differing(SVG.format(re.sub(r"<text\b", f'<text font-family="{FONT}"', body)), tmp_path)
    assert isinstance(found, float)
    assert found <= (0.03 if "stroke" in body or "textPath" in body else 0.01)


@pytest.mark.parametrize(
    ("body", "fault"),
    [
        ('<text writing-mode="tb">a</text>', "text way"),
        ('<text text-decoration="underline">a</text>', "text decoration"),
        ('<text><tref href="#a"/></text>', "text from elsewhere"),
        ('<text><textPath href="#gone">a</textPath></text>', "text path"),
        ('<path id="p" d="M5,5 L5,5"/><text><textPath href="#p">a</textPath></text>', "text path"),
        ('<path id="p" d=""/><text><textPath href="#p">a</textPath></text>', "text path"),
        ('<text font-size="-4">a</text>', "text size"),
        ('<text>ab <tspan textLength="90">cd</tspan></text>', "text length"),
        ('<text fill="url(#g)">a</text><linearGradient id="g"/>', "gradient"),
    ],
)
def test_what_cannot_be_set_is_named(body: str, fault: str, tmp_path: Path) -> None:
    assert differing(SVG.format(body), tmp_path) == (fault,)


def read(folder: Path, body: str) -> LiveText:
    (folder / "text.svg").write_text(SVG.format(body), encoding="utf-8")
    layers = read_layers(folder / "text.svg")
    assert isinstance(layers, Layers)
    text = layers.layers[0].text
    assert text
    return text


def test_braces_are_filled_in_wherever_their_spans_begin_and_end(tmp_path: Path) -> None:
    text = read(tmp_path, '<text x="5 9 20">The {Gr<tspan fill="red">oup}s</tspan> of {Who}</text>')
    made = reworded(text, {"Group": "Novák", "Who": "Ana"}.__getitem__)
    assert made.words == "The Nováks of Ana"
    assert [span.text for span in made.spans] == ["The Novák", "s", " of Ana"]
    assert len(made.spans[0].spots) == 1  # letters of changed words follow one another


def test_lines_are_texts_of_their_own(tmp_path: Path) -> None:
    """And fragments set apart on one line, as drawing programs kern, are one."""
    body = (
        '<text font-size="20"><tspan x="5" y="20">Ca<tspan x="30" y="20">mp</tspan></tspan>'
        '<tspan x="5" dy="24">Wobbin</tspan><tspan x="5" y="70">2031</tspan></text>'
    )
    (tmp_path / "lines.svg").write_text(SVG.format(body), encoding="utf-8")
    layers = read_layers(tmp_path / "lines.svg")
    assert isinstance(layers, Layers)
    assert [layer.text.words for layer in layers.layers if layer.text] == ["Camp", "Wobbin", "2031"]
    assert [layer.text.spans[0].spots[0].y for layer in layers.layers if layer.text] == [20, 44, 70]


def test_layout_spaces_of_the_file_are_none_of_the_text(tmp_path: Path) -> None:
    text = read(tmp_path, "<text>\n  Two\n  <tspan>words </tspan>\n</text>")
    assert "".join(span.text for span in text.spans) == "Two words"


def test_the_font_is_the_one_named_or_the_nearest_kind_and_says_which(tmp_path: Path) -> None:
    assert named_font(("arimo",), True, False, tmp_path, FONT).face.name == "Arimo Bold"
    nearest = named_font(("Curly Brush Script",), False, False, tmp_path, FONT)
    assert (nearest.face.name, nearest.instead_of) == ("Lobster", "Curly Brush Script")
    assert named_font((), False, False, tmp_path, FONT).instead_of == ""
