"""Builders of small jobs: films, garments and decals known by their sizes, or with an outline."""

from dataclasses import dataclass, field, replace
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest

from xlbatch.art.decal import Decal
from xlbatch.check.garment import Garment
from xlbatch.film.lay import lay
from xlbatch.film.layout import Layout
from xlbatch.geometry.outline import Outline, Segment, pack
from xlbatch.job.job import Blank, DecalSpec, Film, FilmPiece, Job, Roll, RosterRow, Settings
from xlbatch.job.source import Source
from xlbatch.job.work_time import WorkTimes
from xlbatch.roster.settings import read_settings

# an L, so that mirroring and turning show: 40 wide, 60 high, with a square hole in its foot
L_SHAPE: tuple[Segment, ...] = (
    ("M", (0, 0)), ("L", (40, 0)), ("L", (40, 20)), ("L", (15, 20)), ("L", (15, 60)), ("L", (0, 60)), ("Z", ()),
    ("M", (25, 5)), ("L", (25, 15)), ("L", (35, 15)), ("L", (35, 5)), ("Z", ()),
)  # fmt: skip


def settings(**changes: Any) -> Settings:
    """The defaults in round millimeters, and strips nearly as long as a run may be."""
    plain, _, _ = read_settings(None, "Picnic")
    return replace(plain, gap=6, end_margin=25, longest_cut=1800, longest_strip=1700, **changes)


def film(name: str = "Black smooth", **changes: Any) -> Film:
    plain = Film(Source("Film"), name, "smooth", "black", 305, 290, (), (), 165, 5, 30, 15, "warm", "medium", False, 1)
    return replace(plain, **changes)


@dataclass
class Shop:
    """A job put together piece by piece: shop.decals([(200, 150), (180, 50)]) is one garment more."""

    settings: Settings = field(default_factory=settings)
    films: tuple[Film, ...] = (film(),)
    garments: list[Garment] = field(default_factory=list)
    made: list[Decal] = field(default_factory=list)

    def decals(self, sizes: list[tuple[float, float]], on: str = "Black smooth", outlined: bool = False) -> None:
        """One garment more, with decals of these widths and heights (an L stretched to them where outlined)."""
        no = len(self.garments) + 1
        self.garments.append(self._garment(no))
        self.more(no, sizes, on, outlined)

    def more(self, no: int, sizes: list[tuple[float, float]], on: str, outlined: bool = False) -> None:
        """More decals for a garment."""
        for width, height in sizes:
            outline = _stretched(width, height) if outlined else None
            text = f"Name {no}"
            id_ = f"D{len(self.made) + 1:03d}"
            self.made.append(Decal(id_, no, _spec(on), text, on, "", width, height, outline))

    def _garment(self, no: int) -> Garment:
        row = RosterRow(
            Source("Roster", no + 1, {"Size": f"B{no + 1}"}), no, f"Ana {no}", "", "Crew-neck tee", "M", "white",
            "Name", "", "", "", None, "", (),
        )  # fmt: skip
        blank = Blank(
            Source("Garments"), "Crew-neck tee", "adult", "crew", "cotton", None, None, "M", 508, 736, 95, 20, None,
            None, ("white",), (),
        )  # fmt: skip
        return Garment(row, blank, "white", "", (), (), True)

    @property
    def job(self) -> Job:
        return Job(Path("job.xlsx"), self.settings, {}, (), (), (), self.films, (), (), WorkTimes(()), (), ())

    def lay(self, effort: int = 0) -> Layout:
        return lay(self.job, tuple(self.garments), tuple(self.made), effort)


def _spec(on: str) -> DecalSpec:
    source = Source("Designs", 2, {"Width": "K2"})
    return DecalSpec(
        source, "Name", "Front", "print name", "", "", "", "", on, 1, "full front", None, None, None, "", True
    )


def _stretched(width: float, height: float) -> Outline:
    x, y = width / 40, height / 60
    segments = tuple((verb, tuple(v * (y if at % 2 else x) for at, v in enumerate(xy))) for verb, xy in L_SHAPE)
    return Outline(pack(segments), width, height, 2, 1.0, 1.0)


@pytest.fixture
def shop() -> Shop:
    return Shop()


@pytest.fixture(scope="session")
def new_shop() -> type[Shop]:
    """For property tests, which need a fresh one each time."""
    return Shop


@pytest.fixture
def need_of_squares(shop: Shop) -> Any:
    """The film for squares of 10 1/2 in, one a strip, at the usual gap, margins and longest cut, in inches."""
    usual, _, _ = read_settings(None, "Picnic")

    def make(count: int, *rolls: Roll, on_hand: tuple[FilmPiece, ...] = (), second: str = "15") -> Any:
        shop.settings = replace(usual, shirts_per_strip=1, second_order_costs=Decimal(second))
        shop.films = (film(roll_width=12 * 25.4, usable_width=11.5 * 25.4, rolls=rolls, on_hand=on_hand),)
        shop.garments, shop.made = [], []
        for _ in range(count):
            shop.decals([(10.5 * 25.4, 10.5 * 25.4)])
        (need,) = shop.lay().needs
        return need

    return make
