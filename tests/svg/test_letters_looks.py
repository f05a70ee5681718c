"""What a drawing says of the looks of its letters: weight, size, spacing, side, paints, and spaces (SVG 1.1, 10)."""

from pathlib import Path

import pytest

from tests.svg.test_small_rules import live_texts
from xlbatch.svg.layer import Letters, LiveText


def one_text(folder: Path, attributes: str, words: str = "ONE") -> LiveText:
    (text,) = live_texts(folder, f'<text x="10" y="50" {attributes}>{words}</text>')
    return text


def look(folder: Path, attributes: str) -> Letters:
    return one_text(folder, attributes).spans[0].look


@pytest.mark.parametrize(
    ("weight", "bold"),
    [("normal", False), ("400", False), ("500", False), ("600", True), ("bold", True), ("900", True)],
)
def test_weights_from_600_on_are_bold(weight: str, bold: bool, tmp_path: Path) -> None:
    assert look(tmp_path, f'font-weight="{weight}"').bold is bold


@pytest.mark.parametrize(("style", "italic"), [("normal", False), ("italic", True), ("oblique", True)])
def test_slanted_letters_are_italic(style: str, italic: bool, tmp_path: Path) -> None:
    assert look(tmp_path, f'font-style="{style}"').italic is italic


@pytest.mark.parametrize(
    ("size", "px"),
    [
        ("30", 30),
        ("1in", 96),
        ("12pt", 16),
        ("1.5em", 30),
        ("150%", 30),
        ("2ex", 20),
        ("medium", 16),
        ("larger", 24),
        ("0.5", 0.5),
    ],
)
def test_a_size_is_in_px_or_of_the_size_around_it(size: str, px: float, tmp_path: Path) -> None:
    """CSS 2.1, 15.7 and 4.3.2: around the letters the size is 20; an ex is taken as half an em."""
    assert look(tmp_path, f'font-size="{size}"').size == pytest.approx(px)


@pytest.mark.parametrize("outer", ["20", "20px", "15pt", "1.25em"])
@pytest.mark.parametrize(("inner", "px"), [("65%", 13), ("1.5em", 30), ("larger", 24), ("12", 12), ("9px", 9)])
def test_a_size_within_a_size_whatever_its_unit(outer: str, inner: str, px: float, tmp_path: Path) -> None:
    """The usual size is 16 px, 15 pt are 20 px."""
    span = f'<tspan style="font-size:{inner}">B</tspan>'
    body = f'<g style="font-size:16px"><text style="font-size:{outer}">A{span}</text></g>'
    (text,) = live_texts(tmp_path, body)
    assert [span.look.size for span in text.spans] == pytest.approx([20, px])


@pytest.mark.parametrize(
    ("attributes", "spacing", "word_spacing"),
    [
        ("", 0, 0),
        ('letter-spacing="normal" word-spacing="normal"', 0, 0),
        ('letter-spacing="3"', 3, 0),
        ('letter-spacing=".1em" word-spacing="-1ex"', 2, -10),
        ('word-spacing="1pc"', 0, 16),
    ],
)
def test_room_between_letters_and_words(attributes: str, spacing: float, word_spacing: float, tmp_path: Path) -> None:
    letters = look(tmp_path, attributes)
    assert (letters.spacing, letters.word_spacing) == pytest.approx((spacing, word_spacing))


@pytest.mark.parametrize(
    ("attributes", "anchor"),
    [
        ("", "start"),
        ('text-anchor="middle"', "middle"),
        ('text-anchor="end"', "end"),
        ('direction="rtl"', "end"),  # what starts at the right ends at the left
        ('direction="rtl" text-anchor="end"', "start"),
        ('direction="rtl" text-anchor="middle"', "middle"),
    ],
)
def test_the_side_that_letters_are_held_by(attributes: str, anchor: str, tmp_path: Path) -> None:
    assert look(tmp_path, attributes).anchor == anchor


@pytest.mark.parametrize(
    ("attributes", "paints"),
    [
        ("", [("#000000", 0)]),
        ('fill="red" stroke="blue" stroke-width="2"', [("#ff0000", 0), ("#0000ff", 2)]),
        ('fill="red" stroke="blue" stroke-width="2" paint-order="stroke"', [("#0000ff", 2), ("#ff0000", 0)]),
        ('fill="none" stroke="blue"', [("#0000ff", 1)]),
        ('fill="red" stroke="blue" stroke-width="0"', [("#ff0000", 0)]),
        ('fill="red" stroke="blue" stroke-opacity="0"', [("#ff0000", 0)]),
        ('fill="red" stroke="blue" stroke-opacity="100%" stroke-width=".1em"', [("#ff0000", 0), ("#0000ff", 2)]),
        ('fill="red" stroke="none" stroke-width="5"', [("#ff0000", 0)]),
    ],
)
def test_letters_are_painted_in_the_order_of_the_drawing(
    attributes: str, paints: list[tuple[str, float]], tmp_path: Path
) -> None:
    assert list(look(tmp_path, attributes).paints) == paints


@pytest.mark.parametrize(
    ("attributes", "long", "widened"),
    [
        ("", None, False),
        ('textLength="90"', 90, False),
        ('textLength="50%"', 100, False),  # of a page 200 wide
        ('textLength="2em"', 40, False),
        ('textLength="0"', None, False),
        ('textLength=".8"', 0.8, False),
        ('textLength="-5"', None, False),
        ('textLength="90" lengthAdjust="spacing"', 90, False),
        ('textLength="90" lengthAdjust="spacingAndGlyphs"', 90, True),
    ],
)
def test_how_long_a_text_is_said_to_be(attributes: str, long: float | None, widened: bool, tmp_path: Path) -> None:
    text = one_text(tmp_path, attributes)
    assert (text.long, text.widened) == (long, widened)


@pytest.mark.parametrize(
    ("attributes", "words", "read"),
    [
        ("", "  A  B  ", "A B"),
        ("", "A\n\tB", "A B"),
        ('xml:space="preserve"', " A  B ", " A  B "),
        ('text-transform="uppercase"', "Ana b", "ANA B"),
        ('text-transform="lowercase"', "Ana B", "ana b"),
        ('text-transform="capitalize"', "ana b", "Ana B"),
        ("", '<tspan display="none">A</tspan>B', "B"),
        ("", '<tspan visibility="hidden">A</tspan>B', "B"),
        ("", "A<desc>not shown</desc>B", "AB"),
        ("", '<a href="#b">A</a>B', "AB"),
    ],
)
def test_the_letters_of_a_text(attributes: str, words: str, read: str, tmp_path: Path) -> None:
    text = one_text(tmp_path, attributes, words)
    assert "".join(span.text for span in text.spans) == read


def test_places_are_those_of_the_innermost_and_the_last_turn_goes_on(tmp_path: Path) -> None:
    text = one_text(tmp_path, 'dx="1" rotate="5 10"', 'A<tspan dx="4">BC</tspan>D')
    spots = [spot for span in text.spans for spot in span.spots]
    assert [spot.turned for spot in spots] == [5, 10, 10, 10]
    assert [spot.dx for spot in spots] == [1, 4, 0, 0]
    assert [(spot.x, spot.y) for spot in spots] == [(10, 50), *[(None, None)] * 3]
