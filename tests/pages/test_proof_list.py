"""The printed proof says of every name whether its letters are narrowed, in two columns as in one."""

import re
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.pages.cells import texts_of
from xlbatch.pages.write_pages import write_pages
from xlbatch.plan import Plan


@pytest.mark.parametrize("count", [6, 30])
def test_narrowed_letters_are_told(plan_of: Callable[..., Plan], tmp_path: Path, count: int) -> None:
    names = ["Bo", *(f"Theodora Vandermere {chr(65 + no)}" for no in range(count - 1))]
    plan = plan_of([["Who", "Size"], *([name, "M"] for name in names)])
    write_pages(tmp_path / "pages.xlsx", plan, "plan.xlsx")
    sizes = [text for text in texts_of(tmp_path / "pages.xlsx", "Proof") if re.match(r"[\d /]+ × [\d /]+ in", text)]
    assert len(sizes) == count
    assert sum("80%" in size for size in sizes) == count - 1
