"""Decides what each column of a list of people is: the one place where that is judged.

Each column is scored for each meaning: by its heading (trade/roster_words.csv) and by what its cells hold
(trade/column_contents.csv). The best joint assignment wins. Meanings are the Roster's own columns, and roles beside
them: a counter, someone else's name, whether one is wanted, whether a name is, the cut, a further text, nothing.
"""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import cache

from xlbatch.files.raw import Raw
from xlbatch.tables.assignment import best_assignment
from xlbatch.tables.cells import shown_value
from xlbatch.tables.contents import Contents, contents
from xlbatch.tables.heading_words import SLIP, WHOLE, heading_scores
from xlbatch.tables.headings import Match
from xlbatch.tables.names_and_sizes import NAMES, TEXTS, of_groups, with_a_name, with_a_size
from xlbatch.trade.answer_words import garment_in
from xlbatch.trade.tables import table

SURE = 5.0  # of heading and contents together, where the heading says something
_LEAST = 2.0  # below this a column has no meaning
_BY_CONTENTS = ("Who", "Size", "Color", "Garment", "Cut")  # meanings a column may have whatever it is called
_OF_A_SHIRT = ("Garment", "Wanted")  # headings that may stand over sizes: Shirt, Shirt?
_OF_AGES = ("size", "remark", "number")  # kinds of sizes and of ages
FOR_MANY = ("Someone else", "Orderer", "Aside", *TEXTS, "Counter", "Print color")  # roles that several columns may have
_ROLES = (*FOR_MANY, "Wanted", "Not wanted", "Name wanted", "Number wanted", "Cut", "Particle")
_ANSWERED = {
    "Wanted": 2,
    "Not wanted": 1,
    "Name wanted": 2,
    "Number wanted": 2,
    "Cut": 2,
}  # roles only answers tell: the fewest of them
_ANOTHER = re.compile(r"\b(?:instead|rather|upgrade|extra|also|too|or)\b", re.IGNORECASE)
_BEHIND = 0.5  # by this a role is behind a column of the Roster's own, all else equal
_MOST_COLUMNS = 60  # that are looked at; no list of people has more
_MOSTLY = 0.6  # of a column's cells
_ALL = 0.999  # of them, shares being rounded

Cells = Mapping[int, Raw]


@dataclass(frozen=True)
class Decision:
    """What each column is; those read so without a word in their heading, and those of consequence left unused."""

    matches: Mapping[int, Match]
    guessed: tuple[int, ...] = ()
    unused: Mapping[int, str] = field(default_factory=dict)  # what each looks like: text, size, answer, number

    @property
    def meaning(self) -> Mapping[int, str]:
        """The meaning of each column, those said twice left out."""
        return {column: match.meaning for column, match in self.matches.items() if not match.twice}


def decide(titles: Mapping[int, str], rows: Sequence[Cells], skipped: frozenset[int] = frozenset()) -> Decision:
    """What the columns under `titles` with `rows` below them are; without rows, by the headings alone.

    `skipped` are columns whose meaning is known otherwise, such as counts of one size."""
    held = {
        column: contents([cells[column] for cells in rows if column in cells])
        for column in _filled(titles, rows) - skipped
    }
    scores = {column: _scores(titles.get(column, ""), held[column], first=column == min(held)) for column in held}
    meanings = _assigned(scores)
    if "First name" in meanings.values() and not {"Last name", "Who"} & set(meanings.values()):
        apart = _assigned(scores, without=("Who", "Group"))
        meanings = apart if "Last name" in apart.values() else meanings
    settled = with_a_size(with_a_name(meanings, titles, held), held, skipped)
    meanings = _all_wanted(of_groups(settled, titles, skipped, rows), scores, titles)
    guessed = tuple(
        column
        for column, meaning in meanings.items()
        if meaning not in (*FOR_MANY, "Note")
        and not _is_sure(scores[column], meaning, titles.get(column, ""))
        and not (meaning == "Cut" and held[column].share("wearer") == 1)
    )
    twice = _twice(titles, meanings, held)
    printed = [column for column, match in twice.items() if match.meaning == "Who" and _differs(column, meanings, rows)]
    if len(printed) == 1 and "Print name" not in meanings.values():  # Player, Name: the second is for the shirt
        meanings = {**meanings, printed[0]: "Print name"}
        twice.pop(printed[0])
        guessed += (printed[0],)
    matches = {column: Match(meaning) for column, meaning in meanings.items()} | twice
    return Decision(dict(sorted(matches.items())), guessed if rows else (), _unused(meanings, titles, held, len(rows)))


def _filled(titles: Mapping[int, str], rows: Sequence[Cells]) -> frozenset[int]:
    """The columns that have a heading or anything below it, the first ones."""
    filled = dict.fromkeys(column for cells in rows[:50] for column in cells)
    return frozenset(sorted({*(column for column, text in titles.items() if text), *filled})[:_MOST_COLUMNS])


