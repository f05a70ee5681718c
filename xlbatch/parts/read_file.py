"""A drawing's file → its layers, by the kind of file."""

from pathlib import Path

from xlbatch.problems.unreadable_drawings import Fault
from xlbatch.svg.artwork import read_layers
from xlbatch.svg.layer import Layers

PICTURES = (".png", ".jpg", ".jpeg", ".webp", ".pdf")  # the endings of those that are traced
KINDS = (".svg", *PICTURES)  # and of all drawings that are read


def read_file(path: Path) -> Layers | tuple[Fault, ...]:
    """The layers of a drawing, or all that keeps it from being cut."""
    if path.suffix.lower() not in PICTURES:
        return read_layers(path)
    from xlbatch.tracing.trace import trace  # most jobs have no picture

    return trace(path)
