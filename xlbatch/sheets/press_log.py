"""Press log: what to press, in order, batch by batch, and what happened."""

from collections import Counter, defaultdict
from collections.abc import Iterator, Mapping, Sequence
from itertools import groupby

import pandas as pd

from xlbatch.job.job import Settings
from xlbatch.paper.cell import Value
from xlbatch.paper.page import Column, Page, tabled
from xlbatch.paper.style import BOX
from xlbatch.paper.widths import PAD
from xlbatch.plan import Plan
from xlbatch.press.step import PressStep
from xlbatch.sheets.banner import IRON, SetTo, banners, films_by_settings, set_to
from xlbatch.sheets.beside_rows import write_beside
from xlbatch.sheets.how import how
from xlbatch.sheets.inputs import offer
from xlbatch.sheets.line_up import layer_columns, measures
from xlbatch.trade.tables import table as trade_table
from xlbatch.units import temperature_in

NAME = "Press log"
RESULTS = ("ok", "redo film", "redo garment")


def columns(unit: str, degrees: str, layers: Sequence[Column]) -> tuple[Column, ...]:
    """The columns, those of layers among them."""
    return (
        Column("Step", 0.3, ("count",)),
        Column("Garment no.", 0.3, ("count", "strong")),
        Column("Who", 1.7),
        Column("Garment", 0.3, whole=True),
        Column("Size", 0.3, ("text", "strong"), whole=True),
        Column("Color", 0.3, whole=True),
        Column("Position", 0.3, whole=True),
        Column("Decal", 0.3, ("text", "strong"), whole=True),
        Column(f"Below collar seam ({unit})", 0.7, ("length", "strong")),
        Column(f"From center ({unit})", 0.4, ("length", "strong")),
        *(column for column in layers if not column.outside),
        Column("How", 1.6),
        Column("Pressed", 0.3, ("box",)),
        Column("Peeled", 0.3, ("box",)),
        Column("Result", 0.3, ("text",)),
        Column("By", 0.3, ("text",)),
        Column("Note", 0.3, ("text",)),
        Column("Piece", 1.0, outside=True),
        Column("Film", 1.3, outside=True),
        Column(f"Temperature ({degrees})", 1.1, ("count",), outside=True),
        Column("Warm-up (s)", 0.8, ("count",), outside=True),
        Column("Press (s)", 0.7, ("count",), outside=True),
        Column("Back (s)", 0.7, ("count",), outside=True),
        Column("Pressure", 0.8, outside=True),
        Column("Peel", 0.6, outside=True),
        Column("Cover", 1.2, outside=True),
        Column("Presses", 0.75, ("count",), outside=True),
        *(column for column in layers if column.outside),
    )


def _columns(plan: Plan) -> tuple[Column, ...]:
    """The columns; those of layers are printed only where a piece is laid on another."""
    unit = plan.job.settings.length_unit
    return columns(unit, plan.job.settings.temperature_unit, layer_columns(unit, plan.places))


def table(plan: Plan) -> pd.DataFrame:
    """The steps in order; the banners stand between them on the sheet only."""
    settings = plan.job.settings
    together = Counter(_position(step) for step in plan.pressing.steps)
    own = _columns(plan)
    written: dict[str, dict[str, str]] = defaultdict(dict)  # beside a step in the plan before, by its decal
    for note in plan.memory.notes:
        if note.sheet == NAME and not note.on_cell:
            written[note.key][note.heading] = note.text
    rows = []
    for steps in batches(plan):
        for step in steps:
            alike = films_by_settings((other for other in steps if other.temperature == step.temperature), settings)
            piece = together[_position(step)] > 1
            row = _row(step, settings, how(step, settings, film=len(alike) > 1, piece=piece))
            row = {**row, **written.get(step.place.decal.id, {})}
            rows.append([row.get(column.heading) for column in own])
    return tabled(own, rows)


