"""What the long headings of forms ask for, in the languages of the tables. Invented; common practice, no source."""

import pytest

from xlbatch.tables.heading_words import heading_scores

CHILD = (
    "Imię i nazwisko dziecka", "Jméno a příjmení dítěte", "Çocuğun adı soyadı", "Nombre y apellidos del niño",
    "Vor- und Nachname des Kindes", "Nome e cognome del bambino", "Nom et prénom de l'enfant",
    "Voor- en achternaam kind", "Nome e sobrenome da criança", "Child's first and last name",
)  # fmt: skip
PARENT = (
    "Imię i nazwisko rodzica", "Jméno a příjmení rodiče", "Jméno a příjmení zákonného zástupce", "Velinin adı soyadı",
    "Nombre y apellidos del padre o madre", "Vor- und Nachname der Eltern", "Nome e cognome del genitore",
    "Nom et prénom du parent", "Voor- en achternaam ouder", "Nome e sobrenome do responsável",
)  # fmt: skip


@pytest.mark.parametrize("heading", CHILD)
def test_a_child_s_whole_name(heading: str) -> None:
    scores = heading_scores(heading)
    assert max(scores, key=scores.__getitem__) == "Who"


@pytest.mark.parametrize("heading", PARENT)
def test_a_parent_s_whole_name(heading: str) -> None:
    scores = heading_scores(heading)
    assert max(scores, key=scores.__getitem__) == "Someone else"


@pytest.mark.parametrize(
    ("heading", "meaning"),
    [
        ("Apelido (costas)", "Print name"),  # a last name in Portugal, a nickname in Brazil
        ("Surname (back)", "Print name"),
        ("Role (goes on the shirt)", "Print name"),
        ("Number (back)", "Number"),
        ("Number (goes on the shirt)", "Number"),
        ("Team (shirt)", "Group"),
        ("Team no.", "Number"),
        ("Booth", "Group"),
        ("Waiver signed", "Aside"),
        ("Rider", "Who"),
    ],
)
def test_what_a_heading_is(heading: str, meaning: str) -> None:
    scores = heading_scores(heading)
    assert scores[meaning] == max(scores.values())
