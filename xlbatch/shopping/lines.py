"""What to buy, and the money. Money is Decimal, to the cent; None where a price is missing."""

from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from typing import Literal

from xlbatch.job.job import Paid
from xlbatch.job.marks import OrderKey

CENT = Decimal("0.01")


@dataclass(frozen=True)
class BuyLine:
    """One line of the shopping list."""

    kind: Literal["blank", "film", "supply"]
    item: str
    garment: str
    size: str
    color: str
    needed: int
    spares: int
    on_hand: int
    price: Decimal | None
    on_the_way: int = 0  # ordered before, and not come yet
    note: str = ""

    @property
    def buy(self) -> int:
        return max(0, self.needed + self.spares - self.on_hand - self.on_the_way)

    @property
    def key(self) -> OrderKey:
        return OrderKey(self.kind, self.item, self.garment, self.size, self.color)

    @property
    def cost(self) -> Decimal | None:
        """To the cent, half a cent up, as a spreadsheet's ROUND does."""
        return None if self.price is None else (self.price * self.buy).quantize(CENT, ROUND_HALF_UP)


@dataclass(frozen=True)
class SpareChoice:
    """A number of spare blanks: what they add to the cost (None where a price is missing), and the chance that no
    second order is needed."""

    name: str
    count: int
    cost: Decimal | None
    sure: float


@dataclass(frozen=True)
class Account:
    """All prices, and what they are made of: prices = cost + margin + rounding and late changes."""

    prices: Decimal
    cost: Decimal
    margin: Decimal
    rounding: Decimal


@dataclass(frozen=True)
class MoneyLine:
    """One garment's share of the cost, its price and what is owed; less than nothing where too much was paid. Where its
    price was told before, so was its share."""

    no: int
    who: str
    group: str
    blank: Decimal | None
    film: Decimal | None
    supplies: Decimal | None
    labor: Decimal | None
    price: Decimal | None
    in_roster: Paid  # what the Roster says was paid
    told: bool = False  # whether its price stands from now on

    @property
    def paid(self) -> Decimal | None:
        return self.price if self.in_roster == "yes" else self.in_roster

    @property
    def owed(self) -> Decimal | None:
        return None if self.price is None else self.price - (self.paid or 0)
