"""Divides a sheet with a list of people into the parts that have headings of their own, and leaves out what is
no one's row: titles, totals, tables of another kind."""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from functools import cache
from math import inf

from xlbatch.files.raw import RawSheet
from xlbatch.problems import Problem, Where, problem
from xlbatch.problems.phrases import phrase
from xlbatch.tables.cells import shown_value
from xlbatch.tables.group_rows import group_titles
from xlbatch.tables.heading_rows import NAMES, Cells, Headings, begins_another, repeats
from xlbatch.tables.heading_words import heading_scores
from xlbatch.tables.size_columns import pieces
from xlbatch.tables.sizes import read_size, wearer
from xlbatch.trade.answer_words import answer, answers_that_mean
from xlbatch.trade.remarks import NONE_WANTED, remark_asks

_ROWS_LOOKED_AT = 20  # below a further row of headings, to tell whether it counts sizes


@dataclass(frozen=True)
class ListPart:
    """Rows under headings of their own, and the titles among them that announce the next headings."""

    headings: Headings
    rows: Mapping[int, Cells]
    titles: frozenset[int] = frozenset()
    groups: Mapping[int, str] = field(default_factory=dict)  # of rows under a title of their own
    left_out: Mapping[int, str] = field(default_factory=dict)  # rows struck through or under a title that ends the list


@dataclass(frozen=True)
class ListParts:
    """The parts of a list on one sheet, and what was left out of them."""

    parts: tuple[ListPart, ...]
    problems: tuple[Problem, ...]


def list_parts(sheet: RawSheet, headings: Headings) -> ListParts:
    """The parts of the list under `headings` and under further ones below or beside them."""
    parts: list[ListPart] = []
    problems: list[Problem] = []
    blocks = _one_below_another(sheet, headings)
    named = any(map(_has_names, blocks))
    for block in blocks:
        below, aside = _without_side_table(block)
        problems += (_at_headings("table-aside", sheet, table) for table in aside)
        if len(blocks) > 1 and named and not _has_names(below):
            problems.append(_at_headings("table-aside", sheet, below))
            continue
        for part in map(_judged, _one_beside_another(below)):
            if parts and (not below.headings.people or below.headings.people[0] is part.headings):
                problems.append(_at_headings("table-joined", sheet, part))
            kept, left_out = _people(sheet, part)
            parts.append(kept)
            problems += left_out
    return ListParts(tuple(parts), (*_above(sheet, headings), *problems))


def _has_names(part: ListPart) -> bool:
    return bool(NAMES & (part.headings.known | _judged(part).headings.known)) or bool(part.headings.people)


def _judged(part: ListPart) -> ListPart:
    """The stretch, its columns judged by what stands in them too."""
    return replace(part, headings=part.headings.judged(list(part.rows.values())))


def _without_side_table(part: ListPart) -> tuple[ListPart, tuple[ListPart, ...]]:
    """The list without what stands beyond an empty column and begins with sizes again, but has no names: a count."""
    used = {column for cells in part.rows.values() for column in cells} | set(part.headings.titles)
    gap = next((column for column in range(min(used, default=1), max(used, default=1)) if column not in used), 0)
    if not gap or part.headings.people:
        return part, ()
    left, right = (
        frozenset(column for column in used if column < gap),
        frozenset(column for column in used if column > gap),
    )
    list_, table = _within(part, left), _within(part, right)
    is_aside = "Size" in list_.headings.known & table.headings.known and not _has_names(table)
    return (list_, (table,)) if is_aside and _has_names(list_) else (part, ())


def _above(sheet: RawSheet, headings: Headings) -> Iterator[Problem]:
    """The rows of several cells above the headings: maybe a person's, where one is in a column that is understood."""
    known = {*headings.matches, *headings.special}
    for row, cells in sheet.rows.items():
        if row > headings.row - headings.rows:
            return
        texts = {column: shown_value(cell) for column, cell in cells.items()}
        of_headings = row == headings.row - 1 and 2 * sum(map(bool, map(heading_scores, texts.values()))) > len(texts)
        if (len(cells) > 1 or not headings.rows) and not of_headings:
            code = "row-above" if known & set(cells) and not all(map(wearer, texts.values())) else "row-title"
            yield problem(code, _first(sheet, row, cells), texts[min(cells)])


