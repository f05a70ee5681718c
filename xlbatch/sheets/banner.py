"""The banner of a batch: its garments and its press settings, in large type."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import groupby
from typing import NamedTuple

from xlbatch.job.job import Film, Press, Settings
from xlbatch.paper.measure import text_width
from xlbatch.paper.style import BANNER
from xlbatch.press.step import PressStep
from xlbatch.trade.tables import iron_dial
from xlbatch.units import temperature_text

IRON = "iron"

Line = tuple[str, str]  # a part in bold, and the rest


SetTo = tuple[object, ...]  # which press, and the films with their settings


class SettingWords(NamedTuple):
    """A film's press settings in words; "" for what it has not."""

    heat: str
    bare: str
    press: str
    back: str
    peel: str
    pressure: str
    cover: str

    @property
    def given(self) -> tuple[str, ...]:
        return tuple(filter(None, self))

    @property
    def short(self) -> tuple[str, ...]:
        """The heat and how long it is pressed."""
        return tuple(filter(None, (self.heat, self.press, self.back)))


def banners(
    steps: Sequence[PressStep], settings: Settings, room: float, before: SetTo, strips: Mapping[str, int]
) -> Iterator[tuple[list[Line], list[PressStep]]]:
    """A batch's steps, parted where the plate is set anew, and the lines of at most `room` points above each part:
    the batch with its garments, and its strips (by decal) where they have other numbers; then the settings, led by the
    films they are for; in short where they are as `before`."""
    numbers = ", ".join(str(no) for no in dict.fromkeys(step.place.garment.no for step in steps))
    press = f"Press {steps[0].lane} · " if settings.people_pressing > 1 else ""
    batch = f"{press}Batch {steps[0].batch} · no. {numbers}{_strips(steps, strips)}"
    lines: list[Line] = [(batch, "")]
    for _, run in groupby(steps, key=lambda step: step.temperature):
        part = list(run)
        films = films_by_settings(part, settings)
        if set_to(part, settings) == before:
            shorts = [", ".join((" + ".join(names), *words.short)) for words, names in films.items()]
            lines = list(_lines(batch, shorts, room))
        else:
            for words, names in films.items():
                lines += _lines(" + ".join(names), words._replace(heat=words.heat + _wait(part[0])).given, room)
        yield lines, part
        lines = []


def _strips(steps: Sequence[PressStep], strips: Mapping[str, int]) -> str:
    """The strips of a batch, by film and number, where some have another number than the batch."""
    strip_names = dict.fromkeys((step.film.name, strips.get(step.place.decal.id, step.batch)) for step in steps)
    if all(strip == steps[0].batch for _, strip in strip_names):
        return ""
    return " · strips " + ", ".join(f"{film} {strip}" for film, strip in strip_names)


def set_to(steps: Sequence[PressStep], settings: Settings) -> SetTo:
    """How the plate is set for these steps, and for which films."""
    return steps[0].lane, films_by_settings(steps, settings)


def _wait(step: PressStep) -> str:
    """That the plate needs a while to come to this step's heat."""
    if not step.wait:
        return ""
    return f" (wait {step.wait:.0f} s)" if step.wait < 60 else f" (wait {-(-step.wait // 60):.0f} min)"


def films_by_settings(steps: Iterable[PressStep], settings: Settings) -> dict[SettingWords, list[str]]:
    """The films of these steps by their settings in words; a warm-up only where a garment is bare."""
    films: dict[SettingWords, list[str]] = {}
    steps = tuple(steps)
    bare = any(step.warm_up for step in steps)
    for step in steps:
        names = films.setdefault(settings_words(step.film, step.press, settings, bare=bare), [])
        if step.film.name not in names:
            names.append(step.film.name)
    return films


def heat_text(heat: float, press: Press, settings: Settings) -> str:
    """`330 °F`, or where an iron's dial stands."""
    return f"dial {iron_dial(heat)}" if press.kind == IRON else temperature_text(heat, settings.temperature_unit)


def settings_words(film: Film, press: Press, settings: Settings, *, bare: bool) -> SettingWords:
    """A film's press settings in words, on garments of which some are bare or none is."""
    return SettingWords(
        heat=heat_text(film.temperature, press, settings) + ", no steam" * (press.kind == IRON),
        bare=f"bare garment {film.warm_up:g} s first" if film.warm_up and bare else "",
        press=f"press {film.press:g} s",
        back=f"back {film.back:g} s" if film.back else "",
        peel=f"peel {film.peel}",
        pressure=f"{film.pressure} pressure",
        cover=press.cover,
    )


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
