"""Whole workbooks: sheets found, rows read, defaults filled in, and each problem at its cell."""

from collections.abc import Callable
from dataclasses import replace
from datetime import date, datetime
from decimal import Decimal
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from openpyxl import Workbook

from xlbatch.job.job import Blank, Film, FilmPiece, PriceBreak, Roll, RosterRow
from xlbatch.job.marks import Result
from xlbatch.roster.read import Reading, UnreadableFile, blank_job, read

Rows = list[list[object]]
Read = Callable[..., Reading]
LIST: Rows = [["Who", "Size"], ["Ana", "M"]]


def found(reading: Reading) -> list[tuple[str, str, str]]:
    """Code, sheet and cell of each problem."""
    return [(each.code, *each.where) for each in reading.problems]


def rows(reading: Reading) -> list[tuple[int, str, str]]:
    """Number, who and size of each garment."""
    return [(row.no, row.who, row.size) for row in reading.job.roster]


def row(reading: Reading) -> RosterRow:
    """The one garment."""
    (only,) = reading.job.roster
    return only


# the list


def test_a_name_and_a_size_are_enough(reading_of: Read) -> None:
    reading = reading_of(LIST)
    assert rows(reading) == [(1, "Ana", "M")]
    assert reading.problems == ()
    assert row(reading).source.at("Size") == ("Roster", "B2")
    assert reading.job.settings.last_no == 1


def test_every_column(reading_of: Read) -> None:
    headings = ["Who", "Group", "Garment", "Size", "Color", "Design", "Print name", "Number", "How many", "Note",
                "Paid", "Status", "Done so far"]  # fmt: skip
    values = [
        "Ana",
        "Vrba",
        "Polo",
        "ym",
        "navy",
        "Name",
        "ANA",
        "07",
        1,
        "late",
        15,
        "Cancelled",
        "blank in hand; Name",
    ]
    assert row(reading_of([headings, values])) == RosterRow(
        source=row(reading_of([headings, values])).source, no=1, who="Ana", group="Vrba", garment="Polo",
        size="Youth M", color="navy", design="Name", print_name="ANA", number="07", note="late",
        paid=Decimal(15), status="cancelled", done_so_far=("blank in hand", "Name"),
    )  # fmt: skip


def test_how_many_is_spread_out_and_numbers_last(reading_of: Read) -> None:
    reading = reading_of(
        [
            ["Garment no.", "Who", "Size", "How many"],
            [None, "Ana", "M", 2],
            [7, "Ben", "L", None],
            [None, "Cid", "S", 1],
        ]
    )
    assert rows(reading) == [(8, "Ana", "M"), (9, "Ana", "M"), (7, "Ben", "L"), (10, "Cid", "S")]
    assert [each.source.row for each in reading.job.roster] == [2, 2, 3, 4]
    assert reading.job.settings.last_no == 10


def test_numbers_given_out_before_are_not_given_again(reading_of: Read) -> None:
    reading = reading_of(
        [["Garment no.", "Who", "Size"], [3, "Ana", "M"], [None, "Ben", "L"]],
        Job=[["Setting", "Value"], ["Last garment no.", 12]],
    )
    assert rows(reading) == [(3, "Ana", "M"), (13, "Ben", "L")]


def test_a_number_that_stands_twice_stays_with_the_first(reading_of: Read) -> None:
    reading = reading_of([["Garment no.", "Who", "Size"], [3, "Ana", "M"], [3, "Ben", "L"], ["x", "Cid", "S"]])
    assert rows(reading) == [(3, "Ana", "M"), (4, "Ben", "L"), (5, "Cid", "S")]
    assert found(reading) == [("garment-no-twice", "Roster", "A3"), ("garment-no-unclear", "Roster", "A4")]


def test_first_and_last_name_make_who(reading_of: Read) -> None:
    reading = reading_of([["First name", "Surname", "Size"], ["Ana", "Nováková", "M"], ["Ben", None, "L"]])
    assert [(each.who, each.first_name, each.last_name) for each in reading.job.roster] == [
        ("Ana Nováková", "Ana", "Nováková"),
        ("Ben", "Ben", ""),
    ]


def test_title_rows_blank_rows_and_repeated_headings(reading_of: Read) -> None:
    reading = reading_of(
        [
            ["Spring run"],
            [],
            ["printed 4 May; Size matters"],
            ["Who", "Size"],
            ["Ana", "M"],
            [],
            ["Who", "Size"],
            ["Ben", "L"],
        ]
    )
    assert rows(reading) == [(1, "Ana", "M"), (2, "Ben", "L")]
    assert [each.source.row for each in reading.job.roster] == [5, 8]
    assert reading.problems == ()


