"""Tries what might save film that straight strips cost: more shirts a strip, a longer strip."""

from collections.abc import Callable, Iterator
from dataclasses import replace

from xlbatch.film.layout import Lever
from xlbatch.job.job import Settings
from xlbatch.trade.tables import practice
from xlbatch.units import length_text

LONGER = 1.5  # times as long
WORTH = practice("film that a change must save to be told")


def best_lever(settings: Settings, now: float, length: Callable[[Settings], float]) -> Lever | None:
    """The change that leaves the least film, where it saves some. `now` is what all strips take in mm, and `length`
    what they take, roughly searched, with other settings: so it saves at least as much."""
    tried = [Lever(name, value, now - length(changed)) for name, value, changed in _changes(settings)]
    best = max(tried, key=lambda lever: lever.saves, default=None)
    return best._replace(saves=round(best.saves, 3)) if best and best.saves >= WORTH else None


def _changes(settings: Settings) -> Iterator[tuple[str, str, Settings]]:
    """One setting after another at the value to try, as it would be typed."""
    unit = settings.length_unit
    if settings.shirts_per_strip is not None:
        yield "Shirts per strip", "by itself", replace(settings, shirts_per_strip=None)
        twice = 2 * settings.shirts_per_strip
        yield "Shirts per strip", str(twice), replace(settings, shirts_per_strip=twice)
    else:
        handy = min(LONGER * settings.handy_strip, settings.longest_strip)
        yield "Handy strip", length_text(handy, unit), replace(settings, handy_strip=handy)
    longest = min(LONGER * settings.longest_strip, settings.longest_cut - 2 * settings.end_margin)
    if longest > settings.longest_strip:
        yield "Longest strip", length_text(longest, unit), replace(settings, longest_strip=longest)
