"""Accounts for every filled cell of the list that was read: what no one has used is known to be harmless, or asked.

A column whose cells say something of a garment is one question that names the rows; a lone cell is one at its row; so
is a line that speaks of someone on the list."""

import re
from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from functools import cache
from itertools import chain, islice

from xlbatch.job.job import NO_NAME, RosterRow
from xlbatch.problems import Problem, Where, problem
from xlbatch.roster.wishes import wish
from xlbatch.tables.cells import shown_value
from xlbatch.tables.column_questions import column_name
from xlbatch.tables.contents import MOST_LOOKED_AT, kind_of_text
from xlbatch.tables.heading_rows import NAMES
from xlbatch.tables.heading_words import MOST_BY_WORDS, WHOLE, heading_scores
from xlbatch.tables.headings import plain
from xlbatch.tables.input_table import ANSWERS, Table, kept_columns
from xlbatch.trade.answer_words import garment_in
from xlbatch.trade.remarks import NONE_WANTED, remark_asks
from xlbatch.trade.tables import table, words

_HARMLESS = ("Aside", "Counter", "Someone else", "Orderer", "Group", "Note", "Paid")
_OF_CONSEQUENCE = ("size", "wearer", "color", "garment", "yes or no", "status", "answer")
_LINES = ("row-title", "row-group", "row-aside", "row-above", "row-totals", "line-not-read", "table-aside")
_OWN = {"Print name", "How many", "Status"}  # headings of the program's own Roster, whose lines above it say how
_SHORTEST = 3  # letters of a name by which a line may speak of someone
_LEGEND = re.compile(r"\w\s*=\s*\w")  # M = 10-12
_LABEL = re.compile(r"([^:=]{3,40})[:=]\s*\w")  # Front: LAKE CREW
_LEAST_OF_A_SENTENCE = 5  # words; fewer are a title
_MOST_MEANT = 5  # people a line speaks of; a word of more names is a word like any other
_MOSTLY = 0.6  # of a column's cells
_FEWEST_TEXTS = 2  # that tell what a column is of

Column = Mapping[int, str]  # what stands in a column, by row


def unused_cells(
    tables: Sequence[Table], roster: Sequence[RosterRow], problems: Sequence[Problem]
) -> Iterator[Problem]:
    """The questions about what stands in the list's tables and was not used; `problems` tell the lines left out."""
    read = {row.source.row: row for row in roster}
    for sheet in dict.fromkeys(read_table.sheet for read_table in tables):
        of_sheet = [read_table for read_table in tables if read_table.sheet == sheet]
        asked: dict[str, list[Problem]] = {}
        for read_table in of_sheet:
            for column in sorted(read_table.extra.keys() - read_table.twice.keys()) if read_table.titles else ():
                for question in _of_column(read_table, column, read):
                    _ask(question, asked.setdefault(read_table.extra[column], []))
        yield from chain(*asked.values(), kept_columns(of_sheet, asked))
    above = {read_table.where(1, row): text for read_table in tables for row, text in read_table.above.items()}
    yield from _blank_texts(tables, roster)
    own = {read_table.sheet for read_table in tables if set(read_table.titles.values()) >= _OWN}
    orders = tuple(_orders({where: text for where, text in above.items() if where.sheet not in own}, roster))
    for_all = {order.where for order in orders}
    yield from (line for line in _of_lines(roster, problems, above) if line.where not in for_all)
    yield from orders


def _blank_texts(tables: Sequence[Table], roster: Sequence[RosterRow]) -> Iterator[Problem]:
    """A question where nothing stands in some rows of a list's own column of texts: ROADIE, SOUND, a blank."""
    for read_table in tables:
        if "Print name" not in read_table.columns or not {*NAMES} & set(read_table.columns):
            continue
        numbers = {read_table.counted_on(row) for row in read_table.rows}
        made = [row for row in roster if row.source.row in numbers and row.who and row.status != "cancelled"]
        texts = [row for row in made if row.print_name not in ("", NO_NAME)]
        blank = tuple(dict.fromkeys(row.source.row for row in made if not row.print_name))
        title = read_table.titles.get(read_table.columns["Print name"], "")
        if blank and len(texts) >= _FEWEST_TEXTS and plain(title) != plain("Print name"):  # ours: a blank is the name
            where = read_table.where(read_table.columns["Print name"], read_table.heading_row)
            yield problem("print-blank", where, texts[0].print_name, rows=blank)


def _orders(above: Mapping[Where, str], roster: Sequence[RosterRow]) -> Iterator[Problem]:
    """The sentences above a list that seem to order something for all of it: `No names, please`, `Front: LAKE CREW`."""
    for where, text in above.items():
        label = _LABEL.match(text)
        orders = len(text.split()) >= _LEAST_OF_A_SENTENCE and _has(text, "order") and not _LEGEND.search(text)
        if orders or (label and _has(label[1], "label")):
            rows = tuple(dict.fromkeys(row.source.row for row in roster if row.source.sheet == where.sheet))
            yield problem("row-above", where, text, rows=rows)


def _ask(question: Problem, asked: list[Problem]) -> None:
    """Adds a question; one that an earlier part of the list left already goes on for the rows of both."""
    if asked and asked[0].code == question.code != "note-asks":
        asked[0] = replace(asked[0], rows=asked[0].rows + question.rows)
    else:
        asked.append(question)


