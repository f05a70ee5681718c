"""In which order the parts of a line stand where some of it reads from the right: the Unicode Bidirectional Algorithm.

UAX #9 without the invisible direction codes, which the reading of a cell takes out. The rules keep their names there.
"""

import unicodedata
from collections.abc import Iterator, Sequence
from functools import cache
from itertools import groupby
from typing import NamedTuple

_STRONG = ("L", "R", "AL")
_NEUTRAL = ("B", "S", "WS", "ON")
_FROM_THE_RIGHT = frozenset(("R", "AL", "AN"))
_IGNORED = ("BN", "LRE", "RLE", "LRO", "RLO", "PDF", "LRI", "RLI", "FSI", "PDI")
_APART = {
    "[": "]",
    "{": "}",
    "［": "］",
    "｛": "｝",
    "\u298d": "\u2990",
    "\u298f": "\u298e",
}  # pairs that are not neighbors in code


class LevelRun(NamedTuple):
    """Letters from `start` to before `end` that read one way; `right` where from the right."""

    start: int
    end: int
    right: bool


def visual_runs(text: str) -> tuple[LevelRun, ...]:
    """The parts of a line that read one way, from left to right as they stand (rule L2)."""
    runs = [
        (level, [place for place, _ in run])
        for level, run in groupby(enumerate(levels(text)), key=lambda numbered: numbered[1])
    ]
    for least in range(max((level for level, _ in runs), default=0), 0, -1):
        runs = _turned(runs, least)
    return tuple(LevelRun(places[0], places[-1] + 1, level % 2 == 1) for level, places in runs)


def _turned(runs: list[tuple[int, list[int]]], least: int) -> list[tuple[int, list[int]]]:
    """Every stretch of runs of at least this level the other way round."""
    turned: list[tuple[int, list[int]]] = []
    for deep, stretch in groupby(runs, key=lambda run: run[0] >= least):
        them = list(stretch)
        turned += them[::-1] if deep else them
    return turned


def base_level(text: str) -> int:
    """1 where the first letter reads from the right, else 0 (P2, P3)."""
    first = next((kind for letter in text if (kind := unicodedata.bidirectional(letter)) in _STRONG), "L")
    return int(first != "L")


def levels(text: str, base: int | None = None) -> tuple[int, ...]:
    """The level of each letter: odd where it reads from the right."""
    base = base_level(text) if base is None else base
    kinds = [unicodedata.bidirectional(letter) or "L" for letter in text]
    if not base and not _FROM_THE_RIGHT.intersection(kinds):
        return (0,) * len(text)
    seen = [letter for letter, kind in enumerate(kinds) if kind not in _IGNORED]
    resolved = _resolved("".join(text[letter] for letter in seen), [kinds[letter] for letter in seen], base)
    levels_, last = [base] * len(text), base
    by_place = dict(zip(seen, resolved, strict=True))
    for place in range(len(text)):
        levels_[place] = last = by_place.get(place, last)
    return tuple(_trailing(levels_, kinds, base))


def _resolved(letters: str, kinds: list[str], base: int) -> list[int]:
    way = "R" if base else "L"
    original = list(kinds)
    _weak(kinds, way)
    _brackets(letters, kinds, original, way)
    _neutral(kinds, way)
    return [_level(kind, base) for kind in kinds]


def _level(kind: str, base: int) -> int:
    """I1, I2."""
    if base % 2:
        return base + (kind != "R")
    return base + {"L": 0, "R": 1}.get(kind, 2)


def _weak(kinds: list[str], way: str) -> None:
    """W1 to W7: marks and numbers."""
    strong = before = way
    for place, kind in enumerate(kinds):
        if kind == "NSM":  # W1
            kind = before
        before = kind
        if kind in _STRONG:
            strong = kind
        kinds[place] = "AN" if kind == "EN" and strong == "AL" else kind  # W2
    kinds[:] = ["R" if kind == "AL" else kind for kind in kinds]  # W3
    for place in range(1, len(kinds) - 1):  # W4
        left, kind, right = kinds[place - 1 : place + 2]
        if left == right and ((kind in ("ES", "CS") and left == "EN") or (kind == "CS" and left == "AN")):
            kinds[place] = left
    _number_signs(kinds)
    strong = way
    for place, kind in enumerate(kinds):  # W7
        strong = kind if kind in "LR" else strong
        kinds[place] = "L" if kind == "EN" and strong == "L" else kind


