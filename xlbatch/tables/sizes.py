"""Turns a size as people write it into its one spelling: M, Ladies M, Youth M, 2T or 12M.

A size is made of words: who it is for (class), a letter or number (letter), months (month), a range of ages (age), and
words that say nothing (filler). The words stand in trade/sizes.csv.
"""

import re
import unicodedata
from functools import cache, lru_cache
from typing import NamedTuple, cast

from rapidfuzz import fuzz, process

from xlbatch.job.job import Class
from xlbatch.tables.cells import LIKELY
from xlbatch.trade.tables import table

ADULT = ("2XS", "XS", "S", "M", "L", "XL", "2XL", "3XL", "4XL", "5XL")
TODDLER = ("2T", "3T", "4T", "5T")
INFANT = ("6M", "12M", "18M", "24M")
_PREFIX: dict[str, str] = {"ladies": "Ladies ", "youth": "Youth "}
SIZES = (*ADULT, *(prefix + size for prefix in _PREFIX.values() for size in ADULT[1:7]), *TODDLER, *INFANT)
TALL = " Tall"  # ends the sizes of a longer cut: L Tall

BETWEEN = re.compile(r"[,;&+\n]|\b(?:and|et|und|ve|och|og)\b", re.IGNORECASE)  # several sizes, or several people
_SPLIT = re.compile(r"[(),=]+|(?<=[^\W\d_])\s*/\s*(?=[^\W\d_])")
_WORD = re.compile(r"\d+\s*(?:-|–|/|to)\s*\d+|\d+|[^\W\d_]+")
_NO_SPACE = re.compile(r"(?<=[\u3040-\u30ff\u4e00-\u9fff])(?=[a-z0-9])")  # between 女 and m
_X_WORD = re.compile(r"(x+)([a-wyz]*)")
_LETTERS = re.compile(r"(\d?)(x*)([sml]?)")
_MONTHS = re.compile(r"(?:\d+-)?(\d+)m")
_TODDLER = re.compile(r"t?([2-5])t?")
_LONG_CUT = re.compile(r"\b(?:tall|long)\b|(?<=\bl)t\b|(?<=\bxl)t\b|(?<=xxl)t\b|(?<=\dxl)t\b")
_LONGEST = 3  # words of a size in a message
_PLAIN_WORDS = ("as", "am", "al", "ms")  # of a message, in small letters no adult's or men's size
_TITLE_PARTS = re.compile(r"\s*[()\[\]:]\s*|\s+[-–—]\s+|\bsizes?\b", re.IGNORECASE)
# A chest or bust beside the letter it explains: M (38-40). From 28 in up it can be no age.
_CHEST = re.compile(
    r"(?:chest |bust )?(?:2[89]|[3-9]\d|1\d\d)(?: ?(?:-|–|/|to) ?\d{2,3})? ?(?:in|inch|inches|cm|\"|″)?\.?"
)


class _Said(NamedTuple):
    """What the words of a size say: for whom ("" where not said), and the sizes, in the short spelling."""

    for_: str
    sizes: frozenset[str]


@lru_cache(maxsize=10_000)
def read_size(text: str, for_hint: Class | None = None) -> str | None:
    """The size in its one spelling, or None. `for_hint` is who the garment is for, where the text does not say."""
    plain, tall = _LONG_CUT.subn(" ", _plain(text))
    parts = [part for part in map(str.strip, _SPLIT.split(plain)) if part]
    parts_read = [_read_part(part) for part in parts if len(parts) == 1 or not _CHEST.fullmatch(part)]
    known = [part_read for part_read in parts_read if part_read is not None]
    classes = {part_read.for_ for part_read in known} - {""}
    sizes = frozenset().union(*(part_read.sizes for part_read in known))
    if len(known) < len(parts_read) or len(classes) > 1 or not sizes:
        return None
    for_ = next(iter(classes), for_hint or ("youth" if len(sizes) > 1 else ""))  # 10-12 (M): ages are for youth
    read = {_one_spelling(size, for_) for size in sizes}
    size = read.pop() if len(read) == 1 else None
    if not size or not tall:
        return size
    return size + TALL if size_class(size) == "adult" else None


