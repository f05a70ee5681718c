"""Makes example_workbooks/with_mistakes/ from mistakes.toml: one workbook for each problem code, and the list of them.

Run it after a change there, with a Python that has the program's packages: python build/make_mistakes.py
"""

import csv
import sys
import tomllib
from collections.abc import Iterable, Mapping
from datetime import date, datetime
from pathlib import Path
from typing import Any

import xlsxwriter
from PIL import Image, ImageDraw
from xlsxwriter.worksheet import Worksheet

ROOT = Path(__file__).resolve().parent.parent
MISTAKES = ROOT / "example_workbooks" / "with_mistakes"
CREATED = datetime(2025, 1, 1)  # the same bytes whenever it is made
FINER = 4  # times as many dots are drawn
NOT_SHEETS = ("at", "csv", "hidden", "encoding")
LETTERS = (
    '<path d="M8 40h6v24h10v6h-16z"/><path d="M28 40h18v6h-6v24h-6v-24h-6z"/>'
    '<path d="M50 40h6v12h6v-12h6v30h-6v-12h-6v12h-6z"/><path d="M74 40h16v6h-10v6h8v6h-8v6h10v6h-16z"/>'
)  # LTHE
DRAWINGS = {
    "dot.svg": '<path d="M0 0H100V80H0Z"/><path d="M49.4 90H50.6V91.2H49.4Z"/>',
    "hairlines.svg": '<path d="M0 0H100V0.4H0Z"/><path d="M0 99.6H100V100H0Z"/>',
    "live text.svg": '<text x="10" y="50" font-size="20" font-family="Lanternwriter">Lantern</text>',
    "narrow gap.svg": '<path d="M0 0H49.8V100H0Z"/><path d="M50.2 0H100V100H50.2Z"/>',
    "narrow neck.svg": '<path d="M0 0H100V40H50.2V60H100V100H0V60H49.8V40H0Z"/>',
    "one color.svg": '<path d="M0 0H100V100H0Z" fill="#000000"/>',
    "photo inside.svg": '<image width="100" height="100" href="photo.png"/>',
    "sample text.svg": '<text x="5" y="50" font-size="12">Your name here</text>',
    "word.svg": LETTERS + '<path d="M0 85H100V95H0Z"/>',
    "word beside.svg": LETTERS + '<path d="M93 34h7v24h-4v-3h-3z"/><path d="M0 85H100V95H0Z"/>',
    "word on its color.svg": '<path d="M0 20H100V90H0Z"/>' + LETTERS,
    "word on a bar.svg": LETTERS + '<path d="M0 77H100V95H0Z"/>',
    "word through a bar.svg": '<path d="M0 30H24V58H0Z"/><path d="M30 30H40L36 58H30Z"/>'
    '<path d="M44 30H56V44H48V58H44Z"/><path d="M60 30H72L66 58H60Z"/><path d="M78 30H100V58H78Z"/>'
    '<path d="M0 85H100V95H0Z"/>',
    "white paper.svg": '<path d="M0 0H100V100H0Z" fill="#fff"/><path d="M20 20H80L50 80Z"/>',
    "off page.svg": '<path d="M20 20H130L75 90Z"/>',
    "triangle.svg": '<path d="M0 0H100L0 100Z"/>',
    "two colors.svg": '<path d="M0 0H60V100H0Z" fill="#000000"/><path d="M60 0H100V100H60Z" fill="#f0b429"/>',
    "unknown braces.svg": '<text x="5" y="50" font-size="20">{Familly}</text>',
}
PICTURES = {  # how many dots across and down, and shapes on a background: a box or a disk, where, in which color
    "coarse.png": (120, "#ffffff", [("disk", (10, 10, 110, 110), "#000000")]),
    "eight colors.png": (
        640,
        "#ffffff",
        [
            ("box", (40 + 70 * number, 40, 110 + 70 * number, 600), color)
            for number, color in enumerate(
                ("#d01818", "#e03828", "#1838a0", "#2050b8", "#108030", "#f0c020", "#000000", "#f07818")
            )
        ],
    ),
    "on blue.png": (640, "#1838a0", [("disk", (40, 40, 600, 600), "#f0c020")]),
    "ring.png": (640, "#ffffff", [("disk", (40, 40, 600, 600), "#000000"), ("disk", (140, 140, 500, 500), "#ffffff")]),
    "see-through.png": (
        640,
        "#ffffff00",
        [("disk", (80, 80, 640, 640), "#00000060"), ("disk", (40, 40, 600, 600), "#000000")],
    ),
    "sixteen bits.png": (640, "#ffffff", [("disk", (40, 40, 600, 600), "#000000")]),
}
SVG = '<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100">{}</svg>\n'


