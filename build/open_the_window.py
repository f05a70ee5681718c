"""Runs first in the Windows program without a console: its window opens unless --no-window is given, whether or not
whoever starts it hands over streams."""

import sys

sys.argv.insert(1, "--window")
