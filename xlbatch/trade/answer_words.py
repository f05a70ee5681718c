"""What the words mean that people write where a name, a size or a status is asked for; and garments by any word."""

import re
from functools import cache, lru_cache

from xlbatch.trade.tables import table, words

_WORDS = re.compile(r"[^\W\d_]+(?:-[^\W\d_]+)*")
_PLURAL = re.compile(r"(?<=[^\W\d_][^\W\d_][^\W\d_s])s\b")  # hoodies, camisetas, sweats à capuche
_SIGNS = re.compile("[\u2190-\u2bff\ufe0f\U0001f000-\U0001faff]+")  # pictures beside a word: \u2705 paid
PLAIN_TEE = "Crew-neck tee"
OF_ANY_SHIRT = (PLAIN_TEE, "Polyester sports tee")  # shirt, jersey: in a heading or title they say nothing


@lru_cache(maxsize=10_000)
def answer(asked: str, text: str) -> str:
    """What an answer to `asked` (Print name, Status, Size) means, as answers.csv has it; "" for any other text."""
    return _answers().get((asked, _plain(text)), "")


def answers_that_mean(asked: str, means: str) -> tuple[str, ...]:
    """All the answers to `asked` that mean that, as they stand in the table."""
    return tuple(line["Answer"] for line in table("answers") if (line["Asked"], line["Means"]) == (asked, means))


def _plain(text: str) -> str:
    text = _SIGNS.sub(" ", text) if any(map(str.isalnum, text)) else text
    bare = " ".join(re.sub(r"[.!*()\[\]“”\"]+", " ", text.casefold().replace("’", "'")).split())
    return re.sub(r"^(please )?(.+?)( please)?( thanks?)?$", r"\2", bare)


@cache
def _answers() -> dict[tuple[str, str], str]:
    return {(line["Asked"], _plain(line["Answer"])): line["Means"] for line in table("answers")}


@lru_cache(maxsize=10_000)
def garment_meant(text: str) -> str:
    """The garment of the built-in tables that a word in any of the languages means, or ""."""
    known = _garments()
    return known.get(_letters(text), "") or known.get(_letters(_PLURAL.sub("", text)), "") or _by_parts(text)


def _by_parts(text: str) -> str:
    """The garment that phrases make up, none of its words left over: a plain tee yields to what is said beside it."""
    words_ = _WORDS.findall(text)
    meant: set[str] = set()
    place = 0
    while place < len(words_) > 1:
        if words_[place].casefold() not in _first_words():
            return ""
        ends = range(min(len(words_), place + _longest()), place, -1)
        end = next((end for end in ends if _letters(" ".join(words_[place:end])) in _garments()), 0)
        if not end:
            return ""
        meant.add(_garments()[_letters(" ".join(words_[place:end]))])
        place = end
    special = meant - {PLAIN_TEE}
    return special.pop() if len(special) == 1 else PLAIN_TEE if meant and not special else ""


@cache
def _first_words() -> frozenset[str]:
    phrases = [phrase for line in table("garment_words") for phrase in words(line["Words"])]
    garments = (line["Garment"] for line in table("garments"))
    split = (_WORDS.findall(phrase) for phrase in (*phrases, *garments))
    return frozenset(parts[0].casefold() for parts in split if parts)


def garment_in(heading: str) -> str:
    """The garment a heading names beside other words (`Hoodie size`), or ""."""
    words_ = _WORDS.findall(heading)
    ends = (
        (start, end) for start in range(len(words_)) for end in range(min(len(words_), start + _longest()), start, -1)
    )
    phrases = (" ".join(words_[start:end]) for start, end in ends)
    return next(filter(None, map(garment_meant, phrases)), "")


@cache
def _longest() -> int:
    """How many words a garment is called by at most."""
    called = [phrase for line in table("garment_words") for phrase in words(line["Words"])]
    return max(
        len(re.findall(r"[^\W_]+", phrase)) for phrase in [*called, *(line["Garment"] for line in table("garments"))]
    )


@cache
def _garments() -> dict[str, str]:
    known = {_letters(line["Garment"]): line["Garment"] for line in table("garments")}
    return {_letters(word): line["Garment"] for line in table("garment_words") for word in words(line["Words"])} | known


def _letters(text: str) -> str:
    return re.sub(r"[\W_]", "", text.casefold())
