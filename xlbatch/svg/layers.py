"""The elements of an SVG drawing → its layers: every filled or stroked shape as drawn, in drawing order."""

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from xml.etree.ElementTree import Element

import pathops

from xlbatch.geometry.path import IDENTITY, Matrix, product
from xlbatch.geometry.weld import closed, common, tidy
from xlbatch.svg.css import Sheets, sheets_of
from xlbatch.svg.effort import Effort
from xlbatch.svg.faults import Unreadable
from xlbatch.svg.layer import Layer, LiveText
from xlbatch.svg.live_text import TextReader
from xlbatch.svg.paint import INITIAL, Style, is_opaque, is_stroked, paint_faults, paint_of, style_faults, style_of
from xlbatch.svg.set_text import line_length
from xlbatch.svg.shapes import DATA, matrix_of, shape_path
from xlbatch.svg.stroke import stroke_path
from xlbatch.svg.viewport import DrawingPage, View, fitted, length, numbers

_GROUPS = ("g", "a", "switch")
_UNSEEN = (
    *("defs", "title", "desc", "metadata", "symbol", "marker", "view", "other", "style"),
    *("linearGradient", "radialGradient", "pattern", "clipPath", "mask", "filter"),
    *("font", "font-face", "color-profile", "cursor"),
)
_UNCUT = {
    "foreignObject": "text box",
    **dict.fromkeys(("script", "animate", "animateTransform", "animateMotion", "animateColor", "set"), "moving"),
    **dict.fromkeys(("tspan", "textPath"), "unknown"),
    "image": "image",
}

MOST_CONTOURS, MOST_POINTS = 5_000, 50_000  # more take long to weld, and no one could weed them
_MOST_ELEMENTS, _DEEPEST = 10_000, 100  # read, copies counted each time; copies within copies


@dataclass(frozen=True)
class _Place:
    """Where an element is drawn: what it inherits, the matrix to the units welded in, its view, and what it is copied
    into, and the numbers of the elements it lies in."""

    style: Style
    matrix: Matrix
    view: View
    within: tuple[Element, ...] = ()
    element: tuple[int, ...] = ()


def layers_of(root: Element, page: DrawingPage, effort: Effort) -> tuple[Layer, ...]:
    """All that is drawn. Raises Unreadable with every fault found."""
    reader = _Reader(root, effort)
    layers = reader.read_all(root, _Place(INITIAL, page.matrix, page.view))
    if reader.faults:
        raise Unreadable(*reader.faults)
    return tuple(layer for layer in layers if len(layer.path) or layer.text)


