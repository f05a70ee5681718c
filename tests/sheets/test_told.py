"""What sheets tell in words and numbers, on either side of where it changes; sums by hand, lengths in mm."""

from dataclasses import replace
from datetime import time
from decimal import Decimal
from types import SimpleNamespace
from typing import Any

import pytest

from xlbatch.film.layout import FilmNeed, Lever
from xlbatch.job.job import FilmPiece, PriceBreak, Roll
from xlbatch.plan import Figures, Plan, Tried
from xlbatch.sheets import film_requirement, job_sheet, money, proof, shopping_list, time_plan, what_if_sheet
from xlbatch.sheets.input_cells import money_text, pieces_text, prices_text, rolls_text, stock_text, value
from xlbatch.shopping.lines import BuyLine, MoneyLine, SpareChoice

IN = 25.4


@pytest.fixture
def need(plan: Plan) -> FilmNeed:
    """2 runs of 30 in in all, of which 4 margins; 25 in of boxes laid freely."""
    film = replace(plan.layout.needs[0].film, name="Sky", color="blue", usable_width=11.5 * IN)
    return FilmNeed(film, 7, 2, 30 * IN, 20.9 * IN, 25 * IN, 0.51239, 10.1 * IN, 2.1 * IN, 36 * IN, (), (), None)


def with_needs(plan: Plan, *needs: FilmNeed, runs: Any = (), lever: Lever | None = None, **settings: Any) -> Plan:
    job = replace(plan.job, settings=replace(plan.job.settings, **{"end_margin": IN, "interlock": False} | settings))
    return replace(plan, job=job, layout=replace(plan.layout, needs=needs, runs=runs, lever=lever))


def test_a_film_s_row(plan: Plan, need: FilmNeed) -> None:
    """What is needed is rounded up to eighths, what is proven and what is left down."""
    rolls, left = ((2, Roll(914.4, None)), (1, Roll(4572.0, None))), (FilmPiece(12 * IN, 40.06 * IN),) * 2
    need = replace(need, rolls=rolls, left=left, cost=Decimal("12.50"))
    runs: Any = [
        SimpleNamespace(film=need.film, length=10.1 * IN),
        SimpleNamespace(film=need.film, length=20.1 * IN),
        SimpleNamespace(film=replace(need.film, name="Sun"), length=50.0),
    ]
    frame = film_requirement.table(with_needs(plan, need, runs=runs))
    assert frame.iloc[0].tolist() == [
        "Sky", "blue", 11.5, 7, 2, 10.125 + 20.125, 20.875, 0.5124, 2.125, 10.125, 36, "2 × 1 yd; 1 × 5 yd",
        Decimal("12.50"), "12 in x 40 in; 12 in x 40 in",
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("length", "interlock", "said"),
    [
        (30.0, False, "Cutting straight strips costs 1 in more film than laying without strips. "),
        (29.13, False, "Cutting straight strips costs 1/8 in more film than laying"),
        (29.12, False, "Cutting straight strips costs no more film than laying"),
        (28.0, False, "Cutting straight strips costs no more film than laying"),
        (28.0, True, "that takes 1 in less film in all than boxes laid without strips"),
        (31.5, True, "that takes 2 1/2 in more film in all than boxes laid without strips"),
    ],
)
def test_what_strips_cost_is_told_without_margins(
    plan: Plan, need: FilmNeed, length: float, interlock: bool, said: str
) -> None:
    """Two runs have four margins of an inch; another film adds to it."""
    needs = replace(need, length=length * IN), replace(need, runs=1, length=3 * IN, free=IN)
    about = film_requirement._about_strips(with_needs(plan, *needs, interlock=interlock))
    assert said in about
    assert "Tried" not in about
    lever = Lever("Shirts per strip", "5", 7 * IN)
    tried = film_requirement._about_strips(with_needs(plan, *needs, lever=lever, interlock=interlock))
    assert ("Tried: with Shirts per strip 5 (Job) the strips take 7 in less, or better." in tried) is not interlock


def test_rolls_are_told_cheapest_only_where_that_is_proven(plan: Plan, need: FilmNeed) -> None:
    rolled = replace(need, rolls=((1, Roll(914.4, None)),), cost=Decimal(9), cheaper=Decimal("0.99"), sure=0.9)
    about = film_requirement._about_rolls
    assert about(with_needs(plan, need)) == ""
    assert "It is proven" in about(with_needs(plan, rolled, need))
    assert "90 jobs in 100" in about(with_needs(plan, rolled, need))
    dear = replace(rolled, cheaper=Decimal(1))
    unpriced = replace(rolled, film=replace(need.film, name="Sun"), cost=None, cheaper=Decimal("50.8"), sure=0.5)
    said = about(with_needs(plan, dear, unpriced, replace(need, cheaper=Decimal(5))))
    assert "may do for Sky by $1.00, Sun by 2 in at most. 45 jobs in 100" in said


