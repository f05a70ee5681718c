"""Shopping list, film needs and hours → what each garment costs and who owes what, to the cent.

Costs are exact fractions until they are shared out in cents, so that equal things get equal prices and columns add up.
"""

import math
from collections import Counter, defaultdict
from collections.abc import Hashable, Iterable, Mapping, Sequence
from dataclasses import replace
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

from xlbatch.art.decal import Decal as FilmDecal
from xlbatch.check.garment import Garment
from xlbatch.film.layout import Layout
from xlbatch.job.costs import Costs
from xlbatch.job.job import Job, RosterRow, Settings
from xlbatch.schedule.hours import TimePlan
from xlbatch.shopping.lines import CENT, Account, BuyLine, MoneyLine
from xlbatch.trade.tables import color_name

ROUNDING = Fraction(1, 10**9)  # of a step: areas are floats
NOTHING = Costs(*(Decimal("0.00"),) * 4)

Shares = Sequence[Fraction | None]  # a garment each, in their order; None where a price is missing


def money(
    job: Job,
    garments: tuple[Garment, ...],
    decals: tuple[FilmDecal, ...],
    layout: Layout,
    shopping: tuple[BuyLine, ...],
    time: TimePlan,
) -> tuple[MoneyLine, ...]:
    """One line a garment, by number. Blanks (with spares) and film (as bought) add up to the shopping list's cost, to
    the cent. Once anything was ordered or pressed, prices told stand, for redos and late joiners of the same thing
    too."""
    lines = _to_make(job, garments, decals, layout, shopping, time) if garments else []
    done = (
        _line(row, job.costs.get(row.no, NOTHING), job.prices[row.no], told=True)
        for row in job.roster
        if row.status == "done" and row.no in job.prices
    )
    return tuple(sorted((*lines, *done), key=lambda line: line.no))


def _to_make(
    job: Job,
    garments: tuple[Garment, ...],
    decals: tuple[FilmDecal, ...],
    layout: Layout,
    shopping: tuple[BuyLine, ...],
    time: TimePlan,
) -> list[MoneyLine]:
    """The lines of the garments still to make, in their order."""
    shares = (
        _blank_shares(garments, shopping),
        _film_shares(job.settings, garments, decals, layout),
        _even(None if job.settings.supplies_per_garment is None else _supplies(shopping), garments),
        _labor_shares(job.settings, garments, decals, time),
    )
    columns = [_cents(share) for share in shares]
    costs = [Costs(*parts) for parts in zip(*columns, strict=True)]
    prices = _prices(job.settings, garments, shares)
    lines = [_line(garment.row, cost, price) for garment, cost, price in zip(garments, costs, prices, strict=True)]
    if _begun(job):
        told = {no: _line(garment.row, job.costs.get(no, NOTHING), job.prices[no], told=True)
                for garment in garments if (no := garment.no) in job.prices}  # fmt: skip
        like = _told_alike(job, garments)
        lines = [
            told.get(line.no) or _as_told(line, like.get(_thing(garment, job.settings)))
            for line, garment in zip(lines, garments, strict=True)
        ]
    return lines


def account(lines: Iterable[MoneyLine], settings: Settings) -> Account | None:
    """What all prices come to, and of what; None where a price or a cost is missing."""
    lines = tuple(lines)
    if not lines or any(None in (line.price, line.blank, line.film) for line in lines):
        return None
    parts = (part for line in lines for part in (line.blank, line.film, line.supplies, line.labor))
    cost = sum((part for part in parts if part is not None), Decimal(0))
    prices = sum((line.price for line in lines if line.price is not None), Decimal(0))
    if settings.fixed_price is not None:
        margin = settings.fixed_price * len(lines) - cost
    else:
        margin = (cost * (settings.margin or 0)).quantize(CENT, ROUND_HALF_UP)
    return Account(prices, cost, margin, prices - cost - margin)


