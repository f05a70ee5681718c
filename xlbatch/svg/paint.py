"""What color a shape of a drawing is filled with."""

import math
import re
from collections.abc import Iterator, Mapping
from functools import cache
from typing import Literal
from xml.etree.ElementTree import Element

from tinycss2 import color4

from xlbatch.svg.css import Sheets, said_in
from xlbatch.svg.faults import Unreadable
from xlbatch.svg.viewport import length
from xlbatch.trade.tables import table

Style = Mapping[str, str]

# what a shape takes over from the group it is in, and what holds where nothing is said (SVG 1.1)
INITIAL: dict[str, str] = {
    "fill": "black",
    "fill-rule": "nonzero",
    "fill-opacity": "1",
    "clip-rule": "nonzero",
    "stroke": "none",
    "stroke-width": "1",
    "stroke-opacity": "1",
    "stroke-linecap": "butt",
    "stroke-linejoin": "miter",
    "stroke-miterlimit": "4",
    "stroke-dasharray": "none",
    "stroke-dashoffset": "0",
    "marker": "none",
    "marker-start": "none",
    "marker-mid": "none",
    "marker-end": "none",
    "paint-order": "normal",
    "color": "black",
    "visibility": "visible",
    "font-family": "",
    "font-size": "16",
    "font-weight": "400",
    "font-style": "normal",
    "font-variant": "normal",
    "letter-spacing": "normal",
    "word-spacing": "normal",
    "text-anchor": "start",
    "text-decoration": "none",
    "text-transform": "none",
    "writing-mode": "lr-tb",
    "direction": "ltr",
}
_OWN = {
    "display": "inline",
    "opacity": "1",
    "clip-path": "none",
    "mask": "none",
    "filter": "none",
    "overflow": "hidden",
    "vector-effect": "none",
    "mix-blend-mode": "normal",
    "transform-origin": "",
    "baseline-shift": "baseline",
    "dominant-baseline": "auto",
    "alignment-baseline": "auto",
}
_PLACED = {
    *("transform", "translate", "rotate", "scale", "offset-path", "d"),
    *("x", "y", "cx", "cy", "r", "rx", "ry", "width", "height"),
}
_INHERITED = ("inherit", "unset")
_WEIGHTS = {"normal": "400", "bold": "700", "bolder": "700", "lighter": "300"}
_SIZES = {
    **{"xx-small": "9", "x-small": "10", "small": "13", "medium": "16"},
    **{"large": "18", "x-large": "24", "xx-large": "32"},
}  # px: CSS 2.1, 15.7, as browsers have it
_NUMBER = re.compile(r"\d+(\.\d*)?|\.\d+")
_RELATIVE = re.compile(r"(\d+(?:\.\d*)?|\.\d+)(em|ex|%)", re.IGNORECASE)
_FONT = re.compile(
    r"((?:[a-z0-9-]+\s+)*?)([\d.]+[a-z%]*|(?:x{1,2}-)?(?:small|large)|medium)(?:/\S+)?\s+(.+)", re.IGNORECASE
)
_MARKED = ("path", "line", "polyline", "polygon")


def style_of(element: Element, inherited: Style, sheets: Sheets) -> Style:
    """The style of an element: its attributes, over them the style sheets, then its style attribute; under them what
    it inherits."""
    declared = {name: value.strip() for name, value in element.items()}
    more = (*sheets.get(element, ()), *said_in(element.get("style", "")))
    declared.update(
        (declaration.name, declaration.value)
        for declaration in sorted(more, key=lambda declaration: declaration.important)
    )
    if "font" in declared:
        declared = _font_apart(declared["font"]) | declared
    style = dict(inherited)
    style.update((name, declared[name]) for name in INITIAL if declared.get(name, "inherit") not in _INHERITED)
    style["font-size"] = _font_size(style["font-size"], inherited["font-size"])
    style["font-weight"] = _WEIGHTS.get(style["font-weight"], style["font-weight"])
    style.update((name, declared.get(name, initial)) for name, initial in _OWN.items())
    style.update((name, (INITIAL | _OWN)[name]) for name in style if declared.get(name) == "initial")
    if any(declaration.name in _PLACED for declaration in more):
        style["transform-origin"] = "by style"
    return style


def _font_apart(text: str) -> dict[str, str]:
    """The `font` shorthand as what it sets (CSS 2.1, 15.8)."""
    parts = _FONT.fullmatch(text.strip())
    if not parts:
        return {}
    first = parts[1].lower().split()
    weight = next((word for word in first if word in _WEIGHTS or word.isdecimal()), "400")
    slant = next((word for word in first if word in ("italic", "oblique")), "normal")
    caps = "small-caps" if "small-caps" in first else "normal"
    return {
        "font-size": parts[2],
        "font-family": parts[3],
        "font-weight": weight,
        "font-style": slant,
        "font-variant": caps,
    }


