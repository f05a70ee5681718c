"""Has this computer offer the program under Open with for lists, where the person asks for it. Never as first choice:
the spreadsheet stays what opens a workbook. On macOS the application says so itself (build/mac_plist.py)."""

import os
import shutil
import sys
from pathlib import Path

from xlbatch.resources import home, icon

ENDINGS = (".xlsx", ".xlsm", ".xls", ".ods", ".csv")
MIME_TYPES = (
    "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
    "application/vnd.ms-excel.sheet.macroEnabled.12",
    "application/vnd.ms-excel",
    "application/vnd.oasis.opendocument.spreadsheet",
    "text/csv",
    "inode/directory",
)
_CLASSES = r"Software\Classes"


def can_offer() -> bool:
    """Whether this is a program of its own, on a system where it has something to say, that has not said it yet."""
    return bool(getattr(sys, "frozen", False)) and sys.platform != "darwin" and not _offered(Path(sys.executable))


def offer(program: Path) -> None:
    """Offers `program` for lists, to this person alone. Raises OSError where that can't be noted."""
    if sys.platform == "win32":
        _note_in_registry(program)
    else:
        _write_entry(program)


def desktop_entry(command: str) -> str:
    """A desktop entry (freedesktop.org, Desktop Entry Specification) that starts `command`."""
    return "\n".join(
        (
            "[Desktop Entry]",
            "Type=Application",
            "Version=1.0",
            "Name=xlbatch",
            "GenericName=Shirt batch planner",
            "Comment=Turns a list of people into the sheets and cut files for a batch of personalized shirts",
            f"Exec={command}",
            "Icon=xlbatch",
            "Terminal=false",
            "Categories=Office;Publishing;",
            f"MimeType={';'.join(MIME_TYPES)};",
            "",
        )
    )


def _offered(program: Path) -> bool:
    try:
        if sys.platform == "win32":
            import winreg

            command = winreg.QueryValue(winreg.HKEY_CURRENT_USER, rf"{_application(program)}\shell\open\command")
            return command == _command(program)
        return desktop_entry(_exec(program)) == _entry().read_text(encoding="utf-8")
    except OSError:
        return False


def _write_entry(program: Path) -> None:
    _entry().parent.mkdir(parents=True, exist_ok=True)
    if icon().exists():
        picture = _data() / "icons" / "hicolor" / "256x256" / "apps" / "xlbatch.png"
        picture.parent.mkdir(parents=True, exist_ok=True)
        shutil.copy(icon(), picture)
    _entry().write_text(desktop_entry(_exec(program)), encoding="utf-8")


def _exec(program: Path) -> str:
    """The command of a desktop entry: an argument is quoted, and the whole is a string of its own with escapes."""
    quoted = "".join(f"\\{sign}" if sign in '"`$\\' else sign for sign in str(program))
    return f'"{quoted}" --window %F'.replace("\\", "\\\\").replace("%", "%%").replace("%%F", "%F")


def _data() -> Path:
    return Path(os.environ.get("XDG_DATA_HOME") or home() / ".local" / "share")


def _entry() -> Path:
    return _data() / "applications" / "xlbatch.desktop"


def _note_in_registry(program: Path) -> None:
    if sys.platform == "win32":
        import winreg

        def note(key: str, value: str = "", name: str = "") -> None:
            with winreg.CreateKey(winreg.HKEY_CURRENT_USER, key) as made:
                winreg.SetValueEx(made, name, 0, winreg.REG_SZ, value)

        application = _application(program)
        note(application, "xlbatch", "FriendlyAppName")
        note(rf"{application}\shell\open\command", _command(program))
        for ending in ENDINGS:
            note(rf"{application}\SupportedTypes", name=ending)
            note(rf"{_CLASSES}\{ending}\OpenWithList\{program.name}")


def _application(program: Path) -> str:
    return rf"{_CLASSES}\Applications\{program.name}"


def _command(program: Path) -> str:
    return f'"{program}" "%1"'
