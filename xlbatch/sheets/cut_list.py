"""Cut list: the strips that are ready at the table, then one row a strip to cut, in cutting order."""

from collections.abc import Collection, Iterable, Iterator, Mapping

import pandas as pd

from xlbatch.kept.memory import KeptDecal
from xlbatch.paper.cell import Value
from xlbatch.paper.page import Column, Page, tabled
from xlbatch.paper.style import BOX
from xlbatch.plan import Plan
from xlbatch.sheets.beside_rows import write_beside
from xlbatch.units import printed_length

MIRRORED = "The cut files are already mirrored: do not mirror again."
NOT_MIRRORED = "The cut files are not mirrored: your cutter must mirror them."
INTERLOCKED = " Once a strip is weeded, cut its decals apart with scissors as the thin lines on Roll layout show."
Strip = tuple[str, int, int]  # film, run and strip number
MARKED = "yes"  # in a box that was ticked in a plan before


def columns(unit: str) -> tuple[Column, ...]:
    return (
        Column("Run", 0.4, ("count", "strong")),
        Column("Strip", 0.4, ("count", "strong")),
        Column("Film", 1.0, whole=True),
        Column("Cut from", 0.6),
        Column(f"Run length ({unit})", 0.6, ("length",)),
        Column(f"Starts at ({unit})", 0.55, ("length",)),
        Column(f"Length ({unit})", 0.55, ("length",)),
        Column("For batch", 0.5, ("text",)),
        Column("Garments", 0.8),
        Column("Decals", 1.4),
        Column("Cut", 0.4, ("box",)),
        Column("Weeded", 0.6, ("box",)),
        Column("Spoiled", 0.7),
        Column("Weed with", 0.5, ("text",), outside=True),
    )


def table(plan: Plan) -> pd.DataFrame:
    """The strips: those ready at the table, then those of every run to cut."""
    return tabled(columns(plan.job.settings.length_unit), (*_ready(plan), *_to_cut(plan)))


def _to_cut(plan: Plan) -> Iterator[tuple[Value, ...]]:
    unit = plan.job.settings.length_unit
    kept = {decal.id: decal for decal in plan.memory.decals}
    for run in plan.layout.runs:
        for strip in run.strips:
            decals = [kept[lying.decal.id] for lying in strip.lying]
            yield (
                run.no,
                strip.batch,
                run.film.name,
                run.cut_from,
                printed_length(run.length, unit, up=True),
                printed_length(strip.start, unit),
                printed_length(strip.length, unit, up=True),
                *_on_strip(decals),
                BOX,
                BOX,
                None,
                ", ".join(map(str, run.weeded_with(strip))) or None,
            )


def _ready(plan: Plan) -> Iterator[tuple[Value, ...]]:
    for (_, run, strip), decals in _at_table(plan).items():
        weeded = all(decal.state == "weeded" for decal in decals)
        boxes = (MARKED, MARKED if weeded else BOX, None)
        yield (run, strip, decals[0].film, None, None, None, None, *_on_strip(decals, plan.unused), *boxes, None)


def ready_strips(plan: Plan) -> Mapping[Strip, list[KeptDecal]]:
    """The decals that are cut and still to press, by their strips."""
    strips = {
        strip: [decal for decal in decals if decal.id not in plan.unused] for strip, decals in _at_table(plan).items()
    }
    return {strip: decals for strip, decals in strips.items() if decals}


def _at_table(plan: Plan) -> Mapping[Strip, list[KeptDecal]]:
    """The decals that are cut and not pressed, needed or not, by their strips."""
    strips: dict[Strip, list[KeptDecal]] = {}
    for decal in plan.memory.decals:
        if decal.ready:
            strips.setdefault(decal.place, []).append(decal)
    return dict(sorted(strips.items(), key=lambda item: item[0][1:]))


def _on_strip(decals: Iterable[KeptDecal], unused: Collection[str] = ()) -> tuple[str, str, str]:
    """For which batches, whose garments, which decals."""
    decals = tuple(decals)
    batches = _listed(decal.batch for decal in decals if decal.id not in unused)
    spare = [decal.id for decal in decals if decal.id in unused]
    if spare:
        not_needed = f"not needed: {_listed(spare)}" if batches else "not needed"
        batches = "; ".join(filter(None, (batches, not_needed)))
    return batches, _listed(decal.garment_no for decal in decals), _listed(decal.id for decal in decals)


def _listed(values: Iterable[object]) -> str:
    return ", ".join(map(str, dict.fromkeys(values)))


def write(page: Page, plan: Plan) -> None:
    """The cut list, for the cutter and the weeding table."""
    frame = table(plan)
    page.lay_columns(columns(plan.job.settings.length_unit), frame)
    page.title(
        "Cut list",
        "Cut one test piece of each film first. Load the film with the shiny carrier side down, the side to be cut up. "
        + (MIRRORED if plan.job.settings.mirror else NOT_MIRRORED),
        "A cut file's name begins with its run's number; Cut from and Run length say which film to load, and how much. "
        "Cut a run apart straight across between its strips, weed strip by strip, and keep each strip with its number: "
        "strip 1 of every film goes to batch 1 at the press." + (INTERLOCKED if plan.job.settings.interlock else ""),
        "Write yes, x or the day into Cut and Weeded; into Spoiled the numbers of decals that went wrong, or all. Drop "
        "the plan again at any time: what is cut is not cut again.",
    )
    page.heading()
    ready, placed = len(_at_table(plan)), []
    for row_no, values in enumerate(frame.itertuples(index=False, name=None)):
        if ready and row_no == 0:
            page.banner("Ready at the table", " · cut before; clear Cut if a strip is lost", "strip banner")
        if ready and row_no == ready:
            page.banner("To cut", "", "strip banner")
        placed.append(page.record(values))
    page.end_table()
    write_beside(page, "Cut list", frame, plan.memory.notes, placed)
