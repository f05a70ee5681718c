"""What is sent to each group: a message that asks to confirm, a picture to look at, and a reminder where one is due."""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from decimal import Decimal
from functools import cache
from pathlib import PurePath

from jinja2 import Environment, FileSystemLoader, StrictUndefined, Template

from xlbatch.art.decal import Decal
from xlbatch.check.garment import Garment
from xlbatch.file_names import names_apart
from xlbatch.how_far import alive
from xlbatch.messages.group_picture import MOST, GarmentShown, group_picture
from xlbatch.paper.style import currency_sign
from xlbatch.placement.place import Place
from xlbatch.plan import Plan
from xlbatch.resources import templates
from xlbatch.shopping.lines import MoneyLine
from xlbatch.tables.days import day_text

INFANT = "infant"  # whose sizes are months


def group_files(plan: Plan) -> Mapping[str, str | bytes]:
    """The files by their names: for each group, in the order of the list, its message and a picture of the same name;
    a reminder where it has not confirmed or not paid. Garments without a group share one."""
    groups: dict[str, list[Garment]] = defaultdict(list)
    for garment in plan.garments:
        groups[garment.group].append(garment)
    missing: dict[str, list[str]] = defaultdict(list)  # people who did not say their size
    for row in plan.held:
        if row.who and not row.size:
            missing[row.group].append(row.who)
            groups.setdefault(row.group, [])
    places: dict[int, list[Place]] = defaultdict(list)
    for place in plan.places:
        places[place.garment.no].append(place)
    decals: dict[int, list[Decal]] = defaultdict(list)
    for decal in plan.decals:
        decals[decal.garment_no].append(decal)
    files: dict[str, str | bytes] = {}
    for group, name in names_apart(groups, "without a group").items():
        alive()
        facts = {**_facts(plan, group, groups[group], decals), "missing": missing[group]}
        if groups[group]:
            files[f"message - {name}.txt"] = _template("message").render(facts)
        shown = [GarmentShown(places[g.no], f"{g.no}. {g.who}", _what(g)) for g in groups[group] if places[g.no]]
        if shown:
            files[f"message - {name}.png"] = group_picture(shown, plan.job.film_colors)
        if facts["waiting"] or facts["open"] or facts["missing"]:
            files[f"reminder - {name}.txt"] = _template("reminder").render(facts)
    return files


@cache
def _template(name: str) -> Template:
    environment = Environment(  # plain text: nothing to escape
        loader=FileSystemLoader(templates()), undefined=StrictUndefined, keep_trailing_newline=True, autoescape=False
    )
    return environment.get_template(f"{name}.txt.j2")


def _facts(
    plan: Plan, group: str, garments: Sequence[Garment], decals: Mapping[int, Sequence[Decal]]
) -> Mapping[str, object]:
    """What the templates tell."""
    lines = [line for line in plan.money if line.group == group]
    told = {garment.no: _told(garment, decals[garment.no]) for garment in garments}
    sign = currency_sign(plan.job.settings)
    owed = _sum(line.owed for line in lines)
    return {
        "job": plan.job.settings.job_name,
        "group": group,
        "answer_by": day_text(plan.dates.answer_by) if plan.dates.answer_by else "",
        "garments": list(told.values()),
        "shown": MOST,
        "waiting": [told[garment.no] for garment in garments if not garment.row.confirmed],
        "owed": _owed_text(lines, sign),
        "open": list(_open(lines, sign)) if owed is not None and owed > 0 else [],
    }


def _told(garment: Garment, decals: Sequence[Decal]) -> Mapping[str, object]:
    artworks = (spec.artwork for decal in decals for spec in decal.specs if spec.artwork)
    return {
        "no": garment.no,
        "who": garment.who,
        "what": _what(garment),
        "texts": [text for decal in decals if not decal.border for text in decal.texts],
        "drawings": list(dict.fromkeys(PurePath(artwork).stem for artwork in artworks)),
    }


def _what(garment: Garment) -> str:
    """`Crew-neck tee, adult M, white`: the size with its class written out."""
    blank = garment.blank
    size = blank.size.removeprefix(f"{blank.for_.capitalize()} ")
    months = f" ({size.removesuffix('M')} months)" if blank.for_ == INFANT and size.endswith("M") else ""
    return f"{blank.garment}, {blank.for_} {size}{months}, {garment.color}"


def _sum(amounts: Iterable[Decimal | None]) -> Decimal | None:
    """The sum; None where an amount is not known."""
    known = list(amounts)
    return None if not known or None in known else sum((amount for amount in known if amount is not None), Decimal(0))


def _owed_text(lines: Sequence[MoneyLine], sign: str) -> str:
    owed, price = _sum(line.owed for line in lines), _sum(line.price for line in lines)
    if owed is None or price is None:
        return ""
    if owed > 0:
        return f"To pay: {sign}{owed:,.2f}" + (f" of {sign}{price:,.2f}." if owed != price else ".")
    return f"{sign}{-owed:,.2f} too much was paid: it is yours to have back." if owed < 0 else "All is paid, thank you."


def _open(lines: Iterable[MoneyLine], sign: str) -> Iterator[Mapping[str, str]]:
    """The garments with something to pay, and those with a credit."""
    for line in lines:
        if line.owed:
            credit = " credit" if line.owed < 0 else ""
            yield {"who": f"{line.no}. {line.who}", "amount": f"{sign}{abs(line.owed):,.2f}{credit}"}
