"""The words below a garment stand in its place of the picture, below its drawing and one below the other."""

import re
from collections.abc import Callable

import pytest

from xlbatch.messages.group_picture import GarmentShown, _height, _tile
from xlbatch.plan import Plan

TEXT = re.compile(r'<text x="([\d.]+)" y="([\d.]+)" font-size="([\d.]+)" font-weight="(\d+)"[^>]*>([^<]*)<')


@pytest.mark.parametrize("wide", [270.0, 540.0, 1080.0])
@pytest.mark.parametrize("garment", ["Crew-neck tee", "Hooded sweatshirt"])
def test_words_stand_in_the_place_of_their_garment(wide: float, garment: str, plan_of: Callable[..., Plan]) -> None:
    plan = plan_of([["Who", "Size", "Garment"], ["Ana", "M", garment]])
    shown = GarmentShown(plan.places, "1. Ana Quillfeather", "adult M, navy & white")
    texts = TEXT.findall(_tile(shown, wide, {}))
    assert " ".join(text for *_, weight, text in texts if weight == "700") == "1. Ana Quillfeather"
    assert " ".join(text for *_, weight, text in texts if weight == "400") == "adult M, navy &amp; white"
    assert {float(x) for x, *_ in texts} == {wide / 2}
    lines = [float(y) for _, y, *_ in texts]
    sizes = [float(size) for _, _, size, *_ in texts]
    high = _height(shown, wide)
    assert high - 60 < lines[-1] < high - 10  # all of the last line, and a little room below it
    for above, line, size in zip(lines, lines[1:], sizes[1:], strict=False):
        assert size < line - above < 1.5 * size  # neither over one another nor far apart
