"""First and last names in a whole name: titles and tails left out, `Last, First` turned, particles kept."""

import re
from functools import cache

from xlbatch.trade.tables import table


def first_name(name: str) -> str:
    """The first name of `Dr. Ana Novak`, `Novak, Ana` and `Ana van Dijk`: Ana."""
    first, _ = _parts(name)
    return first


def last_name(name: str) -> str:
    """The last name of `Ana Novak Jr.`, `Novak, Ana`; with its particles: van Dijk."""
    _, last = _parts(name)
    return last


def whole_name(name: str) -> str:
    """A whole name with the first name first: `Novak, Ana Jr.` is Ana Novak Jr.; any other name as it is."""
    last, comma, first = (part.strip() for part in name.partition(","))
    is_turned = comma and last and first and not re.search(r"[,;()\[\]\d]", last + first)
    if not is_turned or _is(first.split()[0], "tail"):
        return name
    words, lasts = first.split(), last.split()
    tails = [word for word in words if _is(word, "tail")]
    titles = lasts[: _titles(lasts)]  # Dr. Novak, Ana
    return " ".join((*titles, *(word for word in words if word not in tails), *lasts[len(titles) :], *tails))


def without_title(name: str) -> str:
    """A whole name less a title before it: `Dr. Ana Novak Jr.` is Ana Novak Jr.; Mr. Lund stays, as one is called."""
    words = name.split()
    titles = _titles(words)
    return " ".join(words[titles:]) if titles and len(words) - titles > 1 else name


def words_of_no_name(name: str) -> tuple[str, ...]:
    """The words of a name that begin small though others do not, and are no particles: née, plus one; N.N.; a word
    that says it is an example; or those in brackets or quotation marks. The first word counts only where it is one
    said of people: baby Sue."""
    if marked := re.findall(r"[(\[\"“”„«][^()\[\]\"“”„«»]+[)\]\"“”»]|(?<!\w)['‘][^'‘’]+['’](?!\w)", name):
        return tuple(marked)
    words_ = re.findall(r"[^\W\d_][\w\u0300-\u036f'’.-]*", name)
    if examples := tuple(word for word in words_ if _is(word.casefold(), "example")):
        return examples
    small = tuple(word for word in words_ if _is_small(word))
    if re.fullmatch(r"(?:[A-Za-z]\.\s*)+", name):
        return (name,)  # N.N.
    return small if len(small) < len(words_) and (not name.startswith(small) or _is(small[0], "said of one")) else ()


def _is_small(word: str) -> bool:
    own = re.split("['’]", word)[-1]  # d'Almeida
    return (
        word[0].islower() and not own[:1].isupper() and not any(_is(word, what) for what in ("particle", "joins names"))
    )


def _parts(name: str) -> tuple[str, str]:
    """First name, last name."""
    last, comma, first = (part.strip() for part in name.partition(","))
    if comma and _words_of(first) and not _is(first.split()[0], "tail"):
        return _words_of(first)[0], " ".join(_words_of(last))
    words = _words_of(name)
    if not words:
        return name, name
    if len(words) == 1:
        return words[0], words[0]
    start = next(
        (place for place in range(1, len(words)) if _is(words[place], "particle") and words[place].islower()),
        len(words) - 1,
    )
    return words[0], " ".join(words[start:])


def _words_of(name: str) -> list[str]:
    """The words of a name less titles before and tails after it; the name itself where nothing else is left."""
    words = name.replace(",", " ").split()
    kept = words[_titles(words) :]
    while len(kept) > 1 and _is(kept[-1], "tail"):
        kept = kept[:-1]
    return kept or words


def _titles(words: list[str]) -> int:
    """How many titles a name begins with; a last word is none."""
    place = 0
    while len(words) - place > 1 and _is(words[place], "title") and (words[place][-1] == "." or len(words) - place > 2):
        place += 1
    return place


def _is(word: str, what: str) -> bool:
    return what in _known().get(word.casefold().rstrip(".,"), "")


@cache
def _known() -> dict[str, str]:
    return {line["Word"]: line["Is"] for line in table("name_words")}
