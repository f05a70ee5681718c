"""Words replaced, judged from the cut file alone; `-m tests.parts.replaced_cut` judges all of the hundred drawings."""

from pathlib import Path

from tests.parts.replaced_cut import NAMES, judged
from tests.parts.word_drawings import drawings

FEW = (1, 7, 12, 13)  # a word over a shape, in colors from a style sheet, with a border, worn


def test_names_stand_where_the_sample_stood_in_the_cut_file(tmp_path: Path) -> None:
    """As high within 2 %, their feet within 0.3 mm, their middle within 0.5 mm; nothing of the sample is left, nothing
    overlaps, each is cut once."""
    found = list(judged([drawings()[number] for number in FEW], tmp_path))
    assert [each for each in found if each.faults] == []
    assert len(found) == len(FEW) * len(NAMES)
