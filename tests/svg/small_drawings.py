"""Small drawings, each of one thing that SVG can say: what is read of them is kept as text (tests/small_texts.py)."""

from collections.abc import Iterator, Sequence
from dataclasses import astuple
from pathlib import Path

import pathops

from xlbatch.geometry.weld import segments_of
from xlbatch.lettering.fonts import find_font
from xlbatch.problems.unreadable_drawings import FAULTS, Fault
from xlbatch.svg.artwork import Drawing, drawing_of, faulted, read_layers
from xlbatch.svg.layer import Layers, LiveText
from xlbatch.svg.set_text import set_text

PAGE = 'viewBox="0 0 200 100" width="200" height="100"'
L = '<path d="M20 20H60V30H30V60H20Z" {}/>'
BARE = L.format("")
CLIP = '<clipPath id="c" {}>{}</clipPath><rect x="20" y="20" width="80" height="60" clip-path="url(#c)" {}/>'
WORDS = '<g font-family="Archivo Black" font-size="20">{}</g>'
ARC = '<path id="a" d="M20 80C60 10 140 10 180 80" fill="none"/><path id="o" d="M50 50L90 20L130 60Z" fill="none"/>'
OVER = (  # red, blue over it, red again, green beside it
    '<rect x="10" y="10" width="60" height="60" fill="red"/><circle cx="70" cy="50" r="30" fill="blue"/>'
    '<path d="M60 40H120V55H60Z" fill="red"/><path d="M120 10H160V60H100Z" fill="green"/>'
)
SHAPES = (
    '<rect x="10" y="5" width="60" height="30" rx="8"/>',
    '<rect x="10%" y="10%" width="30%" height="40%" ry="10%"/>',
    '<rect x="10" y="5" width="60" height="30" rx="90" ry="6"/>',
    '<rect width="0" height="9"/><rect width="9" height="-1"/><circle r="0"/><ellipse rx="4" ry="0"/><rect width="3"/>',
    '<g stroke="red" stroke-width="4" stroke-linecap="round"><rect x="9" y="9" width="0" height="9"/>'
    '<circle cx="50" cy="50" r="0"/><ellipse cx="50" cy="50" rx="4" ry="0"/><rect y="9" width="9" height="0"/></g>',
    '<rect width="20" height="10" rx="0" ry="4"/><rect x="40" width="20" height="10" rx="4" ry="0"/>',
    '<circle cx="50" cy="40" r="10%"/>',
    '<ellipse cx="25%" cy="60%" rx="10%" ry="30"/><ellipse cx="150" cy="50" rx="20"/>',
    '<polygon points="10,10 60,10 60,50 20"/><polyline points="100 10 150 20 120,70"/><polygon points="5 5"/>',
    '<line x1="10%" y1="10" x2="150" y2="80%" stroke="red" stroke-width="4"/>',
    '<path d="m10 10l40 0 0 30h-10v20H20V40zm70 0c20 0 30 10 30 30s-10 20-20 30S80 70 80 60t-5-20q5-10 5-30z"/>',
    '<path d="M20 50A30 20 30 1 0 90 50a10 10 0 0 1 40 0T150 70Q170 20 120 20Z"/>',
    '<path fill-rule="evenodd" d="M10 10H90V90H10ZM30 30H70V70H30Z"/>'
    '<path d="M110 10H190V90H110ZM130 30H170V70H130Z"/>',
    '<path d="M10 10H50V50"/><path d="M60 10"/><path d="M100 10L1e7 20 40 40z"/>',
    '<path d="M10 10 X"/>',
    *(
        f'<g transform="translate(4 3)">{L.format(f"""transform="{move}" """)}</g>'
        for move in (
            "translate(10)", "translate(10,-5)", "scale(2)", "scale(.5 2)", "rotate(30)", "rotate(30 60 40)",
            "rotate(30 60)", "skewX(20)", "skewY(20)", "matrix(1 .2 .3 1.5 4 5)", "rotate(20), scale(2) translate(3 4)",
            "scale(1 2 3)", "turn(4)", "scale(-1 1) translate(-90)",
        )
    ),
)  # fmt: skip
STROKES = tuple(
    L.format(f'fill="none" stroke="red" {line}')
    for line in (
        'stroke-width="5%"', 'stroke-width="4" stroke-linecap="round" stroke-linejoin="round"',
        'stroke-width="4" stroke-linejoin="bevel"', 'stroke-width="4" stroke-miterlimit="1"',
        'stroke-width="4" stroke-dasharray="9 4" stroke-dashoffset="3" stroke-linecap="square"',
        'stroke-width="4" stroke-dasharray="5%"', 'stroke-width="0.02" stroke-dasharray="0.01"',
        'stroke-width="4" transform="scale(2 .5)"', 'stroke-width="4" vector-effect="non-scaling-stroke"',
        'stroke-width="-4"', 'stroke-width="4" stroke-linecap="flat"', 'stroke-width="4" stroke-opacity=".5"',
        'stroke-width="4" marker-end="url(#m)"',
    )
) + tuple(
    L.format(f'fill="lime" stroke="red" stroke-width="4" {more}')
    for more in ('paint-order="stroke"', 'fill-opacity="0"', 'fill-opacity=".4"', 'stroke-opacity="0"')
)  # fmt: skip
CLIPS = (
    CLIP.format("", '<circle cx="60" cy="50" r="20"/>', ""),
    CLIP.format("", '<circle cx="60" cy="50" r="20"/>', 'transform="translate(10 5)"'),
    CLIP.format('transform="scale(.5)"', '<circle cx="60" cy="50" r="20"/>', ""),
    CLIP.format('clipPathUnits="objectBoundingBox"', '<path d="M.5 0L1 1H0Z"/>', 'transform="rotate(10)"'),
    CLIP.format(
        "", '<path clip-rule="evenodd" d="M20 20H90V70H20ZM40 40H60V60H40Z"/><rect width="30" height="25"/>', ""
    ),
    CLIP.format("", '<rect id="r" width="50" height="50"/><use href="#r" x="30" y="40" transform="scale(.9)"/>', ""),
    CLIP.format("", '<g><rect width="50" height="50"/></g>', ""),
    CLIP.format("", "<text>A</text>", ""),
    CLIP.format("", '<rect width="50" height="50" visibility="hidden"/><rect width="9" height="99" x="40"/>', ""),
    CLIP.format("", '<rect width="50" height="50" display="none"/><title>clip</title>', ""),
    CLIP.format('clip-path="url(#d)"', '<rect width="50" height="90" clip-path="url(#e)"/>', "")
    + '<clipPath id="d"><rect y="30" width="90" height="20"/></clipPath>'
    '<clipPath id="e"><circle cx="40" cy="40" r="18"/></clipPath>',
    CLIP.format('clip-path="url(#c)"', '<rect width="50" height="50"/>', ""),
    '<rect width="9" height="9" clip-path="circle(4)"/>',
    '<rect id="r" width="9" height="9" clip-path="url(#r)"/>',
    '<rect width="9" height="9" clip-path="url(other.svg#a)"/>',
)
COPIES = (
    f'<defs>{L.format("""id="l" """)}</defs><use href="#l" x="30" y="-5" fill="red"/>'
    '<use href="#l" transform="scale(2)"/>',
    '<symbol id="s" viewBox="0 0 10 10"><rect x="-5" width="20" height="20"/></symbol>'
    '<use href="#s" x="20" y="10" width="60" height="30" fill="red"/><use href="#s" width="50%" fill="blue"/>',
    '<symbol id="s" viewBox="0 0 10 10" overflow="visible" preserveAspectRatio="xMinYMax slice">'
    '<rect width="20" height="20"/></symbol><use href="#s" x="20" y="10" width="60" height="30"/>',
    '<svg id="v" x="10" y="5" width="50" height="40" viewBox="0 0 25 40"><rect width="50%" height="50%"/></svg>'
    '<use href="#v" x="90" y="20"/><use href="#v" y="50" width="20" height="20" fill="red"/>',
    '<svg x="10%" y="10%" width="25%" height="50%"><circle cx="50%" cy="50%" r="50%"/></svg>'
    '<svg width="0"><path/></svg>',
    '<svg width="60" height="40" viewBox=".1 0 .6 .4"><rect width=".5" height=".2"/></svg>',
    '<g id="g"><use href="#g"/></g>',
    '<use href="#gone"/>',
    '<use href="other.svg#a"/>',
    f'<switch><g systemLanguage="fr">{BARE}</g>'
    f'<g systemLanguage="de, en"><rect width="9" height="9"/></g>{BARE}</switch>',
    f'<switch><g requiredExtensions="x">{BARE}</g><rect width="8" height="8"/></switch>',
    f'<switch><g requiredFeatures="x">{BARE}</g></switch>',
    f'<g display="none">{BARE}</g>'
    f'<g visibility="hidden">{BARE}<rect width="9" height="9" visibility="visible"/></g>',
    f'<g opacity="0">{BARE}</g><a><rect width="7" height="7" opacity="100%"/></a>',
    *(
        f'<rect width="9" height="9"/>{odd}'
        for odd in (
            '<image href="a.png"/>', "<foreignObject/>", "<script/>", "<tspan>a</tspan>", "<blink/>",
            '<g opacity=".5"/>', '<g style="mix-blend-mode:screen"/>', '<g mask="url(#m)" filter="url(#f)"/>',
            '<g style="transform:scale(2)"/>', '<g style="x:4"/>', "<sodipodi:x xmlns:sodipodi='urn:x'/>",
        )
    ),
)  # fmt: skip
COLORS = tuple(
    f"<style>{rules}</style><g color='teal'>{L.format(said)}</g>"
    for rules, said in (
        ("", 'fill="#abc"'), ("", 'fill="rgb(10%, 20%, 300%)"'), ("", 'fill="hsl(120, 50%, 40%)"'),
        ("", 'fill="rgba(1,2,3,.5)"'), ("", 'fill="url(#x) #123456"'), ("", 'fill="currentColor"'),
        ("", 'fill="Tomato" style="fill-rule:evenodd"'), ("path{fill:#ABCDEF}", ""), (".a{fill:red}", 'class="b a"'),
        ("g path{fill:red} g > path{fill:blue}", ""), ("[d]{fill:RED !important}", 'style="fill:blue"'),
        ("@media print{path{fill:red}}", ""), ("@media all{path{fill:red}}", ""), ("@import url(a.css);", ""),
        ("@font-face{font-family:X}path{fill:lime}", ""), ("@supports (x:y){path{fill:red}}", ""),
        ("g:has(path){fill:red}", ""), ("path{g{fill:red}}", ""), ("path:::x{fill:red}", ""),
        ("", 'fill="initial"'), ("", 'fill="inherit"'), ("", 'fill="no-such"'), ("", 'fill="url(#x)"'),
        ("", 'fill="none"'), ("", 'fill="transparent"'),
    )
)  # fmt: skip
TEXTS = tuple(
    WORDS.format(body)
    for body in (
        '<text x="10" y="60">Wavy</text>', '<text x="100" y="60" text-anchor="middle">Wavy</text>',
        '<text x="190" y="60" text-anchor="end">AV <tspan fill="red">To</tspan></text>',
        '<text x="10" y="60" letter-spacing="4" word-spacing="3">AV o</text>',
        '<text y="60" word-spacing="3">AV o</text>',
        '<text x="10 40 70" y="60 50" dx="1 2" dy="3">abcd</text>', '<text x="10" y="60" rotate="20 0">abc</text>',
        '<text transform="rotate(-20 50 50) scale(1.5 1)" x="10" y="60">Up</text>',
        '<text x="10" y="60" stroke="red" stroke-width="3" paint-order="stroke">Hut</text>',
        f'{ARC}<text><textPath href="#a" startOffset="20">Along</textPath></text>',
        f'{ARC}<text text-anchor="middle" dy="4"><textPath href="#a" startOffset="50%">Along</textPath></text>',
        f'{ARC}<text><textPath href="#o" startOffset="90%">Along</textPath></text>',
        f'{ARC}<text rotate="10" dx="2" letter-spacing="2"><textPath href="#o">To</textPath></text>',
        '<text><textPath href="#gone">a</textPath></text>',
        '<text x="10" y="60" textLength="150">Way</text>', '<text x="10" y="60" textLength="150">A</text>',
        '<text x="100" y="60" text-anchor="middle" textLength="40%" lengthAdjust="spacingAndGlyphs">Way</text>',
        '<text y="60">ab <tspan textLength="90">cd</tspan></text>',
        '<text x="10" y="20">One<tspan x="10" dy="24">and two</tspan><tspan x="10" dy="9">three</tspan></text>',
        '<text x="10" y="60">H<tspan baseline-shift="sub">2</tspan>O<tspan baseline-shift="30%">3</tspan></text>',
        '<text x="10" y="60" dominant-baseline="central">A<tspan font-size="150%" font-weight="700">dle</tspan></text>',
        '<text x="10" y="60" direction="rtl" text-transform="uppercase" style="font:italic 9pt/2 Oswald, a">aé</text>',
        '<text x="10" y="60">e&#x301;a<tspan visibility="hidden">b</tspan>{Gr<tspan fill="red">oup}</tspan>s</text>',
        '<text xml:space="preserve" x="10" y="60">  a  b </text>', "<text> </text>",
        CLIP.format("", '<rect width="30" height="99"/>', "") + '<text x="10" y="60" clip-path="url(#c)">Wavy</text>',
        '<text x="10" y="60" dominant-baseline="no-such">A</text>',
        f'{ARC}<text font-size="4"><textPath href="#o">ill</textPath></text>',
        '<text writing-mode="tb">a</text>', '<text text-decoration="underline">a</text>', "<text><tref/></text>",
        '<text font-size="-4">a</text>', '<text font-variant="small-caps">a</text>', '<text fill-opacity=".5">a</text>',
        '<text x="10" y="60" fill="none" stroke="#123" stroke-opacity=".99">a</text>',
    )
)  # fmt: skip
LAYERED = (
    OVER,
    f'<g transform="translate(150 -30)">{OVER}</g>',
    '<rect x="-20" width="40" height="40" fill="red"/><rect x="-.1" y="50" width="9" height="9"/>',
)
BODIES = (*SHAPES, *STROKES, *CLIPS, *COPIES, *COLORS, *TEXTS, *LAYERED)


