"""Tells what the cells of a column look like: names, sizes, numbers, a counter, yes and no …"""

import re
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, time
from functools import lru_cache
from itertools import pairwise

from xlbatch.files.raw import Raw
from xlbatch.tables import cells
from xlbatch.tables.cells import Unclear, shown_value
from xlbatch.tables.size_cell import counted_sizes, read_size_cell
from xlbatch.tables.sizes import several_sizes, wearer
from xlbatch.trade.answer_words import answer, garment_meant
from xlbatch.trade.contrast import shade

MOST_LOOKED_AT = 50  # cells of a column
_MOSTLY = 0.6  # of them
_FEWEST_COUNTED = 2  # rows that make a counter
_CONTACT = re.compile(r"\S+@\S+\.\w+|https?://\S+|\+?[\d\s()/.-]{7,}")
_NUMBER = re.compile(
    r"(?:#|no\.?|nr\.?|n[º°]\.?)?\s*\d{1,3}(?:\.0)?|(?-i:[I|]+(?:\s+[I|]+)*)", re.IGNORECASE
)  # and strokes of a tally
_PRICE = re.compile(
    r"[^\w\s]\s*\d+(?:[.,]\d\d)?|\d+[.,]\d\d|\d+(?:[.,]\d\d)?\s*(?:[€£$]|usd|eur|kč|zł|tl)", re.IGNORECASE
)
_DATE = re.compile(r"\d{1,4}[-/.]\d{1,2}[-/.]\d{1,4}(?:[ T,]+\d{1,2}:\d{2}.*)?|\d{1,2}:\d{2}(?::\d{2})?")
_NAME = re.compile(r"[^\W\d_](?:[\w'’.\-]*)(?:,?\s+[^\W\d_(][\w'’.\-]*){0,4}\.?")
NAME_AND_NUMBER = re.compile(r"^([^\W\d_][\w'’.-]*(?: [^\W\d_][\w'’.-]*)+)\s+#?(\d{1,2})$")  # Ana Novak 8
_NUMBERED = re.compile(r"#?\d{1,2}[.):]?\s+(?=[^\W\d_])")  # before a name: 10 Rafa Dorado
_MOST_LETTERS = 40  # of a name
AFTER_YES = re.compile(r"(\w\w+)(?:\s*[,.;:!–-]+\s*|\s+(?=\())(.+)", re.IGNORECASE)  # yes, if there is room
_HIGHEST_COUNT = 9  # that numbers which repeat may still be counts by


@dataclass(frozen=True)
class Contents:
    """What share of a column's filled cells is of each kind, and how many differ.

    Beside `number` stands what its numbers are like: `differ` (no two alike, as on jerseys) or `few` (small, repeated,
    as counts are)."""

    shares: Mapping[str, float]
    filled: int = 0
    different: int = 0
    single: float = 0.0  # the share of texts of one word

    def share(self, kind: str) -> float:
        return self.shares.get(kind, 0.0)

    def looks_like(self, rows: int) -> str:
        """What a column of a list of so many rows looks like: text, answer, size, number; "" for nothing of these."""
        if self.filled < max(2, min(rows, MOST_LOOKED_AT) / 2):
            return ""
        if self.share("name") + self.share("words") / 2 >= _MOSTLY and self.different >= _MOSTLY * self.filled:
            return "text"
        if self.share("yes or no") + self.share("status") >= _MOSTLY:
            return "answer"
        return next((kind for kind in ("size", "number") if self.share(kind) >= _MOSTLY), "")


