"""The linear and integer program solver, quiet and the same on every run: one thread, one seed, no clock."""

import highspy


class Solver(highspy.Highs):
    """HiGHS that prints nothing, not even its banner, which it would print when its callbacks are set up."""

    whole = highspy.HighsVarType.kInteger

    def __init__(self) -> None:
        super().__init__()  # type: ignore[no-untyped-call]  # highspy has few types

    def enableCallbacks(self) -> None:  # noqa: N802  # its own name
        for option, value in (("output_flag", False), ("threads", 1), ("random_seed", 0)):
            self.setOptionValue(option, value)
        super().enableCallbacks()  # type: ignore[no-untyped-call]  # likewise
