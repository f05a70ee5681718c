"""Puts what a row says in its own words under the Roster's headings: `no shirt`, `2 x L`, `Ben - paid`, `same`, `#7`.

What is clear is done, and said; what is not is asked; what was split off goes on as a note, and is not printed."""

import re
from functools import cache

from xlbatch.files.raw import Raw
from xlbatch.job.job import Class
from xlbatch.roster.names_given import (
    name_wanted,
    number,
    number_wanted,
    particle,
    print_name,
    two_names,
    who,
    without_signs,
)
from xlbatch.roster.people import EXAMPLE_ROW
from xlbatch.roster.row_texts import CANCELLED, not_made, noted, pointed, text_of, with_texts
from xlbatch.roster.wishes import wish
from xlbatch.tables.boxes import mark
from xlbatch.tables.cells import Unclear, choice
from xlbatch.tables.contents import AFTER_YES, yes_or_no
from xlbatch.tables.line import Line
from xlbatch.tables.size_cell import SizeCell, read_size_cell
from xlbatch.tables.sizes import likely_size, read_size, says_whose, several_sizes, sizes_in, wearer
from xlbatch.trade.answer_words import answer, answers_that_mean
from xlbatch.trade.remarks import ANOTHER_SIZE, NONE_WANTED, is_remark, remark_asks

_STROKES = re.compile(r"[I|]{1,4}")


def in_own_words(line: Line) -> Line:
    """The line with each answer under the heading it is about, and the questions it leaves."""
    _note(line)
    for take_apart in (
        *(particle, _size, _cut, _counted, _how_many, _status, _wanted, _not_wanted),
        *(without_signs, two_names, who, name_wanted, print_name, number, number_wanted, _struck),
    ):
        line = take_apart(line)
    return line


def _size(line: Line) -> Line:
    """A size with what stands beside it taken apart; `no shirt` for none."""
    typed = text_of(line, "Size")
    if typed and answer("Size", typed) == "not wanted":
        return not_made(line, "Size", typed)
    size = read_size_cell(typed)
    if not size.size and not likely_size(typed) and len(among := sizes_in(typed)) == 1:  # I usually take a medium
        size = SizeCell(read_size(among[0]) or "", note=typed, doubtful=True)
    plain = size.size == typed or (read_size(typed) == size.size and not size.note and says_whose(typed))
    if not size.size or plain or several_sizes(typed):
        return line
    if size.doubtful or remark_asks(size.note) == ANOTHER_SIZE:
        line.found("size-doubtful", "Size", typed, size=size.size, many=size.many)
    line = with_texts(noted(line, size.note), Size=size.size)
    if size.many > 1 and not line.given("How many"):
        line = with_texts(pointed(line, "How many", "Size"), How_many=str(size.many))
    if size.garment and not line.given("Garment"):
        line = with_texts(pointed(line, "Garment", "Size"), Garment=size.garment)
    if size.color and not line.given("Color"):
        line = with_texts(pointed(line, "Color", "Size"), Color=size.color)
    return line


def _cut(line: Line) -> Line:
    """A size of those the cut, or the title over the row, says it is for, where the size does not say."""
    typed, for_ = text_of(line, "Size"), _whom(line)
    if not typed or for_ in (None, "adult") or says_whose(typed):
        return line
    size = read_size(typed, for_)
    if not size:
        line.found("cut-unclear", "Size", typed, whom=for_)
    return with_texts(line, Size=size) if size else line


def _whom(line: Line) -> Class | None:
    cut = text_of(line, "Cut")
    of_garment = (wearer(word) for word in text_of(line, "Garment").split() if len(word) > 1)  # women's tee
    return (wearer(cut) if len(cut) > 1 else None) or next(filter(None, of_garment), None) or line.for_


def _counted(line: Line) -> Line:
    """`x3`, `3 pcs` and the strokes of a tally as a number; strokes in groups may be of four or of five."""
    typed = text_of(line, "How many")
    if _STROKES.fullmatch(typed):
        return with_texts(line, How_many=str(len(typed)))
    match = _pieces().fullmatch(typed)
    return with_texts(line, How_many=match[1] or match[2]) if match else line


@cache
def _pieces() -> re.Pattern[str]:
    units = "|".join(map(re.escape, answers_that_mean("Beside a count", "pieces")))
    return re.compile(rf"[x×*]\s*(\d{{1,3}})|(\d{{1,3}})\s*(?:[x×*]|(?:{units})\.?)", re.IGNORECASE)


def _how_many(line: Line) -> Line:
    """None for 0; a number said in a word."""
    typed = text_of(line, "How many")
    if typed == "0":
        return not_made(line, "How many", typed)
    number_said = answer("How many", typed)
    return with_texts(line, How_many=number_said) if number_said else line


def _status(line: Line) -> Line:
    """`Confirmed` is no status of ours; `Refunded` is cancelled; a word of neither kind is asked about."""
    typed = text_of(line, "Status")
    ours = choice(Raw(typed), line.columns["Status"].choices)
    if not typed or not isinstance(ours, Unclear):
        return line
    means = yes_or_no(typed)
    if means == "not wanted":
        return not_made(line, "Status", typed)
    means = "" if means == "ask" else means
    of_another_list = not (means or ours.suggestion or line.given("Garment no.") or remark_asks(typed) == NONE_WANTED)
    if of_another_list:
        line.found("wanted-unclear", "Status", typed)
    if means != "wanted" and not of_another_list:
        return line
    line.unclear["Status"] = typed
    return with_texts(line, Status="")


def _wanted(line: Line) -> Line:
    """Whether one is wanted, from a column that asks so."""
    if "Wanted" not in line.cells or line.given("Status"):
        return line
    typed = text_of(line, "Wanted")
    means = yes_or_no(typed)
    rest = None if means else AFTER_YES.fullmatch(typed)
    means = yes_or_no(rest[1]) if rest else means
    doubt = rest and means == "wanted" and (is_remark(rest[2]) or answer("Status", rest[2]) != "wanted")
    if not typed or means not in ("wanted", "not wanted") or doubt:
        line.found("wanted-unclear", "Wanted", typed or "a blank")
        return line
    if means == "not wanted":
        line = not_made(line, "Wanted", typed)
        line.unclear.pop("Wanted")
    return line


def _not_wanted(line: Line) -> Line:
    """Whether none is wanted, from a column that asks so: a yes, a mark or a day."""
    typed = text_of(line, "Not wanted")
    if not typed or line.given("Status"):
        return line
    not_wanted = mark(line.cells["Not wanted"])
    if not_wanted is False:
        return line
    if not_wanted is True or answer("Status", typed) == "not wanted":
        line = not_made(line, "Not wanted", typed)
        line.unclear.pop("Not wanted")
        return line
    line.found("wanted-unclear", "Not wanted", typed)
    return line


def _struck(line: Line) -> Line:
    """A row struck through, or under a title such as `Cancelled`, is not made, and asked."""
    if not line.left_out or line.given("Status"):
        return line
    line.found("row-left-out", "Who", text_of(line, "Who") or text_of(line, "First name"), why=line.left_out)
    return with_texts(pointed(line, "Status", "Who"), Status=CANCELLED)


def _note(line: Line) -> None:
    """A remark that asks for something is asked about; what a blank workbook's example row says asks for nothing."""
    typed = text_of(line, "Note")
    own = typed == EXAMPLE_ROW["Note"] or line.given("Garment no.")
    asks = wish(typed) if typed and not own else ""
    if asks and not line.given("Status"):
        line.found("note-asks", "Note", typed, asks=asks)