class _Reader:
    """Reads elements, and collects what of them cannot be cut."""

    def __init__(self, root: Element, effort: Effort) -> None:
        self.root = root
        self.effort = effort
        self.by_id = {name: element for element in reversed(list(root.iter())) if (name := element.get("id"))}
        self.sheets: Sheets = sheets_of(root)
        self.faults: dict[str, None] = {}
        self.contours = self.points = self.elements = 0

    def read_all(self, parent: Element, place: _Place) -> list[Layer]:
        """The children of the root, under what it says of itself."""
        style = style_of(parent, place.style, self.sheets)
        self._note(style_faults(style))
        matrix = product(matrix_of(parent.get("transform", "")), place.matrix)
        return self._children(parent, replace(place, style=style, matrix=matrix))

    def _children(self, parent: Element, place: _Place) -> list[Layer]:
        chosen: Iterable[Element] = parent
        if parent.tag == "switch":
            chosen = [child for child in parent if _applies(child)][:1]
        return [layer for child in chosen for layer in self._element(child, place)]

    def _note(self, faults: Iterable[str]) -> None:
        self.faults.update(dict.fromkeys(faults))

    def _element(self, element: Element, place: _Place) -> list[Layer]:
        style = style_of(element, place.style, self.sheets)
        if style["display"] == "none" or element.tag in _UNSEEN or not is_opaque(style["opacity"], least=0):
            return []
        self.elements += 1
        try:
            if self.elements > _MOST_ELEMENTS:
                raise Unreadable("too detailed")
            self._note(style_faults(style))
            matrix = product(matrix_of(element.get("transform", "")), place.matrix)
            place = replace(place, style=style, matrix=matrix, element=(*place.element, self.elements))
            return self._clipped(self._kind(element, place), element, place)
        except Unreadable as unreadable:
            self._note(unreadable.args)
            return []

    def _kind(self, element: Element, place: _Place) -> list[Layer]:
        if element.tag in _GROUPS:
            return self._children(element, place)
        if element.tag == "use":
            return self._copy(element, place)
        if element.tag == "svg":
            return self._inner(element, place, _view(element, place.view), _corner(element, place.view))
        if element.tag == "text":
            return self._text(element, place)
        if element.tag not in DATA:
            raise Unreadable(_UNCUT.get(element.tag, "unknown"))
        return self._shape(element, place) if place.style["visibility"] == "visible" else []

    def _shape(self, shape: Element, place: _Place) -> list[Layer]:
        style, layers = place.style, []
        self._note(paint_faults(style, shape.tag))
        fill = paint_of(style, "fill", self.by_id)
        stroke = paint_of(style, "stroke", self.by_id) if is_stroked(style) else None
        if fill and shape.tag != "line":
            even_odd = style["fill-rule"] == "evenodd"
            path = shape_path(shape, place.view, place.matrix, even_odd=even_odd)
            layers.append(Layer(fill, self._counted(path), place.element))
        if stroke:
            path = stroke_path(shape, place.view, place.matrix, style)
            layers.append(Layer(stroke, self._counted(path), place.element))
        return layers[::-1] if style["paint-order"].startswith("stroke") else layers

    def _text(self, element: Element, place: _Place) -> list[Layer]:
        reader = TextReader(self.by_id, self.sheets, place.view)
        layers = []
        for text, along in reader.texts(element, place.style, place.matrix):
            laid = text if along is None else self._laid_along(text, along, place)
            layers.append(Layer("", pathops.Path(), place.element, text=laid))
        return layers

    def _laid_along(self, text: LiveText, along: Element, place: _Place) -> LiveText:
        """The text with the line that a textPath element names."""
        line = self._referred(along.get("href", ""), "text path")
        if line.tag not in DATA:
            raise Unreadable("text path")
        path = shape_path(line, place.view, matrix_of(line.get("transform", "")), even_odd=False)
        left, top, right, bottom = path.controlPointBounds
        if (left, top) == (right, bottom):  # nothing, or a point
            raise Unreadable("text path")
        return replace(text, along=path, offset=length(along.get("startOffset"), line_length(path)))

    def _counted(self, path: pathops.Path) -> pathops.Path:
        """The path welded, unless that would take too long."""
        self.contours += len(path)
        self.points += len(path.verbs)
        if self.contours > MOST_CONTOURS or self.points > MOST_POINTS:
            raise Unreadable("too detailed")
        self.effort.spend(path)
        return tidy(closed(path))

    def _copy(self, use: Element, place: _Place) -> list[Layer]:
        original = self._referred(use.get("href", ""), "use")
        if original in place.within or len(place.within) > _DEEPEST:
            raise Unreadable("use")
        moved = product((1.0, 0.0, 0.0, 1.0, *_corner(use, place.view)), place.matrix)
        place = replace(place, matrix=moved, within=(*place.within, original))
        if original.tag not in ("symbol", "svg"):
            return self._element(original, place)
        style = style_of(original, place.style, self.sheets)
        sides = (
            use.get(side) or (original.get(side) if original.tag == "svg" else None) for side in ("width", "height")
        )
        width, height = (length(side, whole, whole) for side, whole in zip(sides, _sides(place.view), strict=True))
        return self._inner(original, replace(place, style=style), View(width, height), (0.0, 0.0))

    def _inner(self, element: Element, place: _Place, view: View, corner: tuple[float, float]) -> list[Layer]:
        """A drawing within the drawing, cut off at its edge unless it says otherwise."""
        if view.width <= 0 or view.height <= 0:
            return []
        matrix, box = product((1.0, 0.0, 0.0, 1.0, *corner), place.matrix), numbers(element.get("viewBox", ""))
        edge = _rectangle(view, matrix)
        if len(box) == 4 and box[2] > 0 and box[3] > 0:
            matrix = product(fitted(view, box, element.get("preserveAspectRatio", "")), matrix)
            view = View(box[2], box[3])
        layers = self._children(element, replace(place, matrix=matrix, view=view))
        return layers if place.style["overflow"] in ("visible", "auto") else _within(layers, edge)

    def _referred(self, reference: str, fault: str) -> Element:
        match = re.fullmatch(r"(?:url\()?\s*+['\"]?([^'\")]*+)['\"]?\s*+\)?", reference.strip())
        name = match[1].strip() if match else ""
        if name and not name.startswith("#"):
            raise Unreadable("external")
        element = self.by_id.get(name[1:])
        if element is None:
            raise Unreadable(fault)
        return element

    def _clipped(self, layers: list[Layer], element: Element, place: _Place) -> list[Layer]:
        if place.style["clip-path"] == "none" or not layers:
            return layers
        return _within(layers, self._clip(place.style["clip-path"], element, place))

    def _clip(self, reference: str, element: Element, place: _Place) -> pathops.Path:
        """What a clip path lets be seen of an element: the union of the clip's shapes."""
        if not reference.startswith("url(") or len(place.within) > _DEEPEST:
            raise Unreadable("clip")
        clip = self._referred(reference, "clip")
        if clip.tag != "clipPath" or clip in place.within:
            raise Unreadable("clip")
        style = style_of(clip, INITIAL, self.sheets)
        matrix = product(matrix_of(clip.get("transform", "")), place.matrix)
        inside = replace(place, style=style, matrix=matrix, within=(*place.within, clip))
        if clip.get("clipPathUnits") == "objectBoundingBox":
            inside = replace(inside, matrix=product(_own_box(element, place.view), matrix))
        window = pathops.Path()
        for child in clip:
            window.addPath(self._clip_shape(child, inside))
        window = tidy(window)
        if style["clip-path"] == "none":
            return window
        return common(window, self._clip(style["clip-path"], element, replace(place, within=inside.within)))

    def _clip_shape(self, element: Element, place: _Place) -> pathops.Path:
        style = style_of(element, place.style, self.sheets)
        if style["display"] == "none" or element.tag in _UNSEEN:
            return pathops.Path()
        matrix = product(matrix_of(element.get("transform", "")), place.matrix)
        place = replace(place, style=style, matrix=matrix)
        if element.tag == "use":
            original = self._referred(element.get("href", ""), "use")
            moved = product((1.0, 0.0, 0.0, 1.0, *_corner(element, place.view)), matrix)
            path = self._clip_shape(original, replace(place, matrix=moved)) if original.tag in DATA else pathops.Path()
        elif element.tag in DATA:
            even_odd = style["clip-rule"] == "evenodd"
            path = self._counted(shape_path(element, place.view, matrix, even_odd=even_odd))
        else:
            raise Unreadable("text" if element.tag == "text" else "clip")
        if style["visibility"] != "visible":
            return pathops.Path()
        if style["clip-path"] == "none":
            return path
        return common(path, self._clip(style["clip-path"], element, place))


