"""Film requirement: one row a film."""

import math

import pandas as pd

from xlbatch.film.layout import FilmNeed
from xlbatch.job.job import Film, Settings
from xlbatch.paper.cell import Formula
from xlbatch.paper.page import Column, Page, tabled
from xlbatch.paper.style import BODY, FONT, INK, LINE, currency_sign
from xlbatch.plan import Plan
from xlbatch.units import length_in, length_text, long_text, print_step, printed_length, printed_sum, printed_text


def columns(unit: str) -> tuple[Column, ...]:
    return (
        Column("Film", 1.3, ("text", "strong")),
        Column("Color", 0.75),
        Column(f"Usable width ({unit})", 0.75, ("length",)),
        Column("Decals", 0.65, ("count",)),
        Column("Runs", 0.55, ("count",)),
        Column(f"Length ({unit})", 0.75, ("length",)),
        Column(f"Least possible ({unit})", 0.85, ("length",)),
        Column("Film used", 0.65, ("percent",)),
        Column(f"Spare ({unit})", 0.65, ("length",)),
        Column(f"On hand ({unit})", 0.7, ("length",)),
        Column(f"Buy ({unit})", 0.65, ("length",)),
        Column("Rolls", 1.0, ("text", "strong")),
        Column("Cost", 0.8, ("money",)),
        Column("Left over", 1.2),
    )


def table(plan: Plan) -> pd.DataFrame:
    """What each film of the job comes to; lengths rounded up."""
    unit = plan.job.settings.length_unit
    rows = (
        (
            need.film.name,
            need.film.color,
            printed_length(need.film.usable_width, unit),
            need.decals,
            need.runs,
            length_in(film_length(plan, need.film), unit),
            printed_length(_floored(need.least, unit), unit),
            round(need.used, 4),
            printed_length(need.spare, unit, up=True),
            printed_length(need.on_hand, unit, up=True),
            printed_length(need.buy, unit, up=True),
            "; ".join(f"{count} × {long_text(roll.length, unit)}" for count, roll in need.rolls),
            need.cost,
            "; ".join(
                " x ".join(length_text(_floored(mm, unit), unit) for mm in (p.width, p.length)) for p in need.left
            ),
        )
        for need in plan.layout.needs
    )
    return tabled(columns(unit), rows)


def film_length(plan: Plan, film: Film) -> float:
    """The length in mm of a film's runs as they are printed, so that they add up to it on every sheet."""
    return printed_sum(
        (run.length for run in plan.layout.runs if run.film.name == film.name), plan.job.settings.length_unit
    )


def _floored(mm: float, unit: str) -> float:
    """Rounded down to what is printed: a proof, or a piece left, is never longer than it is."""
    step = print_step(unit)
    return math.floor(mm / step + 1e-6) * step


def _about_strips(plan: Plan) -> str:
    """What is proven of the film, and how much more or less the strips take than boxes laid freely, margins apart."""
    settings = plan.job.settings
    more = sum(need.length - 2 * settings.end_margin * need.runs - need.free for need in plan.layout.needs)
    film = printed_text(abs(more), settings.length_unit)
    least = (
        "Least possible is for these decals' boxes in one length, without end margins, and proven: no less film can "
        "hold them. "
    )
    if not settings.interlock:
        costs = (
            f"costs {film} more film than" if more >= print_step(settings.length_unit) else "costs no more film than"
        )
        return (
            f"{least}Cutting straight strips {costs} laying without strips.{_lever(plan)} "
            "Film used is decal area over film area."
        )
    return (
        f"The decals of each strip interlock: that takes {film} {'less' if more < 0 else 'more'} film in all than "
        "boxes laid without strips. Least possible is without end margins, and proven from the shapes and half the gap "
        "around them. Film used is shape area over film area."
    )


def _lever(plan: Plan) -> str:
    """The setting that was tried and saves film."""
    lever = plan.layout.lever
    if lever is None:
        return ""
    saves = printed_text(lever.saves, plan.job.settings.length_unit)
    return f" Tried: with {lever.setting} {lever.value} (Job) the strips take {saves} less, or better."


def _about_rolls(plan: Plan) -> str:
    """How sure it is that nothing cheaper would do, and that what is left is enough for decals that go wrong."""
    needs = [need for need in plan.layout.needs if need.rolls]
    if not needs:
        return ""
    doubtful = [f"{need.film.name} by {_cheaper(need, plan.job.settings)}" for need in needs if need.cheaper >= 1]
    cheapest = "It is proven that no rolls that cost less, or without prices are shorter, hold these strips."
    if doubtful:
        cheapest = f"Rolls that cost less, or without prices are shorter, may do for {', '.join(doubtful)} at most."
    sure = math.prod(need.sure for need in plan.layout.needs)
    return f"{cheapest} {sure * 100:.0f} jobs in 100 have enough left over for the pieces that go wrong."


def _cheaper(need: FilmNeed, settings: Settings) -> str:
    if need.cost is None:
        return printed_text(float(need.cheaper), settings.length_unit)
    return f"{currency_sign(settings)}{need.cheaper:,.2f}"


def write(page: Page, plan: Plan) -> None:
    """The film requirement; what all rolls cost stands in the line above it."""
    unit = plan.job.settings.length_unit
    frame = table(plan)
    page.lay_columns(columns(unit), frame)
    page.title(
        "Film requirement",
        "Length is all runs with their end margins; Spare is for decals that go wrong. "
        f"{_about_strips(plan)} Left over: measure it, and write it into On hand on Film. {_about_rolls(plan)}",
    )
    total = page.gap(18)
    page.table(frame, least=24)
    costs = [need.cost for need in plan.layout.needs]
    known = sum(cost for cost in costs if cost is not None)
    cells = page.below("Cost")
    page.write(total, 0, "All rolls together", "sum")
    missing = Formula(f'IF(COUNT({cells})=0,"",SUM({cells}))', known if any(c is not None for c in costs) else "")
    page.write(total, page.at("Cost"), missing, "sum", "money")
    if plan.layout.needs:
        _chart(page, plan.job.settings.length_unit)


def _chart(page: Page, unit: str) -> None:
    """The film each takes, beside the least that is possible."""
    page.gap()
    top = page.row
    for _ in range(14):
        page.gap(16)
    chart = page.workbook.add_chart({"type": "bar"})
    for name, color in (("Length", INK), ("Least possible", LINE)):
        chart.add_series({
            "name": f"{name} ({unit})",
            "categories": f"='{page.sheet.get_name()}'!{page.below('Film')}",
            "values": f"='{page.sheet.get_name()}'!{page.below(f'{name} ({unit})')}",
            "fill": {"color": color},
            "gap": 60,
        })  # fmt: skip
    font = {"name": FONT, "size": BODY}
    chart.set_y_axis({"reverse": True, "num_font": font})
    chart.set_x_axis({"num_font": font, "min": 0})  # so that bars are as long as what they say
    chart.set_legend({"position": "bottom", "font": font})
    chart.set_size({"width": int(page.room * 96 / 72 * 0.7), "height": 290})
    says = "Bars: for each film the length it takes, and the least length that is possible"
    page.sheet.insert_chart(top, 0, chart, {"description": says, "object_position": 3})
    page.sheet.print_area(0, 0, page.row - 1, page.last)
