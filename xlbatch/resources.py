"""Where data files lie: in the source tree, in an installed wheel, or in the bundled program."""

from pathlib import Path

PACKAGE = Path(__file__).resolve().parent


def trade_file(name: str) -> Path:
    """The path of a table under xlbatch/trade."""
    return PACKAGE / "trade" / name


def templates() -> Path:
    """The folder of templates: beside the package in the source tree, inside it in a wheel or bundle."""
    inside = PACKAGE / "templates"
    return inside if inside.is_dir() else PACKAGE.parent / "templates"
