"""The size chart of a sign-up workbook: flat measures by size, and how to take them from a shirt that fits."""

from collections.abc import Iterator

from xlbatch.job.job import Blank, Class
from xlbatch.paper.cell import Value
from xlbatch.paper.page import Column, Page
from xlbatch.paper.picture import Picture, drawn
from xlbatch.sign_up.asked import Asked
from xlbatch.trade.tables import table
from xlbatch.units import printed_length

NAME = "Sizes"
HEIGHT = 132.0  # points of the drawing
SAMPLE, SAMPLE_COLUMN = 210.0, 4  # points the picture of the shirt may be wide; the column it begins in
INK, LINE = "#17202a", "#14508c"
COLUMNS = (
    Column("Shirt for", 1.0, ("text", "strong")),
    Column("Size", 1.0, ("text", "strong")),
    Column("A  Across (in)", 1.1, ("inches",)),
    Column("A  Across (cm)", 1.1, ("tenths",)),
    Column("B  Long (in)", 1.1, ("inches",)),
    Column("B  Long (cm)", 1.1, ("tenths",)),
    Column("Fits about", 1.6),
)


def write_size_chart(page: Page, asked: Asked, sample: Picture | None = None) -> None:
    """How to measure, with a drawing, then a row for each class and size on offer; `sample` shows the shirt itself."""
    page.lay_columns(COLUMNS)
    page.title(f"{asked.event}: sizes")
    page.line(
        "Lay a shirt that fits you on the table and measure it here: A from armpit to armpit, B from the shoulder at "
        "the neck to the hem. Choose the size nearest to it; between two, the larger.",
        "body large",
        "wrapped",
    )
    row = page.gap(HEIGHT + 8)
    page.picture(row, 0, how_to_measure(page.room / 2 if sample else page.room - 6))
    if sample:
        page.picture(row, SAMPLE_COLUMN, sample)
    page.heading()
    for for_, blanks in asked.sizes().items():
        for blank in blanks:
            page.record(chart_row(for_, blank))
    page.end_table()


def chart_row(for_: Class, blank: Blank) -> tuple[Value, ...]:
    """One size: its flat measures in both units, to 1/8 in and 1 mm, and whom it usually fits."""
    across = (printed_length(blank.chest, "in"), printed_length(blank.chest, "cm"))
    long = (printed_length(blank.length, "in"), printed_length(blank.length, "cm"))
    return (for_, blank.size, *across, *long, _fits(for_, blank.size))


def _fits(for_: Class, size: str) -> str:
    """The chest of EN 13402-3 for a size, or the heights of the children whose sizes it stands for."""
    for line in table("body_sizes"):
        if (line["For"], line["Size"]) == (for_, size):
            return f"{line['Chest from (cm)']} to {line['Chest to (cm)']} cm chest"
    tall = [int(line["Height (cm)"]) for line in table("child_sizes") if line["Reads as"] == size]
    return f"{_range(tall)} cm tall" if tall else ""


def _range(numbers: list[int]) -> str:
    low, high = min(numbers), max(numbers)
    return f"{low}" if low == high else f"{low} to {high}"


def how_to_measure(width: float) -> Picture:
    """A shirt lying flat with its two measures, in `width` points."""
    shirt = "M-28 -62 L-54 -52 L-88 -18 L-68 2 L-52 -14 V66 H52 V-14 L68 2 L88 -18 L54 -52 L28 -62 Q0 -38 -28 -62z"
    arrows = "".join(_measures())
    svg = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width:.0f}" height="{HEIGHT:.0f}" font-family="Arimo">'
        f'<g transform="translate({width / 2:.1f} {HEIGHT / 2 + 1:.1f}) scale(.95)">'
        f'<path d="{shirt}" fill="#fff" stroke="{INK}" stroke-width="1.5"/>'
        f'<path d="M-28 -62 Q0 -44 28 -62" fill="none" stroke="{INK}"/>{arrows}</g></svg>'
    )
    return drawn(svg, "A shirt lying flat: A from armpit to armpit, B from the shoulder at the neck to the hem")


def _measures() -> Iterator[str]:
    look = f'stroke="{LINE}" stroke-width="2" fill="none"'
    yield f'<path d="M-52 -8 H52 M-46 -12 L-52 -8 L-46 -4 M46 -12 L52 -8 L46 -4" {look}/>'
    yield f'<path d="M30 -61 V66 M26 -55 L30 -61 L34 -55 M26 60 L30 66 L34 60" {look}/>'
    for letter, x, y in (("A", -14, -14), ("B", 38, 40)):
        yield f'<text x="{x}" y="{y}" font-size="18" font-weight="700" fill="{LINE}">{letter}</text>'
