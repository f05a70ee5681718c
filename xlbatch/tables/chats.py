"""Turns a chat into rows: each sender, or whom the message names, with the one size in the message."""

import re
from itertools import takewhile

from xlbatch.files.chat import sender_and_message
from xlbatch.files.raw import Orientation, RawSheet
from xlbatch.tables.cells import shown_value
from xlbatch.tables.contents import kind_of_text
from xlbatch.tables.list_shape import ListShape, cells_of, left_over, made_shape
from xlbatch.tables.size_cell import read_size_cell
from xlbatch.tables.sizes import sizes_in

_FEWEST = 2  # people; one alone may be anything
_MOSTLY, _HALF = 0.7, 0.5  # of the lines
_NAME_AND_SIZE = re.compile(r"\s*(?:[-–—:=]\s|\s[-–—=]|:|\()\s*")
_SAID = re.compile(r"(?P<sender>[^\W\d][^:]{0,40}):\s+(?P<message>\S.*)")
_WHOLE_NAME = re.compile(r"(?<![\w'’])[A-Z][^\W\d_]+(?: [A-Z][^\W\d_]+){1,2}(?![\w'’])")
_WHOSE = re.compile(r"\s+\((?:(?P<child>[^\W\d_]+)['’]s\b)?[^()]*\)$")  # Jill (Noah's mom)
_KISSES = re.compile(r"\s+x{1,4}\W*$")  # at the end of a message
_TIME_OF_DAY = re.compile(r"\s+\W?\d{1,2}[:.]\d{2}(?:\s*[ap]\.?m\.?)?\W?$", re.IGNORECASE)


def chat(sheet: RawSheet) -> ListShape | None:
    """Messages with a sender, most with a time: each sender with the one size in the message."""
    lines = {row: " ".join(map(shown_value, cells.values())) for row, cells in sheet.rows.items()}
    messages = {row: parted for row, line in lines.items() if (parted := sender_and_message(line))}
    if len(messages) < max(_FEWEST, _MOSTLY * len(lines)):
        messages = {row: parted for row, line in lines.items() if (parted := _said_by(line))}
        are_sizes = all(read_size_cell(message).size for _, message in messages.values())
        if len(messages) < max(_FEWEST, _MOSTLY * len(lines)) or are_sizes:
            return None
    people = {
        row: [_of_whom(message, sizes[0]) or sender, sizes[0], message]
        for row, (sender, message) in messages.items()
        if len(sizes := sizes_in(_KISSES.sub("", message))) == 1
    }
    if not people:
        return None
    shape = made_shape(sheet, people, Orientation(only=1), "Who", "Size", "Message", code="list-chat")
    return shape._replace(problems=shape.problems + left_over(sheet, cells_of(sheet, people)))


def _of_whom(message: str, size: str) -> str:
    """Whose size a message gives where it names someone before it: `Ned - Youth M`, `Ned Ash size M`."""
    before = message[: message.find(size)]
    if named := _WHOLE_NAME.search(before):
        return named[0]
    parts = _NAME_AND_SIZE.split(message, maxsplit=1)
    words = parts[0].split() if len(parts) > 1 and len(sizes_in(parts[1])) == 1 else []
    name = " ".join(takewhile(lambda word: word[0].isupper() and word.isalpha(), reversed(words)))
    return " ".join(reversed(name.split()))


def name_over_message(sheet: RawSheet) -> ListShape | None:
    """A chat with the sender, maybe with a time, in one line and the message, most with one size, in the next."""
    if any(len(cells) > 1 for cells in sheet.rows.values()):
        return None
    lines = [(row, _TIME_OF_DAY.sub("", shown_value(*cells.values()))) for row, cells in sheet.rows.items()]
    pairs = list(zip(lines[::2], lines[1::2], strict=False))
    people = {
        row: [sender, sizes[0], message]
        for (row, sender), (_, message) in pairs
        if len(sizes := sizes_in(message.capitalize() if message.islower() else message)) == 1
    }
    senders = [sender for (_, sender), _ in pairs]
    are_pairs = len(lines) % 2 == 0 and all(kind_of_text(name) == "name" and not sizes_in(name) for name in senders)
    if not are_pairs or len(people) < max(_FEWEST, _HALF * len(pairs)):
        return None
    shape = made_shape(sheet, people, Orientation(only=1), "Who", "Size", "Message", code="list-chat")
    read = {below for (row, _), (below, _) in pairs if row in people}
    return shape._replace(problems=shape.problems + left_over(sheet, cells_of(sheet, {*people, *read})))


def _said_by(line: str) -> tuple[str, str] | None:
    """Who says what in a line of a chat copied without its times: `Mira: M for me`."""
    match = _SAID.fullmatch(line.strip())
    if not match:
        return None
    sender, message = match["sender"], match["message"]
    whose = _WHOSE.search(sender)
    sender = sender[: whose.start()] if whose else sender
    if kind_of_text(sender) not in ("name", "words"):
        return None
    child = whose["child"] if whose else None
    return (child if child and child in message else sender), message
