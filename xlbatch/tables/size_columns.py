"""Reads a list with one column a size (`Qty S`, `Qty M` …), or beside its sizes one column a garment, a cut or a color:
the columns, and what stands in them."""

import re
from collections.abc import Iterable, Mapping
from functools import cache, lru_cache

from xlbatch.files.raw import Raw
from xlbatch.job.job import Class
from xlbatch.tables.cells import count, yes_no
from xlbatch.tables.heading_words import WHOLE, heading_scores
from xlbatch.tables.sizes import read_size, wearer
from xlbatch.trade.answer_words import garment_in, garment_meant
from xlbatch.trade.contrast import shade
from xlbatch.trade.tables import table, words

FEWEST = 2  # sizes; a single heading such as M may mean anything
_SIZE_WORDS = ("size", "shirt", "tshirt", "t", "tee", "if", "for")
_COUNTS = 0.7  # of the filled cells must be a count or a mark
_SAYS_COUNT = ("number", "no", "of", "in", "size", "sizes", "shirt", "shirts", "tee", "tees")  # beside a size
_OF = "(?:of|de|d['’]|di|von|an|van|da)"
_SAYS_MANY = ("how many", "number of", "count", "pcs")  # beside a garment, a cut or a color


def size_columns(titles: Mapping[int, str]) -> dict[int, str]:
    """The size each heading stands for, by column; empty where the headings are no row of sizes."""
    sizes = {column: size for column, size in ((column, _size(text)) for column, text in titles.items()) if size}
    asks_size = any(_is_size_heading(text) for column, text in titles.items() if column not in sizes)
    return {} if asks_size or len(set(sizes.values())) < max(FEWEST, len(sizes)) else sizes


def counted_columns(titles: Mapping[int, str]) -> dict[int, tuple[str, str]]:
    """The columns that count one garment (`Tee`, `Hoodie`), cut or color each, beside a column of sizes: which heading
    each is under, and what it would say there."""
    if not any(_is_size_heading(text) for text in titles.values()):
        return {}
    for heading, read in (("Garment", garment_meant), ("Cut", wearer), ("Color", shade)):
        named = {column: without_count(text, _SAYS_MANY) for column, text in titles.items()}
        meant = {column: value for column, text in named.items() if text and (value := read(text))}
        if len({*meant.values()}) == len(meant) >= FEWEST:
            return {column: (heading, named[column]) for column in meant}
    return {}


def _size(heading: str) -> str | None:
    return read_size(without_count(heading, (*_SAYS_MANY, *_SAYS_COUNT))) if heading.strip() else None


@lru_cache(maxsize=2000)
def without_count(heading: str, more: tuple[str, ...]) -> str:
    """A heading without the words that ask how many, in any of the languages, and without `more`."""
    return _counting(more).sub(" ", heading).strip()


@cache
def _counting(more: tuple[str, ...]) -> re.Pattern[str]:
    known = [word for line in table("roster_words") if line["Means"] == "How many" for word in words(line["Words"])]
    phrases = sorted({*more, *(word for word in known if "+" not in word)}, key=lambda phrase: (-len(phrase), phrase))
    return re.compile(rf"(?:\b(?:{'|'.join(map(re.escape, phrases))})\b\.?|[#:?])(?:\s+{_OF}\b)?", re.IGNORECASE)


def _is_size_heading(heading: str) -> bool:
    """Whether a heading asks for the size, of no one garment."""
    return heading_scores(heading).get("Size", 0.0) >= WHOLE and not garment_in(heading)


def sizes_by_wearer(titles: Mapping[int, str]) -> dict[int, Class]:
    """The columns that hold the sizes of some people only (`Youth size`, `Adult T-shirt size`), and of whom."""
    wearers = {column: _wearer_of(text) for column, text in titles.items()}
    return {column: wearer for column, wearer in wearers.items() if wearer}


@lru_cache(maxsize=2000)
def _wearer_of(heading: str) -> Class | None:
    words = re.findall(r"[^\W\d_]+", heading.casefold().replace("'", "").replace("’", ""))
    rest = [word for word in words if word not in _SIZE_WORDS]
    asks = "size" in words and len(rest) == 1 and not _is_size_heading(heading)
    return wearer(rest[0]) if asks else None


def holds_counts(rows: Iterable[Mapping[int, Raw]], columns: Iterable[int]) -> bool:
    """Whether the cells of those columns are counts or marks, nearly all."""
    cells = [cells[column] for cells in rows for column in columns if column in cells]
    return sum(pieces(cell) is not None for cell in cells) >= _COUNTS * len(cells)


def is_tick(cell: Raw) -> bool:
    """Whether a cell is a mark such as x, and no count."""
    return not isinstance(count(cell), int) and yes_no(cell) is True


def pieces(cell: Raw) -> int | None:
    """How many a cell asks for: a count, or 1 for a mark such as x; None for anything else."""
    number = count(cell)
    if isinstance(number, int):
        return number
    mark = yes_no(cell)
    return int(mark) if isinstance(mark, bool) else None
