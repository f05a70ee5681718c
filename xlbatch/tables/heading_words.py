"""What the heading of a column of a list of people says, from trade/roster_words.csv: a worth for each meaning."""

import re
from collections.abc import Mapping
from functools import cache, lru_cache
from itertools import combinations

from rapidfuzz import process
from rapidfuzz.distance import OSA

from xlbatch.tables.headings import ALIKE, SHORTEST_ALIKE, plain, split_unit
from xlbatch.trade.answer_words import answers_that_mean
from xlbatch.trade.columns import columns
from xlbatch.trade.tables import table, words

OWN, WHOLE, SLIP, WORD, MOST_BY_WORDS = 20.0, 10.0, 8.0, 3.0, 6.0  # what a heading is worth
_GIVEN = ("first", "given", "nome", "nombre")  # of a given name, beside a word for the other
_BRACKETS = re.compile(r"[(\[]([^()\[\]]+)[)\]]")
_PERSONS = ("Someone else", "Orderer")
_NEVER_TEXT = frozenset(("Number", "Size", "Garment", "Color", "How many"))  # what a heading says of something else
_WEIGHTY = (*_PERSONS, "Aside")  # roles whose words outweigh `name` and `size`


@lru_cache(maxsize=5000)
def heading_scores(heading: str) -> Mapping[str, float]:
    """What a heading is worth for each meaning: a whole heading of the tables, one a slip away, or words in it."""
    if not heading:
        return {}
    wholes = _whole(heading)
    inside = _BRACKETS.search(heading)  # Role (goes on the shirt)
    if inside and not _phrase(heading) and _is_printed(wholes, inside[1]):
        wholes = frozenset({"Print name"})
    worth = OWN if plain(heading) in _own() else WHOLE
    scores = dict.fromkeys(wholes, worth) or dict.fromkeys(_slips(heading), SLIP)
    for meaning, worth in _by_words(heading).items():
        if meaning not in scores:
            scores[meaning] = min(worth, WORD) if wholes else worth
    return scores


def _is_printed(wholes: frozenset[str], inside: str) -> bool:
    """Whether what stands in brackets says that the column is the text to print: goes on the shirt; back, where the
    heading means a part of a name, as Apelido does, which is a nickname too."""
    meant = _by_words(inside).get("Print name", 0.0)
    return (meant >= MOST_BY_WORDS and not wholes & _NEVER_TEXT) or (meant >= WORD and wholes == {"Last name"})


def names_columns(titles: Mapping[int, str]) -> bool:
    """Whether a row is one of headings beyond doubt: half of its cells, at least two, are, in just these words."""
    sure, left = 0, len(titles)
    for text in titles.values():
        sure, left = sure + bool(_whole(text)), left - 1
        if 2 * (sure + left) < len(titles):
            return False  # as most rows of a list soon show
    return sure >= 2


def last_name_first(heading: str) -> bool:
    """Whether the heading of whole names says that they begin with the last name: `Cognome e nome`, `Name, Vorname`."""
    order = [kind for token in re.findall(r"[^\W\d_]+", heading.casefold()) if (kind := _name_part(token))]
    last = "Last name" if "Last name" in order else "Who"
    return {last, "First name"} <= set(order) and order.index(last) < order.index("First name")


def asks_capitals(heading: str) -> bool:
    """Whether the heading of what is printed asks for capitals."""
    plainly = " ".join(("", *re.findall(r"[^\W_]+", heading.casefold()), ""))
    return any(f" {word.casefold()} " in plainly for word in answers_that_mean("Heading of print names", "capitals"))


def _name_part(token: str) -> str:
    """Which name a word of a heading speaks of."""
    meanings = _words().get(token, frozenset())
    if "First name" in meanings or token in _GIVEN:
        return "First name"
    whole = "Who" in meanings and "Name wanted" in meanings  # name, nom: not player
    return "Last name" if "Last name" in meanings else "Who" if whole else ""


