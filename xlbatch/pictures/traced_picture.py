"""What was made of a picture: its outlines as they are cut, over the picture itself, pale."""

from base64 import b64encode
from pathlib import Path

from xlbatch.geometry.path import path_data
from xlbatch.geometry.weld import segments_of
from xlbatch.paper.picture import Picture, drawn
from xlbatch.parts.read_file import PICTURES
from xlbatch.svg.layer import Layers

LINE, LEFT_OPEN = "#b0003a", "#1f5f8b"  # of what is cut, and of what is left open
POINTS = 0.9  # wide on paper
DOTS = 500  # of the pale picture


def is_picture(name: str) -> bool:
    """Whether a drawing of this name is a picture or a PDF."""
    return Path(name).suffix.lower() in PICTURES


def traced_picture(file: Path, width: float, height: float) -> Picture:
    """The outlines of a picture that was traced, over itself, pale, in `width` × `height` points."""
    from xlbatch.tracing.trace import pale_copy, trace  # most jobs have no picture

    layers = trace(file)
    assert isinstance(layers, Layers)
    assert layers.page
    _, _, across, up = layers.page
    scale = min(width / across, height / up)
    pale = b64encode(pale_copy(file, DOTS)).decode("ascii")
    outlines = "".join(
        f'<path d="{path_data(segments_of(layer.path), (1, 0, 0, -1, 0, up))}" fill="none" '
        f'stroke="{LINE if layer.use else LEFT_OPEN}" stroke-width="{POINTS / scale:.2f}"/>'
        for layer in sorted(layers.layers, key=lambda layer: not layer.use)
    )
    svg = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{across * scale:.2f}" height="{up * scale:.2f}" '
        f'viewBox="0 0 {across} {up}"><image href="data:image/png;base64,{pale}" width="{across}" height="{up}"/>'
        f"{outlines}</svg>"
    )
    return drawn(svg, f"The outlines of {file.name} as cut, over the picture")
