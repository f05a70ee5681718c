"""The words of a press card: whose garment it is, and each step in one line."""

import re

from xlbatch.check.garment import Garment
from xlbatch.pages.page_looks import WORK, Text
from xlbatch.pages.work import Work, aside_text, corner_text, where_text
from xlbatch.paper.style import BOX
from xlbatch.press.step import PressStep
from xlbatch.sheets.how import minded

KEPT = re.compile(r"(?<=\d) (?=(?:s|in|cm|mm)\b)")  # between a number and its unit no line is broken
SEAMS = {  # how a seam is called on a card: the collar seam of its side is what is measured from if nothing is said
    "below front collar seam": "", "below back collar seam": "", "below point of the V": "from V",
    "below side of the collar seam": "from the seam’s side",
}  # fmt: skip


def who_text(work: Work, garment: Garment, *, one_line: bool) -> tuple[Text, ...]:
    """Name, size and, on a line of their own, garment and color."""
    name = Text(garment.who or f"no. {garment.no}", bold=True)
    if one_line:
        kind = "" if work.one_kind else f"  {work.garment_text(garment)}"
        return name, Text(f"  {garment.blank.size}"), Text(kind)
    return name, Text(f"\n{garment.blank.size}", bold=True), Text(f"  {work.garment_text(garment)}")


def step_text(work: Work, number: str, step: PressStep, size: float) -> tuple[Text, ...]:
    """`☐ 1 full front  3 in`, and what to mind; of a layer, what it goes on."""
    place = step.place
    to_mind = list(minded(step, lambda id_: work.places[id_].decal.piece, "in the same press"))
    if _settings_differ(work, step):
        to_mind.insert(0, step.film.name)
    if place.register:
        where, far = f"{place.decal.piece}  ", corner_text(place.register, work.unit)
    else:
        far, seam = where_text(place, work.unit)
        to_mind = [SEAMS.get(seam, seam), aside_text(place, work.unit), *to_mind]
        position = place.decal.spec.position
        here = [other for other in work.steps[place.garment.no] if other.place.decal.spec.position == position]
        where = f"{position}: {place.decal.piece}  " if len(here) > 1 else f"{position}  "
    return (
        Text(f"{BOX} ", size),
        Text(f"{number} {where}".lstrip()),
        Text(far, WORK if place.register else size, bold=True),
        Text(KEPT.sub("\u00a0", "".join(f"; {text}" for text in to_mind if text))),
    )


def _settings_differ(work: Work, step: PressStep) -> bool:
    """Whether the garment has another film at the same heat that is pressed otherwise."""
    return any(
        (other.film.press, other.film.back, other.film.pressure, other.film.peel)
        != (step.film.press, step.film.back, step.film.pressure, step.film.peel)
        for other in work.steps[step.place.garment.no]
        if other.temperature == step.temperature
    )
