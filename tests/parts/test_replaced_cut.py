"""Words replaced, judged from the cut file alone; `-m tests.parts.replaced_cut` judges all of the hundred drawings."""

from pathlib import Path

from tests.parts.replaced_cut import NAMES, judged
from tests.parts.word_drawings import KINDS, drawings

FEW = (0, 1, 2, 3, 4, 5, 6, 7, 73, 92)  # one of each kind, one with few flat feet, one in a bar that it nearly breaks


def test_names_stand_where_the_sample_stood_in_the_cut_file(tmp_path: Path) -> None:
    """As high within 2 %, their feet within 0.3 mm of the line or arc, their middle within 0.5 mm; nothing of the
    sample is left, nothing overlaps that the sample did not, each is cut once; borders, shadows and openings follow."""
    some = [drawings()[number] for number in FEW]
    verdicts = list(judged(some, tmp_path))
    assert {made.kind for made in some} == set(KINDS)
    assert [verdict for verdict in verdicts if verdict.verdict == "wrong"] == []
    assert [(verdict.made.name, verdict.name) for verdict in verdicts if verdict.faults] == [("border 92", NAMES[-1])]
    assert len(verdicts) == len(FEW) * len(NAMES)
