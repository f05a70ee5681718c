"""The input sheets read back as what they were written from."""

from collections.abc import Iterator
from dataclasses import fields, replace
from datetime import datetime
from decimal import Decimal
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from openpyxl import load_workbook

from xlbatch.files.raw import Raw
from xlbatch.job.job import FilmPiece, Job, PriceBreak, Roll
from xlbatch.job.source import Source
from xlbatch.plan import Plan
from xlbatch.roster.read import Reading, blank_job, read
from xlbatch.sheets.all_sheets import INPUT_SHEETS
from xlbatch.sheets.input_cells import money_text, pieces_text, prices_text, rolls_text, stock_text
from xlbatch.sheets.job_input import margin_text
from xlbatch.sheets.write import write_blank, write_plan, write_problems
from xlbatch.tables import cell_lists
from xlbatch.tables.cells import margin
from xlbatch.trade.tables import table
from xlbatch.units import mm_per

COUNTS = st.integers(1, 9999)
PRICES = st.decimals(0, 10_000, places=2) | st.decimals(0, 10, places=4)
LENGTHS = st.builds(
    lambda count, unit: round(count * mm_per(unit), 3), st.integers(1, 400), st.sampled_from(["in", "cm", "mm", "yd"])
)
WORDS = st.sampled_from(["white", "navy", "kelly green", "light blue"])
check = settings(max_examples=60)


def records(job: Job) -> Iterator[tuple[str, Any]]:
    """What a job says, without where it was read."""
    for name in ("roster", "designs", "blanks", "films", "presses"):
        for record in getattr(job, name):
            if record.source.row:
                yield name, replace(record, source=Source(""))


def job_in(path: Path) -> Job:
    reading = read(path)
    assert isinstance(reading, Reading)
    return reading.job


@pytest.mark.parametrize("fixture", ["plan", "metric"])
def test_a_plan_reads_back_as_the_job_it_was_made_for(
    fixture: str, request: pytest.FixtureRequest, tmp_path: Path
) -> None:
    plan: Plan = request.getfixturevalue(fixture)
    write_plan(tmp_path / "list - plan.xlsx", plan)
    again = job_in(tmp_path / "list - plan.xlsx")
    assert again.settings == plan.job.settings
    given_then, given_now = list(records(plan.job)), list(records(again))
    assert [each for each in given_then if each not in given_now] == []
    assert [row.no for row in again.roster] == [row.no for row in plan.job.roster]


def test_the_problem_workbook_can_be_put_right_and_dropped_again(plan: Plan, tmp_path: Path) -> None:
    path = tmp_path / "list - problems.xlsx"
    write_problems(path, plan.job, plan.problems, datetime(2026, 5, 4, 9, 30))
    assert load_workbook(path).sheetnames == ["Problems", *(sheet.name for sheet in INPUT_SHEETS)]
    assert [row.who for row in job_in(path).roster] == [row.who for row in plan.job.roster]
    assert job_in(path).settings == plan.job.settings


def test_the_blank_workbook_holds_every_default_and_no_one(tmp_path: Path) -> None:
    path = tmp_path / "roster.xlsx"
    blank = blank_job(path)
    write_blank(path, blank)
    book = load_workbook(path)
    assert book.sheetnames == ["Start here", *(sheet.name for sheet in INPUT_SHEETS), "Fonts to choose from"]
    assert [cell.value for cell in book["Roster"][3]][:4] == ["Who", "Group", "Garment", "Size"]
    again = job_in(path)
    assert again.roster == ()
    assert again.settings == blank.settings
    assert [replace(each, source=Source("")) for each in again.films] == [
        replace(each, source=Source("")) for each in blank.films
    ]


def test_the_size_list_follows_the_garment(tmp_path: Path) -> None:
    write_blank(tmp_path / "roster.xlsx", blank_job(tmp_path / "roster.xlsx"))
    book = load_workbook(tmp_path / "roster.xlsx")
    sizes = next(v for v in book["Roster"].data_validations.dataValidation if "OFFSET" in str(v.formula1))
    assert str(sizes.sqref).startswith("D4:D")
    assert sizes.formula1.startswith("OFFSET(Garments!$G$3,MATCH(IF($C4=")
    assert book["Garments"]["A3"].value == "Garment"
    assert book["Garments"]["G3"].value == "Size"
    names = [row[0].value for row in book["Garments"].iter_rows(min_row=4)]
    changes = sum(before != after for before, after in pairwise(names))
    assert changes == len(set(names)) - 1  # the rows of one garment stand together


def test_every_setting_has_its_value(plan: Plan, tmp_path: Path) -> None:
    write_plan(tmp_path / "p.xlsx", plan)
    listed = {row[0].value: row[1].value for row in load_workbook(tmp_path / "p.xlsx")["Job"].iter_rows(min_row=4)}
    assert list(listed) == [line["Setting"] for line in table("job")]
    assert listed["Margin or fixed price"] == "12.5 %"
    assert listed["Gap between decals"] == "1/4 in"
    assert len(fields(plan.job.settings)) == len(listed)  # margin and fixed price share one, a heading is none


@check
@given(st.dictionaries(COUNTS, PRICES, min_size=1, max_size=4))
def test_prices(breaks: dict[int, Decimal]) -> None:
    prices = tuple(PriceBreak(count, price) for count, price in sorted(breaks.items()))
    assert cell_lists.prices(Raw(prices_text(prices))) == prices


@check
@given(st.lists(st.tuples(LENGTHS, st.none() | PRICES), min_size=1, max_size=3))
def test_rolls(rolls: list[tuple[float, Decimal | None]]) -> None:
    made = tuple(Roll(*roll) for roll in rolls)
    assert cell_lists.rolls(Raw(rolls_text(made))) == made


@check
@given(st.dictionaries(WORDS | st.just(""), st.integers(0, 999), min_size=1))
def test_stock(stock: dict[str, int]) -> None:
    assert cell_lists.stock(Raw(stock_text(stock))) == stock


@check
@given(pieces=st.lists(st.tuples(LENGTHS, LENGTHS), min_size=1, max_size=3))
def test_pieces(pieces: list[tuple[float, float]], plan: Plan) -> None:
    made = tuple(FilmPiece(*piece) for piece in pieces)
    found = cell_lists.pieces(Raw(pieces_text(made, plan.job.settings)), "in")
    assert isinstance(found, tuple)
    for one, other in zip(found, made, strict=True):
        assert one.width == pytest.approx(other.width, abs=0.002)
        assert one.length == pytest.approx(other.length, abs=0.002)


@check
@given(share=st.decimals(0, 5, places=4))
def test_margin(share: Decimal, plan: Plan) -> None:
    found = margin(Raw(margin_text(replace(plan.job.settings, margin=share, fixed_price=None))))
    assert found == (share, None)


@pytest.mark.parametrize(("amount", "text"), [("4.2", "4.20"), ("0.125", "0.125"), ("12", "12.00"), ("3.10", "3.10")])
def test_money_in_words(amount: str, text: str) -> None:
    assert money_text(Decimal(amount)) == text
