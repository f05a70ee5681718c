"""The workbook of pages as a package: whole, and read alike by every reader; nothing a program would have to repair."""

from collections.abc import Mapping
from pathlib import Path

import pytest
from openpyxl import load_workbook

from tests.page_jobs import JOBS
from tests.sheets.test_package import (
    Parts,
    parts_of,
    test_every_part_has_a_content_type,
    test_every_relationship_leads_to_a_part,
)
from tests.sheets.test_readers import with_calamine, with_openpyxl, with_pandas
from xlbatch.pages.write_pages import write_pages
from xlbatch.plan import Plan

__all__ = ["test_every_part_has_a_content_type", "test_every_relationship_leads_to_a_part"]
HIGHEST_ROW = 409  # points: ECMA-376 leaves it open, the usual programs do not take more


@pytest.fixture(scope="module", params=JOBS)
def pages(
    request: pytest.FixtureRequest, plans: Mapping[tuple[str, str], Plan], tmp_path_factory: pytest.TempPathFactory
) -> Path:
    path = tmp_path_factory.mktemp("package") / "to print.xlsx"
    write_pages(path, plans[request.param, "Letter"], "plan.xlsx")
    return path


@pytest.fixture(scope="module")
def parts(pages: Path) -> Parts:
    return parts_of(pages)


def test_three_readers_agree_on_every_cell(pages: Path) -> None:
    first = with_openpyxl(pages)
    assert sum(map(len, first.values())) > 100
    for other in (with_pandas(pages), with_calamine(pages)):
        for name, cells in first.items():
            assert other[name] == cells, name


def test_no_merged_cells_overlap_and_no_row_is_too_high(pages: Path) -> None:
    for sheet in load_workbook(pages):
        merged = [cell for span in sheet.merged_cells.ranges for cell in span.cells]
        assert len(merged) == len(set(merged)), sheet.title
        assert all((row.height or 0) <= HIGHEST_ROW for row in sheet.row_dimensions.values())
