"""What a row says in its own words, under the Roster's headings, and what of it is asked about. Invented; common
practice, no source."""

from collections.abc import Callable, Mapping, Sequence
from decimal import Decimal
from typing import Any

import pytest

from xlbatch.job.job import RosterRow
from xlbatch.roster.people import MOST_ALIKE
from xlbatch.roster.read import Reading

Read = Callable[..., Reading]
IVO = {"Who": "Ivo Rusk", "Size": "L"}
FIELDS = (
    "size",
    "garment",
    "color",
    "print_name",
    "number",
    "note",
    "status",
    "paid",
    "first_name",
    "last_name",
    "group",
)


def of(reading_of: Read, cells: Mapping[str, object], other: Mapping[str, object]) -> tuple[list[RosterRow], list[str]]:
    """The garments of a row, before one of Ivo's, and the codes of what is asked about it."""
    cells = {"Who": "Ana Novak", "Size": "M"} | dict(cells)
    reading = reading_of([list(cells), list(cells.values()), [{**IVO, **other}.get(name) for name in cells]])
    codes = [each.code for each in reading.problems if 2 in each.rows or each.where.cell.endswith("2")]
    return [row for row in reading.job.roster if row.source.row == 2], codes


def said(rows: Sequence[RosterRow], who: str = "Ana Novak") -> dict[str, Any]:
    """What differs from Ana Novak, M; `many` where there are several."""
    row = rows[0]
    usual = {"size": "M"}
    told: dict[str, Any] = {
        name: getattr(row, name) for name in FIELDS if getattr(row, name) not in (None, "", usual.get(name))
    }
    return told | ({"who": row.who} if row.who != who else {}) | ({"many": len(rows)} if len(rows) > 1 else {})


NONE = {"status": "cancelled"}


@pytest.mark.parametrize(
    ("size", "told", "codes"),
    [
        ("no shirt", NONE, ["not-made"]), ("none", NONE, ["not-made"]),
        ("2 x L", {"size": "L", "many": 2}, ["size-doubtful"]), ("2XL x 2", {"size": "2XL", "many": 2}, []),
        ("I usually take a medium", {"note": "I usually take a medium"}, ["size-doubtful"]),
        ("L (maybe XL)", {"size": "L", "note": "XL"}, ["size-doubtful"]), ("L?", {"size": "L"}, ["size-doubtful"]),
        ("L, slim", {"size": "L", "note": "slim"}, []), ("XL navy", {"size": "XL", "color": "navy"}, []),
        ("M hoodie", {"garment": "Hooded sweatshirt"}, ["garment-read-as"]), ("youth m", {"size": "Youth M"}, []),
        ("adult small", {"size": "S"}, []), ("M/L", {"size": "M/L"}, ["size-unknown"]),
    ],
)  # fmt: skip
def test_a_size_with_more_beside_it(size: str, told: dict[str, Any], codes: list[str], reading_of: Read) -> None:
    rows, asked = of(reading_of, {"Size": size}, {})
    assert (said(rows), asked) == (told, codes)


@pytest.mark.parametrize(
    ("size", "beside"),
    [("2XL x 2", ["How many"]), ("XL navy", ["Color"]), ("M hoodie", ["Garment"]), ("L, slim", []), ("1 x XL", [])],
)
def test_what_stands_beside_a_size_is_asked_about_there(size: str, beside: list[str], reading_of: Read) -> None:
    """So that the returned list marks no cell of a column that has nothing to do with it."""
    rows, _ = of(reading_of, {"Size": size}, {})
    cells = rows[0].source.cells
    assert [heading for heading in ("How many", "Color", "Garment") if heading in cells] == beside
    assert {cells[heading] for heading in beside} <= {"B2"}


def test_what_stands_in_its_own_column_wins_over_what_stands_beside_the_size(reading_of: Read) -> None:
    cells = {"Size": "2XL navy hoodie x 2", "Color": "red", "Garment": "Polo", "How many": 3}
    rows, _ = of(reading_of, cells, {"Color": "red", "Garment": "Polo", "How many": 1})
    told = said(rows)
    assert (told["color"], told["garment"], told["many"]) == ("red", "Polo", 3)


