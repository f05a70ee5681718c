"""Chooses sets that together hold every member exactly once, at the least cost."""

from collections.abc import Sequence

import highspy
import numpy as np
from numpy.typing import NDArray

from xlbatch.film.solver import Solver
from xlbatch.how_far import alive

CLOSE = 5e-4  # of the cost: what a proof that no choice is cheaper may leave open

Floats = NDArray[np.float64]


def prices(sets: Sequence[Sequence[int]], costs: Sequence[int], members: int) -> Floats:
    """What each member costs where sets may be taken in part: a set's cost less its prices says how good it is."""
    alive()
    solver = _solver(sets, costs, members)
    solver.run()
    return np.array(solver.getSolution().row_dual)


def cheapest(sets: Sequence[Sequence[int]], costs: Sequence[int], members: int, nodes: int) -> tuple[int, ...] | None:
    """The sets to take (their places in the list), searched over so many nodes; None where none was found."""
    solver = _solver(sets, costs, members)
    solver.setOptionValue("mip_max_nodes", nodes)
    solver.setOptionValue("mip_rel_gap", CLOSE)
    solver.changeColsIntegrality(
        len(sets), np.arange(len(sets), dtype=np.int32), np.full(len(sets), highspy.HighsVarType.kInteger)
    )
    solver.run()
    values = solver.getSolution().col_value
    chosen = tuple(set_no for set_no in range(len(sets)) if set_no < len(values) and values[set_no] > 0.5)
    return chosen if sorted(member for set_no in chosen for member in sets[set_no]) == list(range(members)) else None


def _solver(sets: Sequence[Sequence[int]], costs: Sequence[int], members: int) -> Solver:
    """One row a member, one column a set."""
    solver = Solver()
    for _ in range(members):
        solver.addRow(1.0, 1.0, 0, [], [])
    starts = np.cumsum([0, *(len(in_set) for in_set in sets[:-1])]).astype(np.int32)
    rows = np.array([member for in_set in sets for member in in_set], np.int32)
    count = len(sets)
    nothing, ones = np.zeros(count), np.ones(count)
    solver.addCols(count, np.array(costs, np.float64), nothing, ones, len(rows), starts, rows, np.ones(len(rows)))
    return solver
