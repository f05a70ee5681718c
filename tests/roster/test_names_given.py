"""What is printed, from answers of which a part is the name."""

from collections.abc import Callable

import pytest

from xlbatch.roster.read import Reading

OTHERS = {"Print name": ("IVO", "BO"), "Want your name on it?": ("yes", "no")}


@pytest.mark.parametrize("heading", OTHERS)
@pytest.mark.parametrize(
    ("who", "answer", "printed"),
    [
        ("Hedy Quill", "Yes - Hedy", "Hedy"),
        ("Hedy Quill", "no, thanks", "no name"),
        ("Si Won", "Si Won", "Si Won"),  # si is a yes too
    ],
)
def test_what_stands_behind_a_yes(
    heading: str, who: str, answer: str, printed: str, reading_of: Callable[..., Reading]
) -> None:
    ivo, bo = OTHERS[heading]
    reading = reading_of([["Who", "Size", heading], [who, "M", answer], ["Ivo Rusk", "L", ivo], ["Bo Tarn", "S", bo]])
    assert reading.job.roster[0].print_name == printed


@pytest.mark.parametrize("answer", ["Hedy - no thanks", "Hedy - yes please", "Hedy – same"])
def test_an_answer_behind_a_text_is_not_printed_and_asked_about(
    answer: str, reading_of: Callable[..., Reading]
) -> None:
    reading = reading_of([["Who", "Size", "Print name"], ["Hedy Quill", "M", answer], ["Ivo Rusk", "L", "IVO"]])
    assert reading.job.roster[0].print_name == "Hedy"
    assert [problem.code for problem in reading.problems if 2 in problem.rows] == ["print-aside"]