def test_a_row_without_a_size_is_kept_and_held_back(reading_of: Read) -> None:
    reading = reading_of([["Who", "Size"], ["Ana", "M"], ["Ben", None]])
    assert rows(reading) == [(1, "Ana", "M"), (2, "Ben", "")]
    assert found(reading) == [("size-missing", "Roster", "B3")]
    assert reading.problems[0].rows == (3,)


def test_a_cancelled_row_needs_no_size(reading_of: Read) -> None:
    assert reading_of([["Who", "Size", "Status"], ["Ana", "M", None], ["Ben", None, "cancelled"]]).problems == ()


def test_columns_not_understood_are_kept_in_order(reading_of: Read) -> None:
    reading = reading_of([["E-mail", "Who", "Size", "Phone", None], ["a@example.org", "Ana", "M", 123, "late"]])
    assert row(reading).source.extra == {"E-mail": "a@example.org", "Phone": "123", "Column E": "late"}
    assert list(row(reading).source.extra) == ["E-mail", "Phone", "Column E"]
    assert found(reading) == [("heading-unknown", "Roster", "A1")]
    assert reading.problems[0].found == "E-mail, Phone, Column E"
    assert [(each.found, each.meaning) for each in reading.job.headings] == [
        ("E-mail", "not about the garment, not used"), ("Who", "Who"), ("Size", "Size"),
        ("Phone", "not about the garment, not used"),
    ]  # fmt: skip


def test_a_heading_that_stands_twice(reading_of: Read) -> None:
    reading = reading_of([["Who", "Size", "Shirt size"], ["Ana", "M", "L"]])
    assert rows(reading) == [(1, "Ana", "M")]
    assert row(reading).source.extra == {"Shirt size": "L"}
    assert found(reading) == [("heading-twice", "Roster", "C1")]


@pytest.mark.parametrize("name", ["NA", "None", "TRUE", "1E5", "Null", "nan", "True", "=1+1", "+Ana", "-Ana", "@Ana"])
def test_names_that_look_like_something_else(tmp_path: Path, name: str) -> None:
    """The first characters are those of OWASP, CSV Injection."""
    path = tmp_path / "list.csv"
    path.write_text(f"Who,Size,Print name\n{name},M,{name}\n", encoding="utf-8")
    reading = read(path)
    assert isinstance(reading, Reading)
    assert (row(reading).who, row(reading).print_name) == (name, name)
    assert reading.problems == ()


def test_text_01_a_number_formatted_00_and_a_true(tmp_path: Path) -> None:
    book = Workbook()
    sheet = book.create_sheet("Roster", 0)
    for line in (["Who", "Size", "Number"], ["Ana", "M", "01"], ["Ben", "L", 7], ["Cid", "S", 7.0], [True, "S", None]):
        sheet.append(line)
    sheet["C3"].number_format = "00"
    book.save(tmp_path / "list.xlsx")
    reading = read(tmp_path / "list.xlsx")
    assert isinstance(reading, Reading)
    assert [each.number for each in reading.job.roster] == ["01", "07", "7", ""]
    assert reading.job.roster[3].who == "TRUE"


def test_cleaned_text_is_noted_at_its_cell(reading_of: Read) -> None:
    reading = reading_of([["Who", "Size"], ["Ana\u00a0Nova\u200bk", " M "], ["Ben ", "L"]])
    assert [each.who for each in reading.job.roster] == ["Ana Novak", "Ben"]
    (note,) = reading.problems
    assert (note.code, note.where, note.found) == ("text-cleaned", ("Roster", "A2"), "Ana·Nova·k")
    assert "now “Ana Novak”" in note.sentence


def test_a_payment_that_is_unclear_holds_nothing_back(reading_of: Read) -> None:
    reading = reading_of([["Who", "Size", "Paid"], ["Ana", "M", "half"], ["Ivo", "L", "ja"], ["Eva", "S", "offen"]])
    assert found(reading) == [("paid-unclear", "Roster", "C2")]
    assert reading.problems[0].level == "check"
    assert [row.paid for row in reading.job.roster] == [None, "yes", None]


@pytest.mark.parametrize(
    ("heading", "value", "code", "suggestion"),
    [
        ("Size", "Youht M", "size-unknown", "Youth M"),
        ("Size", "5-12", "size-unknown", ""),
        ("Size", datetime(2026, 3, 5), "date-for-size", "3-5"),
        ("Size", date(2026, 10, 12), "date-for-size", "10-12"),
        ("How many", "two", "how-many-unclear", ""),
        ("How many", 100000, "how-many-unclear", ""),
        ("Status", "Doen", "status-unknown", "done"),
        ("Number", datetime(2026, 3, 5), "value-unclear", "3-5"),
        ("Who", datetime(2026, 3, 5), "value-unclear", "3-5"),
        ("Color", "#REF!", "cell-error", ""),
        ("Size", "#N/A", "cell-error", ""),
        ("Size", "=1+1", "formula-unsaved", ""),
    ],
)
def test_unclear_cells(reading_of: Read, heading: str, value: object, code: str, suggestion: str) -> None:
    line: dict[str, object] = {"Who": "Ana", "Size": "M"} | {heading: value}
    reading = reading_of([list(line), list(line.values())])
    cell = f"{'ABC'[list(line).index(heading)]}2"
    assert found(reading) == [(code, "Roster", cell)]
    (problem,) = reading.problems
    assert (problem.level, problem.suggestion, problem.rows) == ("stop", suggestion, (2,))
    assert len(reading.job.roster) == 1


