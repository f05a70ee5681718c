"""What is sent to each group: a message, a picture to look at, and a reminder where one is due."""

from collections.abc import Callable, Mapping
from dataclasses import replace
from io import BytesIO

import pytest
from PIL import Image, ImageColor

from xlbatch.messages.group_messages import group_files
from xlbatch.messages.group_picture import LARGEST, MOST, WIDE, GarmentShown, group_picture
from xlbatch.plan import Plan

ROWS = [
    ["Who", "Group", "Size", "Print name", "Color", "Paid", "Confirmed"],
    ["Ana Novak", "Owls", "M", "Ana", "white", "15", "yes"],
    ["Paweł Sowa", "Owls", "Youth L", "Paweł", "navy", None, None],
    ["Bo Lind", "Fox/Hare", "S", "Bo", "white", "yes", "x"],
    ["Ida Berg", "fox:hare", "Ladies S", "Ida", "white", "20", "3 Oct"],
    ["Tom Rao", "", "12M", "", "white", None, "no"],
]
JOB = [
    ["Setting", "Value"], ["Job name", "Autumn walk"], ["Needed by", "May 30"], ["Margin or fixed price", "15.00"],
]  # fmt: skip


def texts(files: Mapping[str, str | bytes]) -> dict[str, str]:
    return {name: content for name, content in files.items() if isinstance(content, str)}


@pytest.fixture
def files(plan_of: Callable[..., Plan]) -> Mapping[str, str | bytes]:
    return group_files(plan_of(ROWS, Job=JOB))


def test_each_group_gets_a_message_and_a_picture_of_the_same_name(files: Mapping[str, str | bytes]) -> None:
    assert list(files) == [
        "message - Owls.txt", "message - Owls.png", "reminder - Owls.txt",
        "message - Fox-Hare.txt", "message - Fox-Hare.png",
        "message - fox-hare 2.txt", "message - fox-hare 2.png",
        "message - without a group.txt", "message - without a group.png", "reminder - without a group.txt",
    ]  # fmt: skip


def test_a_message_says_who_what_size_and_what_is_to_pay(files: Mapping[str, str | bytes]) -> None:
    owls = texts(files)["message - Owls.txt"]
    assert owls.startswith("Autumn walk: Owls\n")
    assert "answer by Wednesday 20 May 2026." in owls
    assert "1. Ana Novak\n   Crew-neck tee, adult M, white\n   reads: Ana\n   [ ] right" in owls
    assert "2. Paweł Sowa\n   Crew-neck tee, youth L, navy\n   reads: Paweł\n   [ ] right" in owls
    assert "2 garments. To pay: $15.00 of $30.00.\n" in owls
    assert "Crew-neck tee, ladies S, white" in texts(files)["message - fox-hare 2.txt"]
    assert "$5.00 too much was paid: it is yours to have back." in texts(files)["message - fox-hare 2.txt"]
    assert "All is paid, thank you." in texts(files)["message - Fox-Hare.txt"]
    assert "infant 12M (12 months), white" in texts(files)["message - without a group.txt"]


def test_a_reminder_goes_to_who_has_not_confirmed_or_not_paid(files: Mapping[str, str | bytes]) -> None:
    owls = texts(files)["reminder - Owls.txt"]
    assert "no answer yet to this garment; please answer by Wednesday 20 May 2026:\n   2. Paweł Sowa: " in owls
    assert "Ana" not in owls
    assert "To pay: $15.00 of $30.00.\n   2. Paweł Sowa: $15.00\n" in owls


def test_no_code_points_and_nothing_is_escaped(plan_of: Callable[..., Plan]) -> None:
    files = texts(group_files(plan_of([["Who", "Size"], ["Tom & <Jerry> Żak", "M"]])))
    assert "reads: Tom & <Jerry> Żak" in files["message - without a group.txt"]
    for text in files.values():
        assert "U+" not in text
        assert "answer by" not in text
        assert "To pay" not in text


def test_a_drawing_is_named(plan_of: Callable[..., Plan]) -> None:
    plan = plan_of([["Who", "Size"], ["Ana", "M"]])
    decals = [replace(each, text="", spec=replace(each.spec, artwork="owl badge.svg")) for each in plan.decals]
    files = texts(group_files(replace(plan, decals=tuple(decals))))
    assert "white\n   drawing: owl badge\n   [ ] right" in files["message - without a group.txt"]


def test_confirmed_comes_back(plan_of: Callable[..., Plan]) -> None:
    assert [row.confirmed for row in plan_of(ROWS, Job=JOB).job.roster] == [True, False, True, True, False]


@pytest.mark.parametrize("garments", [1, 7, 40])
def test_a_picture_is_as_wide_as_a_phone_shows_and_small(garments: int, plan_of: Callable[..., Plan]) -> None:
    roster = [["Who", "Size", "Color"], *([f"Guest {at}", "Youth M", "navy"] for at in range(garments))]
    plan = plan_of(roster)
    png = group_picture([GarmentShown([place], f"{place.garment.no}. Guest", "tee") for place in plan.places], {})
    with Image.open(BytesIO(png)) as image:
        assert image.width == WIDE == 1080
        assert image.format == "PNG"
    assert len(png) < LARGEST == 400_000


def test_a_picture_shows_the_garments_and_films_colors(plan_of: Callable[..., Plan]) -> None:
    plan = plan_of([["Who", "Size", "Color"], ["Ana", "M", "red"]])
    png = group_picture([GarmentShown(plan.places, "1. Ana", "adult M")], {"black smooth": "gold"})
    with Image.open(BytesIO(png)) as image:
        pixels = image.convert("RGB")
        shades = [color for _, color in pixels.getcolors(1 << 24) or ()]
    for wanted in ("#c3202f", "#f0b429"):  # red and gold of trade/colors.csv
        rgb = ImageColor.getrgb(wanted)
        near = [sum(map(abs, map(int.__sub__, shade, rgb))) for shade in shades if isinstance(shade, tuple)]
        assert min(near) < 30


def test_people_without_a_size_are_asked_for_it(plan_of: Callable[..., Plan]) -> None:
    unsaid: list[list[str | None]] = [["Ned Ode", "Owls", *[None] * 5], ["Kit Rao", "Wrens", *[None] * 5]]
    files = texts(group_files(plan_of([ROWS[0], ROWS[1], *unsaid], Job=JOB)))
    assert "No size is known yet for Ned Ode. Please tell it." in files["message - Owls.txt"]
    assert "No size is known yet for Kit Rao; please tell it by" in files["reminder - Wrens.txt"]
    assert "message - Wrens.txt" not in files


def test_a_message_says_that_its_picture_shows_the_first_of_very_many(plan_of: Callable[..., Plan]) -> None:
    for garments in (MOST, MOST + 1):
        plan = plan_of([["Who", "Size"], *([f"Guest {at}", "M"] for at in range(garments))])
        told = texts(group_files(plan))["message - without a group.txt"]
        assert (f"The picture shows the first {MOST} garments." in told) == (garments > MOST)
