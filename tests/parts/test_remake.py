"""Words replaced in drawings, checked from what is then to be cut: resvg paints it, and its pixels are measured."""

from pathlib import Path

import numpy as np
import pytest

from tests.parts.drawn_shapes import PAGE
from tests.parts.find_score import PIXELS, Ink, _painted, look
from tests.parts.word_drawings import Made, drawings
from xlbatch.geometry.path import bounds, path_data
from xlbatch.geometry.weld import segments_in
from xlbatch.parts.edit import Edit, Remade, Rules
from xlbatch.parts.part import OPEN, Part
from xlbatch.parts.remake import remade
from xlbatch.svg.artwork import Drawing, drawing_of
from xlbatch.svg.layer import Layers

FONT = "Anton"
NAMES = ("HIL", "TIMM", "NELL", "KIM", "HILLEMANTHEIMLINTELHEIM")  # the last three times as long as most samples
UNIT = 0.127  # mm: 2,000 units as 10 in
RULES = Rules(gap=25.0, least=1.0, narrowest=0.8, widest=1.4, font=FONT, folder=Path())


def edited(layers: Layers, parts: tuple[Part, ...], part: Part, **edit: object) -> Remade:
    return remade(layers, parts, (Edit(part.label, font=FONT, **edit),), RULES)  # type: ignore[arg-type]


def ink(made: Remade, color: str) -> Ink:
    unit = PAGE / 2000
    onto = (unit, 0.0, 0.0, -unit, 0.0, float(PAGE))
    return _painted([path_data(segments_in(layer.path), onto) for layer in made.layers.layers if layer.color == color])


@pytest.mark.parametrize("made", [made for made in drawings()[::5] if made.straight], ids=lambda made: made.name)
def test_names_stand_where_the_sample_stood(made: Made, tmp_path: Path) -> None:
    """Capitals as high as the sample's tallest letter within 2 %, feet within 0.3 mm, the middle within 0.5 mm; nothing
    of the sample is left."""
    found = look(made, tmp_path)
    part = found.part
    assert part
    assert part.row
    gone = edited(found.layers, found.parts, part, text="")
    color = found.layers.layers[0].color if part.color == OPEN else part.color
    empty = ink(gone, color)
    for name in NAMES:
        both = edited(found.layers, found.parts, part, text=name)
        if "part-same-film" in [note.code for note in both.notes]:
            assert part.color == "#1a1a1a"
            return
        stops = [note.code for note in both.notes if note.code == "part-too-long"]
        assert not stops
        new = empty ^ ink(both, color)
        rows, columns = np.flatnonzero(new.any(axis=1)), np.flatnonzero(new.any(axis=0))
        pixel = 2000 / PIXELS * UNIT  # mm
        foot, top = (PIXELS - 1 - rows[-1]) * pixel, (PIXELS - rows[0]) * pixel
        middle = (columns[0] + columns[-1] + 1) / 2 * pixel
        sample = bounds(tuple(s for mark in part.row.letters for s in mark.segments))
        assert sample
        line = part.row.frame.point(0.0, 0.0).imag * UNIT
        assert foot == pytest.approx(line, abs=0.3 + pixel)
        assert middle == pytest.approx((sample[0] + sample[2]) / 2 * UNIT, abs=0.5 + pixel)
        wide, smaller = (columns[-1] + 1 - columns[0]) * pixel, any(n.code == "part-made-smaller" for n in both.notes)
        if name != NAMES[-1] and not smaller and wide <= (sample[2] - sample[0]) * UNIT:
            assert top - foot == pytest.approx(part.row.cap * UNIT, rel=0.02, abs=2 * pixel)
        assert both.base == gone.base


def test_nothing_of_the_sample_is_left(tmp_path: Path) -> None:
    """Where the sample was and the new word is not, there is what there was under it: nothing, or its ground."""
    for made in drawings()[:8]:
        found = look(made, tmp_path)
        part = found.part
        assert part
        gone = edited(found.layers, found.parts, part, text="")
        for color in made.word:
            if color == OPEN:
                continue
            mine = ink(gone, color)
            shapes = [
                s for p in found.parts if p is not part for s in p.shapes if found.layers.layers[s.layer].color == color
            ]
            unit = PAGE / 2000
            onto = (unit, 0.0, 0.0, -unit, 0.0, float(PAGE))
            others = _painted(
                " ".join(path_data(contour.segments, onto) for contour in (shape, *shape.holes)) for shape in shapes
            )
            assert np.count_nonzero(mine & ~others) < 30, made.name


def test_open_letters_are_closed_and_cut_anew(tmp_path: Path) -> None:
    found = look(next(made for made in drawings() if made.kind == "open"), tmp_path)
    part = found.part
    assert part
    assert part.color == OPEN
    color = found.layers.layers[0].color
    gone, new = (ink(edited(found.layers, found.parts, part, text=text), color) for text in ("", "HIL"))
    assert np.count_nonzero(new & ~gone) == 0  # letters only take away
    drawing = drawing_of(edited(found.layers, found.parts, part, text="BOB").layers, apart=False)
    assert isinstance(drawing, Drawing)


def test_a_box_is_filled_with_letters_widened_as_far_as_allowed(tmp_path: Path) -> None:
    found = look(next(made for made in drawings() if made.kind == "ring"), tmp_path)
    part = found.part
    assert part
    assert part.row
    gone, new = (
        ink(edited(found.layers, found.parts, part, text=text, fit="box"), part.color) for text in ("", "HILME")
    )
    columns = np.flatnonzero((gone ^ new).any(axis=0))
    wide = (columns[-1] + 1 - columns[0]) * 2000 / PIXELS
    assert wide <= (part.row.span[1] - part.row.span[0]) * 1.01


def test_a_part_left_out_is_gone_and_one_with_its_own_film_stands_apart(tmp_path: Path) -> None:
    found = look(drawings()[0], tmp_path)
    part = found.part
    assert part
    left_out = edited(found.layers, found.parts, part, use=False)
    assert np.count_nonzero(ink(left_out, part.color)) < np.count_nonzero(
        ink(edited(found.layers, found.parts, part), part.color)
    )
    own = edited(found.layers, found.parts, part, apart=True)
    assert f"part {part.label}" in {layer.color for layer in own.layers.layers}
