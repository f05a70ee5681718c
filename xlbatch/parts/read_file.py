"""A drawing's file → its layers, by the kind of file."""

from pathlib import Path

from xlbatch.svg.artwork import read_layers
from xlbatch.svg.faults import Fault
from xlbatch.svg.layer import Layers

KINDS = (".svg",)  # the endings of drawings that are read


def read_file(path: Path) -> Layers | tuple[Fault, ...]:
    """The layers of a drawing, or all that keeps it from being cut."""
    return read_layers(path)
