"""Finds decals that can't lie on their film."""

from collections import defaultdict
from collections.abc import Iterator, Sequence

from xlbatch.art.decal import Decal
from xlbatch.check.garment import Garment
from xlbatch.film.box import UM, Bed, bed_of, box_of, longest_run
from xlbatch.film.run_of_strips import LEAST_TEST_CUT, room_for_test_cut, test_square
from xlbatch.film.strip_lengths import least_lengths
from xlbatch.job.job import Film, Job, Settings
from xlbatch.problems import Problem, Where, problem
from xlbatch.units import length_text, print_step, printed_text

TRIES = 50  # for one garment's strip: as few as the layout ever tries


def unfit(job: Job, garments: tuple[Garment, ...], decals: tuple[Decal, ...]) -> tuple[Problem, ...]:
    """A test cut without room, decals wider than their film, and garments whose decals of one film are longer than a
    strip may be."""
    by_no = {garment.no: garment for garment in garments}
    return (
        *_test_cut(job),
        *(
            problem
            for film in job.films
            for problem in _on_film(film, job.settings, by_no, [decal for decal in decals if decal.film == film.name])
        ),
    )


def _test_cut(job: Job) -> Iterator[Problem]:
    """A test cut asked for where the end margin has no room for its square and the gap to the first decal."""
    settings = job.settings
    if settings.test_cut and test_square(settings) < LEAST_TEST_CUT:
        yield problem(
            "test-cut-no-room",
            job.setting_cells.get("Film end margin", Where("Job")),
            length_text(settings.end_margin, settings.length_unit),
            needed=printed_text(room_for_test_cut(settings), settings.length_unit, up=True),
        )


def _on_film(film: Film, settings: Settings, by_no: dict[int, Garment], decals: Sequence[Decal]) -> Iterator[Problem]:
    bed = bed_of(film, settings)
    sets: dict[int, list[Decal]] = defaultdict(list)
    for decal in decals:
        if bed.ways(box_of(decal, bed.gap)):
            sets[decal.garment_no].append(decal)
        else:
            yield _too_wide(decal, film, settings, by_no[decal.garment_no], bed)
    lengths = least_lengths([[box_of(decal, bed.gap) for decal in decals_] for decals_ in sets.values()], bed, TRIES)
    for (no, garment_decals), length in zip(sets.items(), lengths.tolist(), strict=True):
        if length > bed.longest:
            yield _too_long(garment_decals, (length - bed.gap) / UM, film, settings, by_no[no])


def _too_wide(decal: Decal, film: Film, settings: Settings, garment: Garment, bed: Bed) -> Problem:
    """The width that would fit: its shape kept, the narrower side across where it may be turned."""
    unit = settings.length_unit
    side = min(decal.width, decal.height) if bed.turn else decal.width
    step = print_step(unit)
    fits = decal.width * film.usable_width / side // step * step
    width, height = (printed_text(length, unit, up=True) for length in (decal.width, decal.height))
    return problem(
        "decal-wider-than-film",
        _where(decal, garment),
        f"{width} × {height}",
        rows=(garment.row.source.row,),
        decal=f"{garment.who}’s {decal.spec.decal}",
        width=width,
        height=height,
        film=film.name,
        usable=length_text(film.usable_width, unit),
        fits=length_text(fits, unit),
    )


def _too_long(decals: Sequence[Decal], length: float, film: Film, settings: Settings, garment: Garment) -> Problem:
    """Longer than the longest strip, which one garment's decals may be, or than the longest cut."""
    unit = settings.length_unit
    most_of_run = longest_run(film, settings) - 2 * settings.end_margin
    code, most = (
        ("decal-longer-than-cut", most_of_run)
        if length > most_of_run
        else ("decal-longer-than-strip", settings.longest_strip)
    )
    what = decals[0].spec.decal if len(decals) == 1 else f"set of {len(decals)} decals"
    return problem(
        code,
        _where(decals[0], garment),
        printed_text(length, unit, up=True),
        rows=(garment.row.source.row,),
        decal=f"{garment.who}’s {what}",
        length=printed_text(length, unit, up=True),
        most=length_text(most, unit),
    )


def _where(decal: Decal, garment: Garment) -> Where:
    """The Width on the Designs sheet; the roster row's Size where the design is a built-in one."""
    source = decal.spec.source
    return garment.row.source.at("Size") if source.built_in else source.at("Width")
