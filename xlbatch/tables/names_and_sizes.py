"""Settles which column of a list holds the names, and which the sizes, where their headings leave it open."""

from collections.abc import Mapping, Sequence

from xlbatch.files.raw import Raw
from xlbatch.tables.cells import shown_value
from xlbatch.tables.contents import Contents
from xlbatch.tables.heading_words import SLIP, heading_scores

NAMES = ("Who", "First name", "Last name")
TEXTS = ("Other text", "Sleeve text")  # the second never becomes the print name
_BY_A_WORD = ("Aside", "Group")  # meanings one word of a heading may be wrong about, where no one else has the names
_OF_ANSWERS = ("Confirmed", "Status", "Cut", "Wanted", "Not wanted", "Paid", "Number", "How many")  # never names
_DIGITS = 5  # of a number that is no count any more
_SEVERAL = 2  # shirts; a person rarely takes more
_MOSTLY = 0.6  # of a column's cells
_ALL = 0.999  # of them, shares being rounded

Cells = Mapping[int, Raw]


def with_a_name(meanings: Mapping[int, str], titles: Mapping[int, str], held: Mapping[int, Contents]) -> dict[int, str]:
    """The same, a lone last name being the whole one, and someone else's name the person's where there is no other."""
    changed = dict(meanings)
    given = set(meanings.values())
    if {"First name", "Last name", "Who"} <= given:  # a further column of names is another's, unless it says so
        whole = next(column for column, meaning in meanings.items() if meaning == "Who")
        further = "Other text" if held[whole].single > _MOSTLY else "Someone else"  # nicknames, or who signed up
        changed |= {} if "Who" in heading_scores(titles.get(whole, "")) else {whole: further}
    if {"First name", "Who"} <= given and "Last name" not in given:
        whole = next(column for column, meaning in meanings.items() if meaning == "Who")
        changed |= {whole: "Last name"} if held[whole].single > _MOSTLY else {}
    if "Last name" in given and not {"Who", "First name"} & given and any(column.filled for column in held.values()):
        return {column: "Who" if meaning == "Last name" else meaning for column, meaning in meanings.items()}
    if not {*NAMES, "Print name"} & given:
        changed |= dict.fromkeys(_likeliest_names(meanings, titles, held)[:1], "Who")
    texts = [column for column, role in meanings.items() if role == "Other text"]
    if not texts and "Name wanted" in given:  # whether a name is wanted, and in the only other column of texts which
        asks = next(column for column, meaning in meanings.items() if meaning == "Name wanted")
        texts = [
            column
            for column in held
            if column not in meanings and column > asks and held[column].looks_like(0) == "text"
        ]
    peopled = any(column.filled for column in held.values())
    if peopled and "Print name" in given and not {*NAMES} & {*given, *changed.values()}:  # printed for whom it names
        orderers = [column for column, meaning in meanings.items() if meaning == "Orderer"]
        named = _likeliest_names({**meanings, **changed}, titles, held)
        columns = orderers or named or [column for column, meaning in meanings.items() if meaning == "Print name"]
        changed |= dict.fromkeys(columns[:1], "Who")
    if "Print name" not in given and len(texts) == 1 and given & {*NAMES}:
        changed |= {texts[0]: "Print name"}
    return changed


def of_groups(
    meanings: Mapping[int, str], titles: Mapping[int, str], counted: frozenset[int], rows: Sequence[Cells]
) -> dict[int, str]:
    """The same; names without a heading are groups' where counts of sizes beside them are for several each."""
    counts = (shown_value(cell) for cells in rows for column, cell in cells.items() if column in counted)
    pieces = sum(int(text) for text in counts if text.isdecimal() and len(text) < _DIGITS)
    many = bool(counted) and pieces > _SEVERAL * len(rows)
    unnamed = {column for column, meaning in meanings.items() if meaning == "Who" and many and not titles.get(column)}
    return {column: "Group" if column in unnamed else meaning for column, meaning in meanings.items()}


def with_a_size(
    meanings: Mapping[int, str], held: Mapping[int, Contents], skipped: frozenset[int]
) -> Mapping[int, str]:
    """The same; where no other column is of sizes, one that holds nothing else, whatever it is called (`Gr.`)."""
    sizes = [column for column in held if held[column].share("size") >= _ALL and held[column].filled > 1]
    return {**meanings, sizes[0]: "Size"} if sizes and not skipped and "Size" not in meanings.values() else meanings


def _likeliest_names(meanings: Mapping[int, str], titles: Mapping[int, str], held: Mapping[int, Contents]) -> list[int]:
    """The columns of names in a list that has none by its headings: someone else's, families', any that only by a word
    of its heading is of something else (`Ticket holder`, `Team list`), or whose heading asks for answers
    (`Confirmed`)."""
    named = [column for column in meanings if held[column].share("name") >= _MOSTLY]
    others = [column for column in named if meanings[column] in ("Someone else", "Orderer")]
    families = [
        column for column in named if meanings[column] == "Group" and _of_families(titles.get(column, ""), held[column])
    ]
    by_a_word = [
        column
        for column in named
        if meanings[column] in _BY_A_WORD
        and heading_scores(titles.get(column, "")).get(meanings[column], 0.0) < SLIP
        and held[column].different == held[column].filled > 1
    ]
    unread = [column for column in held if column not in meanings and held[column].share("name") >= _MOSTLY]
    misheaded = [column for column in named if meanings[column] in _OF_ANSWERS]
    misheaded = [column for column in (*misheaded, *unread) if held[column].different > 1]
    return [*others, *families, *by_a_word, *misheaded]


def _of_families(title: str, held: Contents) -> bool:
    """Whether a column of groups holds whole names, each once: families that order for themselves; or names of which
    its heading says that they are printed."""
    named = held.share("name") >= _MOSTLY and held.different == held.filled
    meanings = set(heading_scores(title))
    return named and ("Name wanted" in meanings or (held.single < _MOSTLY and bool({*NAMES} & meanings)))
