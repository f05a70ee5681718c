"""How many spare blanks, so that the whole job finishes without a second order."""

import math
from collections.abc import Sequence

from xlbatch.trade.spoilage import enough


def spares(needs: Sequence[int], spoil: float, sureness: float) -> tuple[int, ...]:
    """The fewest spares of each kind so that P(enough good ones of every kind) ≥ sureness.

    `spoil` is the share of pieces that go wrong and `sureness` a probability, both 0 to 1. Each next spare goes
    to the kind whose chance of being enough gains most; for one kind alone it is the binomial least buy."""
    extra = [0] * len(needs)
    chance = [enough(need, need, spoil) for need in needs]
    with_one_more = [enough(need + 1, need, spoil) for need in needs]
    while math.prod(chance) < sureness:
        best = max(range(len(needs)), key=lambda at: (with_one_more[at] / chance[at], -at))
        extra[best] += 1
        chance[best] = with_one_more[best]
        with_one_more[best] = enough(needs[best] + extra[best] + 1, needs[best], spoil)
    return tuple(extra)
