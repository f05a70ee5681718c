"""Small jobs to draw for: an adult tee in three sizes and one toddler size, and two films."""

from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from xlbatch.art.draw import draw
from xlbatch.check.garment import Garment
from xlbatch.job.job import Blank, DecalSpec, Film, Job, RosterRow, Settings
from xlbatch.job.source import Source
from xlbatch.job.work_time import WorkTimes
from xlbatch.lettering import computer_fonts
from xlbatch.problems import Where
from xlbatch.roster.positions import read_positions
from xlbatch.roster.settings import read_settings

IN = 25.4
CHESTS = {"S": 18, "M": 20, "L": 22, "5XL": 32, "Youth XL": 20, "2T": 12}

SETTINGS = replace(
    read_settings(None, "Autumn walk")[0], usual_garment="Tee", least_letter_height=12.7, shirts_per_strip=3
)

SPEC = DecalSpec(
    source=Source("Designs", 2, {"Text": "F2", "Artwork": "D2", "Artwork color": "E2", "Font": "G2", "Width": "K2"}),
    design="Name", decal="Name", what="print name", artwork="", artwork_color="", text="", font="",
    film="Black smooth", layer=1, position="full front", width=None, height=2 * IN, widest=9 * IN, sized_for="",
    scale=True,
)  # fmt: skip

ROW = RosterRow(
    source=Source("Roster", 2, {"Who": "A2", "Print name": "E2", "Number": "F2"}), no=1, who="Ana Ruiz", group="",
    garment="Tee", size="M", color="white", design="Name", print_name="", number="", note="", paid=None, status="",
    done_so_far=(),
)  # fmt: skip

FILM = Film(
    source=Source("Film"), name="Black smooth", kind="smooth", color="black", roll_width=12 * IN,
    usable_width=11.5 * IN, rolls=(), on_hand=(), temperature=165, warm_up=5, press=30, back=15, peel="cold",
    pressure="medium", one_direction=False, thinnest=1,
)  # fmt: skip


class Make:
    """Builds records that differ from the usual ones only where a test says so."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder

    def spec(self, **changes: Any) -> DecalSpec:
        return replace(SPEC, **changes)

    def artwork(self, svg: str = "", **changes: Any) -> DecalSpec:
        """A row of artwork; its drawing is written beside the workbook."""
        name = changes.setdefault("artwork", "logo.svg")
        if svg:
            (self.folder / name).write_text(svg, encoding="utf-8")
        usual = {"decal": "Logo", "what": "artwork", "height": None, "widest": None}
        return replace(SPEC, **usual | changes)

    def blank(self, size: str) -> Blank:
        kinds = {"2T": "toddler", "Youth XL": "youth"}
        return Blank(
            source=Source("Garments"), garment="Tee", for_=kinds.get(size, "adult"), neckline="crew",  # type: ignore[arg-type]
            fabric="cotton", dots=None, heat_limit=None, size=size, chest=CHESTS[size] * IN, length=29 * IN,
            drop_front=95, drop_back=22, sleeve_length=8 * IN, sleeve_opening=7.5 * IN, colors=("white",), prices=(),
        )  # fmt: skip

    def garment(self, *design: DecalSpec, size: str = "M", **changes: Any) -> Garment:
        """A garment of one row; `no` also says in which roster row it stands (no. 1 in row 2)."""
        row = replace(ROW, size=size, **changes)
        row = replace(row, source=replace(row.source, row=row.no + 1))
        name = row.print_name or row.who
        return Garment(row, self.blank(size), "white", name, design, design, needs_blank=True)

    def job(self, settings: Settings = SETTINGS, films: tuple[Film, ...] = ()) -> Job:
        blanks = tuple(map(self.blank, CHESTS))
        usual = (FILM, replace(FILM, name="Gold smooth", color="gold"), replace(FILM, name="Flock", one_direction=True))
        return Job(
            path=self.folder / "roster.xlsx", settings=settings, setting_cells={"Font": Where("Job", "B12")},
            roster=(), designs=(), blanks=blanks, films=films or usual, presses=(),
            positions=read_positions(())[0], work_times=WorkTimes(()), results=(), headings=(),
        )  # fmt: skip

    def drawn(self, *design: DecalSpec, size: str = "M", settings: Any = None, **changes: Any) -> Any:
        """The decals and problems of one garment."""
        settings = replace(SETTINGS, **settings or {})
        return draw(self.job(settings), (self.garment(*design, size=size, **changes),))


@pytest.fixture(autouse=True)
def _no_fonts_of_the_computer(monkeypatch: pytest.MonkeyPatch) -> None:
    """Whatever fonts this computer has, the bundled ones alone are used."""
    monkeypatch.setattr(computer_fonts, "font_files", tuple)


@pytest.fixture
def make(tmp_path: Path) -> Make:
    return Make(tmp_path)
