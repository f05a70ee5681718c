"""`python -m xlbatch`, and where the bundled program starts."""

import multiprocessing
import sys

from xlbatch.cli import main

if __name__ == "__main__":
    multiprocessing.freeze_support()  # a worker process of the bundled program starts here too
    sys.exit(main())