def test_a_date_in_a_note_is_no_problem(reading_of: Read) -> None:
    reading = reading_of([["Who", "Size", "Note"], ["Ana", "M", datetime(2026, 6, 14)]])
    assert row(reading).note == "14-Jun-2026"
    assert reading.problems == ()


def test_hidden_rows_are_read_and_counted(tmp_path: Path) -> None:
    book = Workbook()
    sheet = book.create_sheet("Roster", 0)
    for line in (["Who", "Size"], ["Ana", "M"], ["Ben", "L"]):
        sheet.append(line)
    sheet.row_dimensions[3].hidden = True
    book.save(tmp_path / "list.xlsx")
    reading = read(tmp_path / "list.xlsx")
    assert isinstance(reading, Reading)
    assert len(reading.job.roster) == 2
    assert found(reading) == [("sheet-hidden-rows", "Roster", "")]


# sheets


@pytest.mark.parametrize(
    ("empty", "code"), [([], "no-rows"), ([["Who", "Size"]], "no-rows"), ([["Spring run"]], "list-not-found")]
)
def test_no_list(reading_of: Read, empty: Rows, code: str) -> None:
    reading = reading_of(empty)
    assert reading.job.roster == ()
    assert code in [each.code for each in reading.problems]


def test_a_list_without_a_size_column_holds_all_rows_back_with_one_problem(reading_of: Read) -> None:
    reading = reading_of([["Who", "Color"], ["Ana", "navy"], ["Ben", "red"]])
    assert found(reading) == [("no-rows", "Roster", "A1")]
    assert reading.problems[0].rows == (2, 3)
    assert len(reading.job.roster) == 2


def write(path: Path, sheets: dict[str, Rows]) -> Path:
    book = Workbook()
    del book["Sheet"]
    for name, lines in sheets.items():
        sheet = book.create_sheet(name)
        for line in lines:
            sheet.append(line)
    book.save(path)
    return path


def read_sheets(path: Path, sheets: dict[str, Rows]) -> Reading:
    reading = read(write(path / "list.xlsx", sheets))
    assert isinstance(reading, Reading)
    return reading


def test_sheets_are_found_by_any_case_or_by_their_headings(tmp_path: Path) -> None:
    reading = read_sheets(
        tmp_path,
        {
            "My film": [["Film", "Color", "Press time"], ["Teal", "teal", 12]],
            "Sheet1": LIST,
            "JOB ": [["Setting", "Value"], ["Job name", "Fair"]],
        },
    )
    assert rows(reading) == [(1, "Ana", "M")]
    assert row(reading).source.sheet == "Sheet1"
    assert reading.job.settings.job_name == "Fair"
    assert reading.job.films[0].name == "Teal"
    assert reading.problems == ()


def test_unknown_and_second_sheets_are_named(tmp_path: Path) -> None:
    reading = read_sheets(
        tmp_path, {"Roster": LIST, "Budget": [["Item", "Sum"]], "Team B": [["Who", "Size"], ["Ben", "L"]]}
    )
    assert rows(reading) == [(1, "Ana", "M")]
    assert found(reading) == [("sheet-unknown", "Budget", ""), ("sheet-second", "Team B", "")]


def test_the_plans_own_sheets_are_left_alone_and_its_log_is_read(tmp_path: Path) -> None:
    log: Rows = [
        ["Press log"],
        ["Step", "Garment no.", "Who", "Decal", "Result", "By"],
        ["Batch 1: 330 °F"],
        [1, 4, "Ana", "Name", "ok", "M"],
        [2, 4, "Ana", "Back", "Redo film", None],
        [3, 5, "Ben", "Name", None, None],
        [4, 5, "Ben", "Back", "fine", None],
    ]
    reading = read_sheets(
        tmp_path,
        {"Job sheet": [["x"]], "Problems": [["Level", "Sheet"]], "Roster": LIST, "Press log": log, "Decals": LIST},
    )
    assert reading.job.results == (Result(4, "Name", "ok"), Result(4, "Back", "redo film"))
    assert found(reading) == [("result-unknown", "Press log", "E7")]