@lru_cache(maxsize=10_000)
def _whole(heading: str) -> frozenset[str]:
    return next(filter(None, map(_phrase, (heading, split_unit(heading)[0]))), None) or _in_two_languages(heading)


def _phrase(heading: str) -> frozenset[str]:
    return _phrases().get(plain(heading), frozenset())


def _in_two_languages(heading: str) -> frozenset[str]:
    """What the halves of `Size / Taille` mean."""
    return frozenset().union(*map(_phrase, heading.split("/")))


def _slips(heading: str) -> frozenset[str]:
    word = plain(split_unit(heading)[0])
    if len(word) < SHORTEST_ALIKE or word in _sound_words():
        return frozenset()
    near = process.extract(word, [*_phrases()], scorer=OSA.normalized_similarity, score_cutoff=ALIKE, limit=None)
    return _phrases()[max((worth, phrase) for phrase, worth, _ in near)[1]] if near else frozenset()


def _by_words(heading: str) -> Mapping[str, float]:
    """What the words of a heading say; in scripts without spaces, the phrases in it."""
    scores: dict[str, float] = {}
    tokens = re.findall(r"[^\W_]+|#", heading.casefold().replace("’s", "").replace("'s", ""))
    for token in dict.fromkeys(tokens):
        for meaning in _words().get(token, ()):
            scores[meaning] = scores.get(meaning, 0.0) + WORD
    others = {"Who", "First name", "Last name"} if scores.keys() & {*_PERSONS} else set()  # a parent's
    for both in combinations(dict.fromkeys(tokens), 2):
        scores |= dict.fromkeys({*_pairs().get(frozenset(both), ())} - others, MOST_BY_WORDS)
    for phrase, meanings in _unspaced().items():
        if phrase in heading:
            scores |= dict.fromkeys(meanings, MOST_BY_WORDS)
    for stronger, weaker in ("Note", _PERSONS), ("Aside", ("Wanted",)):  # Coach's remark; coming to the dinner?
        if stronger in scores:
            scores = {meaning: worth for meaning, worth in scores.items() if meaning not in weaker}
    return {meaning: min(worth, MOST_BY_WORDS) + 2 * (meaning in _WEIGHTY) for meaning, worth in scores.items()}


@cache
def _phrases() -> Mapping[str, frozenset[str]]:
    """The meanings of each whole heading, as plain letters."""
    phrases: dict[str, set[str]] = {plain(column.heading): {column.heading} for column in columns("Roster")}
    for line in table("roster_words"):
        for phrase in words(line["Whole headings"]):
            phrases.setdefault(plain(phrase), set()).add(line["Means"])
    return {phrase: frozenset(meanings) for phrase, meanings in phrases.items()}


@cache
def _own() -> frozenset[str]:
    """The Roster's own headings, which mean what they say whatever stands below."""
    return frozenset(plain(column.heading) for column in columns("Roster"))


@cache
def _words() -> Mapping[str, frozenset[str]]:
    meanings_of: dict[str, set[str]] = {}
    for line in table("roster_words"):
        for word in words(line["Words"]):
            if "+" not in word:
                meanings_of.setdefault(word, set()).add(line["Means"])
    return {word: frozenset(meanings) for word, meanings in meanings_of.items()}


@cache
def _pairs() -> Mapping[frozenset[str], tuple[str, ...]]:
    """What two words of a heading say together: name and back."""
    pairs = ((word, line["Means"]) for line in table("roster_words") for word in words(line["Words"]) if "+" in word)
    return {frozenset(word.split("+")): (means,) for word, means in pairs}


@cache
def _unspaced() -> Mapping[str, frozenset[str]]:
    """The whole headings in Chinese, Japanese and Korean, which stand in a longer one without spaces."""
    return {phrase: of for phrase, of in _phrases().items() if len(phrase) > 1 and min(phrase) >= "\u3040"}


@cache
def _sound_words() -> frozenset[str]:
    """Words that are right as they stand, though one slip from another: State is no Status."""
    return frozenset({"state", "game", "nmae", "slate"} | {plain(word) for word in _words()})
