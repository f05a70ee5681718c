"""The trade tables: every number has a source, and published values stand as published."""

import csv
from pathlib import Path

import pytest
from confusable_homoglyphs.confusables import is_confusable

from xlbatch.resources import trade_file
from xlbatch.roster.read import blank_job
from xlbatch.trade.tables import color_hex, dot_limit, table, words

TABLES = sorted(trade_file("").glob("*.csv"))


@pytest.mark.parametrize(
    "name", [path.stem for path in TABLES if path.stem != "columns"]
)  # those are the sheets' own headings
def test_every_line_names_its_source(name: str) -> None:
    assert all(line["source"] for line in table(name))


@pytest.mark.parametrize("path", TABLES, ids=lambda path: path.stem)
def test_every_line_has_every_cell(path) -> None:  # type: ignore[no-untyped-def]
    with path.open(encoding="utf-8", newline="") as file:
        heading, *lines = csv.reader(file)
    assert all(len(line) == len(heading) for line in lines)


@pytest.mark.parametrize(("dots", "celsius"), [(1, 110), (2, 150), (3, 200)])
def test_care_label_dots(dots: int, celsius: float) -> None:
    """Source: ISO 3758:2012, ironing symbols."""
    assert dot_limit(dots) == celsius


@pytest.mark.parametrize(
    ("size", "chest"),
    [
        ("XS", (78, 86)),
        ("S", (86, 94)),
        ("M", (94, 102)),
        ("L", (102, 110)),
        ("XL", (110, 118)),
        ("2XL", (118, 129)),
        ("3XL", (129, 141)),
    ],
)
def test_a_unisex_tee_goes_round_the_chest_it_is_for(size: str, chest: tuple[int, int]) -> None:
    """Source: EN 13402-3, men's chest girth by letter code, in cm. A tee is at least the middle of its range."""
    for line in table("garments"):
        if (line["Garment"], line["For"], line["Size"]) == ("Crew-neck tee", "adult", size):
            assert 2 * float(line["Chest width (in)"]) * 2.54 >= sum(chest) / 2
            return
    pytest.fail(f"no unisex tee in {size}")


def test_look_alike_letters_are_confusable() -> None:
    """Source: Unicode UTS 39 confusables, as PyPI confusable-homoglyphs has them: both are like the same letters."""
    for line in table("lookalikes"):
        letter, latin = line["Letter"], line["Looks like"]
        assert latin in alike(letter) or alike(latin) & alike(letter), line


def alike(letter: str) -> set[str]:
    (found,) = is_confusable(letter, greedy=True, preferred_aliases=[]) or ({"homoglyphs": []},)
    return {each["c"] for each in found["homoglyphs"]}


def test_every_number_rule_is_offered_in_its_setting() -> None:
    (setting,) = (line for line in table("job") if line["Setting"] == "Number rule")
    assert words(setting["Choices"]) == tuple(line["Rule"] for line in table("number_rules"))


def test_every_garment_color_has_a_swatch() -> None:
    colors = {color.strip() for line in table("garments") for color in line["Colors"].split(";")}
    colors |= {line["Color"] for line in table("films")}
    assert [color for color in sorted(colors) if color_hex(color) is None] == []


@pytest.mark.parametrize(
    ("position", "for_", "neckline", "inches"),
    [
        ("full front", "adult", "crew", 3),
        ("full front", "youth", "crew", 2),
        ("full front", "toddler", "crew", 1.25),
        ("full front", "infant", "crew", 1),
        ("full front", "adult", "V", 1),
        ("full front", "youth", "V", 0.75),
        ("full front", "adult", "scoop", 2),
        ("back name", "adult", "crew", 4),
        ("back name", "youth", "crew", 2.5),
        ("back name", "toddler", "crew", 1.75),
        ("left sleeve", "adult", "crew", 1),
    ],
)
def test_where_decals_go(position: str, for_: str, neckline: str, inches: float) -> None:
    """Common practice, no source."""
    rule = blank_job(Path("job")).position(position, for_, neckline)
    assert rule is not None
    assert rule.distance == pytest.approx(inches * 25.4)


def test_an_infant_has_no_left_chest() -> None:
    """Common practice, no source."""
    assert blank_job(Path("job")).position("left chest", "infant", "crew") is None
    assert "left chest" in blank_job(Path("job")).position_names
