"""Whatever stands in a row of any sheet, it is read or asked about."""

from pathlib import Path

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.roster.test_read import LIST, read_sheets

_CELLS = st.one_of(
    st.text(st.characters(codec="utf-8", exclude_categories=["Cc", "Cs", "Cn"]), max_size=12),
    st.integers(-(10**6), 10**6), st.booleans(), st.none(), st.floats(allow_nan=False, allow_infinity=False),
    st.sampled_from(["M", "youth m", "#N/A", "=1+1", "done", "5 yd", "12 in x 40 in", "1 = 4.20"]),
)  # fmt: skip


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
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