@pytest.mark.parametrize(
    ("seconds", "told"),
    [(0, "0 min"), (29, "0 min"), (31, "1 min"), (3569, "59 min"), (3571, "1 h 0 min"), (12000, "3 h 20 min")],
)
def test_hours(seconds: float, told: str) -> None:
    assert time_plan.hours_text(seconds) == told


def test_times_on_the_clock_and_by_stage(plan: Plan) -> None:
    assert [time_plan._clock(minutes) for minutes in (0, 605, 1439, 1445)] == [
        time(0), time(10, 5), time(23, 59), time(0, 5),
    ]  # fmt: skip
    stages = replace(plan.time, stage_seconds={"cut": 600.0, "press": 3600.0}, breaks=0.0)
    lines = ["Cutting 10 min", "Pressing 1 h 0 min", "all hand work 1 h 10 min"]
    assert time_plan.stage_lines(stages) == lines
    assert time_plan.stage_lines(replace(stages, breaks=900.0)) == [*lines, "breaks 15 min"]
    work = replace(plan.time.work[0], stage="weed", parts={"weed": 60.0, "check": 120.0})
    other = replace(work, parts={"weed": 240.0})
    assert time_plan.parts_lines(replace(plan.time, work=(work, other))) == ["Weeding: weed 5 min, check 2 min."]
    steps = tuple(replace(step, temperature=150.0 + no % 2, lane=1) for no, step in enumerate(plan.pressing.steps))
    pressing = replace(plan.pressing, steps=steps, waiting_by_heat=120.0, waiting_by_batch=300.0)
    for by_heat, way in ((True, "one heat for all batches"), (False, "each batch to its end")):
        line = time_plan.order_line(replace(pressing, by_heat=by_heat))
        assert "one heat for all batches before the next 2 min; each batch to its end before the next 5 min" in line
        assert f"The Press log has {way} before the next." in line
    assert "not waited for" in time_plan.order_line(replace(pressing, steps=steps[:1]))


def test_the_last_day_is_told(plan: Plan) -> None:
    for last, told in ((1, "on the first day"), (2, "on day 2"), (3, "on day 3")):
        work = replace(plan.time.work[0], ends_day=last), replace(plan.time.work[0], ends_day=1)
        assert job_sheet._days(replace(plan, time=replace(plan.time, work=work))) == f"done {told}"
    assert job_sheet._days(replace(plan, time=replace(plan.time, work=()))) == "done on the first day"


@pytest.mark.parametrize(("rows", "listed"), [(1, 1), (30, 30), (31, 31), (35, 31)])
def test_rows_held_back_are_listed_up_to_thirty(plan: Plan, rows: int, listed: int) -> None:
    held = list(job_sheet.held(replace(plan, held=plan.held[:1] * rows)))
    assert len(held) == listed
    assert held[0][0] == f"No. {plan.held[0].no}  Held Back"
    assert "is no size this program knows" in held[0][1]
    if rows > 30:
        assert held[-1] == ("And more", f"{rows - 30} further rows are held back: see Problems.")


def test_one_thing_has_no_plural() -> None:
    assert [job_sheet._count(number, "page") for number in (0, 1, 2)] == ["0 pages", "1 page", "2 pages"]


@pytest.mark.parametrize(
    ("texts", "unusual"),
    [
        (["Ana ~z"], ""),
        (["Zoë", "Noël"], "ë U+00EB"),
        (["éèê"], "é U+00E9, è U+00E8, ê U+00EA"),
        (["éè", "êö"], "é U+00E9, è U+00E8, ê U+00EA, …"),
    ],
)
def test_letters_beyond_plain_english(texts: list[str], unusual: str) -> None:
    assert proof._unusual(texts) == unusual


@pytest.mark.parametrize(
    ("condensed", "told"), [(1.0, ""), (0.996, ""), (0.994, ", letters 99% wide"), (0.8, ", letters 80% wide")]
)
def test_condensed_letters_are_told(condensed: float, told: str) -> None:
    part = SimpleNamespace(condensed=1.0, parts=())
    alone = SimpleNamespace(condensed=condensed, parts=())
    whole = SimpleNamespace(condensed=1.0, parts=(part, alone))
    settings: Any = SimpleNamespace(length_unit="in")
    for decals in ((part, alone), (whole,)):
        group: Any = SimpleNamespace(decals=decals, width=9 * IN, height=1.74 * IN)
        assert proof.size_text(group, settings) == f"9 × 1 3/4 in{told}"


def line(kind: Any, needed: int, spares: int, on_hand: int, price: str | None, on_the_way: int = 0) -> BuyLine:
    return BuyLine(kind, "Tee", "Tee", "M", "red", needed, spares, on_hand, price and Decimal(price), on_the_way)  # type: ignore[arg-type]