def contents(column: Sequence[Raw]) -> Contents:
    """What the cells of one column look like, its first ones."""
    looked_at = column[:MOST_LOOKED_AT]
    if not looked_at:
        return Contents({})
    texts = [shown_value(cell) for cell in looked_at]
    kinds = Counter(_kind(cell, text) for cell, text in zip(looked_at, texts, strict=True))
    if _counts(texts):
        kinds = Counter({"counter": len(texts)})
    if len(texts) > 1 and kinds["name"] == len(texts) == sum(len(text) == 2 and text.isupper() for text in texts):
        kinds = Counter({"letter": len(texts)})  # initials: no one's name
    shares = {kind: many / len(texts) for kind, many in kinds.items()}
    shares |= {kind: shares["number"] for kind in _of_numbers(texts) if "number" in shares}
    single = sum(" " not in text for text in texts) / len(texts)
    return Contents(shares, len(texts), len({text.casefold() for text in texts}), single)


def _counts(texts: Sequence[str]) -> bool:
    """Whether the cells count the rows: 1, 2, 3 …, some of them maybe missing."""
    numbers = [int(text.rstrip(".)")) for text in texts if re.fullmatch(r"\d{1,6}[.)]?", text)]
    rising = all(later > earlier for earlier, later in pairwise(numbers))
    most = len(texts) + len(texts) // 5
    return len(numbers) == len(texts) >= _FEWEST_COUNTED and rising and numbers[0] == 1 and numbers[-1] <= most


def _of_numbers(texts: Sequence[str]) -> tuple[str, ...]:
    """Whether the numbers among some texts all differ, or are small and repeat."""
    numbers = [int(text) for text in texts if re.fullmatch(r"\d{1,3}", text)]
    if len(set(numbers)) == len(numbers) > _FEWEST_COUNTED:
        return ("differ",)
    return ("few",) if len(numbers) > 1 and len(set(numbers)) < len(numbers) and max(numbers) <= _HIGHEST_COUNT else ()


def _kind(cell: Raw, text: str) -> str:
    if isinstance(cell.value, date | time):
        return "date"
    if isinstance(cell.value, int | float) and not isinstance(cell.value, bool):
        return "number" if 0 <= cell.value <= 999 and cell.value == int(cell.value) else "price"
    return "yes or no" if isinstance(cell.value, bool) else kind_of_text(text)


@lru_cache(maxsize=20_000)
def kind_of_text(text: str) -> str:
    """The kind of one text: size, wearer, color, garment, status, number, price, date, contact,
    letter, name, words, remark."""
    if _is_yes_no(text) and not read_size_cell(text).size:
        return "yes or no"
    if read_size_cell(text).size or several_sizes(text) or counted_sizes(text):
        return "size"
    if wearer(text):
        return "wearer"
    if shade(text) is not None:
        return "color"
    if garment_meant(text):
        return "garment"
    if answer("Status", text) or answer("Size", text):
        return "status"
    if answer("Print name", text):
        return "answer"
    for kind, form in (
        ("number", _NUMBER),
        ("price", _PRICE),
        ("date", _DATE),
        ("contact", _CONTACT),
    ):
        if form.fullmatch(text):
            return kind
    return _kind_of_words(text)


def _is_yes_no(text: str) -> bool:
    plain = text.strip(" .!").casefold()
    if plain in ("1", "0", "-", "x"):
        return plain == "x"
    match = AFTER_YES.fullmatch(plain)
    return not isinstance(cells.yes_no(Raw(match[1] if match else plain)), Unclear)


def _kind_of_words(text: str) -> str:
    text = NAME_AND_NUMBER.sub(r"\1", _NUMBERED.sub("", text))
    if not _NAME.fullmatch(text) or len(text) > _MOST_LETTERS:
        return "remark"
    if len(text.rstrip(".")) == 1 and text[0].isascii():
        return "letter"  # a middle initial, a mark: no one's name
    first, last = text[0], text.split()[-1][0]
    return "name" if not first.islower() and (not last.islower() or " " not in text) else "words"


def yes_or_no(typed: str) -> str:
    """`wanted`, `not wanted`, `ask`, or "" for what is neither."""
    value = cells.yes_no(Raw(typed))
    means = answer("Status", typed)
    return means if isinstance(value, Unclear) else "wanted" if value else "not wanted"
