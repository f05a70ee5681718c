"""How a cell of the pages looks: one font, one type scale, one accent; meaning is also in weight, words or boxes."""

import re
from functools import cache, lru_cache
from typing import Any, NamedTuple

from xlsxwriter import Workbook
from xlsxwriter.format import Format

from xlbatch.paper.measure import LINE, text_width
from xlbatch.paper.style import FONT, INK

FINE, WORK, KEY, TITLE, BANNER = 9.0, 11.0, 14.0, 20.0, 26.0  # the type scale, in points
TINY = 8.0  # only the wash line and the small print of a tag
ACCENT = "#0b5a5e"  # dark enough to print as black
BAND, HAIR = "#e4e6e8", "#8a8f94"
THIN, THICK, HEAVY, HAIRLINE, DASHED = 1, 2, 5, 4, 3  # the workbook's own numbers for the lines of a cell


class Look(NamedTuple):
    """The looks of one cell; edges by the workbook's number of the line, 0 for none."""

    size: float = WORK
    bold: bool = False
    align: str = "left"
    valign: str = "vcenter"
    color: str = INK
    fill: str = ""
    top: int = 0
    bottom: int = 0
    left: int = 0
    right: int = 0
    number: str = ""
    indent: int = 0  # clear of a line at the cell's left

    def but(self, **changed: Any) -> "Look":
        """The same look with some of it changed."""
        return _changed(self, tuple(changed.items()))

    @property
    def framed(self) -> bool:
        """Whether it has an edge or is filled."""
        return bool(self.fill or self.top or self.bottom or self.left or self.right)


@cache
def _changed(look: Look, changes: tuple[tuple[str, Any], ...]) -> Look:
    return look._replace(**dict(changes))


PLAIN = Look()
STRONG = Look(bold=True)
SMALL = Look(FINE)
TICK = Look(KEY, align="center")
HEAD = Look(bold=True, bottom=THICK, valign="bottom")


class Text(NamedTuple):
    """A run of text in a cell that has several sizes."""

    text: str
    size: float = WORK
    bold: bool = False


@lru_cache(maxsize=10_000)  # a card is measured for each way its page can be made
def rich_height(parts: tuple[Text, ...], room: float) -> float:
    """The height in points of runs of text in so much room: word by word into lines, each as high as its largest
    letters."""
    height, line, used = 0.0, 0.0, 0.0
    for part in parts:
        for line_no, text in enumerate(part.text.split("\n")):
            if line_no:
                height, line, used = height + line, 0.0, 0.0
            for word in re.findall(r"[^ ]+ *| +", text):  # a space that does not part is none
                if used and used + text_width(word.rstrip(), part.size, part.bold) > room:
                    height, line, used = height + line, 0.0, 0.0
                used += text_width(word, part.size, part.bold)
                line = max(line, part.size * LINE)
    return height + line


class Looks:
    """The cell formats of one workbook, each made once."""

    def __init__(self, workbook: Workbook) -> None:
        self._workbook = workbook
        self._made: dict[Look | Text, Format] = {}

    def cell(self, look: Look) -> Format:
        if look not in self._made:
            edges = {edge: getattr(look, edge) for edge in ("top", "bottom", "left", "right") if getattr(look, edge)}
            colors = {f"{edge}_color": HAIR if line == HAIRLINE else INK for edge, line in edges.items()}
            values = {"bg_color": look.fill, "num_format": look.number, "indent": look.indent}
            self._made[look] = self._format(
                look.size, look.bold, font_color=look.color, align=look.align, valign=look.valign, text_wrap=True,
                **edges, **colors, **{name: value for name, value in values.items() if value},
            )  # fmt: skip
        return self._made[look]

    def part(self, part: Text) -> Format:
        key = part._replace(text="")
        if key not in self._made:
            self._made[key] = self._format(part.size, part.bold, font_color=INK)
        return self._made[key]

    def _format(self, size: float, bold: bool, **more: Any) -> Format:
        return self._workbook.add_format(
            {"font_name": FONT, "font_scheme": "none", "font_size": size, "bold": bold, **more}
        )
