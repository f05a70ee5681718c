"""Knows a line of an exported chat: a date and time, who wrote it, and what."""

import re

_LINE = re.compile(
    r"\W*\d{1,4}[./-]\d{1,2}(?:[./-]\d{1,4}|\.)?,?\s+(?:at\s+|um\s+)?\d{1,2}[:.]\d{2}(?:[:.]\d{2})?(?:\s*[ap]\.?m\.?)?\W*?\s*[-–\]]?\s*"
    r"(?P<sender>[^:\d][^:]{0,40}):\s*(?P<message>.*)",
    re.IGNORECASE,
)
_LINES_LOOKED_AT = 20
_MOSTLY = 0.6


_OF_A_DAY = re.compile(
    r"\W*\d{1,2}[:.]\d{2}(?:[:.]\d{2})?(?:\s*[ap]\.?m\.?)?\W*[\s\])-](?P<sender>[^:\d\W][^:\d]{0,40}):\s*(?P<message>.*)",
    re.IGNORECASE,
)


def sender_and_message(line: str) -> tuple[str, str] | None:
    """Who wrote a line of a chat, and what; None for any other line."""
    match = _LINE.fullmatch(line.strip()) or _OF_A_DAY.fullmatch(line.strip())
    return (match["sender"].strip(), match["message"].strip()) if match else None


def is_chat(text: str) -> bool:
    """Whether most of the first lines are a chat's."""
    lines = [line for line in text.split("\n", _LINES_LOOKED_AT)[:_LINES_LOOKED_AT] if line.strip()]
    return len(lines) > 1 and sum(sender_and_message(line) is not None for line in lines) >= _MOSTLY * len(lines)
