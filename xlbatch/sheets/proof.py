"""Proof: one row a garment, with a picture of what is on it, to be checked and signed before anything is cut."""

from collections import defaultdict
from collections.abc import Iterable, Mapping

import pandas as pd

from xlbatch.art.decal import Decal
from xlbatch.job.job import Settings
from xlbatch.paper.page import Column, Page, tabled
from xlbatch.paper.style import BOX
from xlbatch.paper.widths import PAD
from xlbatch.pictures.swatch import LOW, TALL, Swatch, proof_picture
from xlbatch.placement.group import Group, groups
from xlbatch.plan import Plan
from xlbatch.sheets.beside_rows import write_beside
from xlbatch.units import printed_number, printed_text

MOST_DRAWN = 300  # garments: more are drawn on the pages to print alone, or a workbook grows slow to open
SHOWN = (
    "The pictures show the shapes as cut, each as large as its frame allows; below it stands the true width and "
    "height. A ring marks what is too thin to cut or weed; a fine line, film that hardly shows on the garment."
)
NOT_SHOWN = "So many garments are drawn as cut on the pages to print alone."
PLAIN_WIDTH = 0.995  # letters condensed less than this are not told
LAST_PLAIN = 0x7E  # the last letter of plain English keyboards (ASCII)
MOST_LETTERS = 3  # spelled out with their codes
NAME = "Proof"
COLUMNS = (
    Column("Garment no.", 0.7, ("count", "strong")),
    Column("Who", 1.2, ("text", "strong")),
    Column("Group", 0.85),
    Column("Garment", 0.75),
    Column("Size", 0.65, whole=True),
    Column("Color", 0.6),
    Column("Exact text", 1.2, ("text", "strong")),
    Column("Unusual letters", 0.85, ("text", "small")),
    Column("As cut", 3.6),
    Column("Checked", 0.7, ("box",)),
)


def table(plan: Plan) -> pd.DataFrame:
    """What is on each garment, in words."""
    decals = decals_of(plan)
    typed = (note for note in plan.memory.notes if note.sheet == NAME and not note.on_cell)
    checked = {note.key: note.text for note in typed if note.heading == "Checked"}
    rows = (
        (
            garment.no,
            garment.who,
            garment.group,
            garment.blank.garment,
            garment.blank.size,
            garment.color,
            "\n".join(printed := texts(decals[garment.no])),
            _unusual(printed),
            None,
            checked.get(str(garment.no), BOX),
        )
        for garment in plan.garments
    )
    return tabled(COLUMNS, rows)


def _unusual(texts: Iterable[str]) -> str:
    """The letters beyond plain English, easily taken for others, with their Unicode numbers."""
    letters = list(dict.fromkeys(letter for text in texts for letter in text if ord(letter) > LAST_PLAIN))
    listed = [f"{letter} U+{ord(letter):04X}" for letter in letters[:MOST_LETTERS]]
    return ", ".join([*listed, "…"] if len(letters) > MOST_LETTERS else listed)


def decals_of(plan: Plan) -> Mapping[int, list[Decal]]:
    """The decals of each garment by its number."""
    decals_by_garment: dict[int, list[Decal]] = defaultdict(list)
    for decal in plan.decals:
        decals_by_garment[decal.garment_no].append(decal)
    return decals_by_garment


def texts(decals: Iterable[Decal]) -> list[str]:
    """The exact texts, each once: a border piece under a text has the same."""
    return [text for decal in decals if not decal.border for text in decal.texts]


def size_text(group: Group, settings: Settings) -> str:
    """`9 × 1 3/4 in`, and how far letters were condensed to fit."""
    unit = settings.length_unit
    return f"{printed_number(group.width, unit)} × {printed_text(group.height, unit)}{narrowed(group)}"


def narrowed(group: Group) -> str:
    """How far letters were condensed to fit; "" where they were not."""
    narrow = min(part.condensed for decal in group.decals for part in decal.parts or (decal,))
    return f", letters {narrow:.0%} wide" if narrow < PLAIN_WIDTH else ""


def write(page: Page, plan: Plan) -> None:
    """The proof, for whoever ordered the garments."""
    frame = table(plan)
    page.lay_columns(COLUMNS, frame)
    drawn = len(frame) <= MOST_DRAWN
    page.title(
        "Proof",
        "Read every name and number letter by letter and tick Checked before anything is cut. "
        + (SHOWN if drawn else NOT_SHOWN),
    )
    page.line("Approved by ______________________________     Date ______________", "strong", least=20)
    if drawn:
        page.heading()
        _garment_by_garment(page, plan, frame)
    else:
        page.table(frame)
    write_beside(page, NAME, frame, plan.memory.notes)


def _garment_by_garment(page: Page, plan: Plan, frame: pd.DataFrame) -> None:
    """The rows, each with its picture; a drawing is shown large where it comes first, and where other words are in it
    first."""
    column, colors = page.at("As cut"), plan.job.film_colors
    shown: set[tuple[str, str]] = set()
    for swatch, values in zip(swatches(plan).values(), frame.itertuples(index=False, name=None), strict=True):
        drawings = {(decal.spec.artwork, decal.text) for decal in swatch.decals if decal.spec.artwork}
        height = LOW if drawings <= shown else TALL
        shown |= drawings
        row = page.record(values, least=height + 3)
        page.picture(row, column, proof_picture(swatch, colors, page.widths[column] - PAD, height), left=2, top=1.5)
    page.end_table()


def swatches(plan: Plan) -> Mapping[int, Swatch]:
    """What is on each garment, by its number."""
    decals = decals_of(plan)
    return {
        garment.no: Swatch(
            decals[garment.no],
            [size_text(group, plan.job.settings) for group in groups(decals[garment.no])],
            garment.color,
        )
        for garment in plan.garments
    }
