"""Letters beyond plain English are spelled out on the proof, as they are easily taken for others."""

from collections.abc import Callable

from xlbatch.plan import Plan
from xlbatch.sheets import proof

# the numbers are those of the Unicode charts C1 Controls and Latin-1 Supplement
UNUSUAL = {
    "Ana ~": "",
    "Zoë": "ë U+00EB",
    "ñoñ": "ñ U+00F1",  # told once
    "ñéö": "ñ U+00F1, é U+00E9, ö U+00F6",
    "ñéöà": "ñ U+00F1, é U+00E9, ö U+00F6, …",
}


def test_the_first_three_unusual_letters_of_a_garment_are_spelled_out(plan_of: Callable[..., Plan]) -> None:
    head, *names = ["Print name"], *([name] for name in UNUSUAL)
    plan = plan_of([["Who", "Size", *head], *(["Guest", "M", *name] for name in names)])
    table = proof.table(plan)
    assert dict(zip(table["Exact text"], table["Unusual letters"], strict=True)) == UNUSUAL