@lru_cache(maxsize=10_000)
def several_sizes(text: str) -> tuple[str, ...]:
    """The sizes of an answer that names more than one (`S, M`); none where only some say who they are for."""
    parts = [part for part in BETWEEN.split(text) if part.strip()]
    sizes = [read_size(part) for part in parts]
    if len(parts) < 2 or read_size(text) or len({says_whose(part) for part in parts}) > 1:
        return ()
    return tuple(filter(None, sizes)) if all(sizes) else ()


def several_people(name: str) -> bool:
    """Whether a name is plainly more than one: `Ana & Ivo`, `Ana, Ivo and Mei`."""
    return bool(BETWEEN.search(name))


def sizes_in(message: str) -> list[str]:
    """The sizes in a message: letters alone only in capitals, for an l or an m may be anything."""
    words = re.findall(r"[^\s,.!?()]+", message)
    sizes: list[str] = []
    if not any(_may_be_size(word) for word in words if not word.isdigit()):
        return sizes
    place = 0
    while place < len(words):
        phrases = (" ".join(words[place : place + many]) for many in range(_LONGEST, 0, -1))
        size = next(
            (
                phrase
                for phrase in phrases
                if read_size(phrase) and not (len(phrase) == 1 and phrase.islower()) and phrase not in _PLAIN_WORDS
            ),
            "",
        )
        sizes += [size] if size else []
        place += max(1, len(size.split()))
    return sizes


@lru_cache(maxsize=10_000)
def _may_be_size(word: str) -> bool:
    """Whether a word may be a size's own part: its letters, or ages."""
    parts = _WORD.findall(_plain(word))
    words_read = [read for part in parts if (read := _read_word(part))]
    return any(letters and (not letters.isdigit() or len(parts) > 1) for _, letters in words_read)


def says_whose(text: str) -> bool:
    """Whether a size says who it is for (`Adult M`, `YM`, `2T`) rather than a letter alone."""
    parts = (_read_part(part) for part in _SPLIT.split(_plain(text)))
    return any(part.for_ or size_class("".join(part.sizes).upper()) != "adult" for part in parts if part)


def says_tall(text: str) -> bool:
    """Whether a text asks for a longer cut."""
    return bool(_LONG_CUT.search(text.casefold()))


def size_class(size: str) -> Class:
    """Who a size in its one spelling is for."""
    for for_, prefix in _PREFIX.items():
        if size.startswith(prefix):
            return "ladies" if for_ == "ladies" else "youth"
    return "toddler" if size in TODDLER else "infant" if size in INFANT else "adult"


@lru_cache(maxsize=10_000)
def wearer(text: str) -> Class | None:
    """Who a garment is for, by any word for them (`kids`, `women's`, `unisex`), or None."""
    read = _read_part(_plain(text)) if text else None
    if read is None or read.sizes:
        return None
    anyones = any(_words().get(("filler", word)) for word in _WORD.findall(_plain(text)))  # unisex, regular
    return cast(Class, read.for_) if read.for_ else "adult" if anyones else None


def wearer_in(title: str) -> Class | None:
    """Who a title speaks of, also beside something else: `Grade 3 (youth sizes)`."""
    return next(filter(None, map(wearer, filter(None, (title, *_TITLE_PARTS.split(title))))), None)


@lru_cache(maxsize=10_000)
def likely_size(text: str) -> str:
    """The size most probably meant by a text that is none, or ""."""
    age = _words().get(("age", re.sub(r"\s*[-–/]\s*", "-", text.strip())))
    if age:
        return f"Youth {age}"
    read = _read_part(_plain(text))
    if read and not read.sizes:
        return ""  # only for whom: any of their sizes may be meant
    spoken = _spoken()
    best = process.extractOne(text.casefold(), list(spoken), scorer=fuzz.ratio, score_cutoff=LIKELY)
    return spoken[best[0]] if best else ""


