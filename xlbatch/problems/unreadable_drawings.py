"""What can keep a drawing from being cut: the reason, and what to do in a drawing program or to ask its maker for."""

from collections.abc import Mapping
from typing import NamedTuple


class Fault(NamedTuple):
    """Why a drawing cannot be cut, and what to do about it."""

    reason: str
    remedy: str


_SOLID = "Give each shape one solid color."
_EXPAND = "Turn it into plain filled shapes in your drawing program (expand or flatten it)."
_OUTLINED = "Turn the text into outlines in your drawing program."
_SAVE = "Open it in your drawing program and save it again as plain SVG."

FAULTS: Mapping[str, Fault] = {
    "too large": Fault("it is larger than 5 MB", "Simplify its curves, and leave out what is not to be cut."),
    "too detailed": Fault(
        "it is too detailed (more than 5,000 outlines or 50,000 points, or very many that cross)",
        "Simplify it in your drawing program.",
    ),
    "too deep": Fault("its groups, clips or styles lie too deep in one another", "Ungroup it in your drawing program."),
    "not a drawing": Fault("it is no SVG drawing", "Save the drawing as SVG in your drawing program."),
    "compressed": Fault("it is a compressed drawing", "Save it as plain, uncompressed SVG."),
    "broken": Fault("the file is damaged", _SAVE),
    "letters": Fault(
        "its text is stored in a way (encoding) that cannot be read", "Save it again as plain SVG, in UTF-8."
    ),
    "entities": Fault("it defines text to be put in elsewhere (entities), which is not safe to read", _SAVE),
    "no size": Fault("its page has no size", _SAVE),
    "no ink": Fault("nothing in it is filled", "Fill the shapes that are to be cut with a solid color."),
    "number": Fault("it has a measure that cannot be read", _SAVE),
    "path": Fault("it has a curve that cannot be read", _SAVE),
    "color": Fault("it has a color that cannot be read", _SOLID),
    "text": Fault("it uses live text as a window on something else", _OUTLINED),
    "text way": Fault("it holds live text that runs downward", _OUTLINED),
    "text decoration": Fault("it holds live text that is underlined, struck through or in small capitals", _OUTLINED),
    "text from elsewhere": Fault("it holds live text that is kept elsewhere in it", _OUTLINED),
    "text path": Fault("it holds live text along a line that is not in it or cannot be read", _OUTLINED),
    "text box": Fault("it holds text in a box of another kind (a web page's)", _OUTLINED),
    "text size": Fault("it holds live text of a size or spacing that cannot be read", _OUTLINED),
    "text length": Fault("it holds live text of which only some letters are made to fill a length", _OUTLINED),
    "text letters": Fault("it holds live text in letters of a drawn font of its own", _OUTLINED),
    "image": Fault("it holds a picture made of dots", "Trace the picture into filled shapes, or take it out."),
    "stroke": Fault("it holds a drawn line (stroke) that cannot be read", "Turn the strokes into outlines."),
    "marker": Fault("it holds lines with arrowheads or other marks", _EXPAND),
    "missing color": Fault("it uses a color that is nowhere in it", _SOLID),
    "external": Fault(
        "it refers to another file or address, and nothing is fetched",
        "Put what it refers to into the drawing itself, and turn it into plain filled shapes.",
    ),
    "gradient": Fault("it holds a color that fades (a gradient)", _SOLID),
    "pattern": Fault("it holds a shape filled with a pattern", _SOLID),
    "see-through": Fault("it holds a color one can see through", "Make every color fully solid."),
    "mask": Fault("it holds a mask", _EXPAND),
    "clip": Fault("it holds a clip that cannot be read", _EXPAND),
    "filter": Fault("it holds an effect such as a shadow or blur", "Take the effect out, or trace it."),
    "use": Fault("it holds a copy (a symbol or clone) whose original is not in it", _EXPAND),
    "style sheet": Fault(
        "it has a style sheet that cannot be read", "Save it so that every shape carries its own colors (inline style)."
    ),
    "placed by style": Fault(
        "it moves or shapes something by its style, or turns it about a point of its own (transform-origin)", _EXPAND
    ),
    "moving": Fault("it holds movement or a script", "Take it out and save the drawing again as plain SVG."),
    "unknown": Fault("it holds something other than plain shapes", _EXPAND),
}

_ASK = "Ask whoever made the drawing for it as an SVG or a PDF, or as a PNG with flat colors and hard edges."


PICTURE_FAULTS: Mapping[str, Fault] = {
    "photograph": Fault("it looks like a photograph: film is cut from flat colors only", _ASK),
    "fading": Fault("it has colors that fade into one another: film is cut from flat colors only", _ASK),
    "checkerboard": Fault(
        "behind the drawing a checkerboard is painted, which only means to look transparent",
        "Ask whoever made it for the file itself, not a copy of what the screen showed; a PNG with a transparent or a "
        "white background does.",
    ),
    "too few dots": Fault(
        "it is only {0} by {1} dots, too few to cut from",
        "Ask for it at least 600 dots wide, or as an SVG or a PDF.",
    ),
    "too many dots": Fault(
        "it is {0} by {1} dots, more than can be worked with", "Save it at most 5,000 by 5,000 dots."
    ),
    "far too many": Fault(
        "it is larger than any drawing needs to be", "Save it at most 5,000 by 5,000 dots, as a PNG."
    ),
    "blurred": Fault("it is too blurred to cut from: no edge in it is hard", _ASK),
    "moving": Fault("it is a moving picture", "Save the one picture that is meant as a PNG."),
    "gif": Fault("it is a GIF, whose edges are too rough to cut from", _ASK),
    "heic": Fault("it is a HEIC picture, as telephones take photographs", _ASK),
    "other": Fault(
        "it is no picture of a kind that can be read", "Save it as a PNG or, better, get the drawing as SVG or PDF."
    ),
    "broken": Fault("the file is damaged or was cut off", "Get it anew from where it came."),
    "no colors": Fault("nothing in it has a flat color", _ASK),
    "nothing": Fault("it shows nothing but its background", "Look whether it is the right file."),
    "too detailed": Fault(
        "it has more than 5,000 outlines or 50,000 curves, more than anyone could weed",
        "Look whether it is a drawing with flat colors; ask whoever made it for a simpler one.",
    ),
    "locked": Fault("it is a PDF with a password", "Save it without the password, or get it as an SVG or PNG."),
    "empty page": Fault("the first page of the PDF is empty or cannot be shown", "Save that page as an SVG or PNG."),
    "too much": Fault("the PDF holds far more than a drawing", "Save the drawing alone as a PDF, an SVG or a PNG."),
}
