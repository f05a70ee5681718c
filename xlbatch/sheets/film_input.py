"""Film: one row a film, those of this job's designs and any the person listed."""

from xlbatch.job.job import Film, Job
from xlbatch.sheets.inputs import Input


def listed(job: Job) -> tuple[Film, ...]:
    """The films the designs name (all films while the roster is empty), and every row the person gave."""
    used = {name.casefold() for spec in job.designs for name in (spec.film, spec.outline_film)}
    return tuple(film for film in job.films if not job.roster or film.source.row or film.name.casefold() in used)


FILM = Input(
    name="Film",
    advice="One row a film. The maker's own press settings win: change them here. "
    "Rolls sold: 5 yd = 21.00; 25 yd = 92.00. On hand: 12 in x 40 in; 12 in x 9 ft: measure the pieces before each "
    "plan, film that came or was cut is not counted by itself.",
    records=listed,
    fields={
        "Film": "name",
        "Kind": "kind",
        "Color": "color",
        "Roll width": "roll_width",
        "Usable width": "usable_width",
        "Rolls sold": "rolls",
        "On hand": "on_hand",
        "Press temperature": "temperature",
        "Warm-up": "warm_up",
        "Press time": "press",
        "Back press": "back",
        "Peel": "peel",
        "Pressure": "pressure",
        "One direction": "one_direction",
        "Thinnest stroke": "thinnest",
    },
)