def _scores(heading: str, held: Contents, *, first: bool) -> Mapping[str, float]:
    """What a column is worth for each meaning it may have."""
    worths = heading_scores(heading)
    if asked := next((worth for asks, worth in worths.items() if asks in _OF_A_SHIRT and _of_sizes(held)), 0.0):
        worths = {"Size": asked}
    if "Size" in worths and held.filled and sum(map(held.share, _OF_AGES)) >= _ALL:  # T-shirt (age) over 7-8
        worths = {meaning: worth for meaning, worth in worths.items() if meaning not in _OF_A_SHIRT}
    scores: dict[str, float] = {}
    for meaning in {*worths, *(_BY_CONTENTS if held.filled else ())}:
        if meaning == "Wanted" and garment_in(heading) and _ANOTHER.search(heading):
            continue  # Hoodie instead of tee? asks which
        if meaning == "Counter" and not (first and held.share("counter")) and "Number" in worths:
            continue  # a jersey number may well be the row's number: only a first column counts
        answers = ("wearer",) if meaning == "Cut" else ("yes or no", "status", "date")
        if meaning in _ANSWERED and (held.filled < _ANSWERED[meaning] or not any(map(held.share, answers))):
            continue  # a question's heading may be a name's too
        weight: float = sum(share * _contents_table().get((meaning, kind), 0.0) for kind, share in held.shares.items())
        if meaning in NAMES and meaning in worths and held.share("size") < _ALL:
            weight = max(weight, _LEAST - WHOLE + 1)  # people are called Klein and Lang
        if weight > 0 or meaning in worths:
            scores[meaning] = worths.get(meaning, 0.0) + weight - _BEHIND * (meaning in _ROLES)
    return {meaning: score for meaning, score in scores.items() if score >= _LEAST}


def _of_sizes(held: Contents) -> bool:
    """Whether a column holds sizes, and else only words that say none is wanted: `Shirt` over M, no shirt, n/a."""
    others = sum(map(held.share, ("status", "remark", "yes or no")))
    return held.share("size") > 0 and held.share("size") + others >= _ALL


def _assigned(scores: Mapping[int, Mapping[str, float]], without: tuple[str, ...] = ()) -> dict[int, str]:
    """The meaning of each column by the best joint assignment; a role of several needs no share in it."""
    asked = [column for column, of in sorted(scores.items()) if of]
    meanings = sorted({meaning for column in asked for meaning in scores[column]} - {*FOR_MANY, *without})
    shared = {
        column: max(((scores[column][role], role) for role in FOR_MANY if role in scores[column]), default=(0.0, ""))
        for column in asked
    }
    gains = [
        [max(scores[column].get(meaning, 0.0) - shared[column][0], 0.0) for meaning in meanings] + [0.0] * len(asked)
        for column in asked
    ]
    chosen = dict(zip(asked, best_assignment(gains), strict=True))
    named = {
        column: meanings[to]
        for (column, to), gain in zip(chosen.items(), gains, strict=True)
        if to < len(meanings) and gain[to] > 0
    }
    return named | {column: role for column, (_, role) in shared.items() if role and column not in named}


def _all_wanted(
    meanings: Mapping[int, str], scores: Mapping[int, Mapping[str, float]], titles: Mapping[int, str]
) -> dict[int, str]:
    """The same with every column that says whether one is wanted: those that speak of the garment, where some do."""
    asking = [column for column in scores if meanings.get(column, "Wanted") == "Wanted" and "Wanted" in scores[column]]
    if len(asking) < 2:
        return dict(meanings)
    of_garment = [column for column in asking if garment_in(titles.get(column, ""))]
    return {**meanings, **{column: "Wanted" if column in (of_garment or asking) else "Aside" for column in asking}}


def _is_sure(scores: Mapping[str, float], meaning: str, heading: str) -> bool:
    return heading_scores(heading).get(meaning, 0.0) >= SLIP or (
        meaning in heading_scores(heading) and scores.get(meaning, 0.0) >= SURE
    )


def _twice(titles: Mapping[int, str], meanings: Mapping[int, str], held: Mapping[int, Contents]) -> dict[int, Match]:
    """The columns whose heading says a meaning that another column has."""
    taken = set(meanings.values())
    twice = {}
    for column in held:
        scores = heading_scores(titles.get(column, ""))
        best = next((meaning for meaning in scores if scores[meaning] >= SLIP and meaning in taken), "")
        if column not in meanings and best:
            twice[column] = Match(best, twice=True)
    return twice


def _differs(column: int, meanings: Mapping[int, str], rows: Sequence[Cells]) -> bool:
    """Whether a further column of names says something else in most rows than the one read as Who."""
    who = next(place for place, meaning in meanings.items() if meaning == "Who")
    filled = [cells for cells in rows if column in cells]
    others = [cells for cells in filled if shown_value(cells[column]) != shown_value(cells.get(who, Raw("")))]
    return len(others) >= max(2, _MOSTLY * len(filled))


def _unused(
    meanings: Mapping[int, str], titles: Mapping[int, str], held: Mapping[int, Contents], rows: int
) -> dict[int, str]:
    """The columns no one asked for that yet look as if they said something of the garments."""
    given = set(meanings.values())
    looks = {column: held[column].looks_like(rows) for column in held if meanings.get(column, TEXTS[0]) in TEXTS}
    return {
        column: "text" if column in meanings else look
        for column, look in looks.items()
        if (column in meanings and held[column].filled)
        or (look == "text" and given & {*NAMES} and (column in meanings or "Print name" not in given))
        or (look == "size" and "Size" in given and (titles.get(column) or not any(titles.values())))
        or (look == "answer" and not given & {"Wanted", "Status"} and titles.get(column))
        or (look == "number" and titles.get(column) and column not in meanings)
        or (look == "number" and _is_number(titles.get(column, ""), given, any(titles.values())))
    }


def _is_number(title: str, given: set[str], titled: bool) -> bool:
    """Whether a column of numbers may be what is printed: by its heading, though another is, or where none has one."""
    scores = heading_scores(title)
    return ("Number" in scores and max(scores.values()) == scores["Number"]) if titled else "Number" not in given


@cache
def _contents_table() -> Mapping[tuple[str, str], float]:
    return {(line["Means"], line["Holds"]): float(line["Score"]) for line in table("column_contents")}


def example(column: int, rows: Sequence[Cells]) -> str:
    """What stands first in a column."""
    return next((shown_value(cells[column]) for cells in rows if column in cells), "")
