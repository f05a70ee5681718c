"""Bag tags: one a garment or one a group, with or without what is to pay."""

from collections.abc import Callable, Sequence

from xlbatch.pages.leaf import Leaf
from xlbatch.pages.tag_page import tags, write
from xlbatch.pages.work import look_up
from xlbatch.plan import Plan

ROSTER = [
    ["Who", "Group", "Size", "Paid"],
    ["Ana", "Marsh", "M", "yes"],
    ["Ivo", "Marsh", "L", 4],
    ["Mei", "Tallow", "S", None],
    ["Kai", "", "XL", None],
]


def said(plan_of: Callable[..., Plan], *settings: tuple[str, str]) -> list[Sequence[str]]:
    """Each tag's texts, with a price of 10.00 for everyone."""
    job = [["Setting", "Value"], ["Margin or fixed price", "10.00"], *map(list, settings)]
    return [
        [text for line in tag for text in (line.left, line.right) if text]
        for tag in tags(look_up(plan_of(ROSTER, Job=job)))
    ]


def test_a_tag_says_what_its_garment_costs_or_that_it_is_paid(plan_of: Callable[..., Plan]) -> None:
    assert [(tag[0], tag[-1]) for tag in said(plan_of)] == [
        ("Kai", "to pay $10.00"), ("Ana", "paid"), ("Ivo", "to pay $6.00"), ("Mei", "to pay $10.00"),
    ]  # fmt: skip


def test_money_on_tags_is_a_choice(plan_of: Callable[..., Plan]) -> None:
    assert not any(
        "pa" in text and text != "paper" for tag in said(plan_of, ("Money on tags", "no")) for text in tag[-1:]
    )


def test_one_tag_for_a_group_names_everyone_and_has_the_sum(plan_of: Callable[..., Plan]) -> None:
    found = said(plan_of, ("One tag for", "group"))
    assert [tag[0] for tag in found] == ["Kai", "Marsh", "Tallow"]  # without a group: a tag of one's own
    marsh = found[1]
    assert marsh[1:3] == ["2 garments", "Ana M, Ivo L"]
    assert marsh[-1] == "to pay $6.00"


def test_a_line_with_no_words_on_tags_side_by_side_takes_no_room(plan_of: Callable[..., Plan]) -> None:
    """What an M costs is not known: Ana's, Ivo's and Kai's tags say nothing of money, Mei's does."""
    roster = [["Who", "Size"], *([who, "M"] for who in ("Ana", "Ivo", "Kai")), ["Mei", "L"]]
    job = [["Setting", "Value"], ["Margin or fixed price", "25 %"], ["Price by", "own cost"]]
    priced = {
        "Garments": [["Garment", "Size", "Price"], ["Crew-neck tee", "M", None], ["Crew-neck tee", "L", 4]],
        "Film": [["Film", "Rolls sold"], ["Black smooth", "1 yd = 6.50; 5 yd = 21.00"]],
    }
    leaf = Leaf("Bag tags", job="Job", paper="Letter")
    write(leaf, look_up(plan_of(roster, Job=job, **priced)))
    heights = [row.height for row in leaf.rows]
    assert heights[4] == 0
    assert heights[10] > 8
