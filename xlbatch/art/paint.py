"""What color a shape of a drawing is filled with."""

import re
from collections.abc import Iterator, Mapping
from functools import cache
from xml.etree.ElementTree import Element

from xlbatch.art.faults import Unreadable
from xlbatch.trade.tables import table

Style = Mapping[str, str]

# what a shape takes over from the group it is in, and what holds where nothing is said (SVG 1.1)
INITIAL: Style = {
    "fill": "black",
    "fill-rule": "nonzero",
    "fill-opacity": "1",
    "stroke": "none",
    "stroke-width": "1",
    "color": "black",
    "visibility": "visible",
}
_OWN = {"display": "inline", "opacity": "1", "clip-path": "none", "mask": "none", "filter": "none"}
_HEX = re.compile(r"#([0-9a-f]{3}|[0-9a-f]{6})")
_PART = r"\s*(\d{1,4}(?:\.\d{0,9})?|\.\d{1,9})(%?)\s*"
_RGB = re.compile(rf"rgb\({_PART}[,\s]{_PART}[,\s]{_PART}\)")


def style_of(element: Element, inherited: Style) -> Style:
    """The style of an element: its attributes, over them its style attribute, under them what it inherits."""
    said = {name: value.strip() for name, value in (*element.items(), *_declarations(element.get("style", "")))}
    style = dict(inherited)
    style.update((name, said[name]) for name in INITIAL if said.get(name, "inherit") != "inherit")
    style.update((name, said.get(name, initial)) for name, initial in _OWN.items())
    return style


def style_faults(style: Style) -> Iterator[str]:
    """What about an element's own style cannot be cut (keys of FAULTS)."""
    if _opacity(style["opacity"]) < 1:
        yield "see-through"
    for name, fault in (("clip-path", "clip"), ("mask", "mask"), ("filter", "filter")):
        if style[name] != "none":
            yield fault


def paint_faults(style: Style) -> Iterator[str]:
    """What about a shape's paint cannot be cut (keys of FAULTS)."""
    if style["stroke"] not in ("none", "transparent") and not re.match(r"0+(\.0*)?(?![.\d])", style["stroke-width"]):
        yield "stroke"
    if style["fill"] != "none" and _opacity(style["fill-opacity"]) < 1:
        yield "see-through"


def fill_of(style: Style, root: Element) -> str | None:
    """The `#rrggbb` a shape is filled with, None where it is not filled. Raises Unreadable."""
    fill = style["color"] if style["fill"].lower() == "currentcolor" else style["fill"]
    if fill.lower() in ("none", "transparent"):
        return None
    if fill.startswith("url("):
        raise Unreadable(_server(fill, root))
    color = css_color(fill)
    if color is None:
        raise Unreadable("see-through" if re.match(r"(rgb|hsl)a\(|#([0-9a-fA-F]{4}){1,2}$", fill) else "color")
    return color


def css_color(text: str) -> str | None:
    """The `#rrggbb` of a CSS color: a name, #rgb, #rrggbb or rgb(); None where it is no such color."""
    text = text.strip().lower()
    if found := _HEX.fullmatch(text):
        digits = found[1]
        return "#" + (digits if len(digits) == 6 else "".join(digit * 2 for digit in digits))
    if found := _RGB.fullmatch(text):
        parts = zip(found.groups()[::2], found.groups()[1::2], strict=True)
        return "#" + "".join(f"{_byte(float(part), sign):02x}" for part, sign in parts)
    return _named().get(text)


def _byte(value: float, sign: str) -> int:
    return min(255, int((value * 255 / 100 if sign else value) + 0.5))


@cache
def _named() -> Mapping[str, str]:
    return {line["Color"]: line["Hex"] for line in table("css_colors")}


def _declarations(style: str) -> Iterator[tuple[str, str]]:
    for declaration in style.split(";"):
        name, colon, value = declaration.partition(":")
        if colon:
            yield name.strip().lower(), value.removesuffix("!important").strip()


def _opacity(text: str) -> float:
    try:
        return float(text[:-1]) / 100 if text.endswith("%") else float(text)
    except ValueError:
        return 1.0


def _server(fill: str, root: Element) -> str:
    """The fault of a fill by reference: a gradient, a pattern, or something else."""
    found = re.match(r"url\(\s*['\"]?#([^'\")]*)", fill)
    tags = {element.tag for element in root.iter() if found and element.get("id") == found[1]}
    return "pattern" if "pattern" in tags else "gradient" if tags else "color"