def test_what_is_bought_and_what_it_comes_to(plan: Plan) -> None:
    lines = (
        line("blank", 9, 2, 4, "1.50"), line("blank", 3, 0, 1, None, 1), line("blank", 2, 0, 2, None),
        line("film", 5, 1, 0, "2.25"), line("supply", 1, 0, 1, "7"),
    )  # fmt: skip
    bought = replace(plan, shopping=lines)
    assert shopping_list.blanks_to_buy(bought) == 7 + 1
    assert shopping_list.unpriced(bought) == 1  # of the other without a price none is to buy
    assert shopping_list.total(bought) == Decimal("10.50") + Decimal("13.50")
    assert shopping_list.total(replace(plan, shopping=lines[1:3])) == ""


def test_spares_are_told_with_what_they_cost(plan: Plan) -> None:
    choices = [("none", 0, "0", 0.123), ("few", 1, "4.20", 0.5), ("many", 12, "-3", 0.997), ("some", 2, None, 0.6)]
    settings = replace(plan.job.settings, spoiled_blanks_per_100=2.5, second_order_costs=Decimal(1234))
    told = tuple(SpareChoice(name, no, cost and Decimal(cost), sure) for name, no, cost, sure in choices)  # type: ignore[arg-type]
    spared = replace(plan, job=replace(plan.job, settings=settings), spare_choices=told)
    assert shopping_list._spares(spared) == (
        "Spare blanks, where 2.5 in 100 garments are spoiled and a second order costs $1,234.00: "
        "none 0, 12 jobs in 100 without one; few 1, $4.20 more, 50 jobs in 100 without one; "
        "many 12, $3.00 less by the price for so many, 100 jobs in 100 without one; some 2, 60 jobs in 100 without one."
    )
    assert shopping_list._spares(replace(spared, spare_choices=())) == ""


def test_a_part_of_the_money_is_not_told_as_the_whole() -> None:
    one = MoneyLine(1, "Ana", "", Decimal(4), Decimal(2), None, Decimal(1), Decimal(9), "yes")
    other = replace(one, no=2, film=None, price=Decimal(8), in_roster=Decimal(3))
    free = replace(other, no=3, in_roster=None)
    sums = {name: money._total((one, other, free), name) for name in money.SUMS}
    assert sums == {"Blank": 12, "Film": "", "Supplies": "", "Labor": 3, "Price": 25, "Paid": 12, "Owed": 13}
    assert money._total((free,), "Paid") == ""
    assert [money.owed_cell(no) for no in (0, 7)] == ["Money!J4", "Money!J11"]


def test_what_a_change_saves(plan: Plan) -> None:
    own = Figures(Decimal(50), 100 * IN, 90.0)
    tried = [Figures(Decimal(42), 90.06 * IN, 95.5), Figures(None, 101 * IN, 80.0)]
    changes = tuple(Tried(f"{no}", "how", figures) for no, figures in enumerate(tried))
    rows = what_if_sheet.table(replace(plan, as_planned=own, what_if=changes)).values.tolist()
    assert [row[2:] for row in rows] == [
        [Decimal(50), 100, 90, None, None, None], [Decimal(42), 90, 95.5, Decimal(8), 10, -5.5],
        [None, 101, 80, None, -1, 10],
    ]  # fmt: skip


def test_values_are_written_as_they_are_read(plan: Plan) -> None:
    assert [money_text(Decimal(text)) for text in ("4.2", "4", "0.125", "0.1250", "1200")] == [
        "4.20", "4.00", "0.125", "0.125", "1200.00",
    ]  # fmt: skip
    four, three = PriceBreak(1, Decimal("4.2")), PriceBreak(12, Decimal("3.6"))
    assert prices_text([four]) == "4.20"
    assert prices_text([three]) == "12 = 3.60"
    assert prices_text([four, three]) == "1 = 4.20; 12 = 3.60"
    assert stock_text({"white": 3, "": 2}) == "white = 3; 2"
    assert rolls_text([Roll(4572.0, Decimal(21)), Roll(914.4, None)]) == "5 yd = 21.00; 1 yd"
    piece = FilmPiece(12 * IN, 40 * IN)
    assert pieces_text([piece, piece], plan.job.settings) == "12 in x 40 in; 12 in x 40 in"
    settings = plan.job.settings
    told = [("length", 3 * IN, 3), ("yes/no", True, "yes"), ("yes/no", False, "no"), ("mark", True, "yes"),
            ("mark", False, None), ("list", ("a", "b"), "a; b"), ("text", "", None), ("text", None, None),
            ("dots", None, "not checked"), ("dots", 2, 2), ("number", 0, 0), ("text", "x", "x")]  # fmt: skip
    assert [value(kind, held, settings) for kind, held, _ in told] == [wanted for *_, wanted in told]