def mistakes() -> Mapping[str, Mapping[str, Any]]:
    """Each problem code, with the sheets of its workbook and the cell the problem is at."""
    return tomllib.loads((ROOT / "build" / "mistakes.toml").read_text(encoding="utf-8"))


def example(code: str, mistake: Mapping[str, Any]) -> str:
    """The file name of a mistake's workbook; a mistake that no .xlsx file can have stands in a .csv."""
    return f"{code}.{'csv' if mistake.get('csv') else 'xlsx'}"


def make_list(path: Path, mistake: Mapping[str, Any]) -> None:
    """Writes the .csv of one mistake; a cell may be a text many times over."""
    with path.open("w", encoding=mistake.get("encoding", "utf-8"), newline="") as file:
        for row in mistake["Roster"]:
            cells = (cell["text"] * cell["times"] if isinstance(cell, dict) else cell for cell in row)
            csv.writer(file, lineterminator="\n").writerow(cells)


def make_workbook(path: Path, mistake: Mapping[str, Any]) -> None:
    """Writes the workbook of one mistake."""
    with xlsxwriter.Workbook(path) as book:
        book.set_properties({"created": CREATED})
        for name, rows in mistake.items():
            if name not in NOT_SHEETS:
                sheet = book.add_worksheet(name)
                _fill(book, sheet, rows)
                sheet.set_column(0, 9, 16)
                for row in mistake.get("hidden", ()):
                    sheet.set_row(row - 1, None, None, {"hidden": True})


def _fill(book: xlsxwriter.Workbook, sheet: Worksheet, rows: Iterable[Iterable[Any]]) -> None:
    for row, cells in enumerate(rows):
        for column, cell in enumerate(cells):
            match cell:
                case {"date": date() as day, "format": form}:
                    when = datetime(day.year, day.month, day.day)
                    sheet.write_datetime(row, column, when, book.add_format({"num_format": form}))
                case {"formula": formula, "result": result}:
                    sheet.write_formula(row, column, formula, None, result)
                case str() if cell:
                    sheet.write_string(row, column, cell)
                case int() | float():
                    sheet.write_number(row, column, cell)


def list_of_mistakes(mistakes: Mapping[str, Mapping[str, Any]]) -> str:
    """The table of all workbooks: code, level, what is wrong and what to do, in the program's own words."""
    from xlbatch.problems import KINDS

    kinds = {kind.code: kind for kind in KINDS}
    lines = [
        f"| [{code}]({example(code, mistake)}) | {kinds[code].level} | {kinds[code].wrong} | {kinds[code].todo} |"
        for code, mistake in mistakes.items()
    ]
    head = (
        "# One mistake a workbook\n\n"
        "Each workbook here has one mistake and is named for its code on the `Problems` sheet.\n"
        "A `stop` holds the row back; `check` and `note` do not.\n\n| code | level | what is wrong | what to do |\n"
        "|---|---|---|---|\n"
    )
    return head + "\n".join(lines) + "\n"


def make_picture(path: Path, picture: tuple[int, str, list[tuple[str, tuple[int, int, int, int], str]]]) -> None:
    """Draws a picture, its edges softened."""
    side, ground, shapes = picture
    image = Image.new("RGBA", (side * FINER, side * FINER), ground)
    draw = ImageDraw.Draw(image)
    for shape, box, color in shapes:
        outline = draw.ellipse if shape == "disk" else draw.rectangle
        outline([value * FINER - (number > 1) for number, value in enumerate(box)], color)
    small = image.reduce(FINER)
    if path.stem == "sixteen bits":
        gray = small.convert("L")
        Image.frombytes("I;16", gray.size, b"".join(bytes((level, level)) for level in gray.tobytes())).save(path)
    else:
        small.quantize(64, method=Image.Quantize.FASTOCTREE).save(path)


def make_all(folder: Path) -> None:
    """Makes every workbook, the drawings some of them need, and the list."""
    folder.mkdir(parents=True, exist_ok=True)
    for code, mistake in mistakes().items():
        make = make_list if mistake.get("csv") else make_workbook
        make(folder / example(code, mistake), mistake)
    for name, shapes in DRAWINGS.items():
        (folder / name).write_text(SVG.format(shapes), encoding="utf-8", newline="\n")
    for name, picture in PICTURES.items():
        make_picture(folder / name, picture)
    (folder / "README.md").write_text(list_of_mistakes(mistakes()), encoding="utf-8", newline="\n")


if __name__ == "__main__":
    sys.path.insert(0, str(ROOT))
    make_all(MISTAKES)
