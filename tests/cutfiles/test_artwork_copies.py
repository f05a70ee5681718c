"""Which drawings and fonts go with a plan that is written to another folder than its list's."""

from dataclasses import replace
from pathlib import Path

import pytest

from tests.art.conftest import SPEC
from xlbatch.cutfiles.artwork_copies import artwork_copies
from xlbatch.job.job import Job
from xlbatch.job.part_line import PartLine
from xlbatch.job.source import Source
from xlbatch.roster.read import blank_job

NAMES = ("crest.svg", "art/back.svg", "own.ttf", "usual.ttf", "parts.svg", "heart.svg", "part.ttf")


@pytest.fixture
def job(tmp_path: Path) -> Job:
    """Its folder has every file it names but one."""
    for name in NAMES:
        file = tmp_path / "here" / name
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_bytes(name.encode())
    plain = blank_job(tmp_path / "here" / "list.xlsx")
    part = PartLine(Source("Drawing parts"), "parts.svg", "1", replace_by="heart.svg", font="part.ttf")
    artworks = ("crest.svg", r"art\back.svg ", "missing.svg", "crest.svg")
    return replace(
        plain,
        settings=replace(plain.settings, font="usual.ttf"),
        designs=tuple(replace(SPEC, artwork=artwork, font="own.ttf") for artwork in artworks),
        drawing_parts=(part,),
    )


def test_all_that_the_list_names_are_copied_but_what_lies_there_already(job: Job, tmp_path: Path) -> None:
    there = tmp_path / "there"
    there.mkdir()
    assert artwork_copies(job, there) == {f"artwork/{name}": name.encode() for name in NAMES}
    (there / "crest.svg").write_bytes(b"crest.svg")
    (there / "own.ttf").write_bytes(b"another")
    assert artwork_copies(job, there).keys() == {f"artwork/{name}" for name in NAMES} - {"artwork/crest.svg"}


def test_beside_the_list_nothing_is_copied(job: Job, tmp_path: Path) -> None:
    assert artwork_copies(job, tmp_path / "here") == {}
