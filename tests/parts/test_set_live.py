"""Live texts set in other words: as high as the sample, on its line, in its room."""

from functools import partial
from pathlib import Path

import pytest

from xlbatch.geometry.ink import around
from xlbatch.geometry.path import Box
from xlbatch.parts.edit import Edit, Remade, Rules
from xlbatch.parts.find import parts_of
from xlbatch.parts.part import Part
from xlbatch.parts.remake import remade
from xlbatch.parts.set_live import text_box
from xlbatch.svg.artwork import read_layers
from xlbatch.svg.layer import Layers

FONT, SLIM = "Anton", "Saira Condensed"
SVG = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 400 400">{}</svg>'
UNIT = 2000 / 400
LONG = "HILLEMANTHEIMLINTELHEIMILLE"
BAR = '<rect x="20" y="300" width="360" height="20"/>'
WORD = f'<text x="120" y="280" font-size="60" font-family="{FONT}">TIMBEL</text>'
ARC = (
    '<path id="a" d="M60 200A140 140 0 0 1 340 200" fill="none"/><text font-size="40" text-anchor="middle" '
    f'font-family="{FONT}"><textPath href="#a" startOffset="50%">TIMBEL</textPath></text>'
)


def read(body: str, folder: Path) -> tuple[Layers, tuple[Part, ...]]:
    file = folder / "drawing.svg"
    file.write_text(SVG.format(body), encoding="utf-8")
    layers = read_layers(file)
    assert isinstance(layers, Layers)
    return layers, parts_of(layers, partial(text_box, folder=folder))


def set_(body: str, folder: Path, **edit: object) -> tuple[Box, Box, Remade]:
    """The sample's box and that of the words set instead of the first text, and all that was made."""
    layers, parts = read(body, folder)
    part = next(part for part in parts if part.text)
    rules = Rules(gap=20.0, least=40.0, narrowest=0.8, widest=1.4, font=FONT, folder=folder)
    made = remade(layers, parts, (Edit(part.label, **edit),), rules)  # type: ignore[arg-type]
    texts = [layer for layer in made.layers.layers if layer.element == layers.layers[part.layer].element]
    return part.box, around(layer.path.bounds for layer in texts) if texts else part.box, made


def test_a_name_stands_as_the_sample_stood(tmp_path: Path) -> None:
    sample, name, made = set_(WORD + BAR, tmp_path, text="NIMLI")
    assert name[1] == pytest.approx(sample[1], abs=1.5)  # foot; 0.3 mm are 2.4 units on a drawing 10 in wide
    assert name[3] == pytest.approx(sample[3], abs=1.5)
    assert name[0] + name[2] == pytest.approx(sample[0] + sample[2], abs=1.0)
    assert (made.texts, made.notes) == (("NIMLI",), ())


@pytest.mark.parametrize("body", [WORD + BAR, BAR + ARC])
def test_a_long_name_stays_in_the_room_of_the_sample(body: str, tmp_path: Path) -> None:
    """Between the drawing's edges, or the ends of the line it runs along; all of its letters are set."""
    sample, name, made = set_(body, tmp_path, text=LONG)
    assert 20 * UNIT <= name[0] < sample[0] < sample[2] < name[2] <= 380 * UNIT
    assert name[3] < sample[3] + 1
    assert made.base == around([(20 * UNIT, 80 * UNIT, 380 * UNIT, 100 * UNIT)])
    letters = sum(len(layer.path) for layer in made.layers.layers if layer.color == "#000000") - 1
    assert letters >= len(LONG)


def test_a_text_with_its_own_words_stays_as_it_is_and_is_no_text_of_the_garment(tmp_path: Path) -> None:
    sample, plain, made = set_(WORD + BAR, tmp_path)
    assert plain == pytest.approx(sample)
    assert (made.texts, made.rooms, made.notes) == ((), (), ())
    _, apart, made = set_(WORD + BAR, tmp_path, apart=True)
    assert apart == pytest.approx(sample)
    assert [layer.color for layer in made.layers.layers] == ["part 1", "#000000"]
    _, slim, made = set_(WORD + BAR, tmp_path, font=SLIM)
    assert slim[2] - slim[0] > sample[2] - sample[0]  # a wider font, as high
    assert made.texts == ()
    _, name, made = set_(WORD + BAR, tmp_path, text="NIM")
    assert made.rooms[0] == pytest.approx(name)


