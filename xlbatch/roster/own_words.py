"""Puts what a row says in its own words under the Roster's headings: `no shirt`, `2 x L`, `Ben - paid`, `same`, `#7`.

What is clear is done, and said; what is not is asked; what was split off goes on as a note, and is not printed."""

import re
from collections.abc import Callable
from dataclasses import replace

from xlbatch.files.broken_text import is_broken
from xlbatch.files.raw import Raw
from xlbatch.job.job import NO_NAME, Class
from xlbatch.tables.cells import Unclear, choice, shown_value, yes_no
from xlbatch.tables.contents import AFTER_YES
from xlbatch.tables.line import Line
from xlbatch.tables.size_cell import read_size_cell
from xlbatch.tables.sizes import read_size, says_whose, several_sizes, sizes_in, wearer
from xlbatch.trade.answer_words import answer, garment_in
from xlbatch.trade.name_parts import first_name, last_name
from xlbatch.trade.remarks import is_remark, remark_asks

CANCELLED = "cancelled"
_BRACKETS = re.compile(r"\s*[(\[]([^()\[\]]*)[)\]]\s*")
_DASH = re.compile(r"\s+[-–—]+\s+|\s*:\s+")
_NUMBER = re.compile(r"(?:#|№|no\.?|nr\.?|n[º°]\.?|number)?\s*(\d{1,3})(?:[.,]0)?", re.IGNORECASE)
_NO_TEXT = re.compile(r"[\W_]+")
_AND = re.compile(r"\S\s+(?:&|\+|and|und|et|en|og|och)\s+[^\W\d_]|\w,.*\w,.*\w")  # two people in one name
_MANY = re.compile(r"(?:x\s*)?[2-9]\d?(?:\s*x)?(?:\s+(?:please|pls|shirts?|tees?|of|pcs|pieces)\b.*)?", re.IGNORECASE)


def in_own_words(line: Line) -> Line:
    """The line with each answer under the heading it is about, and the questions it leaves."""
    _note(line)
    for take_apart in (
        _particle,
        _size,
        _cut,
        _how_many,
        _status,
        _wanted,
        _who,
        _name_wanted,
        _print_name,
        _number,
        _struck,
    ):
        line = take_apart(line)
    return line


def _text(line: Line, heading: str) -> str:
    """A cell's text, "" where there is none to be read."""
    cell = line.cells.get(heading)
    if cell is None or cell.fault or (isinstance(cell.value, str) and is_broken(cell.value)):
        return ""
    return shown_value(cell)


def _with(line: Line, **cells: str) -> Line:
    """The line with other texts in some cells ("" for none); a cell of its own is where the first one was."""
    named = {heading.replace("_", " "): text for heading, text in cells.items()}
    kept = {heading: cell for heading, cell in line.cells.items() if heading not in named}
    return replace(line, cells=kept | {heading: Raw(text) for heading, text in named.items() if text})


def _at(line: Line, heading: str, like: str) -> Line:
    """The line, `heading` pointing at the cell of `like` where the list has no column for it."""
    refs = line.source.cells
    if heading in refs or like not in refs:
        return line
    return replace(line, source=replace(line.source, cells={**refs, heading: refs[like]}))


def _noted(line: Line, remark: str) -> Line:
    note = _text(line, "Note")
    return _with(line, Note="; ".join(filter(None, (note, remark)))) if remark and remark not in note else line


def _not_made(line: Line, heading: str, typed: str) -> Line:
    """The line cancelled because of what stands under the heading, which stays there as typed."""
    if _text(line, "Status") != CANCELLED:
        line.found("not-made", heading, typed)
    line.unclear[heading] = typed
    line = _at(line, "Status", heading)
    kept = {name: cell for name, cell in line.cells.items() if name not in (heading, "Status")}
    return replace(line, cells=kept | {"Status": Raw(CANCELLED)})


def _particle(line: Line) -> Line:
    """A last name with the part of it that stands in a column of its own: van der."""
    particle, last = _text(line, "Particle"), _text(line, "Last name")
    return _with(line, Last_name=f"{particle} {last}") if particle and last else line


