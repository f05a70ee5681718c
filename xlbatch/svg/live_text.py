"""A text element of a drawing → its letters with their looks and places (SVG 1.1, chapter 10)."""

import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from itertools import groupby
from xml.etree.ElementTree import Element

from xlbatch.geometry.path import Matrix
from xlbatch.svg.css import Sheets
from xlbatch.svg.faults import Unreadable
from xlbatch.svg.layer import Letters, LiveText, Spot, TextSpan
from xlbatch.svg.paint import Style, is_opaque, is_stroked, paint_faults, paint_of, style_faults, style_of
from xlbatch.svg.viewport import View, length
from xlbatch.trade.tables import table

_INNER = ("tspan", "a")
_ELSEWHERE = ("tref", "altGlyph", "glyphRef")
_PLACES = ("x", "y", "dx", "dy", "rotate")
_BOLD = 600  # weights from here on
_LINE = 0.5  # of the size: letters so much higher or lower are on another line
_BRACES = re.compile(r"\{[^{}]*\}")
_SHIFTS, _BASELINES = (
    {line["Value"]: float(line["Of the size"]) for line in table("text_lines") if line["Attribute"] == attribute}
    for attribute in ("baseline-shift", "dominant-baseline")
)  # of the size: above the line, and how far below it the text's own height is taken


@dataclass
class _Letter:
    """One letter as it is read, the elements it lies in (innermost last), and what they say of its place."""

    text: str
    within: tuple[Element, ...]
    style: Style
    said: dict[str, float]


class TextReader:
    """Reads texts of one drawing."""

    def __init__(self, by_id: Mapping[str, Element], sheets: Sheets, view: View) -> None:
        self.by_id = by_id
        self.sheets = sheets
        self.view = view

    def texts(self, element: Element, style: Style, matrix: Matrix) -> Iterator[tuple[LiveText, Element | None]]:
        """The lines of a text element, each with the textPath element it runs along. Raises Unreadable."""
        letters = _collapsed(list(self._letters(element, style, (element,))))
        for inner in sorted(
            {outer for letter in letters for outer in letter.within}, key=_depth(letters), reverse=True
        ):
            self._place([letter for letter in letters if inner in letter.within], inner)
        for line in _lines(letters):
            for along, them in groupby(line, key=_along):
                mine = list(them)
                spans = tuple(self._spans(mine))
                if any(span.text.strip() for span in spans):
                    long, widened = self._long(mine, letters)
                    yield LiveText(spans, matrix, long=long, widened=widened), along

    def _long(self, mine: list[_Letter], letters: list[_Letter]) -> tuple[float | None, bool]:
        """How long a line is said to be, and whether its letters are widened for it (SVG 1.1, 10.5)."""
        within = dict.fromkeys(element for letter in mine for element in letter.within)
        saying = [element for element in within if element.get("textLength")]
        if not saying:
            return None, False
        inner = saying[-1]
        if any((letter in mine) != (inner in letter.within) for letter in letters if letter.text != " "):
            raise Unreadable("text length")
        long = _measure(inner.get("textLength", ""), self.view.width, _size(mine[0].style))
        return long if long > 0 else None, inner.get("lengthAdjust") == "spacingAndGlyphs"

    def _letters(self, element: Element, style: Style, within: tuple[Element, ...]) -> Iterator[_Letter]:
        keep = element.get("xml:space") == "preserve" or any(outer.get("xml:space") == "preserve" for outer in within)

        def plain(text: str | None) -> Iterator[_Letter]:
            for letter in _cased(text or "", style["text-transform"]):
                space = letter in "\t\n\r" or (letter == " " and not keep)
                yield _Letter(" " if letter in "\t\n\r" else letter, within, style, {"space": 1.0} if space else {})

        yield from plain(element.text)
        for child in element:
            if child.tag in _ELSEWHERE:
                raise Unreadable("text from elsewhere")
            if child.tag in (*_INNER, "textPath"):
                inner = style_of(child, style, self.sheets)
                if inner["display"] != "none":
                    if faults := tuple(style_faults(inner)):
                        raise Unreadable(*faults)
                    yield from self._letters(child, inner, (*within, child))
            yield from plain(child.tail)

    def _place(self, letters: list[_Letter], element: Element) -> None:
        """Gives letters what an element says of their places, where an inner one has not."""
        for name in _PLACES:
            whole = self.view.width if name in ("x", "dx") else self.view.height
            values = [_measure(part, whole, _size(letters[0].style)) for part in _parts(element.get(name, ""))]
            if name == "rotate" and values:
                values += values[-1:] * (len(letters) - len(values))
            for letter, value in zip(letters, values, strict=False):
                letter.said.setdefault(name, value)

    def _spans(self, letters: list[_Letter]) -> Iterator[TextSpan]:
        for _, them in groupby(letters, key=lambda letter: letter.within):
            same = list(them)
            if same[0].style["visibility"] != "visible":
                continue
            spots = [_spot(letter.said) for letter in same]
            while spots and spots[-1] == Spot():
                spots.pop()
            yield TextSpan("".join(letter.text for letter in same), self._look(same[0]), tuple(spots))

    def _look(self, letter: _Letter) -> Letters:
        style, size = letter.style, _size(letter.style)
        if not style["writing-mode"].startswith(("lr", "rl", "horizontal")):
            raise Unreadable("text way")
        if style["text-decoration"].split()[:1] not in ([], ["none"]) or style["font-variant"] == "small-caps":
            raise Unreadable("text decoration")
        if faults := tuple(paint_faults(style, "text")):
            raise Unreadable(*faults)
        anchor = style["text-anchor"]
        if style["direction"] == "rtl":
            anchor = {"start": "end", "end": "start"}.get(anchor, anchor)
        return Letters(
            fonts=tuple(name.strip(" '\"") for name in style["font-family"].split(",") if name.strip(" '\"")),
            bold=int(style["font-weight"] if style["font-weight"].isdecimal() else 400) >= _BOLD,
            italic=style["font-style"] in ("italic", "oblique"),
            size=size,
            spacing=self._spacing(style["letter-spacing"], size),
            word_spacing=self._spacing(style["word-spacing"], size),
            anchor=anchor,
            raised=sum(self._raised(outer, style, size) for outer in letter.within),
            paints=self._paints(style),
        )

    def _spacing(self, text: str, size: float) -> float:
        return 0.0 if text == "normal" else _measure(text, self.view.width, size)

    def _raised(self, element: Element, style: Style, size: float) -> float:
        own = style_of(element, style, self.sheets)
        baseline = own["dominant-baseline"] if own["dominant-baseline"] != "auto" else own["alignment-baseline"]
        lowered = _BASELINES.get(baseline, 0.0) * size
        shift = own["baseline-shift"]
        return (_SHIFTS[shift] * size if shift in _SHIFTS else _measure(shift, size, size)) - lowered

    def _paints(self, style: Style) -> tuple[tuple[str, float], ...]:
        paints = []
        if fill := paint_of(style, "fill", self.by_id):
            paints.append((fill, 0.0))
        if (
            is_stroked(style)
            and is_opaque(style["stroke-opacity"])
            and (stroke := paint_of(style, "stroke", self.by_id))
        ):
            paints.append((stroke, _measure(style["stroke-width"], self.view.diagonal, _size(style))))
        return tuple(paints[::-1] if style["paint-order"].startswith("stroke") else paints)


