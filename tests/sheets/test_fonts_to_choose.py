"""Fonts are shown with the list's own texts that show most: the longest, and the one of the rarest letters."""

from collections.abc import Sequence

import pytest

from xlbatch.sheets.fonts_sheet import STOCK, _shown, _telling


@pytest.mark.parametrize(
    ("names", "telling"),
    [
        ((), ()),
        (("Bo", "Ana"), ("Ana", "Bo")),
        (("Ana", "Maximilian", "Žoë", "José"), ("Maximilian", "Žoë")),
        (("Ana~", "Zoé", "Maxim"), ("Maxim", "Zoé")),
        (("Ana", "Žofie Ďáblová"), ("Žofie Ďáblová",)),
    ],
)
def test_the_longest_and_the_oddest_name(names: Sequence[str], telling: Sequence[str]) -> None:
    assert _telling(names) == telling


def test_a_font_is_shown_with_what_it_has_all_letters_of() -> None:
    assert _shown("Anton", ["Žoë", "Ana"]) == "Žoë   Ana"
    assert _shown("Anton", ["Ana", "木"]) == "Ana"
    assert _shown("Anton", ["木"]) == STOCK
