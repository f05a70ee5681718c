"""`python -m xlbatch`, and where the bundled program starts."""

import sys

from xlbatch.cli import main

if __name__ == "__main__":
    sys.exit(main())
