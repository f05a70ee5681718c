"""What film to take from the pieces on hand, and what to buy."""

import math
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, replace
from decimal import Decimal as Money

from xlbatch.film.bound import least_length
from xlbatch.film.box import UM, bed_of, box_of
from xlbatch.film.layout import FilmNeed, Run
from xlbatch.film.rolls import Pattern, cheapest_rolls
from xlbatch.roster.job import Film, Piece, Roll, Settings
from xlbatch.trade.spares import least_buy
from xlbatch.units import length_text

CENT = 100
A_ROLL = 10_000_000  # without prices, one roll more counts for more than any length (mm)


@dataclass(frozen=True)
class _Bought:
    """What is bought, and what is left of it when nothing goes wrong."""

    length: float
    rolls: tuple[tuple[int, Roll], ...]
    left: tuple[Piece, ...]
    cost: Money | None


def film_need(film: Film, runs: Sequence[Run], settings: Settings) -> tuple[tuple[Run, ...], FilmNeed]:
    """The runs with what each is cut from, and what the film comes to."""
    cut, left = _from_pieces(film, runs, settings)
    spare = _spare(runs, settings)
    kept = sum(piece.length for piece in left if _usable(film, piece) >= film.usable_width)
    bought = _buy(film, [run.length for run in cut if run.cut_from == "roll"], max(0.0, spare - kept), settings)
    length = sum(run.length for run in runs)
    decals = [lying.decal for run in runs for lying in run.lying]
    return cut, FilmNeed(
        film=film,
        decals=len(decals),
        runs=len(runs),
        length=round(length, 3),
        least=_least(film, runs, settings),
        used=sum(each.width * each.height for each in decals) / (length * film.usable_width),
        on_hand=round(sum(run.length for run in cut if run.cut_from != "roll"), 3),
        spare=spare,
        buy=bought.length,
        rolls=bought.rolls,
        left=left + bought.left,
        cost=bought.cost,
    )


def _usable(film: Film, piece: Piece) -> float:
    """The usable width of a piece: as much narrower than the piece as the film's is than its roll."""
    return piece.width - (film.roll_width - film.usable_width)


def _from_pieces(film: Film, runs: Sequence[Run], settings: Settings) -> tuple[tuple[Run, ...], tuple[Piece, ...]]:
    """Cuts the longest runs first, each from the shortest piece on hand that holds it."""
    left = list(film.on_hand)
    source: dict[int, Piece] = {}
    for run in sorted(runs, key=lambda run: (-run.length, run.no)):
        across = max(lying.across + lying.width for lying in run.lying)
        fits = [at for at, piece in enumerate(left) if piece.length >= run.length and _usable(film, piece) >= across]
        if fits:
            at = min(fits, key=lambda at: (left[at].length, left[at].width, at))
            source[run.no] = film.on_hand[at]
            left[at] = replace(left[at], length=round(left[at].length - run.length, 3))
    cut = tuple(replace(run, cut_from=_called(source[run.no], settings)) if run.no in source else run for run in runs)
    return cut, tuple(piece for piece in left if _worth_keeping(piece.length, settings))


def _called(piece: Piece, settings: Settings) -> str:
    unit = settings.length_unit
    return f"piece {length_text(piece.width, unit)} × {length_text(piece.length, unit)}"


def _worth_keeping(length: float, settings: Settings) -> bool:
    """Whether anything can be cut from a piece besides its two end margins."""
    return length > 2 * settings.end_margin + settings.gap


def _least(film: Film, runs: Sequence[Run], settings: Settings) -> float:
    """The slice bound in mm, margins apart. Where the margins hold less than a gap, each run may save one."""
    bed = bed_of(film, settings)
    pieces = 1 if 2 * settings.end_margin >= settings.gap else len(runs)
    boxes = [box_of(lying.decal, bed.gap) for run in runs for lying in run.lying]
    return max(0, least_length(boxes, bed) - pieces * bed.gap) / UM


def _spare(runs: Sequence[Run], settings: Settings) -> float:
    """Film for the decals that will go wrong, each taking as much as a decal does on average."""
    decals = sum(len(run.lying) for run in runs)
    extra = least_buy(decals, settings.spoiled_per_100 / 100, settings.sureness / 100) - decals
    return round(sum(run.length for run in runs) * extra / decals, 3)


def _buy(film: Film, lengths: Sequence[float], spare: float, settings: Settings) -> _Bought:
    """The cheapest rolls for these runs and the spare film; the fewest, then shortest, where no price is known."""
    needed = round(sum(lengths) + spare, 3)
    rolls = _on_offer(film, max(lengths, default=0.0))
    if not needed:
        return _Bought(0.0, (), (), Money(0))
    if not rolls:
        return _Bought(needed, (), (), None)
    longest = int(max(roll.length for roll in rolls))  # a run may fill the longest roll to a part of a mm
    whole = [min(math.ceil(length), longest) for length in lengths]
    patterns = cheapest_rolls(whole, [(int(roll.length), _cost(roll)) for roll in rolls], math.ceil(spare))
    counts = Counter(pattern.roll for pattern in patterns)
    prices = [rolls[at].price for at in counts.elements()]
    known = [price for price in prices if price is not None]
    cost = sum(known, Money(0)) if len(known) == len(prices) else None
    left = tuple(_left(film, rolls[pattern.roll], pattern) for pattern in patterns)
    return _Bought(
        needed,
        tuple((counts[at], rolls[at]) for at in sorted(counts, key=lambda at: -rolls[at].length)),
        tuple(piece for piece in left if _worth_keeping(piece.length, settings)),
        cost,
    )


def _on_offer(film: Film, longest: float) -> list[Roll]:
    """The rolls with a price, if they hold the longest run; else all."""
    priced = [roll for roll in film.rolls if roll.price is not None]
    return priced if any(roll.length >= longest for roll in priced) else list(film.rolls)


def _cost(roll: Roll) -> int:
    return A_ROLL + int(roll.length) if roll.price is None else int(roll.price * CENT)


def _left(film: Film, roll: Roll, pattern: Pattern) -> Piece:
    return Piece(film.roll_width, roll.length - sum(pattern.cut))