def _of_column(of: Table, column: int, read: Mapping[int, RosterRow]) -> Iterator[Problem]:
    title = of.titles.get(column, "")
    cells = {
        row: shown_value(filled[column])
        for row, filled in of.rows.items()
        if column in filled and not filled[column].fault
    }
    cells = {row: text for row, text in cells.items() if not _LEGEND.search(text)}
    if not cells or of.roles.get(column) in (*ANSWERS, "Message"):
        return
    if _is_harmless(of.roles.get(column, ""), title):
        cells = {row: text for row, text in cells.items() if remark_asks(text) == NONE_WANTED}
        yield from _wishes(of, column, cells, read)
        return
    look = of.unused.get(column) or _look(title, cells)
    numbered = {of.counted_on(row): text for row, text in cells.items()}
    rows = tuple(row for row, text in numbered.items() if _says_more(look, text, read.get(row)))
    if look and (rows or column in of.unused):
        where = of.where(column, of.heading_row)
        name = column_name(column, title, of.orientation)
        first = next(iter(cells.values()))
        printed = next((_printed(read[row]) for row in numbered if row in read), "")
        code = "print-unused" if look == "text" else f"column-{look}-unused"
        yield problem(code, where, name, rows=rows, column=name, example=first, printed=printed)
        return
    yield from _wishes(of, column, cells, read)


def _wishes(of: Table, column: int, cells: Column, read: Mapping[int, RosterRow]) -> Iterator[Problem]:
    """What the cells of a column ask for of someone who gets a garment."""
    for row, text in cells.items():
        person = read.get(of.counted_on(row))
        if person and (asked := wish(text)) and not person.status:
            yield problem("note-asks", of.where(column, row), text, rows=(of.counted_on(row),), asks=asked)


def _is_harmless(role: str, title: str) -> bool:
    """Whether the heading says that the column is not about the garment: as a whole or by two of its words, not by
    one of several."""
    score = heading_scores(title).get(role, 0.0)
    plainly = score >= WHOLE or len(title.split()) < 2 or (score > MOST_BY_WORDS and not garment_in(title))
    return role in _HARMLESS and (role != "Aside" or plainly)


def _look(title: str, cells: Column) -> str:
    """What a column no one has judged looks like: words of the garment's, or numbers under a heading that says so."""
    texts = list(islice(cells.values(), MOST_LOOKED_AT))
    kinds = [kind_of_text(text) for text in texts]
    if _share(kinds, _OF_CONSEQUENCE) >= _MOSTLY or all(_says_place(text) or _is_mark(text) for text in texts):
        return "choice"
    of_money = _share(kinds, ("date", "price", "contact")) >= _MOSTLY and not _says_printed(title)
    return "choice" if _speaks_of_garment(title) and not of_money else ""


def _share(kinds: Sequence[str], wanted: Iterable[str]) -> float:
    return sum(kind in wanted for kind in kinds) / len(kinds)


def _speaks_of_garment(title: str) -> bool:
    meanings = {meaning for meaning, worth in heading_scores(title).items() if worth >= 0}
    return bool(garment_in(title) or meanings - {*_HARMLESS} or _has(title, "heading"))


def _says_printed(title: str) -> bool:
    """Whether a heading speaks of what is printed: `Name on back +$5`."""
    return bool({"Print name", "Name wanted"} & set(heading_scores(title)))


def _says_place(text: str) -> bool:
    return _has(text, "place")


def _is_mark(text: str) -> bool:
    """Whether a cell is one capital letter: a captain's C."""
    return len(text) == 1 and text.isupper()


def _has(text: str, kind: str) -> bool:
    return bool(set(re.findall(r"[^\W\d_]+", text.casefold())) & _words()[kind])


@cache
def _words() -> Mapping[str, frozenset[str]]:
    """The words of a garment's places and of headings that matter, by kind."""
    words_by_place: dict[str, set[str]] = {"place": set(), "heading": set(), "order": set(), "label": set()}
    for line in table("unused_cell_words"):
        words_by_place[line["Where"]] |= set(words(line["Words"]))
    return {kind: frozenset(of) for kind, of in words_by_place.items()}


def _says_more(look: str, text: str, person: RosterRow | None) -> bool:
    """Whether a cell may say something of its row that was not done."""
    if person is None or person.status == "cancelled" or not look:
        return False
    if look == "text":
        return text.casefold() != _printed(person).casefold()
    return text != (person.size if look == "size" else "0")


def _printed(person: RosterRow) -> str:
    return person.print_name or person.who


def _of_lines(
    roster: Sequence[RosterRow], problems: Sequence[Problem], above: Mapping[Where, str]
) -> Iterator[Problem]:
    """The lines, read as a row without a size or not read, that speak of someone else on the list."""
    called: dict[str, dict[int, None]] = defaultdict(dict)
    for row in roster:
        for word in _called(row.who) if row.size else ():
            called[word][row.source.row] = None
    people = len({row.source.row for row in roster if row.size})  # a word all have is the family's, not someone's
    lines = {row.source.at("Who"): row.who for row in roster if not row.size and row.status != "cancelled"}
    lines |= {problem.where: problem.found for problem in problems if problem.code in _LINES} | dict(above)
    for where, text in lines.items():
        spoken = dict.fromkeys(re.findall(r"\w+", text.casefold()))
        rows = {row: None for word in spoken for row in called.get(word, ()) if not 1 < len(called[word]) == people}
        if rows and len(spoken) > 2 and len(rows) <= _MOST_MEANT:
            yield problem("line-about", where, text, rows=tuple(rows))


def _called(name: str) -> set[str]:
    return {word for word in re.findall(r"[^\W\d_]+", name.casefold()) if len(word) >= _SHORTEST}
