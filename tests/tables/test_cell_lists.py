"""Cells that hold lists: names, prices by number, rolls, pieces of film, what is on hand."""

from decimal import Decimal

from tests.tables.test_cells import UNCLEAR
from xlbatch.files.raw import Raw
from xlbatch.job.job import FilmPiece, PriceBreak, Roll
from xlbatch.tables import cell_lists


def test_names() -> None:
    assert cell_lists.names(Raw("white; navy ;")) == ("white", "navy")
    assert cell_lists.names(Raw("white, navy")) == ("white", "navy")
    assert cell_lists.pieces_done(Raw("blank in hand; Name, front")) == ("blank in hand", "Name, front")


def test_prices() -> None:
    twelve = (PriceBreak(1, Decimal("4.20")), PriceBreak(12, Decimal("3.60")))
    assert cell_lists.prices(Raw("1 = 4.20; 12 = 3.60")) == cell_lists.prices(Raw("12: 3,60 €; 1: $4.20")) == twelve
    assert cell_lists.prices(Raw(4.2)) == cell_lists.prices(Raw("4.20")) == twelve[:1]
    for typed in ("1 = 4.20; 1 = 3.60", "cheap", "1 = ", "0 = 4", "; ;", "4.20; dear"):
        assert cell_lists.prices(Raw(typed)) == UNCLEAR


def test_rolls() -> None:
    assert cell_lists.rolls(Raw("5 yd = 21.00; 25 yd")) == (Roll(4572, Decimal(21)), Roll(22860, None))
    assert cell_lists.rolls(Raw("5; 25 = 92"), "yd") == (Roll(4572, None), Roll(22860, Decimal(92)))
    for typed in ("5 = 21.00", "5 yd = dear", "5 yd =", "long"):
        assert cell_lists.rolls(Raw(typed)) == UNCLEAR


def test_pieces() -> None:
    assert cell_lists.pieces(Raw("12 in x 40 in; 12 in × 9 ft"), "cm") == (
        FilmPiece(304.8, 1016),
        FilmPiece(304.8, 2743.2),
    )
    assert (
        cell_lists.pieces(Raw("12 x 40"), "in")
        == cell_lists.pieces(Raw("12 x 40 in"), "cm")
        == cell_lists.pieces(Raw("12 in x 40"), "cm")
        == (FilmPiece(304.8, 1016),)
    )
    assert cell_lists.pieces(Raw("30 by 100"), "cm") == (FilmPiece(300, 1000),)
    for typed in ("40 in", "12 in x", "wide x long", "0 x 4"):
        assert cell_lists.pieces(Raw(typed), "in") == UNCLEAR


def test_stock() -> None:
    assert cell_lists.stock(Raw(3)) == cell_lists.stock(Raw("3")) == {"": 3}
    assert cell_lists.stock(Raw("white = 3; navy: 1; light blue 2")) == {"white": 3, "navy": 1, "light blue": 2}
    for typed in ("some", "white", "white = 3; white = 1", "1.5", True):
        assert cell_lists.stock(Raw(typed)) == UNCLEAR
