"""What stands in the cells of Money and the Shopping list, against sums made by hand."""

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from openpyxl import load_workbook

from xlbatch.plan import Plan
from xlbatch.sheets.write import write_plan

FAMILY = [
    ["Who", "Size", "Garment", "Group", "Paid"], ["Ana", "M", "Tee", "Alder", 7.82], ["Bo", "M", "Tee", "Alder", 10],
    ["Cy", "3XL", "Tee", "Birch", None], ["Di", "Youth M", "Tee", "Birch", "yes"],
]  # fmt: skip
SHEETS = {
    # two M at 4.1235 are 8.247: 8.25; 7.0001: 7.00; 3.005: 3.01 by the half cent up. A roll 6.50, supplies 4 x 0.40
    "Garments": [
        ["Garment", "Size", "For", "Price"],
        ["Tee", "M", "adult", "4.1235"], ["Tee", "3XL", "adult", "7.0001"], ["Tee", "Youth M", "youth", "3.005"],
    ],
    "Film": [["Film", "Rolls sold"], ["Black smooth", "3 yd = 6.50"]],
    "Job": [["Setting", "Value"], ["Margin or fixed price", "10 %"], ["Supplies per garment", 0.4]],
}  # fmt: skip


@pytest.fixture
def book(plan_of: Callable[..., Plan], tmp_path: Path) -> Any:
    path = tmp_path / "plan.xlsx"
    write_plan(path, plan_of(FAMILY, **SHEETS))
    return path


def rows(book: Any, sheet: str, *, values: bool) -> list[list[Any]]:
    return [[cell.value for cell in row] for row in load_workbook(book, data_only=values)[sheet].iter_rows()]


def row_of(cells: list[list[Any]], text: str) -> list[Any]:
    """The last row with this text: that of a group's sums comes after its garments."""
    return next(row for row in reversed(cells) if text in row)


def test_the_cells_of_money(book: Any) -> None:
    cells = rows(book, "Money", values=True)
    head = row_of(cells, "Garment no.")
    at = {name: head.index(name) for name in ("Blank", "Film", "Supplies", "Price", "Paid", "Owed")}

    def amounts(text: str) -> list[float | None]:
        row = row_of(cells, text)
        return [row[place] if isinstance(row[place], int | float) else None for place in at.values()]

    # adult (8.25 + 7.00) / 3 + 6.50 / 4 + 0.40 = 7.1083, with 10 % 7.8192: 7.82
    # youth 3.01 + 2.025 = 5.035, with 10 % 5.5385: 5.54
    assert amounts("Ana") == pytest.approx([4.13, 1.63, 0.4, 7.82, 7.82, 0])
    assert amounts("Bo") == pytest.approx([4.12, 1.63, 0.4, 7.82, 10, -2.18])
    assert amounts("Cy")[3:] == [7.82, None, 7.82]
    assert amounts("Di")[3:] == pytest.approx([5.54, 5.54, 0])
    assert amounts("Alder")[3:] == pytest.approx([15.64, 17.82, -2.18])
    assert amounts("Birch")[3:] == pytest.approx([13.36, 5.54, 7.82])
    assert amounts("Everyone") == pytest.approx([18.26, 6.50, 1.60, 29.00, 23.36, 5.64])
    price = at["Price"]
    parts = [row_of(cells, name)[price] for name in ("Cost", "Margin", "Rounding and late changes")]
    assert parts == pytest.approx([26.36, 2.64, 0.0])


def test_the_formulas_of_money_follow_the_cells_a_person_may_change(book: Any) -> None:
    cells = rows(book, "Money", values=False)
    price, owed = (row_of(cells, "Garment no.").index(name) for name in ("Price", "Owed"))
    first = cells.index(row_of(cells, "Ana")) + 1
    everyone = cells.index(row_of(cells, "Everyone")) + 1
    assert cells[first - 1][owed] == f'=IF(H{first}="","",H{first}-I{first})'
    assert row_of(cells, "Cost")[price] == f"=SUM(D{everyone},E{everyone},F{everyone},G{everyone})"
    assert row_of(cells, "Margin")[price] == f"=ROUND(H{everyone + 1}*0.1,2)"
    assert row_of(cells, "Rounding and late changes")[price] == f"=H{everyone}-H{everyone + 1}-H{everyone + 2}"


def test_the_cells_of_the_shopping_list(book: Any) -> None:
    cells = rows(book, "Shopping list", values=True)
    head = row_of(cells, "Needed")
    at = [head.index(name) for name in ("Needed", "Spares", "Buy", "Price", "Cost")]
    lines = {row[head.index("Size")]: [row[place] for place in at] for row in cells if row[0] == "blank"}
    assert lines == {"M": [2, 0, 2, 4.1235, 8.25], "3XL": [1, 0, 1, 7.0001, 7.0], "Youth M": [1, 0, 1, 3.005, 3.01]}
    film = next(row for row in cells if row[0] == "film")
    assert [film[place] for place in at] == [1, 0, 1, 6.5, 6.5]
    total = row_of(cells, "All lines that have a price")
    assert total[head.index("Buy")] == 4
    assert total[head.index("Cost")] == pytest.approx(26.36)
    formulas = rows(book, "Shopping list", values=False)
    line = next(at for at, row in enumerate(formulas, 1) if row[0] == "blank")
    cost = formulas[line - 1][head.index("Cost")]
    assert cost.startswith("=IF(")
    assert cost.endswith(",2))")
    assert "ROUND(" in cost
