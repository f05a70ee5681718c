"""What the shirt looks like: the usual design on one garment, with words in place of a person's name and number."""

from dataclasses import replace
from io import BytesIO

from PIL import Image

from xlbatch.art.draw import draw
from xlbatch.check.check import check
from xlbatch.files.raw import Raw, RawSheet
from xlbatch.job.job import Job
from xlbatch.messages.group_picture import GarmentShown, group_picture
from xlbatch.paper.picture import Picture
from xlbatch.parts.take_up import with_drawings
from xlbatch.placement.put import place
from xlbatch.roster.read import read_sheets
from xlbatch.sign_up.asked import Asked

WEARER = {"Who": "Your Name", "Group": "Your Name", "Print name": "Your Name", "Number": "7"}  # nobody
DOT = 72 / 96  # points, of a picture that is not scaled


def sample_shirt(job: Job, asked: Asked, width: float, height: float) -> Picture | None:
    """A picture of a garment as it will be, in a box of so many points; None where the design cannot be drawn."""
    design, garment, color = asked.usual
    sizes = [blank.size for blank in asked.blanks if blank.garment.casefold() == garment.casefold()]
    if not sizes:
        return None
    size = "M" if "M" in sizes else sizes[0]
    cells = WEARER | {"Garment": garment, "Size": size, "Color": color, "Design": design}
    rows = {1: dict(enumerate(map(Raw, cells), 1)), 2: dict(enumerate(map(Raw, cells.values()), 1))}
    wearer = read_sheets(job.path, (RawSheet("Roster", rows),)).job.roster
    job, _ = with_drawings(replace(job, roster=wearer))
    garments, _ = check(job, frozenset())
    decals, _ = draw(job, garments)
    places, _ = place(job, garments, decals)
    if not places:
        return None
    png = group_picture([GarmentShown(places, "For example", f"{garment}, {color}")], job.film_colors, across=1)
    with Image.open(BytesIO(png)) as image:
        scale = min(width / image.width, height / image.height) / DOT
    return Picture(png, "What the shirt looks like", scale)
