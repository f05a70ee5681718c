"""What the window remembers from one start to the next: the folder last used, the lists last planned, the units.

It stands in a small file among the person's settings. Nothing ever fails because of it.
"""

import json
import os
import sys
from collections.abc import Mapping, Sequence
from pathlib import Path

from xlbatch.resources import home

MOST_RECENT = 8


def last_folder() -> Path:
    """The folder last used, or the person's home."""
    folder = _read().get("folder")
    return Path(folder) if isinstance(folder, str) and _is_there(folder) and Path(folder).is_dir() else home()


def recent_lists() -> tuple[Path, ...]:
    """The lists last planned that are still there, newest first."""
    lists = _read().get("recent")
    paths = lists if isinstance(lists, list) else []
    return tuple(Path(path) for path in paths if isinstance(path, str) and _is_there(path))


def metric() -> bool:
    """Whether the last blank list was in centimeters."""
    return _read().get("metric") is True


def remember_lists(lists: Sequence[Path]) -> None:
    """Notes the lists that are planned, and their folder."""
    first = lists[0].absolute()
    new = [str(path.absolute()) for path in lists[:MOST_RECENT]]
    recent = [*new, *(str(path) for path in recent_lists() if str(path) not in new)]
    _write({"folder": str(first if first.is_dir() else first.parent), "recent": recent[:MOST_RECENT]})


def remember_folder(folder: Path) -> None:
    """Notes the folder for the next start."""
    _write({"folder": str(folder.absolute())})


def remember_units(*, metric: bool) -> None:
    """Notes whether a blank list was wanted in centimeters."""
    _write({"metric": metric})


def _read() -> Mapping[str, object]:
    try:
        noted = json.loads(_file().read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return {}
    return noted if isinstance(noted, dict) else {}


def _write(changed: Mapping[str, object]) -> None:
    try:
        text = json.dumps({**_read(), **changed})
        _file().parent.mkdir(parents=True, exist_ok=True)
        _file().write_text(text, encoding="utf-8")
    except (OSError, ValueError):
        return


def _is_there(path: str) -> bool:
    try:
        return Path(path).exists()
    except (OSError, ValueError):
        return False


def _file() -> Path:
    """Where each system keeps such files: %APPDATA%, Application Support, or the XDG base directory for settings."""
    if sys.platform == "win32":
        settings: str | Path = os.environ.get("APPDATA") or home()
    elif sys.platform == "darwin":
        settings = home() / "Library" / "Application Support"
    else:
        settings = os.environ.get("XDG_CONFIG_HOME") or home() / ".config"
    return Path(settings) / "xlbatch" / "settings.json"
