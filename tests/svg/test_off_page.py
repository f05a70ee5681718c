"""What lies beyond a drawing's page is cut whole, and named."""

from pathlib import Path

import pytest

from xlbatch.svg.artwork import drawing_of, read_layers
from xlbatch.svg.layer import Layers

SVG = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 100">{}</svg>'


def layers(folder: Path, shapes: str) -> Layers:
    file = folder / "logo.svg"
    file.write_text(SVG.format(shapes), encoding="utf-8")
    found = read_layers(file)
    assert isinstance(found, Layers)
    return found


def test_what_lies_off_the_page_is_cut_whole_and_named(tmp_path: Path) -> None:
    shapes = '<rect x="50" width="100" height="10"/><rect x="300" y="90" width="9" height="20" fill="red"/>'
    found = layers(tmp_path, shapes)
    (note,) = found.notes
    assert note == ("artwork-off-page", {"what": "2 shapes (#000000, #ff0000) at the bottom and right"})
    drawing = drawing_of(found, apart=False)
    assert not isinstance(drawing, tuple)
    assert list(drawing.fills) == ["#000000", "#ff0000"]
    assert drawing.width / drawing.height == pytest.approx(259 / 110)


def test_what_ends_at_the_page_s_edge_is_not_named(tmp_path: Path) -> None:
    assert layers(tmp_path, '<rect width="100" height="100"/>').notes == ()
