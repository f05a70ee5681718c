"""Placement pictures: the measures of each piece by size, and how the drawings fill their pages."""

from collections.abc import Callable
from dataclasses import replace
from itertools import pairwise

import pytest

from xlbatch.pages.leaf import Leaf, Span
from xlbatch.pages.placement_page import NAME, TELLS, _measures, write
from xlbatch.pages.work import look_up
from xlbatch.plan import Plan

SIZES = ("S", "M", "L", "M")


@pytest.fixture
def plan(plan_of: Callable[..., Plan]) -> Plan:
    designs = [["Design", "Decal", "What", "Text", "Position"], ["Camp", "Chest", "text", "CAMP", "full front"]]
    return plan_of([["Who", "Size", "Design"], *([f"Ana {no}", size, "Camp"] for no, size in enumerate(SIZES))],
                   Designs=designs)  # fmt: skip


@pytest.mark.parametrize(
    ("inches", "aside", "lines"),
    [
        ((3, 3, 3, 3), (0, 0, 0, 0), [["all sizes", "3"]]),
        ((2, 3, 3, 3), (0, 0, 0, 0), [["S", "2"], ["M, L", "3"]]),
        ((2, 3, 2, 3), (0, 0, 0, 0), [["S, L", "2"], ["M", "3"]]),
        ((3, 3, 3, 3), (1, 1, 1, 1), [["all sizes", "3"], ["1 in to wearer’s right"]]),
        ((2, 3, 3, 3), (0, -0.5, -0.5, -0.5), [["S", "2"], ["M, L", "3"], ["1/2 in to wearer’s left"]]),
        ((2, 3, 3, 4), (0, 0, 0, 0), [["see Press cards"]]),  # two of size M differ by what stands above
    ],
)
def test_measures_are_told_by_size(
    inches: tuple[float, ...], aside: tuple[float, ...], lines: list[list[str]], plan: Plan
) -> None:
    places = [
        replace(place, below_collar=far * 25.4, from_center=off * 25.4)
        for place, far, off in zip(plan.places, inches, aside, strict=True)
    ]
    head, *told = _measures(look_up(plan), "B", places)
    assert [text_of(span) for span in head] == [f"B  Chest: inches below {places[0].measured_from}"]
    assert [[text_of(span) for span in line] for line in told] == lines
    assert {sum(span.columns for span in line) for line in (head, *told)} == {13}


def text_of(span: Span) -> str:
    return "".join(part.text for part in span.value) if isinstance(span.value, tuple) else str(span.value)


def test_drawings_are_as_large_as_the_fewest_pages_allow_and_as_many_on_each(
    plan_of: Callable[..., Plan],
) -> None:
    """Two beside one another, and the ruler, 368 points long with its room, beside those on the first page; pages hold
    716 points, and of more than 24 drawings the others are left out."""
    names = [f"D{number}" for number in range(26)]
    designs = [["Design", "Decal", "What", "Text", "Position"]]
    designs += [[name, f"Piece {name}", "text", "CAMP", "full front"] for name in names]
    whole = plan_of([["Who", "Size", "Design"], *([f"Ana {name}", "M", name] for name in names)], Designs=designs)
    for count, lines, heights in (
        (1, [1], [446]),
        (2, [1], [446]),
        (3, [2], [446]),
        (7, [4], [629]),
        (9, [5], [716]),
        (13, [4, 3], [629, 426]),
        (26, [4, 4, 4], [629, 568, 568]),
    ):
        work = look_up(replace(whole, places=whole.places[:count]))
        leaf = Leaf(NAME, job="", paper="Letter")
        leaf.title(TELLS, "")
        write(leaf, work)
        pages = [leaf.rows[start:end] for start, end in pairwise([0, *leaf.starts, len(leaf.rows)])]
        assert [sum(bool(row.pictures) for row in rows) for rows in pages] == lines
        assert [sum(row.height for row in rows) for rows in pages] == heights
        shown = [[(picture.left, picture.top) for picture in row.pictures] for row in leaf.rows if row.pictures]
        beside = [(2, 20), (245, 20)]
        drawn = [*[beside] * (min(count, 24) // 2), *([beside[:1]] if count % 2 else [])]
        assert shown == [[*drawn[0], (488, 0)], *drawn[1:]]
