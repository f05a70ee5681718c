"""Turns the bytes of a .csv file into a sheet of text cells."""

import csv
import io
from collections import Counter
from functools import lru_cache

from xlbatch.files.chat import is_chat
from xlbatch.files.encodings import called, judge, names_concerned
from xlbatch.files.raw import Raw, RawSheet
from xlbatch.problems.refusals import Refusal

DELIMITERS = ",;\t|"
_SAMPLE = 50  # rows looked at to tell the delimiter


def sheet_from_text(data: bytes) -> RawSheet:
    """The rows of a delimited text file, as the sheet “Roster”. Raises Refusal for what is no text."""
    text, encoding = decoded(data), judged_encoding(data)
    judged = f"{called(encoding)}: {names_concerned(text)}" if encoding else ""
    if is_chat(text):
        lines = enumerate(text.splitlines(), 1)
        return RawSheet("Roster", {no: {1: Raw(line, "@")} for no, line in lines if line.strip()}, encoding=judged)
    first, _, rest = text.partition("\n")
    declared = first.strip().lower().removeprefix("sep=")
    if first.strip().lower().startswith("sep=") and len(declared) == 1:
        return RawSheet("Roster", _rows(rest, declared, start=2), encoding=judged)
    return RawSheet("Roster", _rows(text, delimiter(text), start=1), encoding=judged)


def _rows(text: str, separator: str, start: int) -> dict[int, dict[int, Raw]]:
    try:
        lines = list(csv.reader(io.StringIO(text, newline=""), delimiter=separator))
    except csv.Error as error:
        raise Refusal("no table", reason=error) from error
    filled = ((no, _cells(line)) for no, line in enumerate(lines, start))
    return {no: cells for no, cells in filled if cells}


def _cells(line: list[str]) -> dict[int, Raw]:
    return {column: Raw(value, "@") for column, value in enumerate(line, 1) if value.strip()}


def decoded(data: bytes) -> str:
    """The text of a file by its byte-order mark, else as UTF-16, UTF-8 or the likeliest other.

    Raises Refusal for binary."""
    text = _by_mark(data)
    if text is None:
        text = _by_trying(data)
    text = text.removeprefix("\ufeff")
    if "\0" in text:
        raise Refusal("neither")
    return text


def _by_mark(data: bytes) -> str | None:
    marked = {b"\xff\xfe": "utf-16-le", b"\xfe\xff": "utf-16-be", b"\xef\xbb\xbf": "utf-8"}
    for mark, encoding in marked.items():
        if data.startswith(mark):
            return data.decode(encoding, "replace")
    return None


def _by_trying(data: bytes) -> str:
    # Latin text in UTF-16 has a zero in every second byte.
    if b"\0" in data[:2000]:
        encoding = "utf-16-le" if data[1:2] == b"\0" else "utf-16-be"
        return data.decode(encoding, "replace")
    return data.decode(judged_encoding(data) or "utf-8", "replace")


@lru_cache(maxsize=2)
def judged_encoding(data: bytes) -> str:
    """The encoding that a text was judged to be in; "" where it says so itself, or is UTF-8."""
    if _by_mark(data) is not None or b"\0" in data[:2000]:
        return ""
    try:
        data.decode("utf-8")
    except UnicodeDecodeError:
        return judge(data).encoding
    return ""


def delimiter(text: str) -> str:
    """The sign that splits most of the first rows into the same number of columns."""
    sample = "\n".join(text.split("\n", _SAMPLE)[:_SAMPLE])
    return max(DELIMITERS, key=lambda sign: _evenness(sample, sign))


def _evenness(sample: str, sign: str) -> tuple[int, int]:
    try:
        widths = Counter(len(line) for line in csv.reader(io.StringIO(sample, newline=""), delimiter=sign) if line)
    except csv.Error:
        return 0, 0
    split = [(rows, width) for width, rows in widths.items() if width > 1]
    return max(split, default=(0, 0))
