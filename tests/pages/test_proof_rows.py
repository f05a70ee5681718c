"""The rows of the proof: the words of each family in the same room of its drawing."""

from collections.abc import Callable
from pathlib import Path

import pytest

from xlbatch.geometry.path import Box, bounds, contours
from xlbatch.pictures.art_panel import seen_in, shown_rooms, word_rooms
from xlbatch.placement.group import Group, groups
from xlbatch.plan import Plan

SVG = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 400 400">{}</svg>'
HILL = '<path d="M20 240L200 60L380 240Z" fill="#1f4630"/>'
WORD = '<text x="200" y="320" text-anchor="middle" font-size="60" font-family="Anton" fill="#1f4630">{Group}</text>'
YEAR = '<text x="60" y="345" font-size="22" font-family="Anton" fill="#1f4630">CAMP 2031</text>'
FAMILIES = ("Fell", "Vandersteen-Okafor", "Brook", "Ålund")


@pytest.fixture
def shown(plan_of: Callable[..., Plan], tmp_path: Path) -> list[Group]:
    """What is shown of each of four families."""
    (tmp_path / "camp.svg").write_text(SVG.format(HILL + WORD + YEAR), encoding="utf-8")
    roster = [["Who", "Group", "Size"], *([f"Ana {family}", family, "M"] for family in FAMILIES)]
    designs = [["Design", "Decal", "What", "Artwork", "Film"], ["Camp", "Art", "artwork", "camp.svg", "Black smooth"]]
    plan = plan_of(roster, Designs=designs)
    return [groups((decal,))[0] for decal in plan.decals]


def test_each_familys_words_have_the_same_room_on_all_rows(shown: list[Group]) -> None:
    rooms = word_rooms(shown)
    extents = []
    for group in shown:
        (room,) = shown_rooms(group, rooms)
        extents.append((room[2] - room[0], room[3] - room[1]))
        assert all(_within(own, room) for decal in group.decals for own in decal.rooms)
    assert len(extents) == len(FAMILIES)
    assert all(extent == pytest.approx(extents[0], abs=0.01) for extent in extents)


def test_no_letter_of_a_neighboring_word_is_cut_through_at_the_edge_of_a_row(shown: list[Group]) -> None:
    """The year below reaches into the room that is shown of the name: its letters are whole, or not there."""
    rooms = word_rooms(shown)
    (room,) = shown_rooms(shown[0], rooms)
    decal = shown[0].decals[0]
    assert decal.outline
    boxes = [bounds(contour) for contour in contours(decal.outline.segments)]
    small = [box for box in boxes if box and box[3] - box[1] < room[3] - room[1]]
    assert [box for box in small if _crosses(box, room)]  # else there is nothing to see here
    seen = [bounds(contour) for contour in contours(seen_in(decal, room))]
    assert [box for box in seen if box and box in small and _crosses(box, room)] == []


def _within(inner: Box, room: Box) -> bool:
    return inner[0] >= room[0] and inner[1] >= room[1] and inner[2] <= room[2] and inner[3] <= room[3]


def _crosses(box: Box, room: Box) -> bool:
    meets = all(box[side] < room[side + 2] and room[side] < box[side + 2] for side in (0, 1))
    return meets and not _within(box, room)