def _font_size(text: str, inherited: str) -> str:
    """The size of letters in px: of a relative one, of what it is relative to. As it is where it cannot be read."""
    if text in _SIZES:
        return _SIZES[text]
    relative = _RELATIVE.fullmatch({"larger": "1.2em", "smaller": "0.8333em"}.get(text, text).strip())
    if not relative:
        try:
            return f"{length(text, float(INITIAL['font-size'])):.10g}"
        except Unreadable:
            return text
    part = float(relative[1]) * {"em": 1.0, "%": 0.01, "ex": 0.5}[relative[2].lower()]
    return f"{part * float(inherited):g}" if _NUMBER.fullmatch(inherited) else text


def style_faults(style: Style) -> Iterator[str]:
    """What about an element's own style cannot be cut (keys of FAULTS)."""
    if not is_opaque(style["opacity"]) or style["mix-blend-mode"] != "normal":
        yield "see-through"
    if style["transform-origin"]:
        yield "placed by style"
    for name in ("mask", "filter"):
        if style[name] != "none":
            yield name


def paint_faults(style: Style, tag: str) -> Iterator[str]:
    """What about a shape's paint cannot be cut (keys of FAULTS)."""
    if (style["fill"] != "none" and 0 < _opacity(style["fill-opacity"]) < 1) or (
        is_stroked(style) and not is_opaque(style["stroke-opacity"])
    ):
        yield "see-through"
    if tag in _MARKED and any(style[name] != "none" for name in style if name.startswith("marker")):
        yield "marker"


def is_opaque(text: str, least: float = 1) -> bool:
    """Whether an opacity is 1, or, with `least` 0, more than 0."""
    return _opacity(text) >= 1 if least else _opacity(text) > 0


def is_stroked(style: Style) -> bool:
    """Whether a shape has a stroke that can be seen."""
    width = re.match(r"0+(\.0*)?(?![.\d])", style["stroke-width"])
    return style["stroke"] not in ("none", "transparent") and not width and _opacity(style["stroke-opacity"]) > 0


def paint_of(style: Style, name: Literal["fill", "stroke"], by_id: Mapping[str, Element]) -> str | None:
    """The `#rrggbb` a shape is filled or stroked with, None where it is not. Raises Unreadable."""
    paint = style[name]
    if match := re.fullmatch(r"url\(\s*+['\"]?([^'\")]*+)['\"]?\s*+\)\s*+(.*)", paint):
        fault = _server(match[1].strip(), by_id)
        if fault != "missing color" or not match[2]:
            raise Unreadable(fault)
        paint = match[2]
    paint = style["color"] if paint.lower() == "currentcolor" else paint
    if paint.lower() in ("none", "transparent") or _opacity(style[f"{name}-opacity"]) <= 0:
        return None
    paint = re.split(r"\sicc-color\(", paint, maxsplit=1)[0]
    color = css_color(paint)
    if color is None:
        parsed = color4.parse_color(paint)
        raise Unreadable("see-through" if isinstance(parsed, color4.Color) and parsed.alpha < 1 else "color")
    return color


def css_color(text: str) -> str | None:
    """The `#rrggbb` of a solid CSS color: a name, hexadecimal, rgb() or hsl(); None where it is no such color."""
    text = text.strip().lower()
    if "(" not in text and "#" not in text:
        return _named().get(text)
    color = color4.parse_color(text)
    if not isinstance(color, color4.Color) or color.space not in ("srgb", "hsl") or color.alpha < 1:
        return None
    parts = color.to("srgb").coordinates
    return "#" + "".join(f"{int(min(max(part, 0), 1) * 255 + 0.5):02x}" for part in parts)


@cache
def _named() -> Mapping[str, str]:
    return {line["Color"]: line["Hex"] for line in table("css_colors")}


def _opacity(text: str) -> float:
    try:
        value = float(text[:-1]) / 100 if text.endswith("%") else float(text)
    except ValueError:
        return 1.0
    return 1.0 if math.isnan(value) else value


def _server(reference: str, by_id: Mapping[str, Element]) -> str:
    """The fault of a paint by reference: a gradient, a pattern, or something not there."""
    if reference and not reference.startswith("#"):
        return "external"
    element = by_id.get(reference[1:])
    return "missing color" if element is None else "pattern" if element.tag == "pattern" else "gradient"