def _size(line: Line) -> Line:
    """A size with what stands beside it taken apart; `no shirt` for none."""
    typed = _text(line, "Size")
    if typed and answer("Size", typed) == "not wanted":
        return _not_made(line, "Size", typed)
    size = read_size_cell(typed)
    plain = size.size == typed or (read_size(typed) == size.size and not size.note and says_whose(typed))
    if not size.size or plain or several_sizes(typed):
        return line
    if size.doubtful:
        line.found("size-doubtful", "Size", typed, size=size.size, many=size.many)
    line = _with(_noted(line, size.note), Size=size.size)
    if size.many > 1 and not line.given("How many"):
        line = _with(_at(line, "How many", "Size"), How_many=str(size.many))
    if size.garment and not line.given("Garment"):
        line = _with(_at(line, "Garment", "Size"), Garment=size.garment)
    if size.color and not line.given("Color"):
        line = _with(_at(line, "Color", "Size"), Color=size.color)
    return line


def _cut(line: Line) -> Line:
    """A size of those the cut, or the title over the row, says it is for, where the size does not say."""
    typed, for_ = _text(line, "Size"), _whom(line)
    if not typed or for_ in (None, "adult") or says_whose(typed):
        return line
    size = read_size(typed, for_)
    if not size:
        line.found("cut-unclear", "Size", typed, whom=for_)
    return _with(line, Size=size) if size else line


def _whom(line: Line) -> Class | None:
    said = _text(line, "Cut")
    return (wearer(said) if len(said) > 1 else None) or line.for_


def _how_many(line: Line) -> Line:
    typed = _text(line, "How many")
    return _not_made(line, "How many", typed) if typed == "0" else line


def _status(line: Line) -> Line:
    """`Confirmed` is no status of ours; `Refunded` is cancelled."""
    typed = _text(line, "Status")
    is_ours = not isinstance(choice(Raw(typed), line.columns["Status"].choices), Unclear)
    means = _yes_or_no(typed) if typed and not is_ours else ""
    if means == "not wanted":
        return _not_made(line, "Status", typed)
    if means == "wanted":
        line.unclear["Status"] = typed
        return _with(line, Status="")
    return line


def _wanted(line: Line) -> Line:
    """Whether one is wanted, from a column that asks so."""
    if "Wanted" not in line.cells or line.given("Status"):
        return line
    typed = _text(line, "Wanted")
    means = _yes_or_no(typed)
    rest = None if means else AFTER_YES.fullmatch(typed)
    means = _yes_or_no(rest[1]) if rest else means
    doubt = rest and means == "wanted" and (is_remark(rest[2]) or answer("Status", rest[2]) != "wanted")
    if not typed or means not in ("wanted", "not wanted") or doubt:
        line.found("wanted-unclear", "Wanted", typed or "a blank")
        return line
    if means == "not wanted":
        line = _not_made(line, "Wanted", typed)
        line.unclear.pop("Wanted")
    return line


def _yes_or_no(typed: str) -> str:
    value = yes_no(Raw(typed))
    means = answer("Status", typed)
    return means if isinstance(value, Unclear) else "wanted" if value else "not wanted"


def _who(line: Line) -> Line:
    """A name without the remarks beside it, which are asked about."""
    typed = _text(line, "Who")
    name, remark = _name_and_remark(typed)
    if _AND.search(typed) and not line.given("Garment no.") and read_size(_text(line, "Size")):
        line.found("name-several", "Who", typed)
    if not remark:
        return line
    line.found("name-remark", "Who", typed, name=name, remark=remark)
    asks = remark_asks(remark)
    line = _noted(_with(line, Who=name), remark)
    if asks == "that none may be wanted" and not line.given("Status"):
        line = _with(_at(line, "Status", "Who"), Status=CANCELLED)
    return line


