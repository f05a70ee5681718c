"""Files a person names in a cell: looked for only in the workbook's own folder, never anywhere else.

A plan that was written to another folder than its list has copies of them in a folder of its own."""

from pathlib import Path, PurePosixPath, PureWindowsPath

COPIES = "artwork"  # in the folder of a plan's cut files


def folder_of(workbook: Path) -> Path:
    """Where to look for the files that a workbook names: beside it, of a plan with copies of its own first there."""
    copies = workbook.with_name(f"{workbook.stem} - cut files") / COPIES
    return copies if copies.is_dir() else workbook.parent


def beside(folder: Path, name: str) -> Path | None:
    """The file called `name` in `folder` (of a plan's copies: or beside the plan) or a folder inside it, or None.

    A path that leads out of the folder (absolute, `..`, another drive or a network share) is never opened."""
    name = name.strip()
    windows = PureWindowsPath(name)
    if not name or windows.drive or windows.root or PurePosixPath(name).is_absolute() or ".." in windows.parts:
        return None
    folders = (folder, folder.parent.parent) if folder.name == COPIES else (folder,)
    try:
        files = (place.joinpath(*windows.parts) for place in folders)
        return next((file for file in files if file.is_file()), None)
    except (OSError, ValueError):  # a name no file can have
        return None