@pytest.mark.parametrize(
    ("cells", "size"),
    [
        ({"Cut": "women's"}, "Ladies M"), ({"Cut": "youth"}, "Youth M"), ({"Cut": "adult"}, "M"), ({"Cut": "W"}, "M"),
        ({"Cut": "women's", "Size": "Youth M"}, "Youth M"), ({"Cut": "youth", "Size": "Adult M"}, "M"),
        ({"Garment": "women's tee"}, "Ladies M"), ({"Garment": "youth tee"}, "Youth M"), ({"Garment": "Polo"}, "M"),
        ({"Garment": "women's tee", "Cut": "youth"}, "Youth M"),
    ],
)  # fmt: skip
def test_whose_size_it_is_by_the_cut_or_the_garment(cells: dict[str, str], size: str, reading_of: Read) -> None:
    rows, _ = of(reading_of, cells, {"Cut": "youth", "Garment": "Polo"})
    assert rows[0].size == size


@pytest.mark.parametrize(
    ("typed", "many", "codes"),
    [
        ("x3", 3, []), ("3x", 3, []), ("x 2", 2, []), ("3 pcs", 3, []), ("4 shirts", 4, []), ("III", 3, []),
        ("||||", 4, []), ("|||||", 1, ["how-many-unclear"]), ("two", 2, []), ("1", 1, []),
        ("a dozen", 1, ["how-many-unclear"]),
        ("-1", 1, ["how-many-unclear"]), (MOST_ALIKE, 1000, []), (1001, 1, ["how-many-unclear"]),
        ("0", 1, ["not-made"]),
    ],
)  # fmt: skip
def test_how_many(typed: object, many: int, codes: list[str], reading_of: Read) -> None:
    rows, asked = of(reading_of, {"How many": typed}, {"How many": 1})
    assert (len(rows), asked) == (many, codes)
    assert [row.no for row in rows] == list(range(1, many + 1))
    assert rows[0].status == ("cancelled" if typed == "0" else "")


@pytest.mark.parametrize(
    ("cells", "told", "codes"),
    [
        ({"Status": "Confirmed"}, {}, []), ({"Status": "paid"}, {}, []), ({"Status": "done"}, {"status": "done"}, []),
        ({"Status": "canceled"}, NONE, []), ({"Status": "Refunded"}, NONE, ["not-made"]),
        ({"Status": "no"}, NONE, ["not-made"]),
        ({"Status": "perhaps"}, {}, ["wanted-unclear"]), ({"Status": "waiting"}, {}, ["status-unknown"]),
        ({"Status": "dnoe"}, {}, ["status-unknown"]), ({"Status": "perhaps", "Garment no.": 1}, {}, ["status-unknown"]),
        ({"Coming?": "yes"}, {}, []), ({"Coming?": "no"}, NONE, ["not-made"]),
        ({"Coming?": "maybe"}, {}, ["wanted-unclear"]),
        ({"Coming?": "yes, 2"}, {}, ["wanted-unclear"]), ({"Coming?": "Yes - if it is dry"}, {}, ["wanted-unclear"]),
        ({"Coming?": "no", "Status": "done"}, {"status": "done"}, []),
        ({"Opt out": "x"}, NONE, ["not-made"]), ({"Opt out": "no"}, {}, []), ({"Opt out": "3 May"}, NONE, ["not-made"]),
        ({"Opt out": "perhaps"}, {}, ["wanted-unclear"]), ({"Opt out": "declined"}, NONE, ["not-made"]),
        ({"Opt out": "x", "Status": "done"}, {"status": "done"}, []),
    ],
)  # fmt: skip
def test_whether_one_is_made(cells: dict[str, Any], told: dict[str, Any], codes: list[str], reading_of: Read) -> None:
    rows, asked = of(reading_of, cells, {"Coming?": "yes", "Opt out": "x", "Garment no.": 2})
    assert (said(rows), asked) == (told, codes)


REMARK = ["name-remark"]


