"""Reads the notes on cells of an .xlsx sheet: comments, and threads of comments where there are any (ECMA-376 part 1,
18.7; Microsoft MS-XLSX 2.6.205)."""

from collections.abc import Callable, Iterable, Mapping
from xml.etree.ElementTree import Element

from openpyxl.utils.cell import coordinate_to_tuple

from xlbatch.files.package import root, value

COMMENTS, THREADS = "/comments", "/threadedComment"  # how the types of the links to such parts end
Notes = Mapping[tuple[int, int], str]  # by row and column, from 1


def cell_notes(links: Iterable[tuple[str, str]], part: Callable[[str], bytes]) -> Notes:
    """The notes of a sheet that has these links, each a type and a part; `part` reads one.

    A thread stands in the comments too, as a text that asks for a newer program; its own part wins."""
    notes: dict[tuple[int, int], str] = {}
    for kind, name in sorted(links, key=lambda link: link[0].endswith(THREADS)):
        if kind.endswith(COMMENTS):
            for comment in root(part(name)).iterfind("{*}commentList/{*}comment"):
                text_ = "".join(text.text or "" for text in comment.iterfind("{*}text//{*}t"))
                notes[_place(comment)] = text_
        elif kind.endswith(THREADS):
            threads: dict[tuple[int, int], list[str]] = {}
            for comment in root(part(name)).iterfind("{*}threadedComment"):
                place = _place(comment)
                threads.setdefault(place, []).append(comment.findtext("{*}text") or "")
            notes |= {place: "\n".join(texts) for place, texts in threads.items()}
    return {place: text.strip() for place, text in notes.items() if text.strip()}


def _place(comment: Element) -> tuple[int, int]:
    return value(coordinate_to_tuple, comment.get("ref", ""))
