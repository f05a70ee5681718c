"""The folder last used, remembered from one start of the window to the next.

It stands in a small file among the person's settings. Nothing ever fails because of it.
"""

import json
import os
import sys
from pathlib import Path

from xlbatch.resources import home


def last_folder() -> Path:
    """The folder last used, or the person's home."""
    try:
        folder = Path(json.loads(_file().read_text(encoding="utf-8"))["folder"])
        return folder if folder.is_dir() else home()
    except (OSError, ValueError, KeyError, TypeError):
        return home()


def remember(folder: Path) -> None:
    """Notes the folder for the next start."""
    try:
        _file().parent.mkdir(parents=True, exist_ok=True)
        _file().write_text(json.dumps({"folder": str(folder.absolute())}), encoding="utf-8")
    except (OSError, ValueError):
        return


def _file() -> Path:
    """Where each system keeps such files: %APPDATA%, Application Support, or the XDG base directory for settings."""
    if sys.platform == "win32":
        settings: str | Path = os.environ.get("APPDATA") or home()
    elif sys.platform == "darwin":
        settings = home() / "Library" / "Application Support"
    else:
        settings = os.environ.get("XDG_CONFIG_HOME") or home() / ".config"
    return Path(settings) / "xlbatch" / "settings.json"
