"""The style sheets inside a drawing: what they say of each of its elements. Nothing outside the file is read."""

from collections.abc import Iterator, Mapping, Sequence
from typing import NamedTuple
from xml.etree.ElementTree import Element

import cssselect2
import tinycss2

from xlbatch.svg.faults import Unreadable


class Said(NamedTuple):
    """One declaration: a property, its value, and whether it wins over those said more closely."""

    name: str
    value: str
    important: bool


_HARMLESS = ("charset", "font-face", "namespace", "page", "keyframes")
_SCREENS = ("", "all", "screen", "only screen")
_MOST = 300_000  # selectors times elements

Sheets = Mapping[Element, Sequence[Said]]


def sheets_of(root: Element) -> Sheets:
    """What the style sheets of a drawing say of each element, the stronger later. Raises Unreadable."""
    texts = ["".join(element.itertext()) for element in root.iter("style")]
    matcher, count = cssselect2.Matcher(), 0
    for selectors, declarations in (rule for text in texts for rule in _rules(text)):
        for selector in selectors:
            count += 1
            matcher.add_selector(selector, declarations)
    if count * sum(1 for _ in root.iter()) > _MOST:
        raise Unreadable("too detailed")
    if not any(text.strip() for text in texts):
        return {}
    elements = cssselect2.ElementWrapper.from_xml_root(root).iter_subtree()
    return {
        wrapped.etree_element: [
            declared for _, _, pseudo, them in matcher.match(wrapped) if not pseudo for declared in them
        ]
        for wrapped in elements
    }


def said_in(style: str) -> tuple[Said, ...]:
    """The declarations of a style attribute."""
    return tuple(_said(tinycss2.parse_blocks_contents(style)))


def _rules(text: str) -> Iterator[tuple[Sequence[object], tuple[Said, ...]]]:
    """The rules that hold as the drawing is cut: as on a screen, nothing being known of its size."""
    for rule in tinycss2.parse_stylesheet(text, skip_comments=True, skip_whitespace=True):
        if rule.type == "at-rule" and rule.lower_at_keyword == "media":
            media = tinycss2.serialize(rule.prelude).lower().split(",")
            if rule.content and any(medium.strip() in _SCREENS for medium in media):
                yield from _rules(tinycss2.serialize(rule.content))
            continue
        if rule.type == "at-rule" and rule.lower_at_keyword not in _HARMLESS:
            raise Unreadable("external" if rule.lower_at_keyword == "import" else "style sheet")
        if rule.type == "qualified-rule":
            if ":has(" in tinycss2.serialize(rule.prelude):  # would look through all of the drawing for each element
                raise Unreadable("style sheet")
            try:
                selectors = cssselect2.compile_selector_list(rule.prelude)
            except cssselect2.SelectorError as error:
                raise Unreadable("style sheet") from error
            yield selectors, tuple(_said(tinycss2.parse_blocks_contents(rule.content)))


def _said(content: Sequence[object]) -> Iterator[Said]:
    for node in content:
        if getattr(node, "type", "") in ("qualified-rule", "at-rule"):  # rules in one another
            raise Unreadable("style sheet")
        if getattr(node, "type", "") == "declaration":
            value = tinycss2.serialize(node.value).strip()  # type: ignore[attr-defined]
            # words, colors and units may be in capitals, unlike in attributes; names of ids and fonts may not
            named = "(" in value or node.lower_name in ("font", "font-family")  # type: ignore[attr-defined]
            yield Said(node.lower_name, value if named else value.lower(), node.important)  # type: ignore[attr-defined]
