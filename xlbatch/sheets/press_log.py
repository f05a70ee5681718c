"""Press log: what to press, in order, batch by batch, and what happened."""

from collections.abc import Iterator
from itertools import groupby

import pandas as pd

from xlbatch.press.step import Step
from xlbatch.roster.job import Film, Settings
from xlbatch.sheets.cell import Value
from xlbatch.sheets.inputs import offer
from xlbatch.sheets.measure import text_width
from xlbatch.sheets.page import Column, Page, tabled
from xlbatch.sheets.plan import Plan
from xlbatch.sheets.style import BANNER, BOX
from xlbatch.sheets.widths import PAD
from xlbatch.trade.tables import table as trade_table
from xlbatch.trade.tables import work_time
from xlbatch.units import temperature_in, temperature_text

RESULTS = ("ok", "redo film", "redo garment")
STEP_HEIGHT = 26  # points: room to write by hand


def columns(settings: Settings) -> tuple[Column, ...]:
    return (
        Column("Step", 0.45, ("count",)),
        Column("Garment no.", 0.75, ("count", "strong")),
        Column("Who", 1.3, ("text", "strong")),
        Column("Garment", 0.95),
        Column("Size", 0.7, ("text", "strong")),
        Column("Color", 0.6),
        Column("Position", 0.75),
        Column("Decal", 0.57, ("text", "strong")),
        Column("Piece", 0.75),
        Column("How", 1.2),
        Column("Pressed", 0.72, ("box",)),
        Column("Peeled", 0.66, ("box",)),
        Column("Result", 0.75, ("text",)),
        Column("By", 0.4, ("text",)),
        Column("Note", 0.8, ("text",)),
        Column("Film", 1.3, outside=True),
        Column(f"Temperature ({settings.temperature_unit})", 1.1, ("count",), outside=True),
        Column("Warm-up (s)", 0.8, ("count",), outside=True),
        Column("Press (s)", 0.7, ("count",), outside=True),
        Column("Back (s)", 0.7, ("count",), outside=True),
        Column("Pressure", 0.8, outside=True),
        Column("Peel", 0.6, outside=True),
        Column("Cover", 1.2, outside=True),
        Column("Presses", 0.75, ("count",), outside=True),
    )


def table(plan: Plan) -> pd.DataFrame:
    """The steps in order; the banners stand between them on the sheet only."""
    return tabled(columns(plan.job.settings), (_row(step, plan.job.settings) for step in plan.pressing.steps))


def _row(step: Step, settings: Settings) -> tuple[Value, ...]:
    garment, decal = step.place.garment, step.place.decal
    return (
        step.no,
        garment.no,
        garment.who,
        garment.blank.garment,
        garment.blank.size,
        garment.color,
        decal.spec.position,
        decal.id,
        decal.piece,
        step.how,
        BOX,
        BOX,
        None,
        None,
        None,
        step.film.name,
        round(temperature_in(step.temperature, settings.temperature_unit)),
        step.warm_up,
        step.front,
        step.back,
        step.film.pressure,
        step.film.peel,
        step.press.cover,
        step.place.presses,
    )


def banners(steps: list[Step], settings: Settings) -> Iterator[str]:
    """A batch's banner: its garments, then the press settings, films with the same ones together."""
    numbers = ", ".join(str(no) for no in dict.fromkeys(step.place.garment.no for step in steps))
    yield f"Batch {steps[0].batch} · garment{'s' if ',' in numbers else ''} {numbers}"
    films: dict[str, dict[str, None]] = {}
    for step in steps:
        films.setdefault(settings_text(step.film, settings), {})[step.film.name] = None
    yield from (f"{' + '.join(names)} {said}" for said, names in films.items())


def settings_text(film: Film, settings: Settings) -> str:
    """A film's press settings in words."""
    said = [
        temperature_text(film.temperature, settings.temperature_unit),
        f"warm-up {film.warm_up:g} s",
        f"press {film.press:g} s",
        f"back {film.back:g} s" if film.back else "",
        f"peel {film.peel}",
        f"pressure {film.pressure}",
    ]
    return " · ".join(filter(None, said))


def write(page: Page, plan: Plan) -> None:
    """The press log, to work from at the press and to type the results into afterwards."""
    settings = plan.job.settings
    frame = table(plan)
    page.lay_columns(columns(settings), frame)
    again = work_time("press", "press again where an edge lifts")
    page.title(
        "Press log",
        *(f"• {line['Caution']}" for line in trade_table("cautions")),
        f"• Where an edge lifts, lay the carrier back and press {again:g} s more.",
        "Tick as you go. Afterwards type Result (ok, redo film, redo garment) and drop this workbook again: "
        "the next plan covers only what is still to do.",
    )
    page.heading()
    rows = frame.itertuples(index=False, name=None)
    starts = []
    for _, group in groupby(plan.pressing.steps, key=lambda step: step.batch):
        steps = list(group)
        starts.append(page.row)
        for text in banners(steps, settings):
            for part in _split(text, page.room - PAD):
                page.banner(part, "setting" if page.row > starts[-1] else "banner")
        for step in steps:
            page.record(next(rows), least=STEP_HEIGHT, also={"How": "strong"} if step.trial else {})
    page.end_table()
    offer(page, page.head + 1, page.at("Result"), max(page.row - page.head - 1, 1), RESULTS, strict=True)
    page.break_pages(starts, repeated=page.heights[page.head])


def _split(text: str, room: float) -> list[str]:
    """A banner in as many lines as it needs at its size, broken between settings."""
    lines: list[str] = []
    for part in text.split(" · "):
        joined = f"{lines[-1]} · {part}" if lines else part
        if lines and text_width(joined, BANNER) <= room:
            lines[-1] = joined
        else:
            lines.append(part)
    return lines
