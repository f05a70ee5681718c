"""Builds and tries the Windows program on a Debian machine: python3 build/try_windows.py [--source] [TRY...].

With wine, which is not Windows: the zip for people is built and tried on a real one (`continuous-build.yml`). The first
use fetches about 250 MB into `.xlbatch-windows/`. With --source nothing is built: the source runs under Windows'
Python, which is quicker and finds most. TRY is the name of a function of windows_tries.py. Pictures of the window are
left in `dist/windows/`, to be looked at.
"""

# mypy: disable-error-code=import-not-found
# (the modules beside a script are found when it runs)

import sys

import needs_python  # noqa: F401 - stops an older Python
from environment import BUNDLE_LOCK, FAILED, ROOT, ready, run
from windows_machine import PACKAGES, lacking

if lacking():
    print(f"This system lacks {', '.join(lacking())}: apt install {PACKAGES}", file=sys.stderr)
    sys.exit(FAILED)
sys.exit(run(ready(BUNDLE_LOCK), str(ROOT / "build" / "windows_tries.py"), *sys.argv[1:]))
