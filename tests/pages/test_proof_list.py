"""The printed proof says of every name whether its letters are narrowed, in two columns as in one."""

import re
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.pages.cells import texts_of
from xlbatch.pages.leaf import Leaf, Span, columns_for
from xlbatch.pages.proof_page import write
from xlbatch.pages.work import look_up
from xlbatch.pages.write_pages import write_pages
from xlbatch.plan import Plan


@pytest.mark.parametrize("count", [6, 30])
def test_narrowed_letters_are_told(plan_of: Callable[..., Plan], tmp_path: Path, count: int) -> None:
    names = ["Bo", *(f"Theodora Vandermere {chr(65 + no)}" for no in range(count - 1))]
    plan = plan_of([["Who", "Size"], *([name, "M"] for name in names)])
    write_pages(tmp_path / "pages.xlsx", plan, "plan.xlsx")
    texts = texts_of(tmp_path / "pages.xlsx", "Proof")
    sizes = [text for text in texts if re.match(r"[\d /]+ × [\d /]+ in", text)]
    assert len(sizes) == count
    assert sum("letters 80% wide" in text for text in texts) == count - 1


def test_no_size_lies_under_its_picture(plan_of: Callable[..., Plan]) -> None:
    """A second line of the cell below a picture would be hidden by it."""
    names = [f"Theodora Vandermere-Quillfeather {chr(65 + no)}" for no in range(20)]
    work = look_up(
        plan_of([["Who", "Group", "Size"], *([name, "Vandermere household", "Ladies 2XL"] for name in names)])
    )
    page = Leaf("Proof", job="", paper="Letter")
    write(page, work, 90.0)
    below = [span for row in page.rows for span in row.spans if isinstance(span, Span) and " × " in str(span.value)]
    below = [span for span in below if span.look.valign == "bottom"]
    assert len(below) == 20
    assert all(columns_for([str(span.value)], span.look.size) <= span.columns for span in below)
