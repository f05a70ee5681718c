"""Rules of SVG that a slip would turn round: clips by use, pages without a size, lines and baselines of texts."""

from pathlib import Path

import pytest

from tests.svg.test_artwork import area, drawing, mm_box
from xlbatch.svg.artwork import read_layers
from xlbatch.svg.layer import Layers, LiveText
from xlbatch.svg.safe_xml import parse_svg
from xlbatch.svg.viewport import page_of

SHAPE = '<circle cx="50" cy="50" r="40" clip-path="url(#c)"/>'


def live_texts(folder: Path, body: str) -> tuple[LiveText, ...]:
    file = folder / "drawing.svg"
    head = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 200 100" font-family="Anton" font-size="20">'
    file.write_text(f"{head}{body}</svg>", encoding="utf-8")
    layers = read_layers(file)
    assert isinstance(layers, Layers)
    return tuple(layer.text for layer in layers.layers if layer.text)


def test_a_clip_may_use_a_shape_that_stands_elsewhere(tmp_path: Path) -> None:
    """SVG 1.1, 14.3.5: a clipPath's children are shapes, text, or use elements that refer to these directly."""
    own = drawing(tmp_path, f'<clipPath id="c"><rect x="20" y="30" width="30" height="20"/></clipPath>{SHAPE}')
    elsewhere = '<defs><rect id="r" x="10" y="30" width="30" height="20"/></defs>'
    other = drawing(tmp_path, f'{elsewhere}<clipPath id="c"><use href="#r" x="10"/></clipPath>{SHAPE}')
    assert mm_box(other, "#000000") == pytest.approx(mm_box(own, "#000000"))
    assert area(other, "#000000") == pytest.approx(area(own, "#000000"))


@pytest.mark.parametrize(
    ("size", "bounded"),
    [
        ('viewBox="0 0 100 50"', True),
        ('width="100" height="50"', True),
        ('width="100"', False),
        ('height="50"', False),
        ("", False),
    ],
)
def test_only_a_page_of_a_known_size_hides_what_lies_beyond(size: str, bounded: bool) -> None:
    page = page_of(parse_svg(f'<svg xmlns="http://www.w3.org/2000/svg" {size}/>'.encode()))
    assert (page.clip is not None) is bounded


@pytest.mark.parametrize(
    ("body", "lines"),
    [
        ('<text x="10" y="30"><tspan x="10" y="30">ONE</tspan><tspan x="10" y="60">TWO</tspan></text>', ["ONE", "TWO"]),
        ('<text x="10" y="30"><tspan>ONE</tspan><tspan dy="30">TWO</tspan></text>', ["ONETWO"]),  # goes on
        ('<text x="10 30 50" y="30 60 30">ONE</text>', ["ONE"]),  # letters up and down in one element
    ],
)
def test_an_element_with_a_place_and_a_height_of_its_own_begins_a_line(
    body: str, lines: list[str], tmp_path: Path
) -> None:
    texts = live_texts(tmp_path, body)
    assert ["".join(span.text for span in text.spans) for text in texts] == lines


@pytest.mark.parametrize(
    ("attributes", "like"),
    [
        ('dominant-baseline="hanging" alignment-baseline="middle"', 'dominant-baseline="hanging"'),
        ('alignment-baseline="middle"', 'dominant-baseline="middle"'),
        ('dominant-baseline="auto" alignment-baseline="middle"', 'dominant-baseline="middle"'),
    ],
)
def test_a_text_s_dominant_baseline_goes_before_its_alignment(attributes: str, like: str, tmp_path: Path) -> None:
    def raised(words: str) -> float:
        (text,) = live_texts(tmp_path, f'<text x="10" y="50" {words}>ONE</text>')
        return text.spans[0].look.raised

    assert raised(attributes) == raised(like) < raised("") == 0


@pytest.mark.parametrize("size", ["150%", "1.5em"])
def test_a_size_relative_to_one_that_says_nothing_is_of_the_usual_16(tmp_path: Path, size: str) -> None:
    """A declaration that can't be read is as if it were not there (CSS 2.1, 4.2)."""
    word = f'<text y="50" style="font-size:tallish"><tspan style="font-size:{size}">ANA</tspan></text>'
    (text,) = live_texts(tmp_path, f'<g font-size="16">{word}</g>')
    assert [span.look.size for span in text.spans] == [24.0]
