"""Rows for several garments or people are told by their headings. Invented headings; common practice, no source."""

import pytest

from xlbatch.files.raw import Raw
from xlbatch.tables.numbered_columns import over_sizes, parts_of_a_row

PARTS = {  # the columns of each person or garment, with the headings they are read by
    # by a number
    "Name|Size|Size 2": "1 Name 2 Size / 1 Name 3 Size",
    "Name|Size|Size 2|Size 3": "1 Name 2 Size / 1 Name 3 Size / 1 Name 4 Size",
    "Name|Size|Extra shirt size": "1 Name 2 shirt size / 1 Name 3 shirt size",
    "Name|Shirt size|Additional shirt size": "1 Name 2 shirt size / 1 Name 3 shirt size",
    "Name|Shirt size|Another shirt size": "1 Name 2 shirt size / 1 Name 3 shirt size",
    "Name|First size|Second size|Third size": "1 Name 2 size / 1 Name 3 size / 1 Name 4 size",
    "Name|First size|Second size|Third size|4th size": "1 Name 2 size / 1 Name 3 size / 1 Name 4 size / 1 Name 5 size",
    "Name|Size|2nd choice size": "",
    "Name|1st choice size|2nd choice size": "",
    "Name|Size|2nd partner size": "",
    "Name|Size|2nd tee size": "1 Name 2 tee size / 1 Name 3 tee size",
    "First name|Second name|Size": "",
    "Name 1|Size 1|Name 2|Size 2": "1 Name 2 Size / 3 Name 4 Size",
    "Name|Size|Name 2|Size 2|Team": "1 Name 2 Size 5 Team / 3 Name 4 Size 5 Team",
    "Name|Size|Color|Name 2|Size 2": "1 Name 2 Size 3 Color / 3 Color 4 Name 5 Size",
    "Name 1|Size 1|Name 2|Size 2|Color 2": "1 Name 2 Size / 3 Name 4 Size 5 Color",
    "Name 1|Size 1|Size 2": "",
    "Size 1|Color 1|Color 2|Size 2": "",
    "Name 1 (if any)|Size 1|Name 2|Size 2": "1 Name (if any) 2 Size / 3 Name 4 Size",
    "Name|1st shirt|2nd shirt": "",
    "Name|Size 1 of 2": "",
    # by garments
    "Name|Tee size|Hoodie size": "1 Name 2 Tee size Crew-neck tee / 1 Name 3 Hoodie size Hooded sweatshirt",
    "Name|Tee size|T-shirt size": "",
    "Name|Tee size|Hoodie size|Size": "",
    "Name|Tee size|Hoodie size|Shoe size":
        "1 Name 2 Tee size 4 Shoe size Crew-neck tee / 1 Name 3 Hoodie size 4 Shoe size Hooded sweatshirt",
    # by pairs
    "Husband|Size|Wife|Size|Phone": "1 Husband name 2 Size 5 Phone / 3 Wife name 4 Size 5 Phone",
    "Mom|Mom's size|Baby|Onesie size": "1 Who 2 Size / 3 Baby 4 Onesie size Infant bodysuit",
    "Mom|Size|Mom|Size": "1 Mom 2 Size / 3 Mom 4 Size",
    "Size|Mom|Size|Dad": "",
    "Mom|Size|Dad": "",
    "Name|Size|Shoe|Shoe size": "",
    "Name|Size|Plus one|Plus one size": "1 Name 2 Size / 3 Plus one name 4 Plus one size",
    # by headings that repeat
    "Name|Size|Color|Size|Color": "1 Name 2 Size 3 Color / 1 Name 4 Size 5 Color",
    "Name|Color|Size|Color|Size": "1 Name 2 Color 3 Size / 1 Name 4 Color 5 Size",
    "Name|Size|Color|Size": "1 Name 2 Size 3 Color / 1 Name 4 Size",
    "Name|Size|Color|Size|Color|Size|Color": "1 Name 2 Size 3 Color / 1 Name 4 Size 5 Color / 1 Name 6 Size 7 Color",
    "Name|Size|Size": "",
    "Name|Size|Size|Email": "",
    "Name|Size|Color|Size|Number": "",
    "Team|Name|Size|Name|Size": "",
    "Name|Color|Number|Color|Number": "",
    # by persons
    "Name|Size|Partner|Partner's size": "1 Name 2 Size / 3 Partner name 4 Partner's size",
    "Employee|Size|Spouse|Spouse size|Email": "1 Employee 2 Size 5 Email / 3 Spouse name 4 Spouse size 5 Email",
    "Name|T-shirt size|Email|Guest name|Guest size":
        "1 Name 2 T-shirt size 3 Email / 3 Email 4 Guest name 5 Guest size",
    "Name|Size|Guest|Spouse|Guest size|Spouse size":
        "1 Name 2 Size / 3 Guest 5 Guest size / 4 Spouse name 6 Spouse size",
    "Name|Size|Partner name (if any)|Phone|Partner size":
        "1 Name 2 Size 4 Phone / 3 Partner name 4 Phone 5 Partner size",
    "Name|Size|Guest size": "",
    "Name|Size|Hoodie|Hoodie size": "",  # whether one is wanted, no one's name
    "Name|Size|Phone|Name of guest|Guest size|Guest's size": "",
    "Parent|Child name|Child size": "",
}  # fmt: skip


@pytest.mark.parametrize(("titles", "parts"), PARTS.items())
def test_the_parts_of_a_row(titles: str, parts: str) -> None:
    found = parts_of_a_row(dict(enumerate(titles.split("|"), 1)))
    words = [" ".join(f"{column} {text}" for column, text in sorted(part.titles.items())) for part in found]
    assert " / ".join(f"{own} {part.garment}".strip() for own, part in zip(words, found, strict=True)) == parts


@pytest.mark.parametrize(
    ("cells", "sized"),
    [
        ("M L / S", {2, 3}),
        ("M L / S XL / M S / L L / red S", {2, 3}),  # four of five
        ("M L / S XL / M S / red L", set()),  # three of four
        ("M L / none - / T-shirt Hoodie / - none / S none", {2, 3}),  # what says none, and the headings again
        ("M - / S -", set()),  # one garment alone
        ("1 2", set()),  # counts
    ],
)
def test_garments_over_sizes(cells: str, sized: set[int]) -> None:
    rows = [{1: Raw("Ada Bo")} | dict(enumerate(map(Raw, row.split()), 2)) for row in cells.split(" / ")]
    assert over_sizes({1: "Name", 2: "T-shirt", 3: "Hoodie"}, rows) == sized
    assert not over_sizes({1: "Name", 2: "T-shirt", 3: "Remark"}, rows)


def test_columns_over_sizes_are_a_garment_or_a_person_each() -> None:
    parts = parts_of_a_row({1: "Name", 2: "T-shirt", 3: "Hoodie"}, frozenset((2, 3)))
    assert [part.garment for part in parts] == ["Crew-neck tee", "Hooded sweatshirt"]
    shirts = parts_of_a_row({1: "Name", 2: "1st shirt", 3: "2nd shirt"}, frozenset((2, 3)))
    assert [part.titles for part in shirts] == [{1: "Name", 2: "shirt size"}, {1: "Name", 3: "shirt size"}]
