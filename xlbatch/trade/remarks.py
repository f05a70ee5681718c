"""What a remark beside a name asks for, by its words."""

import re
from functools import cache, lru_cache

from xlbatch.trade.tables import table, words

ABOUT_THE_PERSON, NONE_WANTED, ANOTHER_SIZE = "about the person", "that none may be wanted", "another size or a change"
_COUNT = re.compile(r"(?<![\w.,:/€$£+-])(?<!\brow )[2-9](?![\w.,:/€$£-]*[\w:/€$£-])")  # of no price, day, time or row


@lru_cache(maxsize=10_000)
def remark_asks(text: str) -> str:
    """What a remark asks for that no one has done yet (another size, more than one …), or ""."""
    return next((says for says in _said(text) if says != ABOUT_THE_PERSON), "")


@lru_cache(maxsize=10_000)
def is_remark(text: str) -> bool:
    """Whether a text beside a name is a remark rather than a part of the name."""
    return bool(_said(text))


@lru_cache(maxsize=10_000)
def may_change_it(text: str) -> bool:
    """Whether a remark not otherwise understood denies or wants something, or holds a small number of its own."""
    plain = _plain(text)
    return not _said(text) and bool(_consequence().search(plain) or _COUNT.search(text))


def _said(text: str) -> list[str]:
    plain = _plain(text)
    return [says for pattern, says in _patterns() if pattern.search(plain)]


def _plain(text: str) -> str:
    return " ".join(re.sub(r"[^\w'\-]+", " ", text.casefold().replace("’", "'")).split())


def _whole_words(phrases: str) -> str:
    return rf"(?<!\w)(?:{'|'.join(map(re.escape, words(phrases)))})(?!\w)"


@cache
def _consequence() -> re.Pattern[str]:
    return re.compile("|".join(_whole_words(line["Words"]) for line in table("consequence_words")))


@cache
def _patterns() -> tuple[tuple[re.Pattern[str], str], ...]:
    return tuple((re.compile(_whole_words(line["Words"])), line["Says"]) for line in table("remark_words"))
