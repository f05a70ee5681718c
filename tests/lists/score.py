"""Scores how lists are read: each garment a careful reader sees is right, asked about at its row, held back with
help, wrong unasked, or refused. Run it with -m from the top folder: `-m tests.lists.score [table] [words of one list]`.

A question about the whole list is told apart from one at a row: where only the list's question stands, a reading
that would do counts as right, any other as wrong unasked.
"""

import re
import sys
import tempfile
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from tests.lists.table_of_lists import Expected, PeoplesList, lists_in
from xlbatch.check.check import check
from xlbatch.check.garment import Garment
from xlbatch.check.progress import up_to_date
from xlbatch.check.text import decal_text
from xlbatch.files.book import open_book
from xlbatch.files.raw import RawSheet, UnreadableFile
from xlbatch.job.job import Job
from xlbatch.problems import Problem
from xlbatch.roster.read import read
from xlbatch.tables.cells import shown_value

OUTCOMES = ("right", "asked", "held", "wrong unasked", "refused")
TABLES = ("lists.txt", "further.txt", "fresh.txt", "unseen.txt")
HARD_TABLES = (
    "new_manner.txt",
    "last_manner.txt",
    "ordinary_kinds.txt",
    "another_hand.txt",
    "handed_on.txt",
    "many_hands.txt",
    "newcomers.txt",
    "third_look.txt",
    "fourth_look.txt",
    "fifth_look.txt",
    "families.txt",
    "clubs.txt",
    "eighth_look.txt",
    "societies.txt",
    "ninth_look.txt",
    "schools.txt",
    "gatherings.txt",
    "fourscore.txt",
    "by_kind.txt",
    "all_sorts.txt",
    "organizers.txt",
    "tenth_hand.txt",
    "eighty_more.txt",
    "hundred.txt",
    "organizers_again.txt",
    "untrained.txt",
)
_OF_THE_LIST = ("heading", "column", "print-unused", "encoding-judged", "list", "design-only", "garment-read-as")
_NOT_OF_READING = ("contrast-low", "heat-check-label", "dye-may-show")  # about film and cloth, not about the list
NOW = datetime(2026, 5, 4, 9, 30)


@dataclass(frozen=True)
class Score:
    """What became of each garment expected of a list, and the questions asked."""

    outcomes: tuple[tuple[str, str], ...]  # the outcome, and the garment in words
    questions: tuple[str, ...]  # of the whole list: a line each


def score(them: PeoplesList, folder: Path) -> Score:
    """Reads one list and compares."""
    path = them.write(folder)
    reading = read(path)
    if isinstance(reading, UnreadableFile):
        return Score(tuple(("refused", str(expected)) for expected in them.expected), (reading.sentence,))
    sheets = open_book(path)
    assert not isinstance(sheets, UnreadableFile)
    job, asked = up_to_date(reading.job)
    held = frozenset(row for each in reading.problems if each.level == "stop" for row in each.rows)
    garments, problems = check(job, held)
    judge = _Judge(job, list(garments), (*reading.problems, *asked, *problems), sheets)
    # The strictest first, so that a loose expectation takes no garment from an exact one.
    outcomes = {at: judge.outcome(each) for at, each in sorted(enumerate(them.expected), key=judge.looseness)}
    rows = [(outcomes[at], str(each)) for at, each in enumerate(them.expected)]
    rows += [("wrong unasked", f"too many: {_words(each, job)}") for each in judge.garments if not judge.asked_at(each)]
    return Score(tuple(rows), tuple(each.sentence for each in judge.of_the_list()))


