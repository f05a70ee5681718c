"""Makes example_workbooks/pages.png, the README's picture: pages of the relay example's plan as they print.

Run it after a change to the sheets. It needs LibreOffice (soffice), poppler (pdftotext, pdftoppm) and Pillow:
python build/pages.py
"""

import re
import subprocess
import sys
from collections.abc import Iterator
from datetime import datetime
from pathlib import Path
from tempfile import TemporaryDirectory

from PIL import Image

ROOT = Path(__file__).resolve().parent.parent
EXAMPLE, TARGET = ROOT / "example_workbooks" / "relay squad.xlsx", ROOT / "example_workbooks" / "pages.png"
SHOWN = ("Job sheet", "Proof", "Press log", "Placement pictures", "Shopping list")  # the first page of each
GAP, DPI, COLORS = 16, 80, 64
GROUND, EDGE = "#ffffff", "#8593a1"


def printed_plan(folder: Path) -> Path:
    """The relay example's plan as a PDF; the date of the run is a fixed one, so that the picture stays the same."""
    sys.path.insert(0, str(ROOT))
    from xlbatch.run import Options, run

    plan = run(EXAMPLE, Options(folder=folder), lambda _: None, datetime(2026, 4, 20, 9, 0)).written
    office = ["soffice", f"-env:UserInstallation={(folder / 'office').as_uri()}", "--headless"]
    subprocess.run([*office, "--convert-to", "pdf", "--outdir", str(folder), str(plan)], check=True)
    return folder / f"{plan.stem}.pdf" if plan else folder


def first_pages(pdf: Path) -> Iterator[Image.Image]:
    """The first printed page of each sheet shown, known by its footer."""
    text = subprocess.run(["pdftotext", "-layout", str(pdf), "-"], check=True, capture_output=True).stdout.decode()
    footers = [re.search(r"(\S.*?) +Page \d+ of \d+\s*$", page) for page in text.rstrip("\f").split("\f")]
    names = [re.split(r"\s{2,}", footer[1])[-1] if footer else "" for footer in footers]
    for name in SHOWN:
        number = str(names.index(name) + 1)
        target = pdf.with_name(name)
        subprocess.run(
            ["pdftoppm", "-r", str(DPI), "-f", number, "-l", number, "-singlefile", "-png", str(pdf), str(target)],
            check=True,
        )
        yield Image.open(f"{target}.png").convert("RGB")


def side_by_side(pages: list[Image.Image]) -> Image.Image:
    """The pages in columns of like width, each with a thin edge."""
    width = max(page.width for page in pages)
    columns = [[page for page in pages if (page.width > page.height) == lying] for lying in (False, True)]
    heights = [sum(page.height + GAP for page in column) for column in columns]
    upright = max(page.width for page in columns[0])
    whole = Image.new("RGB", (upright + width + 3 * GAP, max(heights) + GAP), GROUND)
    for column, left in zip(columns, (GAP, upright + 2 * GAP), strict=True):
        top = GAP
        for page in column:
            whole.paste(EDGE, (left - 1, top - 1, left + page.width + 1, top + page.height + 1))
            whole.paste(page, (left, top))
            top += page.height + GAP
    return whole


def make(target: Path) -> None:
    """Makes the picture."""
    with TemporaryDirectory() as folder:
        whole = side_by_side(list(first_pages(printed_plan(Path(folder)))))
        whole.quantize(COLORS, dither=Image.Dither.NONE).save(target, optimize=True)


if __name__ == "__main__":
    make(TARGET)
