"""Every text a person is shown about bad input: in cells (kinds.py and the modules of_… beside it), in files that
cannot be read (refusals.py)."""

from xlbatch.problems.kind import Kind, Level
from xlbatch.problems.kinds import KINDS
from xlbatch.problems.problem import Problem, Where, problem

__all__ = ["KINDS", "Kind", "Level", "Problem", "Where", "problem"]
