"""What is asked about the names to be printed; none is ever changed."""

from collections.abc import Callable, Sequence

import pytest

from xlbatch.check.placeholders import stands_for
from xlbatch.plan import Plan

PlanOf = Callable[..., Plan]


def asked(plan: Plan, *codes: str) -> list[tuple[str, str, str]]:
    """Code, cell and suggestion."""
    return [(each.code, each.where.cell, each.suggestion) for each in plan.problems if each.code in codes]


def names(plan_of: PlanOf, them: Sequence[str], **sheets: list[list[object]]) -> Plan:
    return plan_of([["Who", "Size"], *([name, "M"] for name in them)], **sheets)


@pytest.mark.parametrize(
    "word", ["TBD", "tba", "N/A", "n/a.", "same", "Same as above", "?", "???", "-", "…", "to follow"]
)
def test_words_for_something_open(word: str) -> None:
    assert stands_for(word) == "open"


@pytest.mark.parametrize("word", ["None", "NA", "Null", "nan", "Nil", "no", "x"])
def test_words_that_may_be_names(word: str) -> None:
    assert stands_for(word) == "none or a name"


@pytest.mark.parametrize("word", ["", "Ana", "Tab", "True", "Sam E", "O", "No.7", "Xu", "Samé"])
def test_names_are_no_placeholders(word: str) -> None:
    assert stands_for(word) == ""


def test_an_open_name_is_held_back_unless_it_is_written_twice(plan_of: PlanOf) -> None:
    plan = plan_of([["Who", "Print name", "Size"], ["TBD", "", "M"], ["Tbd", "Tbd", "M"], ["Ana", "see note", "M"]])
    assert asked(plan, "name-open") == [("name-open", "A2", ""), ("name-open", "B4", "")]
    assert [garment.print_name for garment in plan.garments] == ["Tbd"]


@pytest.mark.parametrize(
    ("name", "latin"),
    [
        ("Аnna", "Anna"),
        ("Оlga Nоvak", "Olga Novak"),
        ("Маrkо", "Marko"),
        ("Ιvo", "Ivo"),
        ("Ρaula", "Paula"),
        ("Жan", ""),
    ],
)
def test_letters_of_another_alphabet(plan_of: PlanOf, name: str, latin: str) -> None:
    """Unicode UTS 39: these letters are confusable with the Latin ones."""
    assert asked(names(plan_of, [name]), "letters-mixed") == [("letters-mixed", "A2", latin)]


@pytest.mark.parametrize("name", ["Анна", "Ana Гаврилюк", "Ελένη", "Łukasz", "Zoë", "O’Hara"])
def test_a_word_of_one_alphabet_is_fine(plan_of: PlanOf, name: str) -> None:
    assert asked(names(plan_of, [name]), "letters-mixed") == []


def test_odd_capitals(plan_of: PlanOf) -> None:
    plan = names(
        plan_of, ["ana novak", "iVO bERG", "Mei Lin", "Leigh McAdam", "Jo van der Berg", "KAI BERG", "D'Andre", "JO"]
    )
    assert asked(plan, "capitals-odd") == [
        ("capitals-odd", "A2", "Ana Novak"), ("capitals-odd", "A3", "Ivo Berg"), ("capitals-odd", "A7", "Kai Berg"),
    ]  # fmt: skip
    assert [garment.print_name for garment in plan.garments][:2] == ["ana novak", "iVO bERG"]


def test_a_list_all_in_capitals_is_meant_so(plan_of: PlanOf) -> None:
    assert asked(names(plan_of, ["ANA NOVAK", "IVO BERG", "MEI LIN", "KAI OLSEN"]), "capitals-odd") == []


@pytest.mark.parametrize(
    ("one", "other", "alike"),
    [
        ("Ana Novak", "Ana Novac Lee", False),
        ("Marta Novak", "Martha Novak", True),
        ("Ivo Novak", "Ana Novack", True),
        ("Nikos Karras", "Eleni Karra", False),  # a man's and a woman's form of one name
        ("Jan Kowalski", "Ewa Kowalska", False),
        ("Mario Rossi", "Maria Rossi", False),
        ("Jon", "Ron", False),
        ("zoë Wick", "Zoe Wick", True),  # accents alone
        ("José Pérez", "Jose Perez", True),
        ("Zoé", "Zoe", True),
    ],
)
def test_names_in_one_group_spelled_almost_alike(plan_of: PlanOf, one: str, other: str, alike: bool) -> None:
    plan = plan_of([["Who", "Group", "Size"], [one, "A", "M"], [other, "A", "M"]])
    assert asked(plan, "name-alike") == ([("name-alike", "A3", "")] if alike else [])
    apart = plan_of([["Who", "Group", "Size"], [one, "A", "M"], [other, "B", "M"]])
    assert asked(apart, "name-alike") == []


@pytest.mark.parametrize(
    ("who", "suggestion"),
    [
        ("Novak, Ana, 3B", ""),
        ("Ana Novak 3B", ""),
        ("Ana / Ivo", ""),
    ],
)
def test_a_name_with_remarks_is_asked_about(plan_of: PlanOf, who: str, suggestion: str) -> None:
    assert asked(names(plan_of, [who]), "name-and-more") == [("name-and-more", "A2", suggestion)]


@pytest.mark.parametrize("who", ["Ana Novak", "Dr. O'Neil-Lee", "J. R. Berg", "Mary & Ivo"])
def test_a_name_alone_is_not(plan_of: PlanOf, who: str) -> None:
    assert asked(names(plan_of, [who]), "name-and-more") == []


def test_broken_letters_are_held_back_with_what_they_were(plan_of: PlanOf) -> None:
    plan = names(plan_of, ["MarÃ­a", "Ana"])
    assert asked(plan, "encoding-broken") == [("encoding-broken", "A2", "María")]
    assert [row.who for row in plan.held] == ["MarÃ­a"]  # as typed, so that dropping the plan asks again
