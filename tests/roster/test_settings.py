"""Settings of earlier editions: what such a plan wrote by itself counts as not set."""

from collections.abc import Callable

import pytest

from xlbatch.roster.read import Reading

NOT_SET = None
KEPT = ("Last garment no.", 1)  # a plan's, of every edition


@pytest.mark.parametrize(
    ("rows", "spoiled_film", "sureness"),
    [
        ([KEPT, ("Spoiled per 100", 3), ("Sureness of spares", 95)], 3, NOT_SET),
        ([KEPT, ("Spoiled per 100", 5), ("Sureness of spares", 80)], 5, 80),  # a person's
        ([KEPT, ("Spoiled blanks per 100", 1), ("Sureness of spares", 95)], 3, 95),  # a later edition's plan
        ([("Spoiled per 100", 3), ("Sureness of spares", 95)], 3, 95),  # no plan
    ],
)
def test_usual_values_of_the_first_edition(
    rows: list[tuple[str, int]], spoiled_film: float, sureness: float | None, reading_of: Callable[..., Reading]
) -> None:
    settings = reading_of([["Who", "Size"], ["Ana", "M"]], Job=[("Setting", "Value"), *rows]).job.settings
    assert (settings.spoiled_film_per_100, settings.sureness) == (spoiled_film, sureness)
