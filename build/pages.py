"""Makes example_workbooks/pages.png, the README's picture: pages to print of the relay example.

Run it after a change to the sheets. It needs LibreOffice (soffice), poppler (pdftotext, pdftoppm) and Pillow:
python build/pages.py
"""

import subprocess
import sys
from collections.abc import Iterator
from datetime import datetime
from pathlib import Path
from tempfile import TemporaryDirectory

from PIL import Image

ROOT = Path(__file__).resolve().parent.parent
EXAMPLE, TARGET = ROOT / "example_workbooks" / "relay squad.xlsx", ROOT / "example_workbooks" / "pages.png"
SHOWN = ("Order of the day", "Proof", "Buy and check in", "Cut and weed", "Press cards", "Placement pictures")
ACROSS = 3
GAP, DPI, COLORS = 16, 60, 64
GROUND, EDGE = "#ffffff", "#8593a1"


def printed_pages(folder: Path) -> Path:
    """The relay example's pages to print as a PDF; the run has a fixed date, so that the picture stays the same."""
    sys.path.insert(0, str(ROOT))
    from xlbatch.run import Options, run

    pages = run(EXAMPLE, Options(folder=folder), lambda _: None, datetime(2026, 4, 20, 9, 0)).to_print
    office = ["soffice", f"-env:UserInstallation={(folder / 'office').as_uri()}", "--headless"]
    subprocess.run([*office, "--convert-to", "pdf", "--outdir", str(folder), str(pages)], check=True)
    return folder / f"{pages.stem}.pdf" if pages else folder


def first_pages(pdf: Path) -> Iterator[Image.Image]:
    """The first printed page of each kind shown, known by its title."""
    text = subprocess.run(["pdftotext", "-layout", str(pdf), "-"], check=True, capture_output=True).stdout.decode()
    pages = text.rstrip("\f").split("\f")
    for title in SHOWN:
        number = str(next(at for at, page in enumerate(pages, 1) if page.lstrip().startswith(title)))
        target = pdf.with_name(title)
        subprocess.run(
            ["pdftoppm", "-r", str(DPI), "-f", number, "-l", number, "-singlefile", "-png", str(pdf), str(target)],
            check=True,
        )
        yield Image.open(f"{target}.png").convert("RGB")


def in_rows(pages: list[Image.Image]) -> Image.Image:
    """The pages in rows, each with a thin edge; all are of one size."""
    wide, high = pages[0].width + GAP, pages[0].height + GAP
    whole = Image.new("RGB", (ACROSS * wide + GAP, -(-len(pages) // ACROSS) * high + GAP), GROUND)
    for at, page in enumerate(pages):
        left, top = GAP + at % ACROSS * wide, GAP + at // ACROSS * high
        whole.paste(EDGE, (left - 1, top - 1, left + page.width + 1, top + page.height + 1))
        whole.paste(page, (left, top))
    return whole


def make(target: Path) -> None:
    """Makes the picture."""
    with TemporaryDirectory() as folder:
        whole = in_rows(list(first_pages(printed_pages(Path(folder)))))
        whole.quantize(COLORS, dither=Image.Dither.NONE).save(target, optimize=True)


if __name__ == "__main__":
    make(TARGET)
