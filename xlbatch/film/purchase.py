"""What film to take from the pieces on hand, and what to buy."""

import math
from collections import Counter, defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal as Money

from xlbatch.art.decal import Decal
from xlbatch.film.bound import least_length
from xlbatch.film.box import UM, bed_of, box_of
from xlbatch.film.free import pack
from xlbatch.film.layout import FilmNeed, Run
from xlbatch.film.rolls import Pattern, Scrap, Want, cheapest_rolls
from xlbatch.job.job import Film, Piece, Roll, Settings
from xlbatch.trade.spoilage import least_buy
from xlbatch.units import length_text

CENT = 100
FREE_TRIES = 2000  # over the boxes: how long is searched for what the strips cost
A_ROLL = 10_000_000  # without prices, one roll more counts for more than any length (mm)


@dataclass(frozen=True)
class _Supply:
    """What the runs are cut from, the others from rolls (by run number); what is bought; what is left of both."""

    pieces: Mapping[int, Piece]
    rolls: tuple[Roll, ...]
    old: tuple[Piece, ...]
    new: tuple[Piece, ...]


def film_need(film: Film, runs: Sequence[Run], settings: Settings) -> tuple[tuple[Run, ...], FilmNeed]:
    """The runs with what each is cut from, and what the film comes to."""
    spare = _spare(runs, settings)
    supply = _supply(film, runs, spare, settings)
    cut = tuple(replace(run, cut_from=_called(supply.pieces.get(run.no), settings)) for run in runs)
    length, on_hand = (sum(run.length for run in some) for some in (runs, [r for r in runs if r.no in supply.pieces]))
    kept = sum(piece.length for piece in supply.old if _usable(film, piece) >= film.usable_width)
    decals = [lying.decal for run in runs for lying in run.lying]
    counts = Counter(supply.rolls)
    buy = round(length - on_hand + max(0.0, spare - kept), 3)
    return cut, FilmNeed(
        film=film,
        decals=len(decals),
        runs=len(runs),
        length=round(length, 3),
        least=_least(film, runs, settings),
        free=_free(film, runs, settings),
        used=sum(_area(each, settings) for each in decals) / (length * film.usable_width),
        on_hand=round(on_hand, 3),
        spare=spare,
        buy=buy,
        rolls=tuple((counts[roll], roll) for roll in sorted(counts, key=lambda roll: -roll.length)),
        left=supply.old + supply.new,
        cost=_cost_of(supply.rolls) if film.rolls or not buy else None,
    )


def _supply(film: Film, runs: Sequence[Run], spare: float, settings: Settings) -> _Supply:
    """The cheapest rolls beside the pieces on hand, each run cut from one of them.

    Where no price is known, the fewest rolls, then the shortest; where no roll is known, as little as possible."""
    offered = _on_offer(film, max(run.length for run in runs))
    wants = [_want(film, run, offered) for run in runs]
    rolls = [(int(roll.length), _cost(roll)) for roll in offered]
    rolls = rolls or [(length, length) for length in sorted({want.length for want in wants})]
    scraps = [_scrap(film, piece, settings) for piece in film.on_hand]
    patterns = cheapest_rolls(wants, rolls, math.ceil(spare) if offered else 0, scraps)
    cuts = _cuts(runs, wants, patterns)
    bought = [at for at, pattern in enumerate(patterns) if offered and not pattern.scrap]
    on_hand = {pattern.at: cuts[at] for at, pattern in enumerate(patterns) if pattern.scrap}
    return _Supply(
        {run.no: film.on_hand[at] for at, cut in on_hand.items() for run in cut},
        tuple(offered[patterns[at].at] for at in bought),
        _left([(piece, on_hand.get(at, ())) for at, piece in enumerate(film.on_hand)], settings),
        _left([(Piece(film.roll_width, offered[patterns[at].at].length), cuts[at]) for at in bought], settings),
    )


def _want(film: Film, run: Run, offered: Sequence[Roll]) -> Want:
    """A run in whole mm, and the pieces that are long and wide enough; it may fill a roll to a part of a mm."""
    whole = math.ceil(run.length)
    if offered and whole > (longest := int(max(roll.length for roll in offered))):
        return Want(longest)
    across = max(lying.across + lying.width for lying in run.lying)
    fits = (at for at, piece in enumerate(film.on_hand) if piece.length >= whole and _usable(film, piece) >= across)
    return Want(whole, tuple(fits))


