"""The looks of a cell: one font, one type scale, few calm colors.

Color never carries a meaning alone: a problem's cell has a note, its row says stop or check, and cells meant
to be changed are named in the line above the table. Everything reads in a black-and-white print.
"""

from collections.abc import Mapping
from decimal import Decimal
from typing import Any

from xlsxwriter import Workbook
from xlsxwriter.format import Format

from xlbatch.job.costs import sign_of
from xlbatch.job.job import Settings
from xlbatch.paper.cell import Formula, Link, Value

FONT = "Arial"
TINY, SMALL, BODY, LARGE, BANNER, TITLE = 8.0, 9.0, 10.0, 14.0, 16.0, 20.0  # the type scale, in points

INK, QUIET, LINE = "#17202a", "#4d5966", "#8593a1"  # QUIET on white: contrast 7.1
HEAD, CHANGE, STOP, CHECK, NOTE = "#e3e8ec", "#e6f0fa", "#f6d5d0", "#fcebc5", "#edf0f2"

INDENT = 9.0  # points that one step of indent takes from a cell: three spaces (ECMA-376, from memory), rounded up

BOX = "☐"

# no font scheme: with one, a spreadsheet program takes its theme's font and not the one named
_BASE = {"font_name": FONT, "font_scheme": "none", "font_size": BODY, "font_color": INK, "valign": "vcenter"}

Look = Mapping[str, Any]

_LENGTH = {"in": "# ?/?", "cm": "0.0", "mm": "0"}
LOOKS: Mapping[str, Look] = {
    "title": {"bold": True, "font_size": TITLE},
    "lead": {"font_color": QUIET, "font_size": SMALL, "text_wrap": True, "valign": "top"},
    "section": {"bold": True, "font_size": LARGE, "valign": "bottom", "bottom": 2, "bottom_color": INK},
    "sum": {"bold": True},
    "heading": {
        "bold": True, "font_size": SMALL, "text_wrap": True, "valign": "bottom", "bg_color": HEAD,
        "border": 1, "border_color": LINE, "bottom": 2, "bottom_color": INK,
    },
    "cell": {"border": 1, "border_color": LINE, "text_wrap": True},
    "form": {"text_wrap": True, "valign": "top"},
    "fact": {"bold": True, "font_size": BANNER, "align": "left"},
    "banner": {"font_size": BANNER, "bg_color": HEAD, "top": 2, "top_color": INK},
    "setting": {"font_size": BANNER, "bg_color": HEAD},
    "strip banner": {"font_size": 12, "bg_color": HEAD, "top": 2, "top_color": INK},
    "line above": {"top": 5, "top_color": INK},
    "strong": {"bold": True},
    "caption": {"align": "left", "indent": 1, "valign": "bottom"},
    "small": {"font_size": SMALL},
    "tiny": {"font_size": TINY},
    "link": {"underline": 1, "font_color": "#14508c"},
    "quiet": {"font_color": QUIET},
    "large": {"font_size": LARGE},
    "body large": {"font_size": 12},
    "top": {"valign": "top"},
    "bottom": {"valign": "bottom"},
    "center": {"align": "center"},
    "right": {"align": "right"},
    "cut above": {"top": 3, "top_color": INK},
    "cut below": {"bottom": 3, "bottom_color": INK},
    "cut left": {"align": "left", "left": 3, "left_color": INK, "indent": 1},
    "cut right": {"right": 3, "right_color": INK, "indent": 1},
    "cut both sides": {"align": "left", "left": 3, "left_color": INK, "right": 3, "right_color": INK, "indent": 1},
    # what a cell holds
    "text": {"align": "left"},
    "count": {"align": "center", "num_format": "0"},
    "number": {"align": "center", "num_format": "General"},
    "percent": {"align": "center", "num_format": "0 %"},
    "minutes": {"num_format": "0.0"},
    "time": {"align": "center", "num_format": "h:mm"},
    "garment no": {"align": "right", "bold": True, "font_size": LARGE, "num_format": '"No. "0'},
    "box": {"align": "center", "font_size": LARGE},
    "inches": {"align": "center", "num_format": _LENGTH["in"]},
    "tenths": {"align": "center", "num_format": "0.0"},
    "open": {"locked": False},
    "wrapped": {"text_wrap": True, "valign": "top"},
    # what a color says
    "change": {"bg_color": CHANGE},
    "stop": {"bg_color": STOP},
    "check": {"bg_color": CHECK},
    "summed": {"bg_color": HEAD},
    "note": {"bg_color": NOTE},
}  # fmt: skip

_EXACT = {"in": "0.000", "cm": "0.000", "mm": "0.00"}


def currency_sign(settings: Settings) -> str:
    """What stands before an amount: `$`, or `CHF` and a space."""
    return sign_of(settings.currency)


def unit_looks(settings: Settings) -> Mapping[str, Look]:
    """The looks that depend on the job's units and currency. Less than nothing owed is a credit."""
    amount = f'"{currency_sign(settings)}"#,##0.00'
    return {
        "length": {"align": "center", "num_format": _LENGTH[settings.length_unit]},
        "exact": {"num_format": _EXACT[settings.length_unit]},
        "money": {"align": "right", "num_format": amount},
        "owed": {"align": "right", "num_format": f'{amount};"credit "{amount}'},
    }


class Formats:
    """The cell formats of one workbook, each made once."""

    def __init__(self, workbook: Workbook, settings: Settings) -> None:
        self._workbook = workbook
        self._sign = currency_sign(settings)
        self._looks = {**LOOKS, **unit_looks(settings)}
        self._made: dict[tuple[str, ...], Format] = {}
        self._sizes: dict[tuple[str, ...], float] = {}

    def get(self, *looks: str) -> Format:
        """The format that has all these looks; of two that differ, the later one's."""
        if looks not in self._made:
            merged: dict[str, Any] = {**_BASE}
            for look in looks:
                merged |= self._looks[look]
            self._made[looks] = self._workbook.add_format(merged)
        return self._made[looks]

    def shown(self, value: Value, *looks: str) -> str:
        """About what a viewer shows of a value: for measuring the room it takes."""
        if isinstance(value, str):
            return value
        if isinstance(value, Formula):
            return self.shown(value.value, *looks)
        if isinstance(value, Link):
            return value.text
        if isinstance(value, int | float | Decimal):
            if "money" in looks:
                return f"{self._sign.replace(' ', '_')}{value:,.2f}"  # a number is never broken at its space
            if "owed" in looks:
                return f"{'credit_' if value < 0 else ''}{self.shown(max(value, -value), 'money')}"
            if "count" in looks:
                return f"{value:.0f}"
            if "exact" in looks:
                return f"{value:.3f}"
        return "" if value is None else str(value)

    def size(self, *looks: str) -> float:
        """The font size these looks come to."""
        if looks not in self._sizes:
            sizes = [self._looks[look]["font_size"] for look in looks if "font_size" in self._looks[look]]
            self._sizes[looks] = float(sizes[-1] if sizes else BODY)
        return self._sizes[looks]

    def indent(self, *looks: str) -> float:
        """The points that these looks' indent takes."""
        return INDENT * max((self._looks[look].get("indent", 0) for look in looks), default=0)
