"""What headings say, and how surely. Invented; common practice, no source."""

import pytest

from xlbatch.tables.heading_words import heading_scores, last_name_first, names_columns

# headings and all they may mean, the likeliest first; = as likely as the one before
SAID = {
    "Size": "Size",
    "T-shirt size": "Size",
    "Size / Taille": "Size",
    "Taille / Foo": "Size",
    "Shirt szie": "Size",
    "foo size bar": "Size",
    "size size": "Size",
    "size color": "Size = Color",
    "Shoe size": "Aside > Size",
    "Coach's remark": "Note",
    "Coming to the dinner?": "Aside",
    "Parent's name": "Someone else > Who = Name wanted",
    "Ordered by": "Orderer > Wanted",
    "State": "Aside",
    "Satus": "Status",
    "Nmae": "",
    "Foo": "",
    "Foo (bar)": "",
    "#": "Number = Counter",
    "Name": "Who = Name wanted",
    "Print name": "Print name = Name wanted > Who",
    "Role (goes on the shirt)": "Print name",
    "Size (goes on the shirt)": "Size > Print name",
    "name back": "Print name > Who = Name wanted",
    "Name to print here": "Name wanted > Who = Print name",
    "背番号": "Number > Counter",
    "表示名前": "Who",
    "": "",
}  # fmt: skip
SURER = ("Size", "Shirt size", "Shirt szie", "foo size bar")  # its own heading, a known one, one slip away, one word


@pytest.mark.parametrize(("heading", "meanings"), SAID.items())
def test_what_a_heading_may_mean(heading: str, meanings: str) -> None:
    scores = heading_scores(heading)
    found = [{each for each in scores if scores[each] == worth} for worth in sorted({*scores.values()}, reverse=True)]
    assert found == [set(alike.split(" = ")) for alike in meanings.split(" > ") if alike]


def test_how_sure_a_heading_is() -> None:
    worths = [heading_scores(heading)["Size"] for heading in SURER]
    assert worths == sorted(set(worths), reverse=True)
    assert heading_scores("name back")["Print name"] == 2 * heading_scores("back number foo")["Print name"]
    assert heading_scores("背番号")["Counter"] < heading_scores("表示名前")["Who"]
    assert heading_scores("dinner")["Aside"] == heading_scores("foo size bar")["Size"] + 2


@pytest.mark.parametrize(
    ("titles", "sure"),
    [
        ("Name", False),
        ("Name|Size", True),
        ("Name|Foo", False),
        ("Name|Shirt szie", False),
        ("Name|Size|Foo|Bar", True),
        ("Name|Size|Foo|Bar|Zed", False),
        ("Foo|Bar|Zed|Name|Size|Color", True),
        ("Foo|Bar|Zed|Yak|Name|Size|Color", False),
    ],
)
def test_half_of_a_row_are_headings_at_least_two(titles: str, sure: bool) -> None:
    assert names_columns(dict(enumerate(titles.split("|"), 1))) is sure


@pytest.mark.parametrize(
    ("heading", "first"),
    [
        ("Cognome e nome", True),
        ("Name, Vorname", True),
        ("Last, First", True),
        ("Name (last, first)", True),
        ("Nome e cognome", False),
        ("Vorname Name", False),
        ("First, Last", False),
        ("Name", False),
        ("First name", False),
    ],
)
def test_whether_the_last_name_stands_first(heading: str, first: bool) -> None:
    assert last_name_first(heading) is first
