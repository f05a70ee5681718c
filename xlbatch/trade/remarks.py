"""What a remark beside a name asks for, by its words."""

import re
from functools import cache, lru_cache

from xlbatch.trade.tables import table, words

ABOUT_THE_PERSON, NONE_WANTED = "about the person", "that none may be wanted"


@lru_cache(maxsize=10_000)
def remark_asks(text: str) -> str:
    """What a remark asks for that no one has done yet (another size, more than one …), or ""."""
    return next((says for says in _said(text) if says != ABOUT_THE_PERSON), "")


@lru_cache(maxsize=10_000)
def is_remark(text: str) -> bool:
    """Whether a text beside a name is a remark rather than a part of the name."""
    return bool(_said(text))


def _said(text: str) -> list[str]:
    plain = " ".join(re.sub(r"[^\w'\-]+", " ", text.casefold().replace("’", "'")).split())
    return [says for pattern, says in _patterns() if pattern.search(plain)]


@cache
def _patterns() -> tuple[tuple[re.Pattern[str], str], ...]:
    return tuple(
        (re.compile(rf"(?<!\w)(?:{'|'.join(map(re.escape, words(line['Words'])))})(?!\w)"), line["Says"])
        for line in table("remark_words")
    )