def reworded(text: LiveText, value: Callable[[str], str]) -> LiveText:
    """The text with everything in braces replaced by what `value` gives for it; braces may reach over several spans.
    Letters of a span that was changed follow one another from its first."""
    whole = "".join(span.text for span in text.spans)
    owner = [span_no for span_no, span in enumerate(text.spans) for _ in span.text]
    made, changed, position = [""] * len(text.spans), set[int](), 0
    for braces in (*_BRACES.finditer(whole), None):
        for letter_no in range(position, braces.start() if braces else len(whole)):
            made[owner[letter_no]] += whole[letter_no]
        if braces:
            made[owner[braces.start()]] += value(braces[0][1:-1].strip())
            changed.update(owner[braces.start() : braces.end()])
            position = braces.end()
    spans = tuple(
        replace(span, text=words, spots=span.spots[:1] if span_no in changed else span.spots)
        for span_no, (span, words) in enumerate(zip(text.spans, made, strict=True))
    )
    return replace(text, spans=tuple(span for span in spans if span.text))


def braces_in(text: str) -> tuple[str, ...]:
    """What stands in braces."""
    return tuple(brace[1:-1].strip() for brace in _BRACES.findall(text))


def _depth(letters: list[_Letter]) -> Callable[[Element], int]:
    depth = {element: level for letter in letters for level, element in enumerate(letter.within)}
    return lambda element: depth[element]


def _along(letter: _Letter) -> Element | None:
    return next((element for element in letter.within if element.tag == "textPath"), None)


def _lines(letters: list[_Letter]) -> Iterator[list[_Letter]]:
    """The letters line by line: an element that begins at an x and a height of its own begins another line."""
    line: list[_Letter] = []
    y = 0.0
    for letter in letters:
        was, y = y, letter.said.get("y", y) + letter.said.get("dy", 0.0)
        begins = bool(line) and "x" in letter.said and letter.within != line[-1].within
        if begins and abs(y - was) > _LINE * _size(letter.style) and _along(letter) is None:
            letter.said |= {"y": y, "dy": 0.0}
            yield line
            line = []
        line.append(letter)
    yield line


def _collapsed(letters: list[_Letter]) -> list[_Letter]:
    """The letters without spaces that are only the file's layout: doubled ones, and those at both ends."""
    kept: list[_Letter] = []
    for letter in letters:
        if "space" in letter.said and (not kept or kept[-1].text == " "):
            continue
        kept.append(letter)
    while kept and "space" in kept[-1].said:
        kept.pop()
    return kept


def _cased(text: str, transform: str) -> str:
    made = {"uppercase": text.upper(), "lowercase": text.lower(), "capitalize": text.title()}
    return made.get(transform, text)


def _spot(numbers_: Mapping[str, float]) -> Spot:
    return Spot(
        numbers_.get("x"),
        numbers_.get("y"),
        numbers_.get("dx", 0.0),
        numbers_.get("dy", 0.0),
        numbers_.get("rotate", 0.0),
    )


def _size(style: Style) -> float:
    size = _measure(style["font-size"], 16.0, 16.0)
    if size < 0:
        raise Unreadable("text size")
    return size


def _parts(text: str) -> list[str]:
    return text.replace(",", " ").split()


def _measure(text: str, whole: float, size: float) -> float:
    """A length in px, em and ex being of the letters' size. Raises Unreadable."""
    if relative := re.fullmatch(r"([-+]?[\d.]+(?:e-?\d+)?)(em|ex)", text.strip(), re.IGNORECASE):
        try:
            return float(relative[1]) * size * (1.0 if relative[2].lower() == "em" else 0.5)
        except ValueError as error:
            raise Unreadable("text size") from error
    return length(text, whole)
