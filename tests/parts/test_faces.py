"""The font that words in a drawing are set in, and what is told where it is another than the one named."""

from dataclasses import replace
from pathlib import Path

import pytest

from xlbatch.parts.edit import Rules
from xlbatch.parts.faces import Faces, spelled
from xlbatch.parts.set_live import text_box
from xlbatch.svg.layer import Letters, LiveText, Spot, TextSpan

RULES = Rules(gap=20.0, least=20.0, narrowest=0.8, widest=1.4, font="Anton", folder=Path())
LOOK = Letters(("Lobster",), False, False, 20.0, 0.0, 0.0, "start", 0.0, (("#000000", 0.0),))


def test_letters_are_told_with_their_numbers() -> None:
    assert spelled(("é", "Ж")) == "é (U+00E9), Ж (U+0416)"


@pytest.mark.parametrize(
    ("name", "text", "used", "notes"),
    [
        ("Lobster", "NIM", "Lobster", []),
        ("", "NIM", "Anton", []),  # the usual one
        ("No such font", "NIM", "Arimo Bold", [{"font": "No such font", "used": "Arimo Bold"}]),
        ("Alfa Slab One", "ЖАР", None, [{"font": "Alfa Slab One", "letters": spelled(("Ж", "А", "Р"))}]),
    ],
)
def test_the_font_for_words_on_a_line(name: str, text: str, used: str | None, notes: list[dict[str, str]]) -> None:
    faces = Faces(RULES)
    for _again in range(2):
        face = faces.named("3", name, text)
        assert face
        assert (face.name == used) if used else (face.name != name)
    assert [note.part for note in faces.notes] == ["3"] * len(notes)  # told once
    for note, facts in zip(faces.notes, notes, strict=True):
        assert note.facts.items() >= facts.items()


def test_each_look_of_a_text_has_its_font_for_its_own_letters() -> None:
    other = replace(LOOK, fonts=("Alfa Slab One",))
    text = LiveText((TextSpan("NIM", LOOK), TextSpan("ЖАР", other), TextSpan("TO", LOOK)), (1, 0, 0, 1, 0, 0))
    faces = Faces(RULES)
    found = faces.of_text("1", text, "")
    assert found
    assert found[LOOK].name == "Lobster"
    assert found[other].name != "Alfa Slab One"
    assert [note.code for note in faces.notes] == ["font-other"]
    named = Faces(RULES).of_text("1", replace(text, spans=text.spans[:1]), "Anton")
    assert named
    assert {face.name for face in named.values()} == {"Anton"}
    assert Faces(RULES).usual(LOOK).name == "Lobster"


def test_the_box_of_a_text_and_the_place_of_one_without_ink() -> None:
    spans = (TextSpan(" ", LOOK, (Spot(30.0, 40.0),)),)
    matrix = (2.0, 0.5, 0.25, -3.0, 7.0, 200.0)
    assert text_box(LiveText(spans, matrix), Path()) == (77.0, 95.0, 77.0, 95.0)
    assert text_box(LiveText((TextSpan(" ", LOOK),), matrix), Path()) == (7.0, 200.0, 7.0, 200.0)
    left, bottom, right, top = text_box(LiveText((replace(spans[0], text="NIM"),), (2, 0, 0, -2, 0, 200)), Path())
    assert left == pytest.approx(60, abs=4)
    assert bottom == pytest.approx(120, abs=2)
    assert 20 < top - bottom < 40 < right - left < 120
