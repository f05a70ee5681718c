"""Sums and live formulas: what a person may change is followed, and what is not known stays blank."""

from collections.abc import Mapping
from decimal import Decimal
from typing import Any

import pytest

from xlbatch.plan import Plan
from xlbatch.units import printed_text

Row = Mapping[str, Any]


def rows(sheet: Any, key: str) -> list[Row]:
    """The rows below the heading row that holds `key`."""
    cells = [[cell.value for cell in row] for row in sheet.iter_rows()]
    at = next(at for at, row in enumerate(cells) if key in row)
    return [dict(zip(map(str, cells[at]), row, strict=True)) for row in cells[at + 1 :]]


def known(rows: list[Row], heading: str) -> list[float]:
    return [row[heading] for row in rows if isinstance(row[heading], int | float)]


def test_buy_and_cost_follow_the_cells_that_may_be_changed(formulas: Mapping[str, Any]) -> None:
    first = rows(formulas["Shopping list"], "Spares")[0]
    assert first["Buy"].startswith("=MAX(0,F")
    assert first["Cost"].startswith("=IF(K")


def test_the_shopping_list_adds_up(book: Mapping[str, Any], plan: Plan) -> None:
    lines = rows(book["Shopping list"], "Kind")
    assert len(lines) == len(plan.shopping)
    for line in lines:
        assert line["Buy"] == max(0, line["Needed"] + line["Spares"] - line["On hand"])
        if line["Price"] is None:
            assert not line["Cost"]
        else:
            assert line["Cost"] == pytest.approx(line["Buy"] * line["Price"])
    total = next(
        row[11].value for row in book["Shopping list"].iter_rows() if row[0].value == "All lines that have a price"
    )
    assert total == pytest.approx(sum(known(lines, "Cost")))


def test_the_least_possible_film_is_never_told_longer_than_proven(book: Mapping[str, Any], plan: Plan) -> None:
    sheet, settings = book["Film requirement"], plan.job.settings
    for row, need in zip(rows(sheet, "Film used"), plan.layout.needs, strict=False):
        told = row["Least possible (in)"] * 25.4
        assert need.least - 25.4 / 8 < told <= need.least + 0.001
    cost = sum(need.length - 2 * settings.end_margin * need.runs - need.free for need in plan.layout.needs)
    said = next(str(row[0].value) for row in sheet.iter_rows() if "Cutting straight strips" in str(row[0].value))
    assert f"costs {printed_text(cost, 'in')} more film" in said


def test_a_price_not_given_is_blank_and_so_are_its_sums(book: Mapping[str, Any], plan: Plan) -> None:
    money = rows(book["Money"], "Owed")
    unpriced = [line for line in plan.money if line.price is None]
    assert unpriced
    for line in unpriced:
        row = next(row for row in money if row["Garment no."] == line.no)
        assert not row["Price"]
        assert not row["Owed"]
    everyone = next(row for row in money if row["Who"] == "Everyone")
    assert not everyone["Owed"]
    facts = {row[0].value: row[1].value for row in book["Job sheet"].iter_rows()}
    assert facts["Owed"] == "not known: prices are missing"


def test_money_by_group(book: Mapping[str, Any], plan: Plan) -> None:
    money = rows(book["Money"], "Owed")
    garments = [row for row in money if isinstance(row["Garment no."], int)]
    groups = [row for row in money if row["Garment no."] is None and row["Group"]]
    assert [row["Garment no."] for row in garments] == [line.no for line in plan.money]
    assert {row["Group"] for row in groups} == {line.group or "no group" for line in plan.money}
    for heading in ("Blank", "Film", "Paid"):
        for group in groups:
            theirs = [row for row in garments if (row["Group"] or "no group") == group["Group"]]
            amounts = known(theirs, heading)
            if amounts and (heading == "Paid" or len(amounts) == len(theirs)):
                assert group[heading] == pytest.approx(sum(amounts))
            else:
                assert not group[heading]


def test_film_costs_agree_with_the_shopping_list(plan: Plan) -> None:
    costs = [need.cost for need in plan.layout.needs if need.cost is not None]
    listed = [line.cost for line in plan.shopping if line.kind == "film" and line.cost is not None]
    assert sum(costs, Decimal(0)) == sum(listed, Decimal(0)) > 0


def test_a_border_piece_is_listed_apart_and_its_text_once(book: Mapping[str, Any], plan: Plan) -> None:
    borders = [decal for decal in plan.decals if decal.border]
    assert borders
    for sheet, key in (("Placement", "Line up by"), ("Press log", "Peeled"), ("Decals", "Turned")):
        names = {row["Decal"]: row["Piece"] for row in rows(book[sheet], key) if row["Decal"]}
        assert all(names[decal.id] == decal.piece != decal.spec.decal for decal in borders)
    first = rows(book["Proof"], "Exact text")[0]
    assert first["Exact text"].split("\n") == ["EQUALS", "07"]


def test_counts_agree_between_sheets(book: Mapping[str, Any], plan: Plan) -> None:
    decals = rows(book["Decals"], "Turned")
    assert [row["Decal"] for row in decals] == sorted(decal.id for decal in plan.decals)
    assert sum(row["Decals"] for row in rows(book["Runs"], "Cut from")) == len(decals)
    assert sum(row["Strips"] for row in rows(book["Runs"], "Cut from")) == len(rows(book["Cut list"], "Weeded"))
    steps = [row for row in rows(book["Press log"], "Peeled") if row["Decal"]]
    assert [row["Step"] for row in steps] == list(range(1, len(decals) + 1))
    assert len(rows(book["Placement"], "Line up by")) == len(decals)