def _name_and_remark(typed: str) -> tuple[str, str]:
    inside = _BRACKETS.search(typed)
    if inside and inside[1] and is_remark(inside[1]):
        return _BRACKETS.sub(" ", typed, count=1).strip(), inside[1].strip()
    parts = _DASH.split(typed)
    if len(parts) == 2 and all(parts):
        for name, remark in (parts, parts[::-1]) if not typed.islower() else ():
            if (is_remark(remark) or _is_in_small_letters(remark)) and not is_remark(name):
                return name.strip(), remark.strip()
    return typed, ""


def _is_in_small_letters(text: str) -> bool:
    """Whether a text beside a name begins small, as no name does but one in small letters throughout."""
    return text[:1].islower()


def _name_wanted(line: Line) -> Line:
    """Whether a name is printed, from a column that asks so."""
    typed = _text(line, "Name wanted")
    if not typed or line.given("Print name"):
        return line
    line = _at(line, "Print name", "Name wanted")
    means = _yes_or_no(typed)
    if means == "not wanted":
        return _with(line, Print_name=NO_NAME)
    return line if means == "wanted" else _with(line, Print_name=typed)


def _print_name(line: Line) -> Line:
    """`same`, `first name only`, `leave blank` done; what stands beside a text taken apart, and asked."""
    typed = _text(line, "Print name")
    if not typed or typed in (NO_NAME, _text(line, "Who")):
        return line
    first, last = _text(line, "First name"), _text(line, "Last name")
    done: dict[str, Callable[[], str]] = {
        "whole name": lambda: _text(line, "Who") or f"{first} {last}".strip(),
        "first name": lambda: first or first_name(_text(line, "Who")),
        "last name": lambda: last or last_name(_text(line, "Who")),
        "no name": lambda: NO_NAME,
    }
    means = answer("Print name", typed)
    if means in done:
        text = done[means]()
        line.found("print-answer", "Print name", typed, text=text or typed)
        return _with(line, Print_name=text or typed)
    if _NO_TEXT.fullmatch(typed):
        line.found("print-answer-unclear", "Print name", typed)
        return _with(line, Print_name=NO_NAME)
    text, aside = _text_and_aside(typed)
    if aside and text:
        line.found("print-aside", "Print name", typed, text=text)
        return _noted(_with(line, Print_name=text), f"Print name: {aside}")
    return line


def _text_and_aside(typed: str) -> tuple[str, str]:
    inside = _BRACKETS.search(typed)
    if inside:
        return _BRACKETS.sub(" ", typed, count=1).strip(), inside[1].strip()
    for sign in (",", ";", " - ", " – "):
        text, found, aside = typed.partition(sign)
        if found and (is_remark(aside) or answer("Print name", aside)):
            return text.strip(), aside.strip()
    return typed, ""


def _number(line: Line) -> Line:
    """`#7`, `No. 5` and `7.0` are numbers; anything else is asked about where it is to be printed."""
    typed = _text(line, "Number")
    found = _NUMBER.fullmatch(typed)
    return _with(line, Number=found[1]) if found and found[1] != typed else line


def _struck(line: Line) -> Line:
    """A row struck through, or under a title such as `Cancelled`, is not made, and asked."""
    if not line.left_out or line.given("Status"):
        return line
    line.found("row-left-out", "Who", _text(line, "Who") or _text(line, "First name"), why=line.left_out)
    return _with(_at(line, "Status", "Who"), Status=CANCELLED)


def _note(line: Line) -> None:
    """A remark that asks for something is asked about."""
    typed = _text(line, "Note")
    asks = _asks(typed) if typed and not line.given("Garment no.") else ""
    if asks and not line.given("Status"):
        line.found("note-asks", "Note", typed, asks=asks)


def _asks(remark: str) -> str:
    """What a remark asks for, by its words, or because it names a size, a garment or how many."""
    if asks := remark_asks(remark):
        return asks
    if any(len(size) > 1 or size == remark for size in sizes_in(remark)):
        return "another size or a change"
    if garment_in(remark):
        return "another garment or color"
    return "more than one" if _MANY.fullmatch(remark) else ""
