"""The order of lines that read both ways. Unicode's own test lines are the reference (Debian unicode-data)."""

import unicodedata
from pathlib import Path

import pytest

from xlbatch.lettering.bidi import base_level, levels, visual_runs
from xlbatch.lettering.fonts import find_font
from xlbatch.lettering.typeface import set_line

CASES = Path("/usr/share/unicode/BidiCharacterTest.txt")
INVISIBLE = {"LRE", "RLE", "LRO", "RLO", "PDF", "LRI", "RLI", "FSI", "PDI"}
SOME = 13  # one line in so many: all 91,605 agree, and take 8 s


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("Ana", "Ana"),  # L2: nothing to reverse
        ("דנה", "הנד"),  # P2, P3, L2: the first letter reads from the right, so does the line
        ("דנה 12", "12 הנד"),  # I2: digits keep their own order
        ("דנה 1,000", "1,000 הנד"),  # W4: a comma between digits is one of them
        ("1,000 דנה", "הנד 1,000"),  # from the start of the line on
        ("דנה 5%", "5% הנד"),  # W5: a sign beside a number goes with it, after it
        ("דנה $5", "$5 הנד"),  # and before it
        ("דנה % 5", "5 % הנד"),  # W6: one by itself does not
        ("محمد 3", "3 دمحم"),  # W2: digits after an Arabic letter
        ("Ana דנה 7", "Ana 7 הנד"),  # N1: digits after a Hebrew word count as of its direction
        ("Ana 7 דנה", "Ana 7 הנד"),  # W7: after a Latin word they do not
        ("Ana-דנה", "Ana-הנד"),  # N2: between two directions a sign takes the line's
        ("דנה־לוי", "יול־הנד"),  # N1: between two Hebrew words it takes theirs
        ("דנה (Ana)", "(Ana) הנד"),  # N0: brackets stay a pair
        ("12 דנה", "הנד 12"),  # P2: digits are no letters, the line reads from the right
        ("Ana (דנה)", "Ana (הנד)"),  # N0
    ],
)
def test_the_order_in_which_a_line_stands(text: str, shown: str) -> None:
    """Each by the rule of Unicode's UAX #9 beside it."""
    parts = (text[run.start : run.end][:: -1 if run.right else 1] for run in visual_runs(text))
    mirrored = str.maketrans("()", ")(") if base_level(text) else {}
    assert "".join(parts).translate(mirrored).strip() == shown.strip()


@pytest.mark.skipif(not CASES.exists(), reason="Unicode's BidiCharacterTest.txt is not on this computer")
def test_levels_agree_with_the_unicode_test_lines() -> None:
    """UAX #9 conformance data, Unicode 15.0; lines with invisible direction codes left out."""
    lines = [line for line in CASES.read_text("utf-8").splitlines() if line and not line.startswith("#")]
    checked = 0
    for line in lines[::SOME]:
        points, direction, base, wanted, _ = line.split(";")
        text = "".join(chr(int(point, 16)) for point in points.split())
        if INVISIBLE & {unicodedata.bidirectional(letter) for letter in text}:
            continue
        found = levels(text, {"0": 0, "1": 1, "2": None}[direction])
        assert all(each in ("x", str(level)) for each, level in zip(wanted.split(), found, strict=True)), line
        assert direction != "2" or base_level(text) == int(base)
        checked += 1
    assert checked > 7000


def test_digits_after_a_hebrew_name_stand_to_its_left() -> None:
    face = find_font("Arimo Bold", Path())
    assert face
    alone, both = set_line(face, "דנה").box, set_line(face, "דנה 7")
    assert alone
    seven = set_line(face, "7").pieces[0]
    assert min(both.pieces, key=lambda piece: piece.x).ink.box == seven.ink.box


def test_arabic_letters_join_and_stand_with_latin_ones() -> None:
    face = find_font("Noto Sans Arabic", Path())
    assert face
    assert len(set_line(face, "محمد").pieces) < 4
    line = set_line(face, "Ana محمد")
    assert not line.lacks
    assert line.pieces[0].ink.box == set_line(face, "A").pieces[0].ink.box
