"""Makes the three locks anew after a change of pyproject.toml: python3 build/lock.py [--upgrade].

It needs the package uv. The locks serve Windows, macOS and Linux, and every Python from 3.11 on.
"""

# mypy: disable-error-code=import-not-found
# (the modules beside a script are found when it runs)

import os
import subprocess
import sys

import needs_python  # noqa: F401 - stops an older Python
from environment import BUNDLE_LOCK, PLAN_LOCK, ROOT, TEST_LOCK

COMPILE = (
    *(sys.executable, "-m", "uv", "--no-config", "pip", "compile", "pyproject.toml", "--quiet"),
    *("--universal", "--python-version", "3.11", "--fork-strategy", "fewest", "--only-binary", ":all:"),
    *("--generate-hashes", "--no-emit-index-url", "--no-annotate", "--custom-compile-command", "python3 build/lock.py"),
)

# settings of this machine must not steer which files the hashes are of
surroundings = {name: value for name, value in os.environ.items() if not name.startswith(("UV_", "PIP_"))}
for lock, extra in ((PLAN_LOCK, None), (TEST_LOCK, "test"), (BUNDLE_LOCK, "bundle")):
    more = ("--extra", extra, "--constraints", PLAN_LOCK) if extra else ()
    command = [*COMPILE, *more, "--output-file", lock, *sys.argv[1:]]
    subprocess.run(command, cwd=ROOT, env=surroundings, check=True)