def batches(plan: Plan) -> Iterator[list[PressStep]]:
    """The steps batch by batch."""
    for _, steps in groupby(plan.pressing.steps, key=lambda step: step.batch):
        yield list(steps)


def _position(step: PressStep) -> tuple[int, str]:
    return step.place.garment.no, step.place.decal.spec.position


def _row(step: PressStep, settings: Settings, how: str) -> Mapping[str, Value]:
    """What stands under each heading."""
    place, garment, decal = step.place, step.place.garment, step.place.decal
    return {
        "Step": step.no,
        "Garment no.": garment.no,
        "Who": garment.who,
        "Garment": garment.blank.garment,
        "Size": garment.blank.size,
        "Color": garment.color,
        "Position": decal.spec.position,
        "Decal": decal.id,
        **measures(place, settings.length_unit),
        "How": how,
        "Pressed": BOX,
        "Peeled": BOX,
        "Piece": decal.piece,
        "Film": step.film.name,
        f"Temperature ({settings.temperature_unit})": round(
            temperature_in(step.temperature, settings.temperature_unit)
        ),
        "Warm-up (s)": step.warm_up,
        "Press (s)": step.front,
        "Back (s)": step.back,
        "Pressure": step.film.pressure,
        "Peel": step.film.peel,
        "Cover": step.press.cover,
        "Presses": place.presses,
    }


def leads(plan: Plan) -> Iterator[str]:
    """What to know before the first step: cautions, where to measure from, what to do when an edge lifts."""
    again = plan.job.work_times.of("press", "press again where an edge lifts")
    tacks = any(step.tack for step in plan.pressing.steps)
    tack = (
        " A tack only holds: lay such shirts side by side, not in a stack; the full time comes with the top layer."
        if tacks
        else ""
    )
    yield "Caution: " + " ".join(line["Caution"] for line in trade_table("cautions") if line["At the press"] == "yes")
    if any(step.press.kind == IRON for step in plan.pressing.steps):
        yield "With an iron: " + " ".join(line["Rule"] for line in trade_table("iron_rules"))
    yield (
        "Fold the garment down the middle and press a crease; match it to the decal's middle. Below collar seam is to "
        f"the decal's top edge: {measured_from(plan)}. From center: + is to the wearer's right. At a trial press a "
        f"scrap first.{tack} Where an edge lifts, lay the carrier back, cover it and press {again:g} s more. Tick as "
        "you go; afterwards type Result (ok, redo film, redo garment) and drop this workbook again."
    )


def measured_from(plan: Plan) -> str:
    """`full front from the point of the V; back name, back number from the back collar seam`."""
    seams: dict[str, dict[str, None]] = {}
    for place in plan.places:
        if place.register is None:
            seams.setdefault(place.measured_from, {})[place.decal.spec.position] = None
    return "; ".join(f"{', '.join(positions)} from the {seam}" for seam, positions in seams.items())


def write(page: Page, plan: Plan) -> None:
    """The press log, to work from at the press and to type the results into afterwards."""
    frame = table(plan)
    page.lay_columns(_columns(plan), frame)
    page.title(NAME, *leads(plan))
    page.heading()
    rows = frame.itertuples(index=False, name=None)
    settings, starts, placed = plan.job.settings, [], []
    strips = {decal.id: decal.strip for decal in plan.memory.decals}
    before: SetTo = ()
    for steps in batches(plan):
        starts.append(page.row)
        for lines, part in banners(steps, settings, page.room - PAD, before, strips):
            for line in lines:
                page.banner(*line, "banner" if page.row == starts[-1] else "setting")
            for step in part:
                placed.append(page.record(next(rows), also={"How": "strong"} if step.trial else {}))
            before = set_to(part, settings)
    page.end_table(starts)
    write_beside(page, NAME, frame, plan.memory.notes, placed)
    offer(page, page.head + 1, page.at("Result"), max(page.row - page.head - 1, 1), RESULTS, strict=True)
