"""What a row says of a person's name and of what is printed, put under the Roster's headings."""

import re
from collections.abc import Callable
from functools import cache

from xlbatch.job.job import NO_NAME
from xlbatch.roster.row_texts import CANCELLED, noted, pointed, text_of, with_texts
from xlbatch.tables.contents import AFTER_YES, NAME_AND_NUMBER, kind_of_text, yes_or_no
from xlbatch.tables.line import Line
from xlbatch.tables.sizes import read_size
from xlbatch.trade.answer_words import answer, answers_that_mean
from xlbatch.trade.name_parts import first_name, last_name, whole_name, words_of_no_name
from xlbatch.trade.remarks import NONE_WANTED, is_remark, remark_asks

_MARK = re.compile(r"^[*†✓✔✅☑✗✘❌?]+\s*|\s*[*†✓✔✅☑✗✘❌?]+$")
_LISTED = re.compile(r"^(?:[-–—•·>]+|\d{1,3}[.)])\s+(?=\D)")  # before each name of a list
_NO_TEXT = re.compile(r"[\W_]+")
_NAMES = ("name", "words", "answer")  # the kinds of an answer that is the name itself
_NEVER_PRINTED = ("price", "date", "contact")
_BESIDE = "Beside a print name"
_BRACKETS = re.compile(r"\s*[(\[]([^()\[\]]*)[)\]]\s*")
_AGE = re.compile(r"(?:age[ds]? )?\d{1,2}(?: ?(?:yo|y/o|yrs?|years?))?", re.IGNORECASE)
_DASH = re.compile(r"\s+[-–—]+\s+|\s*:\s+")
_LIKE_ANOTHERS = re.compile(r"(?:the )?same as (?!above).+|(?:genau)?so wie .+|wie bei .+", re.IGNORECASE)
_QUOTED = re.compile(r"[\"“”„«»‘‚'](.+)[\"“”„«»’‘']")
_WITHIN_QUOTES = re.compile(r"(.*?)[\"“”„«»]([^\"“”„«»]+)[\"“”«»](.*)")
_NUMBER = re.compile(r"(?:#|№|no\.?|nr\.?|n[º°]\.?|number)?\s*(\d{1,3})(?:[.,]0)?", re.IGNORECASE)
_NAME_AND_NUMBER = re.compile(r"(.*[^\W\d_])[\s,/#-]+(\d{1,2})")  # NOVAK 11
_AND = re.compile(r"\S\s+(?:&|\+|and|und|et|en|og|och)\s+[^\W\d_]|\w,.*\w,.*\w")  # two people in one name


def particle(line: Line) -> Line:
    """A last name with the part of it that stands in a column of its own: van der."""
    particle, last = text_of(line, "Particle"), text_of(line, "Last name")
    return with_texts(line, Last_name=f"{particle} {last}") if particle and last else line


def without_signs(line: Line) -> Line:
    """A first or last name of signs alone is none; a question mark is asked about."""
    for heading in ("First name", "Last name"):
        typed = text_of(line, heading)
        if typed and _NO_TEXT.fullmatch(typed):
            if "?" in typed:
                line.found("name-remark", heading, typed, name="", remark=typed)
            line = with_texts(line, **{heading.replace(" ", "_"): ""})
    return line


def two_names(line: Line) -> Line:
    """A whole name beside a first name that is no part of it is asked about: they may be two people's."""
    whole, first = text_of(line, "Who"), text_of(line, "First name")
    if whole and first and first.casefold() not in whole.casefold() and not line.given("Garment no."):
        line.found("names-differ", "Who", whole, other=first)
    return line


def who(line: Line) -> Line:
    """A name without the remarks beside it, which are asked about."""
    typed = text_of(line, "Who")
    if _LISTED.match(typed):
        typed = _LISTED.sub("", typed)
        line = with_texts(line, Who=typed)
    named = NAME_AND_NUMBER.fullmatch(typed)
    if named and not {"Number", "Garment no."} & line.cells.keys():
        line.found("list-name-numbers", "Who", typed, name=named[1], number=named[2])
        return with_texts(pointed(line, "Number", "Who"), Who=named[1], Number=named[2])
    name, remark = _name_and_remark(typed)
    if _AND.search(typed) and not line.given("Garment no.") and read_size(text_of(line, "Size")):
        line.found("name-several", "Who", typed)
    if not remark:
        beside = words_of_no_name(typed)
        if beside and not _AND.search(typed) and not line.given("Garment no."):
            line.found("name-doubtful", "Who", typed, words=", ".join(beside))
        return line
    line.found("name-remark", "Who", typed, name=name, remark=remark)
    asks = remark_asks(remark)
    line = noted(with_texts(line, Who=name), remark)
    if asks == NONE_WANTED and not line.given("Status"):
        line = with_texts(pointed(line, "Status", "Who"), Status=CANCELLED)
    return line


def _name_and_remark(typed: str) -> tuple[str, str]:
    if (mark := _MARK.search(typed)) and (name := _MARK.sub("", typed).strip()):
        return name, mark[0].strip()
    inside = _BRACKETS.search(typed)
    if inside and inside[1] and (is_remark(inside[1]) or _AGE.fullmatch(inside[1].strip())):
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