@pytest.mark.parametrize("edit", [{"text": ""}, {"use": False}, {"text": " "}])
def test_a_text_emptied_or_left_out_is_not_cut(edit: dict[str, object], tmp_path: Path) -> None:
    _, _, made = set_(WORD + BAR, tmp_path, **edit)
    assert (len(made.layers.layers), made.texts, made.rooms, made.notes) == (1, (), (), ())


def test_a_text_with_a_line_around_it_is_seen_on_its_own_color(tmp_path: Path) -> None:
    lined = WORD.replace("<text ", '<text stroke="#f0b429" stroke-width="4" ')
    _, _, made = set_('<rect x="50" y="200" width="300" height="120"/>' + lined, tmp_path, text="NIM")
    assert (made.texts, made.notes) == (("NIM",), ())


def test_what_does_not_fit_at_the_least_height_is_told(tmp_path: Path) -> None:
    _, _, made = set_(WORD + BAR, tmp_path, text=LONG * 8)
    assert [note.code for note in made.notes] == ["part-too-long"]


def test_another_live_text_is_a_neighbor(tmp_path: Path) -> None:
    other = f'<text x="290" y="280" font-size="60" font-family="{FONT}">31</text>'
    sample, name, _ = set_(WORD + other + BAR, tmp_path, text="HILLEMANT")
    free, wide, _ = set_(WORD + BAR, tmp_path, text="HILLEMANT")
    assert name[2] < 290 * UNIT < wide[2]
    assert sample == free


def test_braces_grow_from_their_anchor(tmp_path: Path) -> None:
    body = WORD.replace("TIMBEL", "{Group}") + BAR
    sample, name, made = set_(body, tmp_path, words=(("Group", "NIM"),))
    assert name[0] == pytest.approx(sample[0], abs=8)  # the brace and N have other bearings
    assert name[2] < sample[2]
    assert made.texts == ("NIM",)


def test_another_font_has_capitals_as_high(tmp_path: Path) -> None:
    _, name, _ = set_(WORD + BAR, tmp_path, text="NIMLI")
    _, slim, _ = set_(WORD + BAR, tmp_path, text="NIMLI", font=SLIM)
    assert slim[3] - slim[1] == pytest.approx(name[3] - name[1], rel=0.02)
    assert slim != name


def test_small_letters_where_the_sample_is_all_capitals_are_asked(tmp_path: Path) -> None:
    _, _, made = set_(WORD + BAR, tmp_path, text="Nimli")
    assert [note.code for note in made.notes] == ["part-capitals"]


def test_words_on_their_own_film_are_told(tmp_path: Path) -> None:
    _, _, made = set_('<rect x="50" y="200" width="300" height="120"/>' + WORD, tmp_path, text="NIM")
    assert [note.code for note in made.notes] == ["part-same-film"]


def test_a_line_filled_to_a_length_keeps_it_as_its_room(tmp_path: Path) -> None:
    body = WORD.replace("<text ", '<text textLength="150" ').replace("TIMBEL", "{Group}") + BAR
    _, name, _ = set_(body, tmp_path, words=(("Group", LONG),))
    assert name[2] - name[0] <= 150 * UNIT + 1


@pytest.mark.parametrize(("under", "size"), [(188, 100), (182, 96), (180, 92)])
def test_an_accent_that_would_touch_what_lies_above_makes_the_word_smaller(
    under: int, size: int, tmp_path: Path
) -> None:
    """As little as it takes, in steps, and told; the diaeresis reaches up to 183.2."""
    above = f'<rect x="20" y="{390 - under}" width="360" height="10"/>'
    sample, name, made = set_(WORD + above, tmp_path, text="TÏMBEL")
    assert name[3] <= under * UNIT
    assert name[2] - name[0] == pytest.approx((sample[2] - sample[0]) * size / 100, rel=0.01)
    assert [note.code for note in made.notes] == ["part-made-smaller"] * (size < 100)
    assert [note.facts["size"] for note in made.notes] == [size] * (size < 100)
