"""Tells words that stand for something still open (`TBD`) from names."""

import re
from functools import cache

from xlbatch.trade.answer_words import answer
from xlbatch.trade.tables import table

_SIGNS_ALONE = re.compile(r"[\W_]+")


def stands_for(text: str) -> str:
    """`open` for a word or signs that are no name, `none or a name` for one that may be both, "" for anything else."""
    word = " ".join(text.casefold().strip(" .?!*()[]").split())
    if text and _SIGNS_ALONE.fullmatch(text):
        return "open"
    return "open" if answer("Print name", text) == "ask" else _words().get(word, "")


@cache
def _words() -> dict[str, str]:
    return {line["Word"]: line["Means"] for line in table("placeholders")}


def looks_like_sample(text: str) -> bool:
    """Whether a text of a drawing stands for the one that is meant: Your name here."""
    plain = " ".join(text.casefold().split())
    return any(line["Words"] in plain for line in table("sample_words"))
