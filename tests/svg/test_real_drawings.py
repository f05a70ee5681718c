"""Drawings not made for this program: the W3C SVG 1.1 files of Debian's librsvg2-tests, live text taken out.

resvg is the judge. All of them, and the flags of the npm package flag-icons, are counted by
tests/benchmarks/artwork_benchmark.py.
"""

from pathlib import Path

import pytest

from tests.drawings import W3C, agreement, w3c_files

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