def name_wanted(line: Line) -> Line:
    """Whether a name is printed, from a column that asks so."""
    if "Name wanted" not in line.cells or line.given("Print name"):
        return line
    typed = text_of(line, "Name wanted")
    line, typed = _after_yes(pointed(line, "Print name", "Name wanted"), typed)
    if line.given("Print name"):
        return line
    means = yes_or_no(typed)
    if means == "not wanted":
        return with_texts(line, Print_name=NO_NAME)
    if means == "wanted":
        return line
    if typed and kind_of_text(typed) in _NAMES:
        return with_texts(line, Print_name=typed)
    line.found("print-answer-unclear", "Print name", typed or "a blank")
    return with_texts(line, Print_name=NO_NAME)


def print_name(line: Line) -> Line:
    """`same`, `first name only`, `leave blank` done; what stands beside a text taken apart, and asked."""
    typed = text_of(line, "Print name")
    if not typed or typed in (NO_NAME, text_of(line, "Who")):
        return line
    first, last = text_of(line, "First name"), text_of(line, "Last name")
    whole = whole_name(text_of(line, "Who")) or f"{first} {last}".strip()
    if typed.casefold() in whole.casefold().split():
        return line  # Skip of Skip Marlowe
    done: dict[str, Callable[[], str]] = {
        "whole name": lambda: whole,
        "whole name or above": lambda: whole,
        "first name": lambda: first or first_name(text_of(line, "Who")),
        "last name": lambda: last or last_name(text_of(line, "Who")),
        "no name": lambda: NO_NAME,
    }
    line, typed = _after_yes(line, typed)
    means = answer("Print name", typed)
    if means in done:
        text = done[means]()
        code = "print-answer-doubtful" if means == "whole name or above" else "print-answer"
        line.found(code, "Print name", typed, text=text or typed)
        return with_texts(line, Print_name=text or typed)
    named = _NAME_AND_NUMBER.fullmatch(typed)
    if named and named[1].casefold() in (whole.casefold(), *whole.casefold().split()) and not line.given("Number"):
        return with_texts(pointed(line, "Number", "Print name"), Print_name=named[1], Number=named[2])
    if _NO_TEXT.fullmatch(typed) or kind_of_text(typed) in _NEVER_PRINTED or _LIKE_ANOTHERS.fullmatch(typed):
        line.found("print-answer-unclear", "Print name", typed)
        return with_texts(line, Print_name=NO_NAME)
    if quoted := _QUOTED.fullmatch(typed):
        line.found("print-answer", "Print name", typed, text=quoted[1])
        return with_texts(line, Print_name=quoted[1])
    text, aside = _text_and_aside(typed)
    if aside and text:
        line.found("print-aside", "Print name", typed, text=text)
        return noted(with_texts(line, Print_name=text), f"Print name: {aside}")
    return line


def _after_yes(line: Line, typed: str) -> tuple[Line, str]:
    """What stands behind a yes: `Yes - Hedy`. A yes that is a part of the name is none: Si Won."""
    parted = AFTER_YES.fullmatch(typed)
    if not parted or parted[1].casefold() in text_of(line, "Who").casefold().split() or not yes_or_no(parted[1]):
        return line, typed
    if yes_or_no(parted[1]) != "wanted":
        line.found("print-answer-unclear", "Print name", typed)
        return with_texts(line, Print_name=NO_NAME), NO_NAME
    line.found("print-answer", "Print name", typed, text=parted[2])
    return with_texts(line, Print_name=parted[2]), parted[2]


def _text_and_aside(typed: str) -> tuple[str, str]:
    for sign in (" - ", " – "):  # Ana - no thanks
        text, parted, aside = typed.partition(sign)
        if parted and (answer("Print name", aside) or yes_or_no(aside)):
            return text.strip(), aside.strip()
    asked = _asking().fullmatch(typed)
    if asked and (asked["before"] or asked["after"]):
        return asked["text"].strip('"“”„ '), " … ".join(filter(None, (asked["before"].strip(), asked["after"])))
    if (within := _WITHIN_QUOTES.fullmatch(typed)) and not any(map(str.isalpha, within[1] + within[3])):
        return within[2], within[1] + within[3]
    inside = _BRACKETS.search(typed)
    if inside:
        return _BRACKETS.sub(" ", typed, count=1).strip(), inside[1].strip()
    for sign in (",", ";", " - ", " – "):
        text, parted, aside = typed.partition(sign)
        if parted and (is_remark(aside) or answer("Print name", aside)):
            return text.strip(), aside.strip()
    return typed, ""


@cache
def _asking() -> re.Pattern[str]:
    """`please print Mona`, `Mona please`: a text within words that ask for it."""
    before, after = ("|".join(map(re.escape, answers_that_mean(_BESIDE, where))) for where in ("before", "after"))
    return re.compile(
        rf"(?P<before>(?:(?:{before})\b\W*)*)(?P<text>.+?)\W*(?P<after>(?:\b(?:{after}))?)\W*", re.IGNORECASE
    )


def number_wanted(line: Line) -> Line:
    """Whether the number is printed, from a column that asks so."""
    typed = text_of(line, "Number wanted")
    means = yes_or_no(typed) if typed else "wanted"
    if means == "not wanted":
        return with_texts(line, Number="")
    if means != "wanted":
        line.found("number-wanted-unclear", "Number wanted", typed)
    elif typed and not line.given("Number"):
        line.found("number-wanted-none", "Number wanted", typed)
    return line


def number(line: Line) -> Line:
    """`#7`, `No. 5` and `7.0` are numbers; anything else is asked about where it is to be printed."""
    typed = text_of(line, "Number")
    if answer("Print name", typed) == "no name" or _NO_TEXT.fullmatch(typed):
        return with_texts(line, Number="")
    match = _NUMBER.fullmatch(typed)
    return with_texts(line, Number=match[1]) if match and match[1] != typed else line