@dataclass(frozen=True)
class _Judge:
    job: Job
    garments: list[Garment]  # those no one has been found for yet
    problems: tuple[Problem, ...]
    sheets: Sequence[RawSheet]

    def looseness(self, numbered: tuple[int, Expected]) -> tuple[bool, bool, bool]:
        expected = numbered[1]
        fits = any(_fits(garment, expected, self.job) for garment in self.garments)
        return (expected.mark != "", not fits, not expected.garment)

    def outcome(self, expected: Expected) -> str:
        its = [each for each in self.garments if each.who == expected.who or expected.who == ""]
        best = next((each for each in its if _fits(each, expected, self.job)), its[0] if its else None)
        if best is None:
            return self._not_made(expected)
        self.garments.remove(best)
        if self.asked_at(best):
            return "asked"
        if expected.mark or not _fits(best, expected, self.job):
            return "wrong unasked"
        return "right" if _is_first_choice(best, expected, self.job) or self.of_the_list() else "wrong unasked"

    def _not_made(self, expected: Expected) -> str:
        levels = {each.level for each in self._about_name(expected.who)}
        if expected.mark == "-":
            own_word = any(row.who == expected.who and row.status == "cancelled" for row in self.job.roster)
            return "right" if levels or own_word else "wrong unasked"
        if not self.job.roster and expected.mark and any(each.level == "stop" for each in self.problems):
            return "held"
        if "stop" in levels:
            return "held" if expected.mark else "refused"
        if "check" in levels:
            return "asked" if expected.mark else "refused"
        return "wrong unasked" if not any(each.level == "stop" for each in self.problems) else "refused"

    def asked_at(self, garment: Garment) -> bool:
        source = garment.row.source
        return any(
            each.level != "note"
            and (source.row in each.rows or (each.where.sheet, _row(each)) == (source.sheet, source.sheet_row))
            for each in self.problems
            if not _is_of_list(each) and each.code not in _NOT_OF_READING
        )

    def _about_name(self, who: str) -> Iterator[Problem]:
        """The problems at the rows where a name stands, or of the sheets these are on."""
        rows = {(sheet.name, row) for sheet in self.sheets for row, cells in sheet.rows.items() if _holds(cells, who)}
        numbers = {row.source.row for row in self.job.roster if row.who == who}
        for each in self.problems:
            of_sheet = each.code in ("sheet-second", "sheet-again", "sheet-older") and each.where.sheet in dict(rows)
            if (each.where.sheet, _row(each)) in rows or numbers & set(each.rows) or of_sheet:
                yield each

    def of_the_list(self) -> list[Problem]:
        return [each for each in self.problems if each.level != "note" and _is_of_list(each)]


def _is_of_list(found: Problem) -> bool:
    """Whether a question is about the list as a whole: it names no row."""
    return not found.rows and (found.code.startswith(_OF_THE_LIST))


def _holds(cells: object, who: str) -> bool:
    words = set(re.findall(r"\w+", who.casefold()))
    assert isinstance(cells, dict)
    text = " ".join(shown_value(cell) for cell in cells.values()).casefold()
    return bool(words) and words <= set(re.findall(r"\w+", text))


def _row(found: Problem) -> int:
    return int(re.sub(r"\D", "", found.where.cell) or 0)


def _printed(garment: Garment, job: Job) -> str:
    texts = (decal_text(spec, garment.row, job.settings) for spec in garment.to_do if spec.what != "number")
    return " ".join(filter(None, texts))


def _fits(garment: Garment, expected: Expected, job: Job) -> bool:
    return (
        garment.who == expected.who
        and garment.row.size in expected.size
        and _printed(garment, job) in expected.printed
        and garment.row.number in expected.number
        and expected.garment in ("", garment.blank.garment)
    )


def _is_first_choice(garment: Garment, expected: Expected, job: Job) -> bool:
    read = (garment.row.size, _printed(garment, job), garment.row.number)
    return read == (expected.size[0], expected.printed[0], expected.number[0])


def _words(garment: Garment, job: Job) -> str:
    row = garment.row
    return f"{row.who} | {row.size} | {_printed(garment, job)} | {row.number} | {garment.blank.garment}"


def total(table: Path, only: str = "", *, tell: bool = False) -> Counter[str]:
    """The outcomes of all lists of a table, and under "questions" how many lists were asked about as a whole."""
    counted: Counter[str] = Counter()
    with tempfile.TemporaryDirectory() as folder:
        for them in lists_in(table):
            if only not in f"[{them.kind}] {them.shows}":
                continue
            result = score(them, Path(folder))
            counted += Counter(outcome for outcome, _ in result.outcomes) + Counter(questions=len(result.questions))
            odd = [each for each in result.outcomes if each[0] in ("wrong unasked", "refused") or only]
            if tell and odd:
                print(f"[{them.kind}] {them.shows}", *(f"  {'; '.join(each)}" for each in odd), sep="\n")
                print(*(f"    ask: {each}" for each in result.questions), sep="\n")
    return counted


def main(table: str, only: str = "") -> int:
    """Prints what is not right and the sums; the exit code is 1 where something was read wrong unasked."""
    counted = total(Path(__file__).with_name(table), only, tell=True)
    rows = sum(counted[outcome] for outcome in OUTCOMES)
    for outcome in OUTCOMES:
        print(f"{outcome:<14}{counted[outcome]:>5} {counted[outcome] / max(rows, 1):6.1%}")
    print(f"questions about a whole list: {counted['questions']}")
    return int(counted["wrong unasked"] > 0)


if __name__ == "__main__":
    sys.exit(main(*(sys.argv[1:] or TABLES[:1])))
