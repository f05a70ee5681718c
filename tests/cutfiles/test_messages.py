"""The message to each group: who, which garment, what it reads, by when."""

from collections.abc import Callable
from dataclasses import replace

from xlbatch.cutfiles.messages import messages
from xlbatch.plan import Plan

ROWS = [
    ["Who", "Group", "Size", "Print name"],
    ["Ana Novak", "Owls", "M", "Ana"],
    ["Paweł Sowa", "Owls", "L", "Paweł"],
    ["Bo Lind", "Fox/Hare", "S", "Bo"],
    ["Ida Berg", "fox:hare", "S", "Ida"],
    ["Tom Rao", "", "XL", ""],
]


def test_each_group_gets_one_message(plan_of: Callable[..., Plan]) -> None:
    plan = plan_of(ROWS, Job=[["Setting", "Value"], ["Job name", "Autumn walk"], ["Needed by", "May 16"]])
    found = {
        file.name: file.text for file in messages(plan.garments, plan.decals, plan.job.settings, plan.dates.answer_by)
    }
    assert list(found) == [
        "message - Owls.txt", "message - Fox-Hare.txt", "message - fox-hare 2.txt", "message - without a group.txt",
    ]  # fmt: skip
    owls = found["message - Owls.txt"]
    assert owls.startswith("Autumn walk: Owls\n")
    assert "answer by Wednesday 6 May 2026." in owls
    assert "1. Ana Novak\n   Crew-neck tee, size M, white\n   reads: Ana\n   [ ] right" in owls
    assert "reads: Paweł\n   letters: ł = U+0142\n" in owls
    assert "2 garments. Name: ___" in owls
    assert "Tom Rao" in found["message - without a group.txt"]


def test_a_drawing_is_named(plan_of: Callable[..., Plan]) -> None:
    plan = plan_of([["Who", "Size"], ["Ana", "M"]])
    decals = [replace(each, text="", spec=replace(each.spec, artwork="owl badge.svg")) for each in plan.decals]
    (file,) = messages(plan.garments, decals, plan.job.settings, None)
    assert "white\n   drawing: owl badge\n   [ ] right" in file.text


def test_nothing_is_escaped_and_no_date_is_made_up(plan_of: Callable[..., Plan]) -> None:
    plan = plan_of([["Who", "Size"], ["Tom & <Jerry>", "M"]])
    (file,) = messages(plan.garments, plan.decals, plan.job.settings, None)
    assert "reads: Tom & <Jerry>" in file.text
    assert "answer by" not in file.text
