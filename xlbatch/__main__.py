"""`python -m xlbatch`, and where the bundled program starts."""

import gc
import sys

from xlbatch.cli import main
from xlbatch.seldom_searched import seldom_searched


def start() -> int:
    """Runs the program and returns its exit code."""
    with seldom_searched():
        code = main()
        gc.freeze()  # what is left ends with the process, and is not searched first
    return code


if __name__ == "__main__":
    if getattr(sys, "frozen", False):  # the bundled program, whose worker processes start here too
        from multiprocessing import freeze_support

        freeze_support()
    sys.exit(start())
