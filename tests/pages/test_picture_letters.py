"""Letters in pictures of the pages: at the press and the cutter as large as the text beside them."""

import re
from pathlib import Path

import pytest

PICTURES = Path(__file__).parents[2] / "xlbatch" / "pictures"
AT_WORK = ("layers_picture", "measure_marks", "strip_picture", "steps_picture", "plate_picture")  # read at arm's length
_CONSTANT = re.compile(r"^RING, LETTERS = [\d.]+, ([\d.]+)", re.M)
_WRITTEN = re.compile(r'font-size="([\d.]+)"')


def sizes(name: str) -> list[float]:
    """The sizes of letters that a picture is written with, in points."""
    source = (PICTURES / f"{name}.py").read_text(encoding="utf-8")
    return [float(size) for size in (*_CONSTANT.findall(source), *_WRITTEN.findall(source))]


@pytest.mark.parametrize("name", AT_WORK)
def test_what_is_read_at_work_has_letters_of_11_points(name: str) -> None:
    assert min(sizes(name)) >= 11


@pytest.mark.parametrize("name", [file.stem for file in sorted(PICTURES.glob("*.py"))])
def test_no_letters_are_smaller_than_8_points(name: str) -> None:
    assert all(size >= 8 for size in sizes(name))