def _at_headings(code: str, sheet: RawSheet, part: ListPart) -> Problem:
    """A problem at the first heading; of a part without headings, at its first cell."""
    row, titles = part.headings.row, part.headings.titles
    if not titles and part.rows:
        row = min(part.rows)
        titles = {column: shown_value(cell) for column, cell in part.rows[row].items()}
    return problem(code, _first(sheet, row, titles), titles[min(titles)] if titles else "")


def _first(sheet: RawSheet, row: int, cells: Mapping[int, object]) -> Where:
    """The first filled cell of a row."""
    return sheet.where(min(cells, default=1), row)


def _one_below_another(sheet: RawSheet, headings: Headings) -> list[ListPart]:
    """The rows up to each further row of headings."""
    parts: list[tuple[Headings, dict[int, Cells]]] = [(headings, {})]
    titles: set[int] = set()
    rows = [(row, cells) for row, cells in sheet.rows.items() if row > headings.row]
    for place, (row, cells) in enumerate(rows):
        again = repeats(cells, parts[-1][0])
        below = [] if again else [under for _, under in rows[place + 1 : place + _ROWS_LOOKED_AT]]
        other = None if again else begins_another(row, cells, below)
        if (again or other) and place and _is_title(rows[place - 1][1]):
            titles.add(rows[place - 1][0])
        if other and not again and len(parts) > 1 and not parts[-1][1]:
            parts[-1] = (other, {})  # headings over nothing
        elif other and not again:
            parts.append((other, {}))
        elif not again:
            parts[-1][1][row] = cells
    return [ListPart(heads, rows_, frozenset(titles & set(rows_))) for heads, rows_ in parts]


def _is_title(cells: Cells) -> bool:
    return len(cells) == 1 and all(isinstance(cell.value, str) for cell in cells.values())


def _one_beside_another(part: ListPart) -> list[ListPart]:
    """The list cut before each column that has the first column's meaning again, if all pieces are lists."""
    if part.headings.people:
        return _person_by_person(part)
    if apart := _beyond_a_gap(part):
        return apart
    meanings = {column: match.meaning for column, match in sorted(part.headings.matches.items())}
    first = next(iter(meanings.values()), "")
    starts = [column for column, meaning in meanings.items() if meaning == first]
    if len(starts) < 2:
        return [part]
    used = {column for cells in part.rows.values() for column in cells} | set(part.headings.titles)
    ends = [*starts[1:], inf]
    columns = [
        frozenset(column for column in used if (start <= column or start == starts[0]) and column < end)
        for start, end in zip(starts, ends, strict=True)
    ]
    pieces_ = [_within(part, columns_) for columns_ in columns]
    return pieces_ if all({"Size", first} < {*piece.headings.known, ""} for piece in pieces_) else [part]


def _beyond_a_gap(part: ListPart) -> list[ListPart]:
    """The lists before and behind an empty column, where by what stands in them both have names and sizes."""
    used = {column for cells in part.rows.values() for column in cells} | set(part.headings.titles)
    for gap in range(min(used, default=1), max(used, default=1)):
        sides = [
            frozenset(column for column in used if column < gap),
            frozenset(column for column in used if column > gap),
        ]
        if gap not in used and all(_is_list(_within(part, side)) for side in sides):
            return [_within(part, sides[0]), *_one_beside_another(_within(part, sides[1]))]
    return []


def _is_list(part: ListPart) -> bool:
    known = _judged(part).headings.known
    return "Size" in known and bool(NAMES & known)


def _person_by_person(part: ListPart) -> list[ListPart]:
    """A list for each of the people a row is for; rows with none of them stay with the first."""
    people = part.headings.people
    shared = frozenset.intersection(*(frozenset(heads.titles) for heads in people))
    anyones = {column for heads in people for column in heads.titles} - shared
    list_parts = []
    for heads in people:
        own, first = set(heads.titles) - shared, heads is people[0]
        rows = {
            row: {column: cell for column, cell in cells.items() if column in own or column not in anyones}
            for row, cells in part.rows.items()
            if own & _filled(cells, heads.garment) or (first and not anyones & set(cells))
        }
        list_parts.append(ListPart(heads, rows, part.titles if first else frozenset()))
    return list_parts


