"""Three jobs to make pages of: 26 shirts of two films, 36 of four films with artwork of three layers, 34 bare names."""

import shutil
from dataclasses import dataclass
from pathlib import Path

from tests.workbooks import write_workbook
from xlbatch.plan import Plan

OFFICE, TO_TEXT = shutil.which("soffice"), shutil.which("pdftotext")


@dataclass(frozen=True)
class Printed:
    """A job's plan, its workbook of pages, and the text of each printed page."""

    plan: Plan
    workbook: Path
    most: int
    pages: tuple[str, ...]


KITE = """<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 200 150"><g fill="#ffffff">
<path d="M100 2 L160 52 L100 122 L40 52 Z M100 18 L58 52 L100 100 L142 52 Z" fill-rule="evenodd"/>
<path d="M100 34 L124 54 L100 84 L76 54 Z"/>
<path d="M92 118 h16 l-4 10 h12 l-6 16 -10 -8 -10 8 -6 -16 h12 z"/></g></svg>"""
LIGHTHOUSE = """<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 160 200">
<path fill="#1b2a49" d="M56 60 H104 L116 180 H44 Z M40 180 h80 v16 h-80 z M60 34 h40 v22 h-40 z
M52 30 L80 8 L108 30 Z"/>
<path fill="#d9480f" d="M54 84 h52 l3 24 h-58 z M50 132 h60 l3 24 h-66 z"/>
<path fill="#ffffff" d="M66 38 h28 v14 h-28 z M72 160 h16 v20 h-16 z"/></svg>"""

FIRST = (
    "Ottilie", "Bramwell", "Saffron", "Leopold", "Marisol", "Ansel", "Philippa", "Dov", "Clementia", "Ewan", "Noor",
    "Tamsin", "Rollo", "Ines", "Caspian", "Wilhelmina", "Beck", "Juno", "Orson", "Delphine", "Kit", "Rosalind", "Ivo",
    "Maude", "Thaddeus", "Bo", "Linus", "Petronella", "Ash", "Gwendolyn", "Faro", "Hester", "Mika", "Ursuline", "Jory",
    "Zelda",
)  # fmt: skip
LAST = ("Quillfeather", "Marsh", "Tallow", "Penhale", "Oyelaran", "Brack")
SIZES = ("M", "L", "Youth M", "Youth L", "XL", "Ladies M", "S", "Youth S", "2XL", "Ladies L")


def kite_day(folder: Path, paper: str = "Letter") -> Path:
    """26 shirts of two films in six households, two held back; two Ottilies in different households."""
    (folder / "kite.svg").write_text(KITE, encoding="utf-8")
    people = [
        (
            *((FIRST[at], LAST[at % 5]) if at != 25 else ("Ottilie", "Brack")),
            "Crew-neck tee" if at % 4 else "V-neck tee",
            SIZES[at % 8] if at % 4 else ("M", "L", "XL")[at % 3], "navy", "Kite", (at * 7 + 3) % 90,
            (12.5, None, "yes", None)[at % 4],
        )
        for at in range(26)
    ]  # fmt: skip
    held = [("Gideon", "Marsh", "Crew-neck tee", "Huge", "navy", "Kite", 4, None),
            ("Sable", "Brack", "Crew-neck tee", None, "navy", "Kite", 5, None)]  # fmt: skip
    head = ("Who", "Group", "Garment", "Size", "Color", "Design", "Number", "Paid")
    garments = [
        (garment, size, 3, "3.90") for garment in ("Crew-neck tee", "V-neck tee")
        for size in SIZES if garment == "Crew-neck tee" or not size.startswith("Youth")
    ]  # fmt: skip
    return write_workbook(folder / "kite day.xlsx", {
        "Roster": (head, *people, *held),
        "Job": (("Setting", "Value"), ("Job name", "Kite day"), ("Needed by", "June 20"), ("Paper", paper),
                ("Labor per hour", "9"), ("Print", "first name")),
        "Designs": (
            ("Design", "Decal", "What", "Artwork", "Artwork color", "Film", "Layer", "Position", "Width", "Height"),
            ("Kite", "Kite", "artwork", "kite.svg", "#ffffff", "White smooth", 1, "full front", "8 in", None),
            ("Kite", "Back number", "number", None, None, "Gold glitter", 1, "back number", None, "6 in"),
        ),
        "Garments": (("Garment", "Size", "Iron dots", "Price"), *garments),
        "Film": (("Film", "Rolls sold"), ("White smooth", "5 yd = 21.00; 10 yd = 39"),
                 ("Gold glitter", "3 yd = 24; 5 yd = 36")),
    })  # fmt: skip


def choir_tour(folder: Path, paper: str = "Letter") -> Path:
    """36 garments of four films: artwork of three layers on the front, the name on the back."""
    (folder / "lighthouse.svg").write_text(LIGHTHOUSE, encoding="utf-8")
    head = ("Who", "Group", "Size", "Color", "Design", "Paid")
    people = [
        (f"{FIRST[at]} {LAST[at % 6]}", ("Soprano", "Alto", "Tenor", "Bass")[at % 4], SIZES[at % 7], "gray", "Tour",
         "yes" if at % 3 else None)
        for at in range(36)
    ]  # fmt: skip
    layers = (("Tower", "#1b2a49", "Navy smooth", 1), ("Bands", "#d9480f", "Orange smooth", 2),
              ("Lamp", "#ffffff", "White smooth", 3))  # fmt: skip
    return write_workbook(folder / "choir tour.xlsx", {
        "Roster": (head, *people),
        "Job": (("Setting", "Value"), ("Job name", "Harbor choir tour"), ("Paper", paper), ("Print", "first name"),
                ("Margin or fixed price", "18.00")),
        "Designs": (
            ("Design", "Decal", "What", "Artwork", "Artwork color", "Film", "Layer", "Position", "Width", "Height",
             "Widest"),
            *(("Tour", name, "artwork", "lighthouse.svg", color, film, layer, "full front", "5 in", None, None)
              for name, color, film, layer in layers),
            ("Tour", "Back name", "print name", None, None, "Gold glitter", 4, "back name", None, "2 in", "11 in"),
        ),
    })  # fmt: skip


def bare_list(folder: Path, paper: str = "Letter") -> Path:
    """34 names and sizes, nothing else but the paper."""
    people = [(f"{FIRST[at]} {LAST[at % 6]}", SIZES[at % 9]) for at in range(34)]
    job = (("Setting", "Value"), ("Paper", paper))
    return write_workbook(folder / "reading club.xlsx", {"Roster": (("Name", "Size"), *people), "Job": job})


JOBS = {"kite day": (kite_day, 11), "choir tour": (choir_tour, 16), "reading club": (bare_list, 7)}  # and most pages