def shared_out(amount: Decimal, weights: Sequence[float | Fraction]) -> tuple[Decimal, ...]:
    """An amount split by weights into cents that add up to it exactly (largest remainders get the odd cents)."""
    cents = int((amount / CENT).to_integral_value(ROUND_HALF_UP))
    exact_weights = [Fraction(weight) for weight in weights]
    total = sum(exact_weights)
    if not weights:
        return ()
    exact = [cents * weight / total if total else Fraction(cents, len(weights)) for weight in exact_weights]
    whole = [math.floor(share) for share in exact]
    by_remainder = sorted(range(len(weights)), key=lambda place: (whole[place] - exact[place], place))
    for place in by_remainder[: cents - sum(whole)]:
        whole[place] += 1
    return tuple(count * CENT for count in whole)


def _begun(job: Job) -> bool:
    """Whether anything was ordered, has come or was pressed, in this plan or before it."""
    pressed = any(row.status == "done" or row.done_so_far for row in job.roster)
    ordered = any(stock.on_the_way or stock.on_hand for stock in job.orders.values())
    return pressed or ordered or bool(job.told) or any(line.came is not None for line in job.deliveries)


def _thing(garment: Garment, settings: Settings) -> Hashable:
    """What garments have in common that cost the same."""
    blank, design = garment.blank, garment.design[0].design.casefold()
    if settings.price_by == "job":
        return ()
    if settings.price_by == "class":
        return blank.garment.casefold(), blank.for_, design
    return blank.garment.casefold(), blank.size, color_name(garment.color), design


def _line(row: RosterRow, costs: Costs, price: Decimal | None, *, told: bool = False) -> MoneyLine:
    return MoneyLine(row.no, row.who, row.group, *costs, price, row.paid, told)


def _as_told(line: MoneyLine, price: Decimal | None) -> MoneyLine:
    return replace(line, price=line.price if price is None else price, told=True)


def _told_alike(job: Job, garments: tuple[Garment, ...]) -> Mapping[Hashable, Decimal]:
    """The price told most often for each thing, of two as often the one told first; done garments count too."""
    things = {garment.no: _thing(garment, job.settings) for garment in garments}
    prices: dict[Hashable, Counter[Decimal]] = defaultdict(Counter)
    for row in sorted(job.roster, key=lambda row: row.no):
        thing = things.get(row.no) or _thing_of_row(row, job)
        if row.no in job.prices and thing is not None:
            prices[thing].update([job.prices[row.no]])
    return {thing: max(counted, key=counted.__getitem__) for thing, counted in prices.items()}


def _thing_of_row(row: RosterRow, job: Job) -> Hashable:
    """The thing of a garment that is no longer to be made; None where its blank is not known."""
    settings = job.settings
    name, color = (row.garment or settings.usual_garment).casefold(), color_name(row.color or settings.usual_color)
    blank = next((blank for blank in job.blanks if (blank.garment.casefold(), blank.size) == (name, row.size)), None)
    design = (row.design or settings.usual_design).casefold()
    if settings.price_by == "job":
        return ()
    if blank is None:
        return None
    return (name, blank.for_, design) if settings.price_by == "class" else (name, row.size, color, design)


def _prices(settings: Settings, garments: tuple[Garment, ...], shares: Sequence[Shares]) -> list[Decimal | None]:
    """The fixed price, or what garments alike cost on average, with the margin, rounded up; None where the cost of a
    blank or of film is not known."""
    if settings.fixed_price is not None:
        return [settings.fixed_price] * len(garments)
    blank, film, *others = shares
    known = [blank, film, *(share for share in others if None not in share)]
    alike: dict[Hashable, list[Fraction | None]] = defaultdict(list)
    things = [_thing(garment, settings) for garment in garments]
    for thing, *parts in zip(things, *known, strict=True):
        alike[thing].append(_sum(parts))
    factor = 1 + Fraction(settings.margin or 0)
    totals = {thing: (_sum(costs), len(costs)) for thing, costs in alike.items()}
    price = {
        thing: None if total is None else _rounded_up(total / count * factor, settings.price_rounding)
        for thing, (total, count) in totals.items()
    }
    return [price[thing] for thing in things]


