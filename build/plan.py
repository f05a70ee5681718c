"""Plans a workbook: python3 build/plan.py WORKBOOK [options]. The first use sets up what it needs."""

# mypy: disable-error-code=import-not-found
# (the modules beside a script are found when it runs)

import sys

import needs_python  # noqa: F401 - stops an older Python
from environment import PLAN_LOCK, ready, run

sys.exit(run(ready(PLAN_LOCK), "-m", "xlbatch", *sys.argv[1:]))
