"""A drawing's file → its layers, by the kind of file."""

from pathlib import Path

from xlbatch.problems.unreadable_drawings import Fault
from xlbatch.svg.artwork import read_layers
from xlbatch.svg.layer import Layers

KINDS = (".svg", ".png", ".jpg", ".jpeg", ".webp", ".pdf")  # the endings of drawings that are read


def read_file(path: Path) -> Layers | tuple[Fault, ...]:
    """The layers of a drawing, or all that keeps it from being cut."""
    if path.suffix.lower() not in KINDS[1:]:
        return read_layers(path)
    from xlbatch.tracing.trace import trace  # most jobs have no picture

    return trace(path)
