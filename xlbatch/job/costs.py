"""What a garment costs."""

from decimal import Decimal
from typing import NamedTuple


class Costs(NamedTuple):
    """A garment's share of what the job costs; None where a price is missing."""

    blank: Decimal | None
    film: Decimal | None
    supplies: Decimal | None
    labor: Decimal | None


def sign_of(currency: str) -> str:
    """What stands before an amount: `$`, or `CHF` and a space."""
    sign = currency.replace('"', "")
    return f"{sign} " if sign[-1:].isalpha() else sign