def _scrap(film: Film, piece: Piece, settings: Settings) -> Scrap:
    """A piece in whole mm; its rest is spare film where the piece is as wide as the film's rolls."""
    length, full = int(piece.length), _usable(film, piece) >= film.usable_width
    return Scrap(length, math.ceil(_least_kept(settings)) if full else length + 1)


def _cuts(runs: Sequence[Run], wants: Sequence[Want], patterns: Sequence[Pattern]) -> list[list[Run]]:
    """The runs cut by each pattern."""
    waiting: dict[Want, list[Run]] = defaultdict(list)
    for run, want in zip(reversed(runs), reversed(wants), strict=True):
        waiting[want].append(run)
    return [[waiting[want].pop() for want in pattern.cut] for pattern in patterns]


def _left(cut: Sequence[tuple[Piece, Sequence[Run]]], settings: Settings) -> tuple[Piece, ...]:
    """What is left of the pieces after cutting runs from them, where it is worth keeping."""
    rests = [(piece, round(piece.length - sum(run.length for run in runs), 3)) for piece, runs in cut]
    return tuple(replace(piece, length=rest) for piece, rest in rests if rest > _least_kept(settings))


def _usable(film: Film, piece: Piece) -> float:
    """The usable width of a piece: as much narrower than the piece as the film's is than its roll."""
    return piece.width - (film.roll_width - film.usable_width)


def _called(piece: Piece | None, settings: Settings) -> str:
    if piece is None:
        return "roll"
    unit = settings.length_unit
    return f"piece {length_text(piece.width, unit)} × {length_text(piece.length, unit)}"


def _least_kept(settings: Settings) -> float:
    """How long a piece must be for anything to be cut from it besides its two end margins."""
    return 2 * settings.end_margin + settings.gap


def _least(film: Film, runs: Sequence[Run], settings: Settings) -> float:
    """The slice bound in mm, or the area bound of interlocked shapes, margins apart. Where the margins hold less than a
    gap, each run may save one."""
    bed = bed_of(film, settings)
    pieces = 1 if 2 * settings.end_margin >= settings.gap else len(runs)
    decals = [lying.decal for run in runs for lying in run.lying]
    if settings.interlock:
        from xlbatch.film.shape import least_area

        area = sum(least_area(decal, settings.gap) for decal in decals)
        least = math.floor(area / (film.usable_width + settings.gap) * UM)
    else:
        least = least_length([box_of(decal, bed.gap) for decal in decals], bed)
    return max(0, least - pieces * bed.gap) / UM


def _free(film: Film, runs: Sequence[Run], settings: Settings) -> float:
    """The length in mm, margins apart, that the same boxes take laid freely; no longer than they do in strips."""
    bed = bed_of(film, settings)
    boxes = [box_of(lying.decal, bed.gap) for run in runs for lying in run.lying]
    found = pack(boxes, bed, max(1, FREE_TRIES // len(boxes))).length - bed.gap
    if settings.interlock:
        return found / UM
    return min(found / UM, round(sum(run.length - 2 * settings.end_margin for run in runs), 3))


def _area(decal: Decal, settings: Settings) -> float:
    """The film a decal's box takes in mm²; interlocked, its shape."""
    return decal.outline.area if settings.interlock and decal.outline else decal.width * decal.height


def _spare(runs: Sequence[Run], settings: Settings) -> float:
    """Film for the decals that will go wrong, each taking as much as a decal does on average."""
    decals = sum(len(run.lying) for run in runs)
    spoil = settings.spoiled_film_per_100 / 100
    if settings.sureness is None:
        extra = math.ceil(decals * spoil)
    else:
        extra = least_buy(decals, spoil, settings.sureness / 100) - decals
    return round(sum(run.length for run in runs) * extra / decals, 3)


def _on_offer(film: Film, longest: float) -> list[Roll]:
    """The rolls with a price, if they hold the longest run; else all."""
    priced = [roll for roll in film.rolls if roll.price is not None]
    return priced if any(roll.length >= longest for roll in priced) else list(film.rolls)


def _cost(roll: Roll) -> int:
    return A_ROLL + int(roll.length) if roll.price is None else int(roll.price * CENT)


def _cost_of(rolls: Sequence[Roll]) -> Money | None:
    known = [roll.price for roll in rolls if roll.price is not None]
    return sum(known, Money(0)) if len(known) == len(rolls) else None
