"""Files a person names in a cell: looked for only in the workbook's own folder, never anywhere else."""

from pathlib import Path, PurePosixPath, PureWindowsPath


def beside(folder: Path, name: str) -> Path | None:
    """The file called `name` in `folder` or a folder inside it, or None.

    A path that leads out of the folder (absolute, `..`, another drive or a network share) is never opened."""
    name = name.strip()
    windows = PureWindowsPath(name)
    if not name or windows.drive or windows.root or PurePosixPath(name).is_absolute() or ".." in windows.parts:
        return None
    try:
        file = folder.joinpath(*windows.parts)
        return file if file.is_file() else None
    except (OSError, ValueError):  # a name no file can have
        return None
