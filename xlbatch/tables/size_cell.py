"""Reads a size with what people write beside it: how many, a garment, a color, a price, a remark, a doubt."""

import re
from collections.abc import Callable
from functools import lru_cache
from typing import NamedTuple

from xlbatch.files.raw import Raw
from xlbatch.job.job import Class
from xlbatch.tables.cells import yes_no
from xlbatch.tables.sizes import BETWEEN, read_size, says_tall, sizes_in
from xlbatch.trade.answer_words import garment_in, garment_meant
from xlbatch.trade.contrast import shade

_MANY_BEFORE = re.compile(r"(\d{1,2})\s*[x×*]\s+(?=\S)|(\d{1,2})\s*[×*]\s*", re.IGNORECASE)
_MANY_OR_X = re.compile(r"(\d{1,2})\s+[x×*]\s+(s|sm|small|l|lg|large)", re.IGNORECASE)  # 2 x L: two, or 2XL
_MANY_PLAIN = re.compile(
    r"(\d{1,2})\s+(?=(?:\d?x*[sml]|small|medium|large|(?:youth|ladies|adult)\s+\S+)$)", re.IGNORECASE
)
_COUNTED = re.compile(r"\d{1,2}\s*[x×*]\s*\S+")  # 1xS 1xL
_COUNT_BEFORE = re.compile(r"\d{1,2}\s*[x×*]?\s+\S")  # 1 XL, 1 M
_MANY_AFTER = re.compile(r"\s*(?:[x×*]\s*(\d{1,2})|\((?:x|×)\s*(\d{1,2})\))$", re.IGNORECASE)
_BESIDE = re.compile(r"\(([^()]*)\)|\[([^\[\]]*)\]")
_MONEY = re.compile(r"[+-]?\s*[$€£]\s*\d+(?:[.,]\d+)?|[+-]?\s*\d+(?:[.,]\d+)?\s*(?:[$€£]|usd|eur)", re.IGNORECASE)
_SHORT_FOR = re.compile(r"\b([wmykbg])['’]s\b", re.IGNORECASE)  # W's M
_WHOM = {"w": "women", "m": "men", "y": "youth", "k": "kids", "b": "boys", "g": "girls"}
_POLITE = re.compile(
    r"[,.!]*\s*\b(?:please|pls|plz|thanks|thank you|thx|ty|bitte|danke|merci|s'il vous plaît|svp|por favor|gracias|"
    r"per favore|grazie|alsjeblieft|graag|bedankt|obrigad[oa]|proszę|dzięki|prosím|díky|lütfen|teşekkürler)\b[ .!]*$",
    re.IGNORECASE,
)
_DOUBT = re.compile(r"\s*\?+\s*$|\b(?:i think|maybe|probably|not sure|i guess|perhaps|or so)\b", re.IGNORECASE)
_FIT = re.compile(r"(\S.*?)[\s,]+(relaxed|fitted|slim|loose|baggy|roomy|snug|oversized?)(?: fit)?", re.IGNORECASE)
_AFTER_YES = re.compile(r"(\w\w+)\s*[,;:!–-]+\s*(?=\w)")
_MOST_WORDS = 3  # of a color or garment
_SIGNS = " ,/:-–()[]"
_TAIL = re.compile(r"\s*(?:[,;]|\s[-–—]\s)\s*(.+)$")


class SizeCell(NamedTuple):
    """What a size cell says; `size` "" where no size was found. `note` is what else stands there, as typed."""

    size: str
    many: int = 1
    color: str = ""
    garment: str = ""
    note: str = ""
    doubtful: bool = False


