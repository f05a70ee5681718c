"""The rules of what a plan remembers, each by itself: answers, orders, sizes that were cut, decals handed over."""

from dataclasses import replace
from pathlib import Path

import pytest

from tests.art.conftest import ROW
from tests.cutfiles.test_run_svg import decal as decal_of
from tests.kept.test_numbers_kept import kept
from xlbatch.art.decal import Decal
from xlbatch.job.job import Job
from xlbatch.job.marks import AnswerMark, OrderKey, OrderMark
from xlbatch.job.source import Source
from xlbatch.kept.answered import NOT_NEEDED, answered, garment_of
from xlbatch.kept.memory import NO_MEMORY, KeptAnswer, KeptChange, KeptOffer, KeptOrder
from xlbatch.kept.offers import handed_over
from xlbatch.kept.on_the_way import orders_now
from xlbatch.kept.sizes_cut import sizes_cut
from xlbatch.problems import Where, problem
from xlbatch.roster.read import blank_job

ASKED = problem("size-read-as", Where("Roster", "C2"), "m?", rows=(2,), size="M", taken_for="M")
STOP = problem("size-unknown", Where("Roster", "C2"), "huge", rows=(2,))


def job() -> Job:
    return replace(blank_job(Path("list.xlsx")), roster=(replace(ROW, no=7),))


@pytest.mark.parametrize(
    ("answer", "asked"), [("ok", []), (" OK ", []), ("no", [ASKED]), ("later", [ASKED]), ("", [ASKED])]
)
def test_ok_settles_a_question_and_nothing_else_does(answer: str, asked: list[object]) -> None:
    still, holding = answered([ASKED, STOP], job(), [KeptAnswer("size-read-as", "7", "m?", answer)], [])
    assert list(still) == [*asked, STOP]  # a stop stays
    assert [(held.garment, held.answer) for held in holding] == [("7", answer)]
    assert garment_of(ASKED, job()) == "7"


def test_an_answer_holds_for_its_garment_and_its_text_alone() -> None:
    for garment, typed in (("8", "m?"), ("7", "M?")):
        still, holding = answered([ASKED], job(), [KeptAnswer("size-read-as", garment, typed, "ok")], [])
        assert (still, holding) == ((ASKED,), ())


def test_no_declines_an_offer_and_ok_does_not_end_it() -> None:
    offered = problem(
        NOT_NEEDED, Where("Roster", "A2"), "D003", suggestion="D003 for No. 9", rows=(2,), what="", number=7
    )
    for answer, still in (("no", ()), ("ok", (offered,))):
        assert answered([offered], job(), [KeptAnswer(NOT_NEEDED, "7", "D003", answer)], [])[0] == still


BLANK = OrderKey("blank", "Tee", "Tee", "M", "white")


@pytest.mark.parametrize(
    ("before", "buy", "ordered", "arrived", "way", "came"),
    [
        (0, 5, True, None, 5, 0),  # all that was to be bought
        (0, 5, 3, None, 3, 0),
        (2, 5, 3, None, 5, 0),
        (4, 0, None, True, 0, 4),  # all that was on the way
        (0, 5, None, True, 0, 5),  # nothing was: all that was to be bought
        (4, 0, None, 3, 1, 3),
        (4, 0, None, 6, 0, 6),
        (0, 0, None, -2, 2, -2),  # taken back
        (4, 5, False, False, 4, 0),
    ],
)
def test_what_is_ordered_and_has_come_is_counted_once(
    before: int, buy: int, ordered: bool | int | None, arrived: bool | int | None, way: int, came: int
) -> None:
    was = [KeptOrder(*BLANK, before, 0, 0, "")] if before else []
    mark = OrderMark(Source("Shopping list"), BLANK._replace(color="White"), buy, ordered, arrived, "soon")
    (now,) = orders_now(was, [mark]).values()
    assert (now.on_the_way, now.came, now.note) == (way, came, "soon")


def bigger(times: float) -> Decal:
    """The decal of 40 by 60 mm and 1,500 mm² of film, drawn now so many times smaller than it was cut."""
    drawn = decal_of(0, text="")
    assert drawn.outline is not None
    outline = replace(drawn.outline, width=40 / times, height=60 / times, area=1500 / times**2)
    spec = replace(drawn.spec, decal="Chest", what="artwork")
    return replace(drawn, spec=spec, width=40 / times, height=60 / times, outline=outline)


def test_a_decal_cut_bigger_than_it_would_be_made_now_tells_by_how_much() -> None:
    assert sizes_cut([bigger(1.25)], [kept(3, text="")], []) == {(1, "Chest"): pytest.approx(1.25)}
    assert sizes_cut([bigger(0.8)], [kept(3, text="")], []) == {(1, "Chest"): pytest.approx(0.8)}
    assert sizes_cut([bigger(1.0)], [kept(3, text="")], []) == {}
    assert sizes_cut([bigger(1.25)], [kept(3, text="", height=70)], []) == {}  # of another shape
    assert sizes_cut([bigger(1.25)], [kept(3, text="", area=1400)], []) == {}  # of another drawing
    assert sizes_cut([bigger(1.25)], [kept(3, "to cut", text="")], []) == {}


@pytest.mark.parametrize(
    ("sheet", "who", "asked"),
    [("Designs", "Name · Chest", True), ("Designs", "Other · Chest", False), ("Roster", "No. 1 Ana", True),
     ("Roster", "No. 2 Bo", False), ("Job", "Sizes", True), ("Job", "Font", False), ("Drawing parts", "a.svg", True)],
)  # fmt: skip
def test_where_another_size_was_asked_for_the_cut_one_says_nothing(sheet: str, who: str, asked: bool) -> None:
    changed = KeptChange(2, sheet, "A1", who, "Width", "", "9 in", "")
    assert (sizes_cut([bigger(1.25)], [kept(3, text="")], [changed]) == {}) is asked


def test_a_decal_whose_offer_was_taken_is_its_new_garments() -> None:
    memory = replace(NO_MEMORY, plan=3, decals=(kept(3), kept(4)), offers=(KeptOffer("D003", 9, "Chest 2"),))
    taken = AnswerMark(Source("Problems", 5, {"Answer": "F5"}), "check", NOT_NEEDED, "1", "D003, D004", "Ok")
    after, (line,) = handed_over(memory, [taken])
    assert [(one.id, one.garment_no, one.piece) for one in after.decals] == [
        ("D003", 9, "Chest 2"),
        ("D004", 1, "Chest"),
    ]
    assert line == KeptChange(4, "Problems", "F5", "D003", "for", "No. 1, Chest", "No. 9, Chest 2", "")
    assert handed_over(memory, [replace(taken, answer="no")]) == (memory, ())
