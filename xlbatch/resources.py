"""Where data files lie: in the source tree, in an installed wheel, or in the bundled program."""

from pathlib import Path

PACKAGE = Path(__file__).resolve().parent


def home() -> Path:
    """The person's own folder; where this computer names none, the folder in use."""
    try:
        return Path.home()
    except RuntimeError:
        return Path.cwd()


def trade_file(name: str) -> Path:
    """The path of a table under xlbatch/trade."""
    return PACKAGE / "trade" / name


def templates() -> Path:
    """The folder of templates."""
    return _shipped("templates")


def examples() -> Path:
    """The folder of example workbooks and their drawings."""
    return _shipped("example_workbooks")


def icon() -> Path:
    """The program's icon, which is made with the bundle: elsewhere there is none."""
    return PACKAGE / "icon.png"


def _shipped(name: str) -> Path:
    """A folder beside the package in the source tree, inside it in a wheel or bundle."""
    inside = PACKAGE / name
    return inside if inside.is_dir() else PACKAGE.parent / name
