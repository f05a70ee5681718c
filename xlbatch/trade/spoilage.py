"""How many pieces to get when some of them go wrong."""

import math


def enough(bought: int, need: int, spoil: float) -> float:
    """The chance that at least `need` of `bought` pieces are good, each going wrong with probability `spoil`.

    The binomial distribution, summed over the pieces that may go wrong, in logarithms so that thousands work too."""
    if spoil <= 0 or need <= 0:
        return float(bought >= need)
    if spoil >= 1:
        return 0.0
    return min(1.0, math.fsum(_exactly(wrong, bought, spoil) for wrong in range(bought - need + 1)))


def _exactly(wrong: int, bought: int, spoil: float) -> float:
    good = bought - wrong
    ways = math.lgamma(bought + 1) - math.lgamma(wrong + 1) - math.lgamma(good + 1)
    return math.exp(ways + wrong * math.log(spoil) + good * math.log1p(-spoil))


def least_buy(need: int, spoil: float, sureness: float) -> int:
    """The fewest pieces of which at least `need` are good with a chance of `sureness`.

    `spoil` and `sureness` from 0 to 1. Raises ValueError where all pieces go wrong or full sureness is asked for."""
    if not (0 <= spoil < 1 and 0 <= sureness < 1):
        raise ValueError("spoil and sureness must be below 1")
    bought = need
    while enough(bought, need, spoil) < sureness:
        bought += 1
    return bought
