"""What to look at on the first blank of each garment when it arrives, before anything is cut."""

from collections.abc import Iterable
from dataclasses import dataclass

from xlbatch.check.garment import Garment
from xlbatch.job.job import Blank
from xlbatch.trade.tables import color_name
from xlbatch.units import LengthUnit, printed_text


@dataclass(frozen=True)
class FirstPiece:
    """One garment: what its label, its cloth and a ruler must say. Dots None: not known yet; chests in mm by size."""

    garment: str
    colors: tuple[str, ...]
    dots: int | None
    chests: tuple[tuple[str, float], ...]

    def text(self, unit: LengthUnit) -> str:
        """`Crew-neck tee: white; care label 3 dots; chest from armpit to armpit M 20 in, L 22 in`."""
        dots = "dots on the care label: write how many" if self.dots is None else f"care label {_dots(self.dots)}"
        chests = ", ".join(f"{size} {printed_text(chest, unit)}" for size, chest in self.chests)
        return f"{self.garment}: size label; {', '.join(self.colors)}; {dots}; chest from armpit to armpit {chests}"


def first_pieces(garments: Iterable[Garment]) -> tuple[FirstPiece, ...]:
    """The garments whose blanks are needed, in the order of the list."""
    blanks: dict[str, dict[str, Blank]] = {}
    colors: dict[str, dict[str, None]] = {}
    for garment in garments:
        if garment.needs_blank:
            name = garment.blank.garment
            blanks.setdefault(name, {})[garment.blank.size] = garment.blank
            colors.setdefault(name, {})[color_name(garment.color)] = None
    return tuple(
        FirstPiece(
            name,
            tuple(colors[name]),
            next((blank.dots for blank in sizes.values()), None),
            tuple(sorted(((size, blank.chest) for size, blank in sizes.items()), key=lambda of_size: of_size[1])),
        )
        for name, sizes in blanks.items()
    )


def _dots(count: int) -> str:
    return f"{count} dot{'s' * (count != 1)}"