def _sum(parts: Sequence[Fraction | None]) -> Fraction | None:
    """The sum; None where a part is not known."""
    known = [part for part in parts if part is not None]
    return sum(known, Fraction(0)) if len(known) == len(parts) else None


def _rounded_up(amount: Fraction, step: Decimal) -> Decimal:
    step = step or CENT
    return (math.ceil(amount / Fraction(step) - ROUNDING) * step).quantize(CENT)


def _cents(shares: Shares) -> tuple[Decimal | None, ...]:
    """Exact shares in cents that add up to the sum of those that are known."""
    known = [share for share in shares if share is not None]
    total = sum(known, Fraction(0))
    cents = iter(shared_out(Decimal(total.numerator) / Decimal(total.denominator), known))
    return tuple(None if share is None else next(cents) for share in shares)


def _even(amount: Decimal | None, garments: Sequence[Garment]) -> Shares:
    return [None if amount is None else Fraction(amount) / len(garments)] * len(garments)


def _blank_shares(garments: tuple[Garment, ...], shopping: tuple[BuyLine, ...]) -> Shares:
    """A kind's blanks shared by those who need it, and all spares by all; None for a kind without a price."""
    shares: dict[int, Fraction | None] = dict.fromkeys((garment.no for garment in garments), Fraction(0))
    of_kind: dict[tuple[str, str, str], list[int]] = defaultdict(list)
    for garment in garments:
        if garment.needs_blank:
            of_kind[garment.blank.garment, garment.blank.size, color_name(garment.color)].append(garment.no)
    spares = Fraction(0)
    for line in (line for line in shopping if line.kind == "blank" and line.buy):
        wearers = of_kind[line.garment, line.size, line.color]
        if line.cost is None:
            shares.update(dict.fromkeys(wearers))
            continue
        needed = Fraction(max(0, line.needed - line.on_hand - line.on_the_way), line.buy) * Fraction(line.cost)
        spares += Fraction(line.cost) - needed
        shares.update((no, needed / len(wearers)) for no in wearers)
    known = [share for share in shares.values() if share is not None]
    return [None if share is None else share + spares / len(known) for share in shares.values()]


def _film_shares(
    settings: Settings, garments: tuple[Garment, ...], decals: tuple[FilmDecal, ...], layout: Layout
) -> Shares:
    """All film over all garments; by own cost, each film by the area of its decals' boxes."""
    if settings.price_by != "own cost":
        costs = [need.cost for need in layout.needs]
        known = [cost for cost in costs if cost is not None]
        return _even(sum(known, Decimal(0)) if len(known) == len(costs) else None, garments)
    shares: dict[int, Fraction | None] = dict.fromkeys((garment.no for garment in garments), Fraction(0))
    for need in layout.needs:
        own = [decal for decal in decals if decal.film.casefold() == need.film.name.casefold()]
        areas = [Fraction(decal.width * decal.height) for decal in own]
        for decal, area in zip(own, areas, strict=True):
            part = None if need.cost is None else Fraction(need.cost) * area / sum(areas)
            shares[decal.garment_no] = _sum([shares[decal.garment_no], part])
    return list(shares.values())


def _supplies(shopping: tuple[BuyLine, ...]) -> Decimal:
    return sum((line.cost for line in shopping if line.kind == "supply" and line.cost is not None), Decimal(0))


def _labor_shares(
    settings: Settings, garments: tuple[Garment, ...], decals: tuple[FilmDecal, ...], time: TimePlan
) -> Shares:
    """All hours over all garments; by own cost, by the number of decals."""
    if settings.labor_per_hour is None:
        return _even(None, garments)
    cost = (settings.labor_per_hour * Decimal(str(time.seconds)) / 3600).quantize(CENT, ROUND_HALF_UP)
    if settings.price_by != "own cost" or not decals:
        return _even(cost, garments)
    count = Counter(decal.garment_no for decal in decals)
    return [Fraction(cost) * count[garment.no] / len(decals) for garment in garments]