@lru_cache(maxsize=10_000)
def read_size_cell(text: str, for_hint: Class | None = None) -> SizeCell:
    """The size of `3XL (wants it loose)`, `M?`, `2 x L`, `Navy M`, `Large ($15)`, `M, thanks`, with the rest apart."""
    if several := _MANY_OR_X.fullmatch(text.strip()):
        size, many = several[2][0].upper(), int(several[1])
        return SizeCell(size, many, doubtful=(size, many) != ("S", 1))  # for there is no 1XS
    size = read_size(text, for_hint)
    if size or not text or len(text) > 100:
        return SizeCell(size or "")
    doubtful = bool(_DOUBT.search(text)) or "?" in text
    if (answered := _AFTER_YES.match(text)) and yes_no(Raw(answered[1])) is True:
        text = text[answered.end() :]  # yes, L
    text = _SHORT_FOR.sub(lambda short: _WHOM[short[1].casefold()], text)
    rest = _POLITE.sub("", _DOUBT.sub(" ", text)).strip(" .!")
    rest, many, unsure = _count(rest)
    rest, garment = _beside_words(rest, lambda words: bool(garment_meant(words)))
    rest, notes = _apart(rest, for_hint)
    if notes and many == 1:  # 1 M (for Ana)
        rest, many, unsure = _count(rest)
    if (fit := _FIT.fullmatch(rest)) and read_size(fit[1], for_hint):
        rest, notes, unsure = fit[1], [*notes, fit[2]], True
    color = ""
    if not (size := read_size(rest, for_hint)):
        rest, color = _beside_words(rest, lambda words: shade(words) is not None)
        size = read_size(rest, for_hint) if color or garment else None
    other = any(says_tall(note) or {*map(read_size, sizes_in(note))} - {size} for note in notes)
    if not size and (order := _ordered(text)):
        return order
    return SizeCell(size or "", many, color, garment, "; ".join(notes), doubtful or unsure or other)


def _ordered(text: str) -> SizeCell | None:
    """`black V-neck, M`: a size, and in other parts of the text a garment, maybe with its color."""
    parts = [part.strip() for part in re.split(r"[,;/]|\s[-–—]\s", text) if part.strip()]
    sizes = list(filter(None, map(read_size, parts)))
    others = " ".join(part for part in parts if not read_size(part))
    colors = [word for word in others.split() if shade(word) is not None]
    garment = garment_in(others)
    return SizeCell(sizes[0], 1, " ".join(colors), garment) if len(sizes) == 1 and garment else None


def counted_sizes(text: str) -> tuple[str, ...]:
    """The parts of `2 x M, 1 x L`, as typed; none where a part of it is no size."""
    parts = tuple(part.strip() for part in BETWEEN.split(text) if part.strip())
    parts = tuple(_COUNTED.findall(text)) if len(parts) < 2 else parts
    cells = [read_size_cell(part) for part in parts]
    counts = any(cell.many > 1 for cell in cells) or _COUNTED.match(text) or all(map(_COUNT_BEFORE.match, parts))
    return parts if counts and all(cell.size for cell in cells) else ()


def _count(text: str) -> tuple[str, int, bool]:
    """The text without the number of pieces, that number, and whether it may mean something else (`3 M`)."""
    if match := _MANY_BEFORE.match(text):
        return text[match.end() :], int(next(filter(None, match.groups()))), False
    if match := _MANY_AFTER.search(text):
        return text[: match.start()], int(next(filter(None, match.groups()))), False
    if match := _MANY_PLAIN.match(text):
        return text[match.end() :], int(match[1]), True
    return text, 1, False


def _apart(text: str, for_hint: Class | None) -> tuple[str, list[str]]:
    """The text without brackets, prices and what stands after a comma, and these, where a size is left."""
    text = _BESIDE.sub(
        lambda beside: f" {beside[1] or beside[2]} " if _is_kind(beside[1] or beside[2]) else beside[0], text
    )
    notes = [part.strip() for texts in _BESIDE.findall(text) for part in texts if part.strip()]
    rest = _BESIDE.sub(" ", text).strip()
    if money := _MONEY.search(rest):
        notes.append(money[0].strip())
        rest = _MONEY.sub(" ", rest).strip(" -,")
    if not read_size(rest, for_hint) and (tail := _TAIL.search(rest)) and not _says_more(tail[1], for_hint):
        notes.append(tail[1])
        rest = rest[: tail.start()]
    return " ".join(rest.split()), notes


def _says_more(text: str, for_hint: Class | None) -> bool:
    """Whether a text beside a size is no remark: the size itself, a color, a garment."""
    return bool(read_size(text, for_hint)) or _is_kind(text)


def _is_kind(text: str) -> bool:
    return bool(text.strip()) and (shade(text.strip()) is not None or bool(garment_meant(text)))


def _beside_words(text: str, is_such: Callable[[str], bool]) -> tuple[str, str]:
    """The text without the words, a color's or garment's, it begins or ends with, and those; "" where it has none."""
    words = text.split()
    for many in range(min(_MOST_WORDS, len(words) - 1), 0, -1):
        for some, rest in ((words[:many], words[many:]), (words[-many:], words[:-many])):
            name = " ".join(some).strip(_SIGNS)
            if name and is_such(name):
                return " ".join(rest).strip(_SIGNS), name
    return text, ""