def _applies(element: Element) -> bool:
    """Whether a choice of a switch is taken: nothing asked of the program, and if a language, English.
    Raises Unreadable where what is drawn depends on which program draws it."""
    if element.get("requiredFeatures"):
        raise Unreadable("unknown")
    language = element.get("systemLanguage")
    spoken = language is None or any(spoken_in.strip().startswith("en") for spoken_in in language.split(","))
    return spoken and not element.get("requiredExtensions")


def _sides(view: View) -> tuple[float, float]:
    return view.width, view.height


def _view(element: Element, view: View) -> View:
    width, height = view.width, view.height
    return View(length(element.get("width"), width, width), length(element.get("height"), height, height))


def _corner(element: Element, view: View) -> tuple[float, float]:
    return length(element.get("x"), view.width), length(element.get("y"), view.height)


def _own_box(shape: Element, view: View) -> Matrix:
    """What takes the unit square to the box around a shape, in the shape's own units. Raises Unreadable."""
    path = shape_path(shape, view, IDENTITY, even_odd=False) if shape.tag in DATA else None
    if not path:
        raise Unreadable("clip")
    left, top, right, bottom = path.bounds
    return right - left, 0.0, 0.0, bottom - top, left, top


def _rectangle(view: View, matrix: Matrix) -> pathops.Path:
    path = pathops.Path()
    pen = path.getPen()
    pen.moveTo((0.0, 0.0))
    for corner in ((view.width, 0.0), (view.width, view.height), (0.0, view.height)):
        pen.lineTo(corner)
    pen.closePath()
    return path.transform(*matrix)


def _within(layers: Sequence[Layer], window: pathops.Path) -> list[Layer]:
    """The part of each layer inside the window."""
    return [_inside(layer, window) for layer in layers if len(window) and (layer.text or len(layer.path))]


def _inside(layer: Layer, window: pathops.Path) -> Layer:
    if layer.text is None:
        return layer._replace(path=common(layer.path, window))
    clip = window if layer.text.clip is None else common(layer.text.clip, window)
    return layer._replace(text=replace(layer.text, clip=clip))
