"""`python -m xlbatch`, and where the bundled program starts."""

import multiprocessing
import sys

from xlbatch.cli import main

if __name__ == "__main__":
    multiprocessing.freeze_support()  # a process of the bundled program's own starts here again
    sys.exit(main())
