"""Pieces on hand first, then the cheapest rolls; spare film for what goes wrong."""

from dataclasses import replace
from decimal import Decimal as Money
from typing import Any

import pytest

from xlbatch.job.job import FilmPiece, Roll


def roll(length: float, price: str = "") -> Roll:
    return Roll(length, Money(price) if price else None)


@pytest.fixture
def need_of(shop: Any) -> Any:
    """One garment with one decal 280 × 440 unless said otherwise: a run of 490, 25 at each end. Nothing is spoiled."""

    def make(
        *rolls: Roll,
        on_hand: tuple[FilmPiece, ...] = (),
        garments: int = 1,
        spoiled: float = 0,
        decal_length: float = 440,
    ) -> Any:
        shop.films = (replace(shop.films[0], rolls=rolls, on_hand=on_hand),)
        shop.settings = replace(
            shop.settings,
            longest_cut=500,
            longest_strip=450,
            spoiled_film_per_100=spoiled,
            sureness=95,
            length_unit="mm",
        )
        for _ in range(garments):
            shop.decals([(280, decal_length)])
        layout = shop.lay()
        shop.cut_from = [run.cut_from for run in layout.runs]
        (need,) = layout.needs
        return need

    return make


def test_the_cheapest_rolls_are_bought(need_of: Any) -> None:
    # 4 runs of 490: two rolls of 1000 at 6 each, or one of 2000 at 11
    need = need_of(roll(1000, "6.00"), roll(2000, "11.00"), garments=4)
    assert need.rolls == ((1, roll(2000, "11.00")),)
    assert (need.length, need.buy, need.cost) == (1960, 1960, Money("11.00"))
    assert need.left == ()  # 40 mm: less than two end margins


def test_what_is_left_of_a_roll_is_a_piece_for_the_next_job(need_of: Any) -> None:
    need = need_of(roll(1000, "6.00"))
    assert need.left == (FilmPiece(305, 510),)


def test_without_prices_the_fewest_rolls_are_bought_then_the_shortest(need_of: Any) -> None:
    need = need_of(roll(500), roll(1000), roll(2000), garments=2)
    assert need.rolls == ((1, roll(1000)),)
    assert need.cost is None


def test_a_piece_on_hand_is_used_before_a_roll_is_bought(need_of: Any, shop: Any) -> None:
    need = need_of(roll(1000, "6.00"), on_hand=(FilmPiece(305, 2000), FilmPiece(305, 600)), garments=1)
    assert shop.cut_from == ["piece 305 mm × 600 mm"]
    assert (need.on_hand, need.buy, need.cost, need.rolls) == (490, 0, Money(0), ())
    assert need.left == (FilmPiece(305, 2000), FilmPiece(305, 110))


def test_a_piece_too_narrow_or_too_short_is_left_alone(need_of: Any, shop: Any) -> None:
    need = need_of(roll(1000, "6.00"), on_hand=(FilmPiece(290, 600), FilmPiece(305, 480)))
    assert shop.cut_from == ["roll"]
    assert need.on_hand == 0


def test_spare_film_is_bought_for_decals_that_go_wrong(need_of: Any) -> None:
    # trade check: 10 decals, 5 in 100 spoiled: 2 more, each taking a run of 490
    need = need_of(roll(500), garments=10, spoiled=5)
    assert need.spare == 980
    assert need.buy == 12 * 490
    assert need.rolls == ((12, roll(500)),)


def test_spare_film_comes_from_a_piece_on_hand_where_one_is_left(need_of: Any) -> None:
    need = need_of(roll(500), on_hand=(FilmPiece(305, 1500),), garments=1, spoiled=6)
    assert (need.spare, need.buy, need.rolls) == (490, 0, ())


def test_where_no_roll_is_known_the_length_is_stated(need_of: Any) -> None:
    need = need_of(garments=2)
    assert (need.buy, need.rolls, need.cost) == (980, (), None)


def test_runs_are_no_longer_than_the_longest_roll(shop: Any) -> None:
    shop.films = (replace(shop.films[0], rolls=(roll(914.4),)),)
    for _ in range(9):
        shop.decals([(280, 200)])
    assert max(run.length for run in shop.lay().runs) <= 914.4


def test_a_run_may_fill_a_roll_to_a_part_of_a_millimeter(need_of: Any) -> None:
    full = 490.4  # a decal of 440.4 and two margins of 25
    assert need_of(roll(full), decal_length=440.4).rolls == ((1, roll(full)),)


@pytest.mark.parametrize(
    ("priced", "other"), [(roll(600, "3.00"), roll(500)), (roll(500, "9.00"), roll(500))], ids=["longer", "as long"]
)
def test_a_roll_with_a_price_is_bought_before_one_without(need_of: Any, priced: Roll, other: Roll) -> None:
    assert need_of(priced, other).rolls == ((1, priced),)


@pytest.mark.parametrize("short", [300, 489.9])
def test_a_roll_without_a_price_is_bought_where_no_priced_one_holds_the_run(need_of: Any, short: float) -> None:
    need = need_of(roll(short, "1.00"), roll(500))
    assert need.rolls == ((1, roll(500)),)
    assert need.cost is None


def test_a_decal_as_wide_as_its_film_but_for_what_is_rounded_is_cut_from_a_piece_as_wide(shop: Any) -> None:
    piece = FilmPiece(305, 600)
    shop.films = (replace(shop.films[0], rolls=(roll(914.4, "6.25"),), on_hand=(piece,)),)
    shop.decals([(290.0006, 100)])
    layout = shop.lay()
    (need,) = layout.needs
    assert (need.rolls, need.on_hand, need.cheaper) == ((), 150, 0)


def test_decals_laid_along_the_right_edge_of_the_film_are_cut_from_a_piece_as_wide(shop: Any) -> None:
    """Of many decals some lie at the right edge, as far as rounding goes."""
    shop.films = (replace(shop.films[0], rolls=(roll(914.4, "6.25"),), on_hand=(FilmPiece(305, 700),)),)
    shop.settings = replace(shop.settings, shirts_per_strip=1)
    shop.decals([(20.25 + 11 * at % 60, 30.5 + 7 * at % 50) for at in range(16)])
    layout = shop.lay()
    (run,), (need,) = layout.runs, layout.needs
    assert max(lying.across + lying.width for lying in run.lying) == pytest.approx(290.001, abs=1e-6)
    assert (need.rolls, need.on_hand, need.cheaper) == ((), run.length, 0)
