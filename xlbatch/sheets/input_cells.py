"""Values as the input sheets carry them: the way a person may write them, and read back to the same value."""

from collections.abc import Iterable, Mapping
from decimal import Decimal
from typing import Any

from xlbatch.job.feature import Feature
from xlbatch.job.job import FilmPiece, PriceBreak, Roll, Settings
from xlbatch.paper.cell import Value
from xlbatch.tables.features import NOTHING
from xlbatch.trade.columns import InputColumn
from xlbatch.units import exact_length_text, length_in, long_text, temperature_in


def heading(column: InputColumn, settings: Settings) -> str:
    """The column's heading with its unit, which wins over the job's unit when the sheet is read again."""
    units = {"length": settings.length_unit, "temperature": settings.temperature_unit, "seconds": "s"}
    return f"{column.heading} ({units[column.kind]})" if column.kind in units else column.heading


def value(kind: str, held: Any, settings: Settings) -> Value:
    """A record's value as a cell of a column of this kind."""
    if kind == "dots":
        return "not checked" if held is None else held
    if kind == "features":
        return features_text(held, settings)
    if held is None or held == "":
        return None
    match kind:
        case "length":
            return length_in(held, settings.length_unit)
        case "temperature":
            return temperature_in(held, settings.temperature_unit)
        case "yes/no":
            return "yes" if held else "no"
        case "mark":
            return "yes" if held else None
        case "list":
            return "; ".join(held)
        case "prices":
            return prices_text(held)
        case "stock":
            return stock_text(held)
        case "rolls":
            return rolls_text(held)
        case "pieces":
            return pieces_text(held, settings)
        case _:
            return held if isinstance(held, int | float | Decimal) else str(held)


def money_text(amount: Decimal) -> str:
    """An amount to the cent, or to more places where it has them."""
    return f"{amount:.2f}" if amount == round(amount, 2) else f"{amount.normalize():f}"


def prices_text(prices: Iterable[PriceBreak]) -> str:
    """`4.20`, or `1 = 4.20; 12 = 3.60`."""
    breaks = tuple(prices)
    if len(breaks) == 1 and breaks[0].count == 1:
        return money_text(breaks[0].price)
    return "; ".join(f"{price_break.count} = {money_text(price_break.price)}" for price_break in breaks)


def stock_text(stock: Mapping[str, int]) -> str:
    """`white = 3; navy = 1`, or `3` where no color was said."""
    return "; ".join(f"{color} = {count}" if color else str(count) for color, count in stock.items())


def rolls_text(rolls: Iterable[Roll]) -> str:
    """`5 yd = 21.00; 25 yd = 92.00`, without the price where none is given."""
    return "; ".join(
        long_text(roll.length, "mm") + (f" = {money_text(roll.price)}" if roll.price is not None else "")
        for roll in rolls
    )


def pieces_text(pieces: Iterable[FilmPiece], settings: Settings) -> str:
    """`12 in x 40 in; 12 in x 9 ft`."""
    unit = settings.length_unit
    return "; ".join(f"{exact_length_text(piece.width, unit)} x {long_text(piece.length, unit)}" for piece in pieces)


def features_text(features: Iterable[Feature], settings: Settings) -> str:
    """`placket front 2 in x 6 in from collar`, or that there is nothing to keep clear."""
    unit = settings.length_unit
    texts = (
        f"{feature.name} {feature.side} {exact_length_text(feature.width, unit)} x "
        f"{exact_length_text(feature.height, unit)} from {feature.at}"
        for feature in features
    )
    return "; ".join(texts) or NOTHING[0]
