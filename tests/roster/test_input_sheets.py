"""Garments, Film, Press and Designs: blanks filled in, and what is wrong at its cell."""

from decimal import Decimal

from tests.roster.test_read import LIST, Read, found
from xlbatch.job.job import Blank, Film, FilmPiece, PriceBreak, Roll
from xlbatch.roster.read import Reading


def blank(reading: Reading, garment: str, size: str) -> Blank:
    return next(each for each in reading.job.blanks if (each.garment, each.size) == (garment, size))


def test_a_garments_row_lies_over_the_built_in_one(reading_of: Read) -> None:
    reading = reading_of(
        LIST,
        Garments=[["Garment", "Size", "Chest width (cm)", "Iron dots", "Price", "On hand"],
                  ["crew-neck tee", "m", 51, 2, "1 = 4.20; 12 = 3.60", "white = 3; navy = 1"]],
    )  # fmt: skip
    first = reading.job.blanks[0]
    assert (first.garment, first.size, first.for_, first.neckline) == ("crew-neck tee", "M", "adult", "crew")
    assert (first.chest, first.length, first.dots) == (510, 736.6, 2)
    assert first.prices == (PriceBreak(1, Decimal("4.20")), PriceBreak(12, Decimal("3.60")))
    assert first.on_hand == {"white": 3, "navy": 1}
    assert first.fabric == "cotton"
    assert "navy" in first.colors
    assert [b.size for b in reading.job.blanks if b.garment.casefold() == "crew-neck tee"].count("M") == 1
    assert reading.problems == ()


def test_a_new_garment_takes_its_measures_from_the_nearest(reading_of: Read) -> None:
    reading = reading_of(
        LIST,
        Garments=[["Garment", "For", "Neckline", "Size", "Colors"], ["Club polo", "kids", "Polo", "M", "red, white"],
                  ["Club polo", "youth", "polo", "L", None]],
    )  # fmt: skip
    assert found(reading) == [("assumed", "Garments", "A2")]
    assert "those of the Polo in the same size" in reading.problems[0].sentence
    medium, large = reading.job.blanks[:2]
    assert (medium.size, medium.for_, medium.colors, medium.fabric) == ("Youth M", "youth", ("red", "white"), "")
    assert medium.chest == blank(reading, "Polo", "Youth M").chest
    assert large.chest == blank(reading, "Polo", "Youth L").chest


def test_a_garment_in_a_size_no_built_in_has_needs_its_measures(reading_of: Read) -> None:
    reading = reading_of(LIST, Garments=[["Garment", "Size", "Chest width"], ["Long tee", "Ladies 3XL", None]])
    assert ("value-needed", "Garments", "C2") in found(reading)
    assert all(each.garment != "Long tee" for each in reading.job.blanks)


def test_a_bad_row_does_not_bring_the_built_in_one_back(reading_of: Read) -> None:
    reading = reading_of(
        LIST,
        Garments=[["Garment", "Size", "Chest width"], ["Crew-neck tee", "M", "wide"]],
        Film=[["Film", "Press time"], ["Black smooth", "long"]],
    )
    assert found(reading) == [("value-unclear", "Garments", "C2"), ("value-unclear", "Film", "B2")]
    assert ("Crew-neck tee", "M") not in {(each.garment, each.size) for each in reading.job.blanks}
    assert "Black smooth" not in {each.name for each in reading.job.films}


def film(reading: Reading, name: str) -> Film:
    return next(each for each in reading.job.films if each.name == name)


def test_film_blanks_are_filled_from_the_name_and_the_kind(reading_of: Read) -> None:
    reading = reading_of(
        LIST,
        Film=[
            ["Film", "Kind", "Roll width", "Usable width", "Rolls sold", "On hand", "Press temperature (°C)"],
            ["Forest green glitter", None, None, None, None, None, None],
            ["black smooth", None, 15, None, "5 yd = 21.00; 25 yd", "12 in x 40 in", 160],
            ["Sparkle", "metallic", None, "28 cm", None, None, None],
        ],
    )
    green, black, sparkle = reading.job.films[:3]
    assert reading.problems == ()
    assert (green.kind, green.color, green.roll_width, green.usable_width) == ("glitter", "forest", 304.8, 292.1)
    assert (green.temperature, green.press, green.back, green.peel) == (160, 20, 0, "warm")
    assert (black.color, black.roll_width, black.usable_width, black.temperature) == ("black", 381, 368.3, 160)
    assert black.rolls == (Roll(4572, Decimal(21)), Roll(22860, None))
    assert black.on_hand == (FilmPiece(304.8, 1016),)
    assert (sparkle.color, sparkle.one_direction, sparkle.roll_width) == ("", True, 292.7)
    assert [each.name.casefold() for each in reading.job.films].count("black smooth") == 1
    assert film(reading, "White smooth").source.row == 0


