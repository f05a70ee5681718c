"""A kind of problem."""

from dataclasses import dataclass
from typing import Literal

Level = Literal["stop", "check", "note"]


@dataclass(frozen=True)
class Kind:
    """One kind of problem. `stop` holds the row back; `check` and `note` do not."""

    code: str
    level: Level
    wrong: str
    todo: str
