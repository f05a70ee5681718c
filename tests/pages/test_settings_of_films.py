"""What stands above and between the press cards: settings of films, the cover, and the stop after the first batch."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from xlbatch.job.job import Film
from xlbatch.pages import press_cards, press_settings
from xlbatch.pages.leaf import Leaf, Span
from xlbatch.pages.page_looks import Text
from xlbatch.pages.work import Work, look_up
from xlbatch.plan import Plan

COVERS = ("cover sheet", "")


def texts(leaf: Leaf) -> list[str]:
    """The texts of a page's cells, row by row."""
    cells = [span.value for row in leaf.rows for span in row.spans if isinstance(span, Span)]
    runs = (cell if isinstance(cell, tuple) else (cell,) for cell in cells if cell is not None)
    return ["".join(run.text if isinstance(run, Text) else str(run) for run in cell) for cell in runs]


def bold_texts(leaf: Leaf) -> set[str]:
    cells = [span for row in leaf.rows for span in row.spans if isinstance(span, Span)]
    runs = {run.text for cell in cells if isinstance(cell.value, tuple) for run in cell.value if run.bold}
    return runs | {str(cell.value) for cell in cells if isinstance(cell.value, str) and cell.look.bold}


@pytest.fixture
def work(plan_of: Callable[..., Plan]) -> Work:
    rows = [["Who", "Size"], ["Ana", "M"], ["Bo", "L"], ["Cy", "S"]]
    return look_up(plan_of(rows, Job=[["Setting", "Value"], ["Shirts per strip", 1]]))


def film(work: Work, number: int) -> Film:
    plain = work.plan.pressing.steps[0].film
    return replace(plain, name=f"Film {number}", press=12, back=5, peel="warm", pressure="firm")


@pytest.mark.parametrize("cover", COVERS)
@pytest.mark.parametrize("count", [1, 2, 3])
def test_the_cover_is_told_once_beside_few_films_or_in_the_caution(count: int, cover: str, work: Work) -> None:
    press = replace(work.plan.pressing.steps[0].press, cover=cover)
    films = [film(work, number) for number in range(count)]
    rows, caution = (Leaf("Cards", job="Camp", paper="Letter") for _ in range(2))
    press_settings.write_settings(rows, work, films, press)
    press_settings.write_caution(caution, films, press)
    beside = [text for text in texts(rows) if "on top" in text]
    above = [text for text in texts(caution) if "on top" in text]
    told = (count, 0) if count < 3 else (0, 1)
    assert (len(beside), len(above)) == (told if cover else (0, 0))
    assert all(text.endswith("cover sheet on top") for text in beside)
    assert all(text.endswith("Cover sheet on top.") for text in above)
    assert all(text.startswith("CAUTION") for text in texts(caution)[:1])


@pytest.mark.parametrize("count", [1, 3])
def test_what_is_set_at_the_press_is_bold(count: int, work: Work) -> None:
    leaf = Leaf("Cards", job="Camp", paper="Letter")
    press_settings.write_settings(
        leaf, work, [film(work, number) for number in range(count)], work.plan.pressing.steps[0].press
    )
    bold = bold_texts(leaf)
    assert {"Film 0", "12 s", "firm", "warm"} <= bold
    assert any("°F" in text for text in bold)
    assert not any("back 5 s" in text or "warm-up" in text for text in bold)
    assert any("then back 5 s" in text for text in texts(leaf))


def test_one_stop_after_the_first_of_several_batches(work: Work, plan_of: Callable[..., Plan]) -> None:
    leaf = Leaf("Cards", job="Camp", paper="Letter")
    press_cards.write(leaf, work, 20.0)
    told = [text for text in texts(leaf) if text.startswith(("BATCH", "STOP"))]
    assert [text.split(":")[0] for text in told] == ["BATCH 1", "STOP after batch 1", "BATCH 2", "BATCH 3"]
    single = Leaf("Cards", job="Camp", paper="Letter")
    press_cards.write(single, look_up(plan_of([["Who", "Size"], ["Ana", "M"]])), 20.0)
    assert not any(text.startswith("STOP") for text in texts(single))