@cache
def _spoken() -> dict[str, str]:
    """The usual spellings of every size, to find the nearest."""
    words = {"S": "small", "M": "medium", "L": "large", "XL": "extra large"}
    spoken = {
        f"{prefix.lower()}{word}": f"{prefix}{size}"
        for prefix in ("", *_PREFIX.values())
        for size, word in words.items()
    }
    return spoken | {size.lower(): size for size in SIZES} | {f"{size[:-1]} months": size for size in INFANT}


@cache
def _words() -> dict[tuple[str, str], str]:
    return {(line["Part"], line["Word"]): line["Reads as"] for line in table("sizes")}


def _plain(text: str) -> str:
    if text.isascii():
        return text.lower().replace("'", "")
    plain = unicodedata.normalize("NFKC", text).casefold().replace("'", "").replace("’", "")
    return _NO_SPACE.sub(" ", plain)


def _read_part(part: str) -> _Said | None:
    """What one part (between brackets and commas) says, or None where a word or sign is not known."""
    if _WORD.sub("", part).strip(' -–./:;!*“”"\t'):
        return None
    classes: set[str] = set()
    letters, ages = "", set()
    for word in _WORD.findall(part):
        read = _read_word(word)
        if read is None:
            return None
        classes |= {read[0]} - {""}
        if ("age", read[1]) in _words():
            ages.add(read[1])
        elif ("month", word) in _words() and not letters[-1:].isdigit():
            return None  # Mo: no 12 mo
        else:
            letters += read[1]
    if len(classes) > 1:
        return None
    return _Said(classes.pop() if classes else "", frozenset(ages | {letters} - {""}))


def _read_word(word: str) -> tuple[str, str] | None:
    """For whom, and the letters of a size; either may be empty."""
    words = _words()
    if word[0].isdigit():
        return ("", re.sub(r"\s*(?:-|–|/|to)\s*", "-", word))
    if ("class", word) in words:
        return (words["class", word], "")
    if ("filler", word) in words:
        return ("", "")
    if ("month", word) in words:
        return ("", words["month", word])
    letters = _letters(word)
    if letters is not None:
        return ("", letters)
    rest = _letters(word[1:])  # YM, AXL, WS
    return (words["class", word[0]], rest) if ("class", word[0]) in words and rest else None


def _letters(word: str) -> str | None:
    words = _words()
    if ("letter", word) in words:
        return words["letter", word]
    match = _X_WORD.fullmatch(word)  # xl, xxl, xlarge
    if not match or (match[2] and ("letter", match[2]) not in words):
        return None
    return match[1] + (words["letter", match[2]] if match[2] else "")


def _one_spelling(typed: str, for_: str) -> str | None:
    if for_ in ("", "infant") and (
        months := _MONTHS.fullmatch(typed if typed.endswith("m") or not for_ else typed + "m")
    ):
        return f"{months[1]}M" if f"{months[1]}M" in INFANT else None
    if (toddler := _TODDLER.fullmatch(typed)) and ("t" in typed or for_ == "toddler"):
        return f"{toddler[1]}T" if for_ in ("", "toddler", "youth") else None
    letter = _letter_size(typed) or (_words().get(("age", typed)) if for_ == "youth" else None)
    return f"{_PREFIX.get(for_, '')}{letter}" if letter and for_ not in ("toddler", "infant") else None


def _letter_size(typed: str) -> str | None:
    """`xxl`, `2xl` and `2x` are 2XL."""
    match = _LETTERS.fullmatch(typed)
    if not match:
        return None
    number, xs, letter = match.groups()
    if number and not 1 <= len(xs) <= 1:
        return None
    steps = int(number) if number else len(xs)
    if steps < 2 and number and not letter:
        return None  # 1X is a plus size in one shop and XL in another
    if steps == 0:
        return letter.upper() or None
    if letter == "m" or (letter == "s" and steps > 2) or (not letter and steps < 2):
        return None
    letter = letter or "l"
    return f"X{letter.upper()}" if steps == 1 else f"{steps}X{letter.upper()}" if steps <= 5 else None
