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
    found = [
        (level, [at for at, _ in run]) for level, run in groupby(enumerate(levels(text)), key=lambda each: each[1])
    ]
    for least in range(max((level for level, _ in found), default=0), 0, -1):
        found = _turned(found, least)
    return tuple(LevelRun(at[0], at[-1] + 1, level % 2 == 1) for level, at in found)


def _turned(runs: list[tuple[int, list[int]]], least: int) -> list[tuple[int, list[int]]]:
    """Every stretch of runs of at least this level the other way round."""
    found: list[tuple[int, list[int]]] = []
    for deep, stretch in groupby(runs, key=lambda run: run[0] >= least):
        them = list(stretch)
        found += them[::-1] if deep else them
    return found


def base_level(text: str) -> int:
    """1 where the first letter reads from the right, else 0 (P2, P3)."""
    first = next((kind for letter in text if (kind := unicodedata.bidirectional(letter)) in _STRONG), "L")
    return int(first != "L")


def levels(text: str, base: int | None = None) -> tuple[int, ...]:
    """The level of each letter: odd where it reads from the right."""
    base = base_level(text) if base is None else base
    kinds = [unicodedata.bidirectional(letter) or "L" for letter in text]
    seen = [at for at, kind in enumerate(kinds) if kind not in _IGNORED]
    resolved = _resolved("".join(text[at] for at in seen), [kinds[at] for at in seen], base)
    found, last = [base] * len(text), base
    by_place = dict(zip(seen, resolved, strict=True))
    for at in range(len(text)):
        found[at] = last = by_place.get(at, last)
    return tuple(_trailing(found, kinds, base))


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
    for at, kind in enumerate(kinds):
        if kind == "NSM":  # W1
            kind = before
        before = kind
        if kind in _STRONG:
            strong = kind
        kinds[at] = "AN" if kind == "EN" and strong == "AL" else kind  # W2
    kinds[:] = ["R" if kind == "AL" else kind for kind in kinds]  # W3
    for at in range(1, len(kinds) - 1):  # W4
        left, kind, right = kinds[at - 1 : at + 2]
        if left == right and ((kind in ("ES", "CS") and left == "EN") or (kind == "CS" and left == "AN")):
            kinds[at] = left
    _number_signs(kinds)
    strong = way
    for at, kind in enumerate(kinds):  # W7
        strong = kind if kind in "LR" else strong
        kinds[at] = "L" if kind == "EN" and strong == "L" else kind


def _number_signs(kinds: list[str]) -> None:
    """W5: signs beside a number go with it; W6: the others are neutral."""
    for start, end in _stretches(kinds, ("ET",)):
        if "EN" in kinds[max(start - 1, 0) : start] + kinds[end : end + 1]:
            kinds[start:end] = ["EN"] * (end - start)
    kinds[:] = ["ON" if kind in ("ES", "ET", "CS") else kind for kind in kinds]


def _stretches(kinds: Sequence[str], wanted: Sequence[str]) -> Iterator[tuple[int, int]]:
    at = 0
    for chosen, stretch in groupby(list(kinds), key=lambda kind: kind in wanted):
        end = at + len(list(stretch))
        if chosen:
            yield at, end
        at = end


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
        for at in (opens, closes):
            kinds[at] = taken
            for mark in range(at + 1, len(kinds)):  # marks on a bracket go with it
                if original[mark] != "NSM":
                    break
                kinds[mark] = taken


def _pairs(letters: str, kinds: Sequence[str]) -> list[tuple[int, int]]:
    """BD16: brackets that belong together, by where they open; none beyond 63 deep."""
    found: list[tuple[int, int]] = []
    opened: list[tuple[str, int]] = []
    for at, letter in enumerate(letters):
        if kinds[at] != "ON":
            continue
        letter = unicodedata.normalize("NFD", letter)
        if closing := _closing(letter):
            if len(opened) == 63:
                break
            opened.append((closing, at))
            continue
        deep = next((deep for deep in reversed(range(len(opened))) if opened[deep][0] == letter), None)
        if deep is not None:
            found.append((opened[deep][1], at))
            del opened[deep:]
    return sorted(found)


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


def _trailing(found: list[int], kinds: Sequence[str], base: int) -> list[int]:
    """L1: separators, and spaces before one or at the end, stand as the line reads."""
    at_end = True
    for at in reversed(range(len(found))):
        at_end = kinds[at] in ("B", "S") or (at_end and kinds[at] in ("WS", *_IGNORED))
        if at_end:
            found[at] = base
    return found