def read_text(folder: Path) -> Iterator[str]:
    """What is read of each drawing, a line a layer and a color."""
    for body in BODIES:
        yield f"\n== {body}"
        file = folder / "small.svg"
        file.write_text(f'<svg xmlns="http://www.w3.org/2000/svg" {PAGE}>{body}</svg>', encoding="utf-8")
        layers = read_layers(file)
        if isinstance(layers, Layers):
            yield from _layers(layers, folder)
        else:
            yield from _faults(layers)


def _layers(layers: Layers, folder: Path) -> Iterator[str]:
    yield from (f"! {note.code} {dict(note.facts)}" for note in layers.notes)
    for layer in layers.layers:
        yield f"{layer.color} {layer.element} {_path(layer.path)}"
        if layer.text:
            yield from _text(layer.text, folder)
    apart, stacked = (_inks(drawing_of(layers, apart=apart)) for apart in (True, False))
    yield from apart
    if stacked != apart:
        yield from stacked


def _inks(drawing: Drawing | tuple[Fault, ...]) -> Sequence[str]:
    if not isinstance(drawing, Drawing):
        return list(_faults(drawing))
    inks = (f"{color} {ink.area:.5g} at {_numbers(ink.box)}" for color, ink in drawing.fills.items())
    return [f"= {'; '.join(inks)}, center {drawing.center:.5g}"]


def _text(text: LiveText, folder: Path) -> Iterator[str]:
    yield f"  {_numbers(text.matrix)} long {text.long} widened {text.widened} offset {text.offset:.5g}"
    for span in text.spans:
        yield f"  {span.text!r} {astuple(span.look)} {[_numbers(spot) for spot in span.spots]}"
    face = find_font("Archivo Black", folder)
    assert face
    inks = faulted(lambda: set_text(text, lambda _look: face))
    yield from (f"  set {ink[0]} {_path(ink[1])}" for ink in inks if not isinstance(ink, Fault))


def _path(path: pathops.Path) -> str:
    count = len(segments_of(path))
    return f"{count} segments, area {path.area:.5g}, box {_numbers(path.bounds)}" if count else "nothing"


def _numbers(values: tuple[float | None, ...]) -> str:
    return " ".join("-" if value is None else f"{round(value, 3) + 0.0:.6g}" for value in values)


def _faults(faults: tuple[Fault, ...]) -> Iterator[str]:
    yield from (f"! {key}" for key, fault in FAULTS.items() if fault in faults)
