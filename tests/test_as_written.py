"""The returned sheets and pages of small jobs, line by line: a change is seen here before anyone presses by it.

The money of `relay` was reckoned by hand: Ana's shirt is at hand, so 0 + 5.77 of film + 0.45 + 3/11 of the labor of
22.35 (74.5 min at 18.00) is 12.315, with 12.5 % 13.85, in quarters 14.00; Bo 4.75 + 6.99 + 0.45 + 6.095, 20.57, 20.75;
Cy 3.85 + 2.99 + 0.45 + 6.095, 15.06, 15.25; Di 5.15 + 8.00 + 0.45 + 2/11, 19.87, 20.00. Film by the area of its boxes.
"""

from collections.abc import Mapping

import pytest

from tests.plan_texts import AGAIN, ASKED, FOLDER, JOBS, NAMES, texts
from tests.small_texts import SMALL


@pytest.fixture(scope="module", params=NAMES)
def written(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Mapping[str, str]:
    return dict(texts(request.param, tmp_path_factory.mktemp(request.param)))


def test_every_line_is_as_it_was(written: Mapping[str, str]) -> None:
    """Where a change is meant: python -m tests.plan_texts, and look at what git diff shows."""
    for file, text in written.items():
        assert text.splitlines() == (FOLDER / file).read_text(encoding="utf-8").splitlines(), file


def test_no_text_is_kept_that_no_job_gives() -> None:
    files = {f"{name} {part}.txt" for name in JOBS for part in ("plan", "to print", "cut files", "what if")}
    files |= {f"{name} {part} 2.txt" for name in AGAIN for part in ("plan", "to print")}
    files |= {f"{name} {part}.txt" for name in ASKED for part in ("new list", "forms")}
    files |= {"sign up form.txt", *(f"{name}.txt" for name in SMALL)}
    assert {path.name for path in FOLDER.iterdir()} == files