def test_a_csv_is_a_roster(tmp_path: Path) -> None:
    path = tmp_path / "class - plan 2.csv"
    path.write_text("name;size\nAgnès;Youth M\n", encoding="cp1252")
    reading = read(path)
    assert isinstance(reading, Reading)
    assert rows(reading) == [(1, "Agnès", "Youth M")]
    assert reading.job.settings.job_name == "class"


def test_what_cannot_be_read_is_said(tmp_path: Path) -> None:
    assert isinstance(read(tmp_path / "none.xlsx"), UnreadableFile)


def test_a_fresh_job_has_every_default() -> None:
    job = blank_job(Path("fair.xlsx"))
    assert (job.roster, job.settings.job_name, job.settings.last_no) == ((), "fair", 0)
    assert [spec.decal for spec in job.designs] == ["Shared line", "Name"]
    assert job.presses[0].name == "Plate press"
    assert len(job.blanks) > 100
    assert len(job.films) > 30


# settings


def test_settings_and_their_cells(reading_of: Read) -> None:
    reading = reading_of(
        LIST,
        Job=[
            ["The job"],
            ["Setting", "Value", "Meaning"],
            ["Job name", "Fair", ""],
            ["needed by", datetime(2026, 6, 14)],
            ["Length unit", "centimeters"],
            ["Gap between decals", 0.5],
            ["Longest cut (ft)", 5],
            ["Film end margin", '1/2"'],
            ["Turn decals", "no"],
            ["Start", "8:30"],
            ["Margin or fixed price", "30 %"],
            ["Labor per hour", "$12.50"],
            ["Paper", "a4"],
            ["Shared line", None],
        ],
    )
    used = reading.job.settings
    assert reading.problems == ()
    assert (used.job_name, used.needed_by, used.length_unit, used.paper) == ("Fair", "14-Jun-2026", "cm", "A4")
    assert (used.gap, used.longest_cut, used.end_margin) == (5.0, 1524.0, 12.7)
    assert (used.turn, used.mirror, used.start) == (False, True, 510)
    assert (used.margin, used.fixed_price, used.labor_per_hour) == (Decimal("0.3"), None, Decimal("12.50"))
    assert used.longest_strip == 609.6  # a default keeps its own unit
    assert reading.job.setting_cells["Gap between decals"] == ("Job", "B6")
    assert "Shared line" not in reading.job.setting_cells


def test_unclear_and_unknown_settings(reading_of: Read) -> None:
    reading = reading_of(
        LIST, Job=[["Setting", "Value"], ["Gap betwen decals", 1], ["Longest cut", "far"], ["Shirts per strip", 40],
                   ["Price rounding", "#N/A"]],
    )  # fmt: skip
    assert found(reading) == [
        ("setting-unknown", "Job", "A2"),
        ("setting-unclear", "Job", "B3"),
        ("setting-unclear", "Job", "B4"),
        ("setting-unclear", "Job", "B5"),
    ]
    assert reading.problems[0].suggestion == "Gap between decals"
    assert "6 ft was used" in reading.problems[1].sentence
    assert "a number from 1 to 12, or “by itself”" in reading.problems[2].sentence
    assert (reading.job.settings.longest_cut, reading.job.settings.shirts_per_strip) == (1828.8, None)


# garments, film, press, designs


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


_CELLS = st.one_of(
    st.text(st.characters(codec="utf-8", exclude_categories=["Cc", "Cs", "Cn"]), max_size=12),
    st.integers(-(10**6), 10**6), st.booleans(), st.none(), st.floats(allow_nan=False, allow_infinity=False),
    st.sampled_from(["M", "youth m", "#N/A", "=1+1", "done", "5 yd", "12 in x 40 in", "1 = 4.20"]),
)  # fmt: skip


@settings(derandomize=True, max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    sheet=st.sampled_from(
        ["Roster", "Job", "Designs", "Garments", "Film", "Press", "Positions", "Work times", "Press log"]
    ),
    cells=st.lists(_CELLS, min_size=16, max_size=16),
)
def test_any_row_on_any_sheet_is_read(tmp_path: Path, sheet: str, cells: list[object]) -> None:
    from xlbatch.trade.columns import columns

    headings: list[object] = [column.heading for column in columns(sheet)]
    reading = read_sheets(tmp_path, {"Sheet1": LIST, sheet: [headings, cells[: len(headings)]]})
    assert all(each.where.sheet for each in reading.problems)
    if sheet == "Roster" and any(cell not in (None, "") for cell in cells[: len(headings)]):
        assert len(reading.job.roster) >= 1


def test_reading_twice_gives_the_same(reading_of: Read) -> None:
    one, two = reading_of(LIST), reading_of(LIST)
    assert replace(one.job, path=Path()) == replace(two.job, path=Path())
