"""Runs every check: python3 build/test.py [pytest options, with paths from the top folder]. Without options, spoiled
lists too (tests/fuzz.py)."""

# mypy: disable-error-code=import-not-found
# (the modules beside a script are found when it runs)

import sys

import needs_python  # noqa: F401 - stops an older Python
from environment import ROOT, TEST_LOCK, ready, run

SOURCE = ("xlbatch", "build", "tests")
SPOILED = () if sys.argv[1:] else (("tests.fuzz",),)
STYLE = (("ruff", "check", *SOURCE), ("ruff", "format", "--check", *SOURCE), ("mypy",))
CHECKS = (*STYLE, *SPOILED, ("pytest", *sys.argv[1:]))

python = ready(TEST_LOCK)
codes = []
for check in CHECKS:
    print("Checking:", *check, flush=True)
    codes.append(run(python, "-m", *check, cwd=ROOT))
sys.exit(any(codes))
