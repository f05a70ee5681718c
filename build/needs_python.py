"""Imported first by the scripts here: stops a Python that is too old, in words even that one can read."""

import sys

if sys.version_info < (3, 11):  # noqa: UP036 - whoever starts a script may well have an older one
    version = ".".join(map(str, sys.version_info[:2]))
    sys.stderr.write("This needs Python 3.11 or newer and was started with Python " + version + ": ")
    sys.stderr.write("install a newer one, from your system's packages or from python.org, and start it with that.\n")
    sys.exit(3)
