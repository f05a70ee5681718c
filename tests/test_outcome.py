"""What a plan is asked for when nothing is said, and what is told of how far it is."""

import pytest

from xlbatch.outcome import DRAWING, LAYING, ORDERING, PLACING, READING, STAGES, WRITING, Options, Outcome, Step


def test_nothing_is_done_that_no_one_asked_for() -> None:
    options, outcome = Options(), Outcome(0, "Done.")
    assert options.folder is None
    assert not any((options.check_only, options.anew, options.what_if, options.forms))
    assert not any((outcome.unsaved, outcome.held, outcome.offers, outcome.problems, outcome.in_short))


@pytest.mark.parametrize(
    ("step", "words"),
    [
        (Step(DRAWING, 412.9, 1000), "412 of 1,000 drawn"), (Step(DRAWING, 1234, 2000), "1,234 of 2,000 drawn"),
        (Step(LAYING, 7.5, 100), "7 %"), (Step(WRITING, 0, 100), "0 %"), (Step(DRAWING), "…"), (Step(READING), "…"),
        (Step(ORDERING, 1, 2), "…"),
    ],
)  # fmt: skip
def test_the_count_in_words(step: Step, words: str) -> None:
    assert step.words == words


def test_the_bar_only_grows_and_half_of_a_stage_is_half_way_to_the_next() -> None:
    begins = [Step(stage).share for stage in STAGES]
    assert begins[0] == 0
    ends = [*begins[1:], 1.0]
    for stage, begin, end in zip(STAGES, begins, ends, strict=True):
        assert begin < end
        assert Step(stage, 2, 4).share == pytest.approx((begin + end) / 2)
        assert Step(stage, 4, 4).share == pytest.approx(end)
    assert Step(PLACING, 1, 1).share == pytest.approx(1)