def _number_signs(kinds: list[str]) -> None:
    """W5: signs beside a number go with it; W6: the others are neutral."""
    for start, end in _stretches(kinds, ("ET",)):
        if "EN" in kinds[max(start - 1, 0) : start] + kinds[end : end + 1]:
            kinds[start:end] = ["EN"] * (end - start)
    kinds[:] = ["ON" if kind in ("ES", "ET", "CS") else kind for kind in kinds]


def _stretches(kinds: Sequence[str], wanted: Sequence[str]) -> Iterator[tuple[int, int]]:
    start = 0
    for chosen, stretch in groupby(list(kinds), key=lambda kind: kind in wanted):
        end = start + len(list(stretch))
        if chosen:
            yield start, end
        start = end


def _way_of(kind: str) -> str:
    return "R" if kind in ("R", "EN", "AN") else kind


def _brackets(letters: str, kinds: list[str], original: Sequence[str], way: str) -> None:
    """N0: a pair of brackets reads as what is in it does, or what is before it."""
    for opens, closes in _pairs(letters, kinds):
        inside = {_way_of(kind) for kind in kinds[opens + 1 : closes]} & {"L", "R"}
        if not inside:
            continue
        taken = way
        if way not in inside:
            before = next((_way_of(kind) for kind in reversed(kinds[:opens]) if _way_of(kind) in "LR"), way)
            taken = before if before in inside else way
        for place in (opens, closes):
            kinds[place] = taken
            for mark in range(place + 1, len(kinds)):  # marks on a bracket go with it
                if original[mark] != "NSM":
                    break
                kinds[mark] = taken


def _pairs(letters: str, kinds: Sequence[str]) -> list[tuple[int, int]]:
    """BD16: brackets that belong together, by where they open; none beyond 63 deep."""
    pairs: list[tuple[int, int]] = []
    opened: list[tuple[str, int]] = []
    for place, letter in enumerate(letters):
        if kinds[place] != "ON":
            continue
        letter = unicodedata.normalize("NFD", letter)
        if closing := _closing(letter):
            if len(opened) == 63:
                break
            opened.append((closing, place))
            continue
        deep = next((deep for deep in reversed(range(len(opened))) if opened[deep][0] == letter), None)
        if deep is not None:
            pairs.append((opened[deep][1], place))
            del opened[deep:]
    return sorted(pairs)


@cache
def _closing(letter: str) -> str:
    """The bracket that closes this one, "" where it opens none."""
    if not _bracket(letter, "Ps"):
        return ""
    after = _APART.get(letter) or chr(ord(letter) + 1)
    return after if _bracket(after, "Pe") else ""


def _bracket(letter: str, category: str) -> bool:
    return len(letter) == 1 and unicodedata.category(letter) == category and bool(unicodedata.mirrored(letter))


def _neutral(kinds: list[str], way: str) -> None:
    """N1, N2: what has no direction reads as its neighbors do where they agree, else as the line."""
    for start, end in _stretches(kinds, _NEUTRAL):
        before = _way_of(kinds[start - 1]) if start else way
        after = _way_of(kinds[end]) if end < len(kinds) else way
        kinds[start:end] = [before if before == after else way] * (end - start)


def _trailing(levels_: list[int], kinds: Sequence[str], base: int) -> list[int]:
    """L1: separators, and spaces before one or at the end, stand as the line reads."""
    at_end = True
    for place in reversed(range(len(levels_))):
        at_end = kinds[place] in ("B", "S") or (at_end and kinds[place] in ("WS", *_IGNORED))
        if at_end:
            levels_[place] = base
    return levels_
