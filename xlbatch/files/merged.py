"""Gives every row of a merged block of cells its value, as a person sees it."""

from collections.abc import Mapping

from openpyxl.utils.cell import coordinate_to_tuple

from xlbatch.files.raw import Raw


def spread_merged(rows: dict[int, dict[int, Raw]], merged: tuple[tuple[str, str], ...]) -> None:
    """Fills in the value of each block, named by its first and last cell, in the filled rows it covers."""
    for first, last in merged:
        (top, left), (bottom, _) = coordinate_to_tuple(first), coordinate_to_tuple(last)
        value: Mapping[int, Raw] = rows.get(top, {})
        if left in value and bottom > top:
            for row in [row for row in rows if top < row <= bottom]:
                rows[row].setdefault(left, value[left])
