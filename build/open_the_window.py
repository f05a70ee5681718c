"""Runs first in the Windows program without a console: its window opens unless --no-window is given, whether or not
whoever starts it hands over streams. A process that it starts to work for it opens none."""

import sys

if sys.argv[1:2] != ["--multiprocessing-fork"]:
    sys.argv.insert(1, "--window")
