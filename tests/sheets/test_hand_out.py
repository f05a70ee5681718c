"""What the printed pages alone must tell: all names drawn, what to load, which number, what is to pay."""

from collections.abc import Mapping
from pathlib import Path
from typing import Any
from xml.etree import ElementTree
from zipfile import ZipFile

import pytest

from xlbatch.pages.write_pages import write_pages
from xlbatch.paper.workbook import Book
from xlbatch.plan import Plan
from xlbatch.sheets import cut_list, press_log, proof
from xlbatch.units import printed_length


def pictures(path: Path) -> list[str]:
    """What each picture of a workbook says it shows."""
    with ZipFile(path) as package:
        names = [name for name in package.namelist() if name.startswith("xl/drawings/drawing")]
        parts = [ElementTree.fromstring(package.read(name)) for name in names]
    return [each.attrib["descr"] for part in parts for each in part.iter() if each.tag.endswith("cNvPr")]


def test_very_many_garments_are_drawn_on_the_pages_to_print_alone(
    plan: Plan, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    for most, drawn in ((len(plan.garments), len(plan.garments)), (len(plan.garments) - 1, 0)):
        monkeypatch.setattr(proof, "MOST_DRAWN", most)
        with Book(tmp_path / "proof.xlsx", plan.job) as book:
            proof.write(book.page("Proof", landscape=True), plan)
        assert len(pictures(tmp_path / "proof.xlsx")) == drawn
    write_pages(tmp_path / "pages.xlsx", plan, "plan.xlsx")
    said = [says for says in pictures(tmp_path / "pages.xlsx") if says.startswith("As cut: ")]
    assert len(said) == sum(bool(texts) for texts in map(proof.texts, proof.decals_of(plan).values()))


def test_a_tag_says_what_is_still_to_pay(plan: Plan, book: Mapping[str, Any]) -> None:
    said = [str(cell.value) for row in book["Bag tags"].iter_rows() for cell in row if "to pay" in str(cell.value)]
    owed = [f"to pay ${line.owed:,.2f}" for line in plan.money if line.owed is not None and line.owed > 0]
    assert sorted(said) == sorted(owed)
    assert owed


def test_the_cut_list_says_what_to_load_and_how_much(plan: Plan) -> None:
    table = cut_list.table(plan)
    for run in plan.layout.runs:
        rows = table[table["Run"] == run.no]
        assert set(rows["Cut from"]) == {run.cut_from}
        assert set(rows["Run length (in)"]) == {printed_length(run.length, "in", up=True)}


def test_the_press_log_says_which_number(plan: Plan) -> None:
    how = press_log.table(plan)["How"]
    numbers = [
        (said, step.place.decal.text)
        for said, step in zip(how, plan.pressing.steps, strict=True)
        if step.place.decal.spec.what == "number"
    ]
    assert {text for _, text in numbers} >= {"07", "00", "12"}
    assert all(said.startswith(text) for said, text in numbers)