def test_press_rows(reading_of: Read) -> None:
    reading = reading_of(
        LIST, Press=[["Press", "Kind", "Plate width", "Hottest"], ["Old iron", "Iron", None, "200 °C"]]
    )
    (press,) = reading.job.presses
    assert (press.name, press.kind, press.width, press.hottest, press.cover) == (
        "Old iron", "iron", 203.2, 200, "cover sheet always",
    )  # fmt: skip


DESIGNS = ["Design", "Decal", "What", "Artwork", "Film", "Layer", "Position", "Width", "Scale with size"]


def test_designs_and_the_usual_one(reading_of: Read) -> None:
    reading = reading_of(
        LIST,
        Designs=[DESIGNS, ["Lantern", "Light", "artwork", "lantern.svg", "Gold smooth", 2, "Full front", "10 in", "no"],
                 ["Lantern", "Line", None, "lantern.svg", "Black smooth", None, None, None, None]],
    )  # fmt: skip
    light, line, *built_in = reading.job.designs
    assert (light.layer, light.width, light.scale, light.position) == (2, 254, False, "Full front")
    assert (line.what, line.layer, line.position, line.sized_for, line.scale, line.arch) == (
        "artwork", 1, "full front", "M", True, 0,
    )  # fmt: skip
    assert built_in == []
    assert found(reading) == [("design-only", "Designs", "A2")]
    assert reading.job.settings.usual_design == "Lantern"


def test_a_usual_design_of_ones_own_needs_no_built_in_one(reading_of: Read) -> None:
    reading = reading_of(
        LIST,
        Designs=[DESIGNS, ["Lantern", "Light", "artwork", "lantern.svg", "Gold smooth", 1, None, None, None]],
        Job=[["Setting", "Value"], ["Usual design", "lantern"]],
    )
    assert [spec.design for spec in reading.job.designs] == ["Lantern"]


def test_a_usual_design_somebody_chose_is_kept_though_only_another_is_there(reading_of: Read) -> None:
    """Its name may be misspelled, or its rows forgotten: that is said, and nobody gets the other for it."""
    reading = reading_of(
        LIST,
        Designs=[DESIGNS, ["Lantern", "Light", "artwork", "lantern.svg", "Gold smooth", 1, None, None, None]],
        Job=[["Setting", "Value"], ["Usual design", "Moon"]],
    )
    assert reading.job.settings.usual_design == "Moon"
    assert "design-only" not in [problem.code for problem in reading.problems]


def test_the_only_design_is_meant_though_a_blank_workbook_names_its_own(reading_of: Read) -> None:
    """Somebody wrote a drawing of their own over the rows of a blank workbook, whose Job names the built-in design."""
    reading = reading_of(
        LIST,
        Designs=[DESIGNS, ["Lantern", "Light", "artwork", "lantern.svg", "Gold smooth", 1, None, None, None]],
        Job=[["Setting", "Value"], ["Usual design", "Name"]],
    )
    assert reading.job.settings.usual_design == "Lantern"
    assert found(reading) == [("design-only", "Designs", "A2")]


def test_a_bad_row_of_a_design_holds_back_whoever_wears_it(reading_of: Read) -> None:
    reading = reading_of(
        [["Who", "Size", "Design"], ["Ana", "M", "lantern"], ["Ben", "L", None]],
        Designs=[DESIGNS, ["Lantern", "Light", "drawing", "lantern.svg", "Gold smooth", 1, None, None, None],
                 ["Lantern", "Line", "artwork", "lantern.svg", None, 1, None, None, None]],
    )  # fmt: skip
    assert found(reading) == [
        ("value-unclear", "Designs", "C2")
    ]  # a blank Film is no fault: it is the only or nearest one
    assert [each.rows for each in reading.problems if each.level == "stop"] == [(2,)]


# anything
