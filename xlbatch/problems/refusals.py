"""Why a file cannot be read or planned at all, or a plan not be saved, in a plain sentence or two each; {facts} are
filled in by whoever refuses."""

from collections.abc import Mapping

_ANEW = "Keep only the list of people and drop it again."
_SAVE = "Open it in your spreadsheet program, save it as .xlsx and drop that."

REFUSALS: Mapping[str, str] = {
    "lock file": "This is the lock file of a workbook that is open. Drop the workbook itself.",
    "folder": "This is a folder. Drop the workbook inside it.",
    "missing": "There is no such file.",
    "in use": "The file cannot be opened. Close it in other programs and try again.",
    "empty": "This file is empty.",
    "damaged": f"This file is damaged or not a workbook. {_SAVE}",
    "password": "This workbook is protected with a password. Save it without one and drop that.",
    "other kind": "This is {kind}, not a workbook.",
    "web page": f"This is {{kind}}, not a workbook. {_SAVE}",
    "text": "This is no workbook; it seems to be {kind}. Rename it to {name}.csv.",
    "neither": "This file is neither a workbook nor a text file.",
    "no table": "The text in this file cannot be read as a table: {reason}.",
    "binary": "This is a binary workbook (.xlsb). Save it as .xlsx and drop that.",
    "zip": "This is a zip archive, not a workbook. Unpack it and drop the workbook inside.",
    "open document": "This is an OpenDocument file, but not a workbook.",
    "office": "This is an office document, but not a workbook.",
    "pages to print": "This workbook only holds pages to print. Type results into its plan and drop that: “{plan}”.",
    "odd": "This workbook is not written as spreadsheet programs write it. Save it again as .xlsx.",
    "entities": "This workbook holds XML entities, which no spreadsheet program writes; it was not opened.",
    "file too large": "This file is too large to be a list of people (over 200 MB).",
    "part too large": f"This workbook is too large to be a list of people: one of its parts holds over 100 MB. {_ANEW}",
    "too large": f"This workbook is too large to be a list of people. {_ANEW}",
    "sheet too large": f"The sheet “{{sheet}}” has {{count:,}} filled {{what}}; at most {{most:,}} are read. {_ANEW}",
    # not planned
    "no list": "{name}: There is no list of people in this folder.",
    "no memory": "{name}: This computer's memory is full. Close other programs, or split the list.",
    "planned later": "{name} was not planned: {later} was made later and has what this one lacks. Drop that one.",
    "not in later": "Not in it: {names}; add them there.",
    "marked here": "This one has {strips} strips and {results} results marked.",
    "fault": "Something went wrong inside the program; your workbook is unchanged. {report}",
    "disagreement": (
        "The plan was not written, as it does not agree with itself: {what}. Your workbook is unchanged. {report}"
    ),
    "fault report": "A short report without your list is in {file}.",
    # not saved
    "exists": "{path} already exists. Choose another name; nothing was overwritten.",
    "not saved": "Could not write to {folder}: {reason}.",
    "disk full": "the disk is full. Free some space on it, or choose another folder",
    "share full": "your share of the disk is full. Free some space on it, or choose another folder",
    "not allowed": "this folder may not be written to. Choose another folder",
    "path too long": "the path to it would be too long. Choose a shorter name or folder",
    "taken": "another program has just written a file of this name. Choose another folder",
    "other reason": "{reason}. Choose another folder",
}


def refusal(why: str, **facts: object) -> str:
    """The sentence for a key of REFUSALS. Raises KeyError where there is none, or a fact lacks."""
    return REFUSALS[why].format_map(facts)


class Refusal(Exception):
    """Raised inside the file readers when a file cannot be read; its text is the person's sentence."""

    def __init__(self, why: str, **facts: object) -> None:
        """`why` is a key of REFUSALS. Raises KeyError where a fact lacks."""
        super().__init__(refusal(why, **facts))