def _filled(cells: Cells, garment: str) -> set[int]:
    """The columns of a row in which anything stands; beside a garment's size a dash is nothing."""
    return {column for column, cell in cells.items() if not garment or any(map(str.isalnum, shown_value(cell)))}


def _within(part: ListPart, columns: frozenset[int]) -> ListPart:
    rows = {
        row: {column: cell for column, cell in cells.items() if column in columns} for row, cells in part.rows.items()
    }
    return ListPart(part.headings.within(columns), {row: cells for row, cells in rows.items() if cells}, part.titles)


def _people(sheet: RawSheet, part: ListPart) -> tuple[ListPart, list[Problem]]:
    """The rows that may be people's, and a problem for each other one."""
    kept: dict[int, Cells] = {}
    groups: dict[int, str] = {}
    problems = []
    left_out: dict[int, str] = {}
    ended, group, titles = "", "", group_titles(part.headings, part.titles, part.rows)
    leftmost = min((column for cells in part.rows.values() for column in cells), default=0)
    for row, cells in part.rows.items():
        lone = shown_value(cells[leftmost]) if _is_title(cells) and leftmost in cells else ""
        if ends_list(lone) and row != max(part.rows):
            ended = phrase("under a title", title=lone)
            continue
        group = titles.get(row, group)
        ended = "" if row in titles else ended
        if row in sheet.struck or ended:
            left_out[row] = ended or "is struck through"
        code = "row-group" if row in titles else _no_ones(part, row, cells)
        if code:
            shown = shown_value(cells[min(cells)])
            problems.append(problem(code, _first(sheet, row, cells), shown))
        else:
            kept[row] = cells
            groups |= {row: group} if group else {}
    return ListPart(part.headings, kept, groups=groups, left_out=left_out), problems


def ends_list(title: str) -> bool:
    """Whether those under a title are not, or not surely, to get one: `Cancelled`, `Waiting list`."""
    return answer("Status", title.rstrip(":")) in ("not wanted", "ask") or remark_asks(title) == NONE_WANTED


def _no_ones(part: ListPart, row: int, cells: Cells) -> str:
    """The code of the problem with a row that is no one's, or ""."""
    if row in part.titles:
        return "row-title"
    heads = part.headings
    if not any(column in known for column in cells for known in (heads.used, heads.special)):
        return "row-aside"
    return "row-totals" if _is_titled_total(part, cells) or _is_sum(part, row, cells) else ""


def _is_titled_total(part: ListPart, cells: Cells) -> bool:
    """`Total`, `Grand total: 24`: unless a size beside it says that someone is called so."""
    if not _totals().fullmatch(shown_value(cells[min(cells)])):
        return False
    size = next((column for column, match in part.headings.matches.items() if match.meaning == "Size"), 0)
    return size not in cells or not read_size(shown_value(cells[size]))


@cache
def _totals() -> re.Pattern[str]:
    """`Total`, `Grand total: 24`, `4B total`, `12 shirts`, in the languages of the tables."""
    word, pieces = (
        f"(?:{'|'.join(map(re.escape, answers_that_mean(asked, means)))})"
        for asked, means in (("Title", "total"), ("Beside a count", "pieces"))
    )
    total = rf"(?:(?:grand|overall) )?{word}(?!\w).*|.*\s{word}\W*(?:\d+\W*)?"
    return re.compile(rf"{total}|\d+\s+{pieces}\W*", re.IGNORECASE)


def _is_sum(part: ListPart, row: int, cells: Cells) -> bool:
    """Whether a last row only adds up the columns of counts above it."""
    counts = {column for column, match in part.headings.matches.items() if match.meaning == "How many"}
    counts |= {*part.headings.sizes, *part.headings.counts}
    if not set(cells) <= counts or len(part.rows) < 3 or row != max(part.rows):
        return False
    above = [other for no, other in part.rows.items() if no != row]
    return all(
        pieces(cell) == sum(pieces(other[column]) or 0 for other in above if column in other)
        for column, cell in cells.items()
    )
