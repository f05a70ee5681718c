"""Reads printed pages as a person does who has nothing but the paper: words and where they stand on it."""

import re
import subprocess
from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from html import unescape
from pathlib import Path
from typing import NamedTuple

from tests.page_jobs import TO_TEXT

BOX = "☐"
ASIDES = ("BATCH", "Batches", "STOP", "If", "redo,", "Note,", "Trial:", "Tack:", "Cover:")  # begin lines
SAME_LINE = 3.0  # points between the middles of words in one line
_WORD = re.compile(r'<word xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">(.*?)</word>')


class Word(NamedTuple):
    """A word; the middle of its height, and its left edge, in points from the page's top left."""

    y: float
    x: float
    text: str


@dataclass
class Answers:
    """What the pages say of one garment."""

    strips: set[tuple[int, int]] = field(default_factory=set)  # run and strip
    pieces: set[str] = field(default_factory=set)  # by number
    steps: list[str] = field(default_factory=list)  # where each piece goes
    heats: set[str] = field(default_factory=set)
    owed: str = ""


def pages_of(pdf: Path) -> Sequence[Sequence[Word]]:
    """The words of each page, from the top down."""
    html = subprocess.run([str(TO_TEXT), "-bbox", str(pdf), "-"], check=True, capture_output=True).stdout.decode()
    found = (_WORD.findall(page) for page in html.split("<page ")[1:])
    return [
        sorted(Word((float(top) + float(low)) / 2, float(left), unescape(text)) for left, top, _, low, text in words)
        for words in found
    ]


def lines(words: Iterable[Word]) -> Iterator[Sequence[Word]]:
    """Words that stand in one line, from the left."""
    line: list[Word] = []
    for word in sorted(words):
        if line and word.y - line[-1].y > SAME_LINE:
            yield sorted(line, key=lambda each: each.x)
            line = []
        line.append(word)
    if line:
        yield sorted(line, key=lambda each: each.x)


def told(words: Iterable[Word]) -> str:
    return " ".join(word.text for word in words)


def answers(pdf: Path) -> Mapping[int, Answers]:
    """What the pages say, by garment number."""
    found: dict[int, Answers] = defaultdict(Answers)
    run, heats = 0, {"": ""}
    for page in pages_of(pdf):
        sheet = told(page[-20:])
        if "Cut and weed. Results" in sheet:
            run = _cut_page(page, run, found)
        elif "Press cards. Results" in sheet:
            heats = _press_page(page, heats, found)
        elif "Hand-out. Results" in sheet:
            _hand_out_page(page, found)
    return found


def _head(page: Sequence[Word], *names: str) -> tuple[float, Sequence[float]]:
    """Where the line of headings stands, and the left edge of these columns."""
    for line in lines(page):
        at = {word.text: word.x for word in line}
        if all(name in at for name in names):
            return line[0].y, [at[name] - 2 for name in names]
    raise AssertionError(f"no headings {names} on {told(page)[:200]}")


def _grouped(centers: Sequence[Word], rows: Sequence[float]) -> Iterator[Sequence[float]]:
    """The rows beside each cell that reaches over several: it stands in the middle of its rows."""
    first = 0
    for center in centers:
        end = min(range(first, len(rows)), key=lambda at: abs(rows[first] + rows[at] - 2 * center.y))
        yield rows[first : end + 1]
        first = end + 1


def _cut_page(page: Sequence[Word], run: int, found: Mapping[int, Answers]) -> int:
    """Adds what a page of runs says; gives the run it ends in."""
    top, (no, who, spoiled) = _head(page, "No.", "Who,", "Spoiled")
    body = [word for word in page if word.y > top + SAME_LINE]
    bands = {line[0].y: int(line[1].text) for line in lines(body) if line[0].text == "RUN"}
    pieces = {line[0].y: line for line in lines(w for w in body if no <= w.x < who) if line[0].text[0].isdigit()}
    pieces = {y: line for y, line in pieces.items() if not any(abs(y - band) < SAME_LINE for band in bands)}
    ticks = [w for w in body if w.text == "weeded" and w.x < no]
    numbers = [_left_above(tick, body) for tick in ticks]
    middles = [Word((tick.y + number.y) / 2, 0, number.text) for tick, number in zip(ticks, numbers, strict=True)]
    ids = {word.y: word.text for word in body if word.x >= spoiled and re.fullmatch(r"D\d+", word.text)}
    for middle, rows in zip(middles, _grouped(middles, sorted(pieces)), strict=True):
        run = max((item for item in bands.items() if item[0] < rows[0]), default=(0.0, run))[1]
        for y in rows:
            garment = found[int(re.sub(r"\D", "", pieces[y][0].text))]
            garment.strips.add((run, int(middle.text)))
            garment.pieces.add(ids[min(ids, key=lambda each: abs(each - y))])
    return max(bands.items(), default=(0.0, run))[1]


def _left_above(tick: Word, words: Iterable[Word]) -> Word:
    """A strip's number: the first word of the line above its boxes."""
    return min((word for word in words if 5 < tick.y - word.y < 25), key=lambda word: word.x)


def _press_page(page: Sequence[Word], heats: dict[str, str], found: Mapping[int, Answers]) -> dict[str, str]:
    """Adds what a page of cards says; gives the heats of the batch it ends in."""
    top, (no, below, right) = _head(page, "No.", "Below", "OK?")
    body = [word for word in page if word.y > top + SAME_LINE]
    bands = {line[0].y: _heats(told(line)) for line in lines(body) if line[0].text == "BATCH"}
    asides = [line[0].y for line in lines(body) if line[0].text in ASIDES]
    body = [word for word in body if word.y in bands or not any(abs(word.y - y) < SAME_LINE for y in asides)]
    numbers = [word for word in body if word.x < no + 8 and word.text.isdigit()]
    rows = sorted(word.y for word in body if word.text == BOX and below <= word.x < below + 20)
    for number, steps in zip(numbers, _grouped(numbers, rows), strict=True):
        heats = max((item for item in bands.items() if item[0] < steps[0]), default=(0.0, heats), key=lambda i: i[0])[1]
        for y in steps:
            after = min(each for each in (*rows, *bands, page[-1].y) if each > y + SAME_LINE)
            step = " ".join(
                told(line) for line in lines(w for w in body if below <= w.x < right and y - 4 < w.y < after - 4)
            )
            found[int(number.text)].steps.append(step)
            found[int(number.text)].heats.add(heats.get(step.split()[1], heats.get("", "")))
    return max(bands.items(), default=(0.0, heats), key=lambda item: item[0])[1]


def _heats(band: str) -> dict[str, str]:
    """`1 at 330 °F 2 at 320 °F` by the number of the pass; `330 °F` by none."""
    numbered = dict(re.findall(r"(\d) at (\d+ °[FC])", band))
    return numbered or {"": re.findall(r"\d+ °[FC]", band)[-1]}


def _hand_out_page(page: Sequence[Word], found: Mapping[int, Answers]) -> None:
    names = [word.text for word in page]
    if "Owed" not in names:
        return
    top, (who, paid, got) = _head(page, "Who", "Paid", "Got")
    for line in lines(word for word in page if word.y > top + SAME_LINE):
        if line[0].text.isdigit() and line[0].x < who and BOX in told(line):
            amounts = [word.text for word in line if paid + 25 < word.x < got]
            found[int(line[0].text)].owed = " ".join(amounts)
