"""What can keep a picture from becoming outlines: the reason, and what to do or to ask the drawing's maker for."""

from collections.abc import Mapping

from xlbatch.svg.faults import Fault

_ASK = "Ask whoever made the drawing for it as an SVG or a PDF, or as a PNG with flat colors and hard edges."


class Unfit(Exception):
    """Ends the reading of a picture; never leaves trace.py. `args` is one key of PICTURE_FAULTS."""


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
