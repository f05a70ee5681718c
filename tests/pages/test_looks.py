"""How cells of the pages look, and how high a text of several sizes is."""

from collections.abc import Callable

import pytest

from xlbatch.pages.leaf import columns_for, columns_of
from xlbatch.pages.page_looks import BAND, PLAIN, STRONG, THIN, Text, rich_height
from xlbatch.pages.work import look_up
from xlbatch.paper.measure import text_width
from xlbatch.plan import Plan


@pytest.mark.parametrize("edge", ["top", "bottom", "left", "right"])
def test_any_edge_or_a_fill_frames_a_cell(edge: str) -> None:
    assert PLAIN.but(**{edge: THIN}).framed
    assert PLAIN.but(fill=BAND).framed
    assert not PLAIN.framed
    assert not STRONG.but(indent=1).framed


WORDS = text_width("Ana Bo", 10) + 0.01

# lines of 10 points are 12.2 high, of 20 points 24.4
HEIGHTS: tuple[tuple[tuple[Text, ...], float, float], ...] = (
    ((), 100, 0),
    ((Text("Ana", 10),), 100, 12.2),
    ((Text("Ana\nBo", 10),), 100, 24.4),
    ((Text("Ana Bo", 10),), WORDS, 12.2),
    ((Text("Ana Bo", 10),), WORDS - 1, 24.4),
    ((Text("Cy\nAna Bo", 10),), WORDS, 24.4),  # a new line has all of the room
    ((Text("Ana", 20), Text(" Bo", 10)), 200, 24.4),  # the largest letters of a line count
    ((Text("Ana", 10), Text(" Bo", 20)), 200, 24.4),
    ((Text("Ana", 20), Text("\nBo", 10)), 200, 36.6),  # and of that line alone
    ((Text("Ana", 10), Text("\nBo", 20)), 200, 36.6),
    ((Text("Ana\u00a0Bo", 10),), WORDS - 1, 12.2),  # not parted there
)


@pytest.mark.parametrize(("parts", "room", "height"), HEIGHTS)
def test_lines_are_as_high_as_their_largest_letters(parts: tuple[Text, ...], room: float, height: float) -> None:
    assert rich_height(parts, room) == pytest.approx(height)


def test_as_many_columns_as_a_text_takes_within_limits() -> None:
    """Columns are 9 points wide; a cell's edges take 4.5, and 1 is to spare."""
    assert [columns_of(width) for width in (0.0, 3.5, 3.6, 12.5, 12.6)] == [1, 1, 2, 2, 3]
    assert columns_for([], 10) == columns_for(["i"], 10) == 3
    assert columns_for(["Quillfeather" * 20], 10) == 60
    assert columns_for(["Quillfeather"], 10, most=5) == 5
    assert columns_for(["i", "Quillfeather"], 10) == columns_of(text_width("Quillfeather", 10))


def test_a_color_is_told_where_there_are_several(plan_of: Callable[..., Plan]) -> None:
    for color, told in (("NAVY", "Crew-neck tee"), ("red", "Crew-neck tee, navy")):
        work = look_up(plan_of([["Who", "Size", "Color"], ["Ana", "M", "navy"], ["Bo", "L", color]]))
        assert work.garment_text(work.garments[1]) == told


def test_what_is_on_every_garment_does_not_tell_them_apart(plan_of: Callable[..., Plan]) -> None:
    job = [["Setting", "Value"], ["Shared line", "LAKE CAMP"]]
    work = look_up(plan_of([["Who", "Size"], ["Ana", "M"], ["Bo", "L"]], Job=job))
    assert [work.what_differs(no) for no in (1, 2)] == ["Ana", "Bo"]
    alone = look_up(plan_of([["Who", "Size"], ["Ana", "M"]], Job=job))
    assert "LAKE CAMP" in alone.what_differs(1)  # where nothing differs, all of it
