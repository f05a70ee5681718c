"""What a remark wishes for a row that no one has done."""

import re

from xlbatch.problems.phrases import phrase
from xlbatch.tables.sizes import sizes_in
from xlbatch.trade.answer_words import garment_in
from xlbatch.trade.contrast import shade
from xlbatch.trade.remarks import ANOTHER_SIZE, may_change_it, remark_asks

_ENDS_IN_SIZE = re.compile(r"\S+(?: \S+)? [SML]")  # now L; a middle letter stands between names
_QUOTED = re.compile(r"[\"“„«][^\"“”„«»]+[\"”“»]")  # put "Ren"
_MANY = re.compile(r"(?:x\s*)?[2-9]\d?(?:\s*x)?(?:\s+(?:please|pls|shirts?|tees?|of|pcs|pieces)\b.*)?", re.IGNORECASE)


def wish(remark: str) -> str:
    """What a remark asks for, by its words, or because it names a size, a garment or how many."""
    if asks := remark_asks(remark):
        return asks
    if any(len(size) > 1 or size == remark or _ENDS_IN_SIZE.fullmatch(remark) for size in sizes_in(remark)):
        return ANOTHER_SIZE
    if garment_in(remark) or any(shade(word) for word in re.findall(r"[^\W\d_]+", remark) if word.islower()):
        return "another garment or color"
    if _QUOTED.search(remark):
        return phrase("may change this row")
    if _MANY.fullmatch(remark):
        return "more than one"
    others = len(remark.split()) > 1 and may_change_it(remark)
    return phrase("may change this row") if others else ""
