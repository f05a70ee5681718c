"""The banner of a batch: its garments and its press settings, in large type."""

from collections.abc import Iterator, Sequence

from xlbatch.press.step import Step
from xlbatch.roster.job import Film, Press, Settings
from xlbatch.sheets.measure import text_width
from xlbatch.sheets.style import BANNER
from xlbatch.trade.tables import iron_dial
from xlbatch.units import temperature_text

IRON = "iron"


Line = tuple[str, str]  # a part in bold, and the rest


def banner(steps: Sequence[Step], settings: Settings, room: float) -> Iterator[Line]:
    """Lines of at most `room` points: the batch with its garments, and its settings; where its films need several,
    a line for each, led by the films it is for."""
    numbers = ", ".join(str(no) for no in dict.fromkeys(step.place.garment.no for step in steps))
    batch = f"Batch {steps[0].batch} · no. {numbers}"
    films = films_by_settings(steps, settings)
    if len(films) == 1:
        yield from _lines(batch, next(iter(films)), room)
        return
    yield batch, ""
    for said, names in films.items():
        yield from _lines(" + ".join(names), said, room)


def films_by_settings(steps: Sequence[Step], settings: Settings) -> dict[tuple[str, ...], list[str]]:
    """The films of these steps by their settings in words."""
    films: dict[tuple[str, ...], list[str]] = {}
    for step in steps:
        names = films.setdefault(settings_words(step.film, step.press, settings), [])
        if step.film.name not in names:
            names.append(step.film.name)
    return films


def settings_words(film: Film, press: Press, settings: Settings) -> tuple[str, ...]:
    """A film's press settings in words; an iron has a dial instead of degrees."""
    said = (
        f"dial {iron_dial(film.temperature)}"
        if press.kind == IRON
        else temperature_text(film.temperature, settings.temperature_unit),
        f"warm-up {film.warm_up:g} s",
        f"press {film.press:g} s",
        f"back {film.back:g} s" if film.back else "",
        f"peel {film.peel}",
        f"{film.pressure} pressure",
    )
    return tuple(filter(None, said))


def _lines(strong: str, parts: Sequence[str], room: float) -> Iterator[Line]:
    """A bold start and the parts after it, in as many lines as they need at a banner's size."""
    line = ""
    for part in parts:
        joined = f"{line}{', ' if line else ' · ' if strong else ''}{part}"
        if text_width(strong, BANNER, True) + text_width(joined, BANNER) > room:
            yield strong, line
            strong, joined = "", part
        line = joined
    yield strong, line
