"""What a problem says in one line: where, who, what is wrong, what to do, and what may have been meant."""

from dataclasses import replace

from xlbatch.problems import Where, problem


def test_the_sentence_has_place_people_and_suggestion() -> None:
    told = problem("size-unknown", Where("Roster", "B3"), "Lrage", suggestion="L", rows=(3,))
    assert told.sentence.startswith("Roster B3: “Lrage” is no size this program knows.")
    assert told.sentence.endswith("Did you mean L?")
    assert replace(told, who="Bo").sentence.startswith("Roster B3 (Bo): ")
    assert "Did you mean" not in replace(told, suggestion="").sentence
    assert replace(told, where=Where("Job")).sentence.startswith("Job: ")
    assert replace(told, where=Where("")).sentence.startswith("“Lrage”")
    assert (told.level, told.rows) == ("stop", (3,))
