"""Drawings not made for this program: the W3C SVG 1.1 files of Debian's librsvg2-tests, live text taken out.

resvg is the judge. All of them, and the flags of the npm package flag-icons, are counted by
tests/benchmarks/artwork_benchmark.py.
"""

from pathlib import Path

import pytest

from tests.drawings import W3C, agreement, w3c_files, without_text
from tests.small_texts import STROKES

SOME = 8  # one file in so many


@pytest.mark.skipif(not W3C.exists(), reason="the W3C drawings (Debian librsvg2-tests) are not on this computer")
def test_each_is_read_as_resvg_draws_it_or_what_is_unsupported_is_named(tmp_path: Path) -> None:
    read = 0
    for file in list(w3c_files(tmp_path))[::SOME]:
        found = agreement(file)
        if isinstance(found, tuple):
            assert found
        else:
            assert found >= 0.98, file.name
            read += 1
    assert read >= 5


def test_strokes_dashes_copies_clips_and_styles_are_read_as_resvg_draws_them(tmp_path: Path) -> None:
    file = tmp_path / "strokes.svg"
    in_pixels = STROKES.read_text(encoding="utf-8").replace('"120mm" height="90mm"', '"240" height="180"', 1)
    file.write_text(without_text(in_pixels), encoding="utf-8")
    assert agreement(file) == pytest.approx(1, abs=0.001)
