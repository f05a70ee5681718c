"""Film: one row a film, those of this job's designs and any the person listed."""

from xlbatch.job.job import Film, Job
from xlbatch.sheets.inputs import Input


def listed(job: Job) -> tuple[Film, ...]:
    """The films the designs name (all films while the roster is empty), then every other row the person gave."""
    used = _used(job)
    kept = (film for film in job.films if not job.roster or not film.source.built_in or film.name.casefold() in used)
    return tuple(sorted(kept, key=lambda film: film.name.casefold() not in used))


def _used(job: Job) -> set[str]:
    return {name.casefold() for spec in job.designs for name in (spec.film, spec.outline_film)}


def not_used(job: Job, film: Film) -> bool:
    """Whether no design of this job has it."""
    return bool(job.roster) and film.name.casefold() not in _used(job)


FILM = Input(
    name="Film",
    advice="One row a film; those below the heavy line are not used in this job. "
    "The maker's own press settings win: change them here. "
    "Rolls sold: 5 yd = 21.00; 25 yd = 92.00. On hand: 12 in x 40 in; 12 in x 9 ft: it is reckoned from what "
    "came and what was cut; measure it, and what you write here counts as of now.",
    records=listed,
    not_used=not_used,
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
        "Cut with": "cut_with",
    },
)
