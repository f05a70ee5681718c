"""Shopping list, film needs and hours → what each garment costs and who owes what, to the cent."""

import math
from collections import defaultdict
from collections.abc import Sequence
from decimal import ROUND_HALF_UP, Decimal

from xlbatch.art.decal import Decal as FilmDecal
from xlbatch.check.garment import Garment
from xlbatch.film.layout import Layout
from xlbatch.job.job import Job, RosterRow, Settings
from xlbatch.schedule.hours import TimePlan
from xlbatch.shopping.lines import CENT, BuyLine, MoneyLine
from xlbatch.trade.tables import color_name

Shares = dict[int, Decimal | None]  # by garment number


def money(
    job: Job,
    garments: tuple[Garment, ...],
    decals: tuple[FilmDecal, ...],
    layout: Layout,
    shopping: tuple[BuyLine, ...],
    time: TimePlan,
) -> tuple[MoneyLine, ...]:
    """One line a garment, by number. Blanks (with spares) and film (as bought) add up to the shopping list's cost, to
    the cent. Prices told stand once pressing has begun; so those of the garments done stay known."""
    settings, told = job.settings, job.prices if _begun(job) else {}
    blanks = _blank_shares(garments, shopping)
    film = _film_shares(garments, decals, layout)
    labor = _labor_shares(settings, garments, decals, time)
    to_do = (
        _line(settings, garment, blanks[garment.no], film[garment.no], labor[garment.no], told.get(garment.no))
        for garment in garments
    )
    done = (_done(row, told[row.no]) for row in job.roster if row.status == "done" and row.no in told)
    return tuple(sorted((*to_do, *done), key=lambda line: line.no))


def _begun(job: Job) -> bool:
    """Whether anything was pressed, in this plan or before it."""
    return any(row.status == "done" or row.done_so_far for row in job.roster)


def _done(row: RosterRow, price: Decimal) -> MoneyLine:
    nothing = Decimal("0.00")
    return MoneyLine(row.no, row.who, row.group, *(nothing,) * 4, price, row.paid)


def shared_out(amount: Decimal, weights: Sequence[float]) -> tuple[Decimal, ...]:
    """An amount split by weights into cents that add up to it exactly (largest remainders get the odd cents)."""
    cents, total = int((amount / CENT).to_integral_value(ROUND_HALF_UP)), math.fsum(weights)
    if not weights:
        return ()
    exact = [cents * weight / total if total else cents / len(weights) for weight in weights]
    whole = [math.floor(each + 1e-9) for each in exact]
    by_remainder = sorted(range(len(weights)), key=lambda at: (whole[at] - exact[at], at))
    for at in by_remainder[: cents - sum(whole)]:
        whole[at] += 1
    return tuple(count * CENT for count in whole)


def _blank_shares(garments: tuple[Garment, ...], shopping: tuple[BuyLine, ...]) -> Shares:
    shares: Shares = {garment.no: Decimal("0.00") for garment in garments}
    of_kind: dict[tuple[str, str, str], list[int]] = defaultdict(list)
    for garment in garments:
        if garment.needs_blank:
            of_kind[garment.blank.garment, garment.blank.size, color_name(garment.color)].append(garment.no)
    for line in shopping:
        if line.kind == "blank":
            them = of_kind[line.garment, line.size, line.color]
            split = [None] * len(them) if line.cost is None else shared_out(line.cost, [1.0] * len(them))
            shares.update(zip(them, split, strict=True))
    return shares


def _film_shares(garments: tuple[Garment, ...], decals: tuple[FilmDecal, ...], layout: Layout) -> Shares:
    """Each film's cost by the area of its decals' boxes."""
    shares: Shares = {garment.no: Decimal("0.00") for garment in garments}
    of_film: dict[str, list[FilmDecal]] = defaultdict(list)
    for decal in decals:
        of_film[decal.film.casefold()].append(decal)
    for need in layout.needs:
        them = of_film[need.film.name.casefold()]
        areas = [decal.width * decal.height for decal in them]
        parts = [None] * len(them) if need.cost is None else shared_out(need.cost, areas)
        for decal, part in zip(them, parts, strict=True):
            so_far = shares[decal.garment_no]
            shares[decal.garment_no] = None if so_far is None or part is None else so_far + part
    return shares


def _labor_shares(
    settings: Settings, garments: tuple[Garment, ...], decals: tuple[FilmDecal, ...], time: TimePlan
) -> Shares:
    """All hours by the number of decals."""
    if settings.labor_per_hour is None:
        return {garment.no: None for garment in garments}
    cost = settings.labor_per_hour * Decimal(str(time.seconds)) / 3600
    count: dict[int, int] = defaultdict(int)
    for decal in decals:
        count[decal.garment_no] += 1
    return dict(zip((g.no for g in garments), shared_out(cost, [float(count[g.no]) for g in garments]), strict=True))


def _line(
    settings: Settings,
    garment: Garment,
    blank: Decimal | None,
    film: Decimal | None,
    labor: Decimal | None,
    told: Decimal | None,
) -> MoneyLine:
    supplies = settings.supplies_per_garment
    price = settings.fixed_price if told is None else told
    if price is None and blank is not None and film is not None:
        cost = blank + film + (supplies or 0) + (labor or 0)
        price = _rounded_up(cost * (1 + (settings.margin or 0)), settings.price_rounding)
    return MoneyLine(garment.no, garment.who, garment.group, blank, film, supplies, labor, price, garment.row.paid)


def _rounded_up(amount: Decimal, step: Decimal) -> Decimal:
    step = step or CENT
    return (math.ceil(amount / step) * step).quantize(CENT)
