"""A piece larger than the plate, with where the plate comes down, numbered in order."""

from xlbatch.geometry.path import path_data
from xlbatch.job.job import Press
from xlbatch.paper.picture import Picture, drawn
from xlbatch.placement.place import Place
from xlbatch.placement.sections import plate_lying

PIECE, INK, PLATE = "#b4bac0", "#000000", "#0b5a5e"
RING, LETTERS = 8.0, 11.0  # points: the ring of a number, where there is room for it


def plate_picture(place: Place, press: Press, width: float, height: float) -> Picture:
    """The piece as one looks at it, in `width` × `height` points; each section's outline is one plate."""
    decal = place.decal
    across, down = plate_lying(decal.width, decal.height, press)
    right = max(decal.width, *(2 * abs(section.right) + across for section in place.sections))
    tall = max(decal.height, *(2 * abs(section.up) + down for section in place.sections))
    scale = min((width - 4) / right, (height - 4) / tall)
    x, y = width / 2 - decal.width / 2 * scale, height / 2 + decal.height / 2 * scale
    body = f'<rect x="{x:.2f}" y="{y - decal.height * scale:.2f}" width="{decal.width * scale:.2f}" '
    body += f'height="{decal.height * scale:.2f}" fill="{PIECE}" fill-opacity=".35"/>'
    if decal.outline is not None:
        body += f'<path d="{path_data(decal.outline.segments, (scale, 0.0, 0.0, -scale, x, y))}" fill="{PIECE}"/>'
    columns = sorted({section.right for section in place.sections})
    rows = sorted({-section.up for section in place.sections})
    cell = decal.width * scale / len(columns), decal.height * scale / len(rows)
    ring = min(RING, min(cell) / 2)
    wide, high = across * scale, down * scale
    marks = ""
    for no, section in enumerate(place.sections, 1):
        u, v = width / 2 + section.right * scale, height / 2 - section.up * scale
        body += (
            f'<rect x="{u - wide / 2:.2f}" y="{v - high / 2:.2f}" width="{wide:.2f}" height="{high:.2f}" rx="3" '
            f'fill="none" stroke="{PLATE}" stroke-width="1.4" stroke-dasharray="{4 + no} 2"/>'
        )
        # plates may lie almost on one another: each number stands in its own part of the piece
        u = x + (columns.index(section.right) + 0.5) * cell[0]
        v = y - decal.height * scale + (rows.index(-section.up) + 0.5) * cell[1]
        marks += (
            f'<circle cx="{u:.2f}" cy="{v:.2f}" r="{ring:.2f}" fill="#fff" stroke="{PLATE}" stroke-width="1.2"/>'
            f'<text x="{u:.2f}" y="{v + ring * 0.49:.2f}" font-size="{LETTERS * ring / RING:.2f}" font-weight="700" '
            f'text-anchor="middle" fill="{INK}">{no}</text>'
        )
    svg = f'<svg xmlns="http://www.w3.org/2000/svg" width="{width:.2f}" height="{height:.2f}" font-family="Arimo">'
    return drawn(f"{svg}{body}{marks}</svg>", f"Where the plate comes down on {decal.titled}")
