"""Headings as lists have them, and the column each is read as. Common practice, no source."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from xlbatch.tables.headings import ALIKE, Match, plain, split_unit, understand
from xlbatch.tables.input_table import ROLES
from xlbatch.tables.roster_columns import decide
from xlbatch.trade.columns import columns

ROSTER = {
    "Who": ["Who", "WHO", " name ", "Full Name", "Person", "Participant", "Child's name", "Child’s Name", "Student",
            "Player", "Your name", "player-name", "Full  name:", "FULLNAME", "Name (as printed)", "Particpant"],
    "First name": ["First name", "First", "Given name", "firstname", "First Name*", "Fisrt name"],
    "Last name": ["Last name", "Surname", "Family name", "LAST", "Surnmae"],
    "Group": ["Group", "Household", "Team", "team name", "Class", "Houshold"],
    "Garment": ["Garment", "Shirt", "Style", "garment type", "Garmnet"],
    "Size": ["Size", "Shirt size", "T-Shirt Size", "Tshirt size", "TEE SIZE", "Size?", "Size (adult or youth)",
             "Shirt Szie", "What size shirt do you wear?", "Preferred size"],
    "Color": ["Color", "Colour", "Shirt color", "Shirt Colour", "Colur"],
    "Design": ["Design", "which design?", "Desing"],
    "Print name": ["Print name", "Name on shirt", "Name to print", "Nickname", "Name on back"],
    "Number": ["Number", "No.", "#", "Jersey number", "Shirt no.", "Player Number"],
    "How many": ["How many", "Qty", "QTY.", "Quantity", "How many?", "Quantitiy"],
    "Note": ["Note", "Notes", "Comments", "Remark"],
    "Paid": ["Paid", "Paid?", "Payment"],
    "Status": ["Status", "STATUS", "Satus"],
    "Garment no.": ["Garment no.", "garment number", "Garment No"],
}  # fmt: skip
NOT_UNDERSTOOD = ["E-mail", "Phone", "Timestamp", "Address", "State", "Age", "Parent name", "Game", "Nmae", "Allergies",
                  "Amount", "Date", "", "Emergency contact",
                  "会社名"]  # fmt: skip  # a company's name: 名, alone a first name, says nothing within others


@pytest.mark.parametrize(("heading", "meaning"), [(text, name) for name, them in ROSTER.items() for text in them])
def test_roster_heading(heading: str, meaning: str) -> None:
    assert decide({1: heading}, ()).matches[1].meaning == meaning


def test_there_are_enough_headings() -> None:
    assert sum(map(len, ROSTER.values())) >= 60


@pytest.mark.parametrize("heading", NOT_UNDERSTOOD)
def test_heading_not_understood(heading: str) -> None:
    assert all(match.meaning in ROLES for match in decide({1: heading}, ()).matches.values())


@pytest.mark.parametrize(
    ("sheet", "heading", "match"),
    [
        ("Garments", "Chest width (in)", Match("Chest width", "in")),
        ("Garments", "Chest width [cm]", Match("Chest width", "cm")),
        ("Garments", "chest width, mm", Match("Chest width", "mm")),
        ("Garments", "Chest width (inches)", Match("Chest width", "inches")),
        ("Garments", 'Chest width (")', Match("Chest width", '"')),
        ("Garments", "Heat limit (°F)", Match("Heat limit", "°F")),
        ("Film", "Press temperature (°C)", Match("Press temperature", "°C")),
        ("Film", "Press temperature (C)", Match("Press temperature", "°C")),
        ("Film", "Warm-up (s)", Match("Warm-up")),
        ("Film", "Rolls sold (yd)", Match("Rolls sold", "yd")),
        ("Film", "Warm up", Match("Warm-up")),
        ("Film", "Colour", Match("Color")),
        ("Garments", "Colors (all)", Match("Colors")),
        ("Press", "Plate width (cm)", Match("Plate width", "cm")),
        ("Designs", "Artwork colour", Match("Artwork color")),
        ("Press log", "Piece", Match("Piece")),
    ],
)
def test_heading_with_unit(sheet: str, heading: str, match: Match) -> None:
    assert understand({1: heading}, sheet)[1] == match


def test_a_column_of_its_own_name_wins_over_another_word() -> None:
    found = decide({1: "Player", 2: "Who"}, ()).matches
    assert found == {1: Match("Who", twice=True), 2: Match("Who")}


def test_a_slip_never_takes_a_column_that_is_there() -> None:
    assert decide({1: "Garmnet", 2: "Garment"}, ()).meaning == {2: "Garment"}


def test_a_question_is_read_only_where_it_is_the_only_one() -> None:
    assert decide({1: "What size shirt?", 2: "What size shorts?"}, ()).meaning == {1: "Size", 2: "Aside"}
    assert decide({1: "What size shorts?", 2: "Size"}, ()).meaning[2] == "Size"


def test_one_slip_in_six_letters_is_the_threshold() -> None:
    assert 4 / 5 < ALIKE < 5 / 6


@pytest.mark.parametrize(
    "sheet", ["Roster", "Job", "Designs", "Garments", "Film", "Press", "Positions", "Work times", "Press log"]
)
def test_every_word_for_a_column_means_that_column_alone(sheet: str) -> None:
    words = [plain(word) for each in columns(sheet) for word in (each.heading, *each.other_headings)]
    assert len(words) == len(set(words))


def test_split_unit() -> None:
    assert split_unit("Width (in)") == ("Width", "in")
    assert split_unit("Width") == ("Width", "")


@settings(max_examples=200)
@given(st.lists(st.text(max_size=40), max_size=8))
def test_any_headings(headings: list[str]) -> None:
    found = decide(dict(enumerate(headings, 1)), ()).meaning
    once = [meaning for meaning in found.values() if meaning not in ROLES]
    assert len(once) == len(set(once))
