"""Changes since the plan before, as the order of the day tells them."""

import pytest

from xlbatch.kept.changes import ADDED, DELETED
from xlbatch.kept.memory import KeptChange
from xlbatch.pages.order_of_the_day import _change_text


@pytest.mark.parametrize(
    ("sheet", "what", "before", "now", "text"),
    [
        ("Roster", "Size", "M", "L", "Size M, now L"),
        ("Roster", "Color", "", "navy", "Color blank, now navy"),
        ("Job", "Value", "24 in", "", "24 in, now blank"),  # a setting's
        ("Roster", ADDED, "", "Ana, M", ADDED.removeprefix("row ")),  # who it is stands before it
        ("Designs", ADDED, "", "Crest", f"{ADDED.removeprefix('row ')} (Crest)"),
        ("Designs", DELETED, "Crest", "", f"{DELETED.removeprefix('row ')} (Crest)"),
    ],
)
def test_a_change_in_words(sheet: str, what: str, before: str, now: str, text: str) -> None:
    assert _change_text(KeptChange(2, sheet, "B2", "Ana", what, before, now, "")) == text
