"""The trade tables: every number has a source, and published values stand as published."""

import csv
from pathlib import Path

import pytest
from confusable_homoglyphs.confusables import is_confusable

from xlbatch.resources import trade_file
from xlbatch.roster.read import blank_job
from xlbatch.trade.fibers import fibers_in
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
    ("dots", "fibers"),
    [(1, "acrylic polyamide nylon acetate"), (2, "wool silk polyester viscose rayon"), (3, "cotton linen")],
)
def test_the_dots_that_fibers_usually_have(dots: int, fibers: str) -> None:
    """Source: ISO 3758:2012, the fibers its ironing symbols are explained by; nylon is a polyamide, rayon viscose."""
    assert {fiber.name for fiber in fibers_in(fibers)} == set(fibers.split())
    assert all(fiber.usual_limit == dot_limit(dots) for fiber in fibers_in(fibers))
    every = " ".join(line["Fiber"] for line in table("fibers"))
    assert {fiber.name for fiber in fibers_in(every) if fiber.usual_limit == dot_limit(dots)} == set(fibers.split())


def test_which_fibers_are_synthetic() -> None:
    """Source: ISO 2076, man-made fibers: synthetic are those of synthetic polymers; acetate and viscose are made of
    cellulose. The classes are quoted from memory."""
    every = fibers_in(" ".join(line["Fiber"] for line in table("fibers")))
    synthetic = {fiber.name for fiber in every if fiber.synthetic}
    assert synthetic >= {"acrylic", "polyamide", "nylon", "polyester"}
    assert not synthetic & {"acetate", "wool", "silk", "viscose", "rayon", "cotton", "linen"}


MEN = {"2XS": (70, 78), "XS": (78, 86), "S": (86, 94), "M": (94, 102), "L": (102, 110), "XL": (110, 118),
       "2XL": (118, 129), "3XL": (129, 141)}  # fmt: skip
WOMEN = {"2XS": (66, 74), "XS": (74, 82), "S": (82, 90), "M": (90, 98), "L": (98, 107), "XL": (107, 119),
         "2XL": (119, 131), "3XL": (131, 143)}  # fmt: skip


@pytest.mark.parametrize(("for_", "ranges"), [("adult", MEN), ("ladies", WOMEN)])
def test_body_sizes(for_: str, ranges: dict[str, tuple[int, int]]) -> None:
    """Source: EN 13402-3, chest and bust girth (cm) by letter code."""
    ours = {
        line["Size"].removeprefix("Ladies "): (float(line["Chest from (cm)"]), float(line["Chest to (cm)"]))
        for line in table("body_sizes")
        if line["For"] == for_
    }
    assert {size: ours[size] for size in ranges if size in ours} == {s: ranges[s] for s in ranges if s in ours}
    assert len(set(ours) & set(ranges)) >= 6


HEIGHTS = {"2T": 92, "3T": 98, "4": 104, "5": 110, "6": 116, "7": 122, "8": 128, "10": 140, "12": 152, "14": 164,
           "16": 176}  # fmt: skip


def test_heights_of_children() -> None:
    """Source: EN 13402-3, heights (cm) as sold beside US children's sizes."""
    ours = {line["US size"]: float(line["Height (cm)"]) for line in table("child_sizes")}
    assert {size: ours[size] for size in HEIGHTS} == HEIGHTS


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


def test_the_smaller_the_wearer_the_nearer_the_seam() -> None:
    """Common practice, no source: a measure that suits an adult would slip down on a child."""
    classes = ("adult", "youth", "toddler", "infant")
    distances: dict[tuple[str, str], dict[str, float]] = {}
    for line in table("placements"):
        if line["For"] in classes and line["Distance (in)"]:
            distances.setdefault((line["Position"], line["Neckline"]), {})[line["For"]] = float(line["Distance (in)"])
    assert len(distances) >= 10
    for position, of_class in distances.items():
        in_order = [of_class[name] for name in classes if name in of_class]
        assert in_order == sorted(in_order, reverse=True), position


def test_below_the_point_of_a_v_is_less_far_than_below_a_crew_collar() -> None:
    """Common practice, no source: the point lies lower already."""
    job = blank_job(Path("job"))
    for for_ in ("adult", "ladies", "youth", "toddler"):
        crew, v = (job.position("full front", for_, neckline) for neckline in ("crew", "V"))
        assert crew is not None
        assert v is not None
        assert 0 < v.distance < crew.distance


def test_an_infant_has_no_left_chest() -> None:
    """Common practice, no source."""
    assert blank_job(Path("job")).position("left chest", "infant", "crew") is None
    assert "left chest" in blank_job(Path("job")).position_names