@pytest.mark.parametrize(
    ("who", "told", "codes"),
    [
        ("- Ana Novak", {}, []), ("1. Ana Novak", {}, []), ("Ana Novak ✓", {"note": "✓"}, REMARK),
        ("* Ana Novak", {"note": "*"}, REMARK), ("Ana Novak ?", {"note": "?"}, REMARK),
        ("Ana Novak (paid)", {"note": "paid"}, REMARK), ("Ana Novak - paid", {"note": "paid"}, REMARK),
        ("paid - Ana Novak", {"note": "paid"}, REMARK), ("Ana Novak: late", {"note": "late"}, REMARK),
        ("Ana Novak - cancelled", NONE | {"note": "cancelled"}, REMARK),
        ("Ana Novak (no shirt)", NONE | {"note": "no shirt"}, REMARK),
        ("Ana Novak 11", {"number": "11"}, ["list-name-numbers"]), ("ana - paid", {"who": "ana - paid"}, []),
        ("Ana & Ivo", {"who": "Ana & Ivo"}, ["name-several"]),
        ("Ana, Ivo, Bo", {"who": "Ana, Ivo, Bo"}, ["name-several"]),
        ("Ana (Anni) Novak", {"who": "Ana (Anni) Novak"}, ["name-doubtful"]),
        ("Ana-Lena Berg", {"who": "Ana-Lena Berg"}, []),
    ],
)  # fmt: skip
def test_a_name_with_more_beside_it(who: str, told: dict[str, Any], codes: list[str], reading_of: Read) -> None:
    rows, asked = of(reading_of, {"Who": who}, {})
    assert (said(rows), asked) == (told, codes)


def test_what_was_settled_in_a_plan_is_not_asked_again(reading_of: Read) -> None:
    for cells in ({"Who": "Ana & Ivo"}, {"Who": "Ana née Dahl"}, {"Note": "make it XL"}, {"First name": "Bo"}):
        other = {"Garment no.": 2, "First name": "Ivo"}
        assert of(reading_of, {**cells, "Garment no.": 1}, other)[1] == []
        assert of(reading_of, cells, other)[1] != []


ANSWER, ASIDE, UNCLEAR = ["print-answer"], ["print-aside"], ["print-answer-unclear"]


@pytest.mark.parametrize(
    ("typed", "printed", "more", "codes"),
    [
        ("same", "Ana Novak", {}, ANSWER), ("same as above", "Ana Novak", {}, ["print-answer-doubtful"]),
        ("first name only", "Ana", {}, ANSWER), ("last name only", "Novak", {}, ANSWER),
        ("leave blank", "no name", {}, ANSWER),
        ("Novak", "Novak", {}, []), ("Ana Novak", "Ana Novak", {}, []), ("“Nan”", "Nan", {}, ANSWER),
        ("NOVAK 11", "NOVAK", {"number": "11"}, []), ("NAN 11", "NAN 11", {}, []), ("Yes - Nan", "Nan", {}, ANSWER),
        ("-", "no name", {}, UNCLEAR), ("$5", "no name", {}, UNCLEAR), ("same as Ivo", "no name", {}, UNCLEAR),
        ("Ana (mum)", "Ana", {"note": "Print name: mum"}, ASIDE),
        ("Nan, paid", "Nan", {"note": "Print name: paid"}, ASIDE),
        ("please print Mona", "Mona", {"note": "Print name: please print"}, ASIDE),
        ("Mona please", "Mona", {"note": "Print name: please"}, ASIDE),
        ("\"Nan\"!", "Nan", {"note": "Print name: !"}, ASIDE),
        ("Nan - no thanks", "Nan", {"note": "Print name: no thanks"}, ASIDE),
    ],
)  # fmt: skip
def test_what_is_printed(typed: str, printed: str, more: dict[str, str], codes: list[str], reading_of: Read) -> None:
    rows, asked = of(reading_of, {"Print name": typed}, {"Print name": "IVO"})
    assert (said(rows), asked) == ({"print_name": printed, **more}, codes)


@pytest.mark.parametrize(
    ("typed", "printed", "codes"),
    [("yes", "", []), ("no", "no name", []), ("Nan", "Nan", []), ("perhaps", "no name", UNCLEAR),
     ("yes - Nan", "Nan", ANSWER), ("no, thanks", "no name", UNCLEAR), ("$5", "no name", UNCLEAR)],
)  # fmt: skip
def test_whether_a_name_is_printed(typed: str, printed: str, codes: list[str], reading_of: Read) -> None:
    rows, asked = of(reading_of, {"Name on back?": typed}, {"Name on back?": "yes"})
    assert (rows[0].print_name, asked) == (printed, codes)
    rows, _ = of(
        reading_of, {"Name on back?": typed, "Print name": "Nell"}, {"Name on back?": "yes", "Print name": "IVO"}
    )
    assert rows[0].print_name == "Nell"


@pytest.mark.parametrize(
    ("typed", "number"),
    [("#7", "7"), ("No. 5", "5"), ("7.0", "7"), ("7", "7"), ("007", "007"), ("-", ""), ("none", ""), ("n/a", ""),
     ("12a", "12a"), ("nr 8", "8"), ("№ 9", "9"), ("1234", "1234")],
)  # fmt: skip
def test_a_number(typed: str, number: str, reading_of: Read) -> None:
    assert of(reading_of, {"Number": typed}, {"Number": "12"})[0][0].number == number


@pytest.mark.parametrize(
    ("number", "wanted", "printed", "codes"),
    [("7", "no", "", []), ("7", "yes", "7", []), ("7", "", "7", []), ("7", "perhaps", "7", ["number-wanted-unclear"]),
     ("", "yes", "", ["number-wanted-none"]), ("", "no", "", []), ("", "", "", [])],
)  # fmt: skip
def test_whether_a_number_is_printed(
    number: str, wanted: str, printed: str, codes: list[str], reading_of: Read
) -> None:
    rows, asked = of(
        reading_of, {"Number": number, "Number on back?": wanted}, {"Number": "12", "Number on back?": "yes"}
    )
    assert (rows[0].number, asked) == (printed, codes)


@pytest.mark.parametrize(
    ("first", "last", "particle", "who", "codes"),
    [("Ana", "Dijk", "van", "Ana van Dijk", []), ("Ana", "Dijk", "", "Ana Dijk", []), ("Ana", "-", "", "Ana", []),
     ("-", "Dijk", "", "Dijk", []), ("?", "Dijk", "", "Dijk", ["name-remark"]), ("Ana", "", "van", "Ana", [])],
)  # fmt: skip
def test_a_name_in_parts(first: str, last: str, particle: str, who: str, codes: list[str], reading_of: Read) -> None:
    rows: list[list[object]] = [["First name", "Tussenvoegsel", "Last name", "Size"], [first, particle, last, "M"]]
    reading = reading_of([*rows, ["Ivo", "de", "Rusk", "L"], ["Bo", "", "Tarn", "L"]])
    assert (reading.job.roster[0].who, [each.code for each in reading.problems if 2 in each.rows]) == (who, codes)


@pytest.mark.parametrize(
    ("paid", "many", "shares"),
    [("10", 3, ["3.34", "3.33", "3.33"]), ("10", 1, ["10"]), ("10.01", 2, ["5.01", "5"]), ("yes", 2, ["yes", "yes"]),
     ("0.02", 3, ["0.01", "0.01", "0"]), ("10.005", 2, ["5.005", "5"]), (None, 2, ["None", "None"])],
)  # fmt: skip
def test_what_was_paid_for_several_is_shared_to_the_cent(
    paid: object, many: int, shares: list[str], reading_of: Read
) -> None:
    rows, _ = of(reading_of, {"Paid": paid, "How many": many}, {"Paid": "yes", "How many": 1})
    expected = [Decimal(share) if share[0].isdigit() else None if share == "None" else share for share in shares]
    assert [row.paid for row in rows] == expected


def test_numbers_go_on_after_the_highest_and_are_never_given_twice(reading_of: Read) -> None:
    head = ["Garment no.", "Who", "Size", "How many"]
    people = [[None, "Ana", "M", 2], [5, "Bo", "M", 2], [5, "Cy", "M", None], ["x", "Di", "M", None], [2, "Ed", "M", 1]]
    reading = reading_of([head, *people], Job=[["Setting", "Value"], ["Last garment no.", 3]])
    assert [row.no for row in reading.job.roster] == [6, 7, 5, 8, 9, 10, 2]
    assert reading.job.settings.last_no == 10
    codes = [(each.code, each.where.cell) for each in reading.problems if each.code.startswith("garment-no")]
    assert codes == [("garment-no-twice", "A4"), ("garment-no-unclear", "A5")]
