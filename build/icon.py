"""Makes the icons' files from icon.svg and console.svg: a picture for Linux, .ico for Windows, .icns for macOS.

Both kinds of icon file hold PNG pictures behind a short table of contents: Windows since Vista, macOS since 10.7.
"""

import struct
from pathlib import Path

import resvg_py

DRAWING = Path(__file__).resolve().parent / "icon.svg"
CONSOLE = DRAWING.with_name("console.svg")  # of the Windows program for the console, which lies beside the other
ICO_SIZES = (16, 24, 32, 48, 64, 256)  # pixels
ICNS_SIZES = {b"icp4": 16, b"icp5": 32, b"ic07": 128, b"ic08": 256, b"ic09": 512, b"ic10": 1024}
WINDOW_SIZE = 256


def picture(size: int, drawing: Path = DRAWING) -> bytes:
    """The icon as a PNG picture, `size` pixels wide and high."""
    return bytes(resvg_py.svg_to_bytes(svg_string=drawing.read_text(encoding="utf-8"), width=size, height=size))


def ico(drawing: Path = DRAWING) -> bytes:
    """The icon as Windows reads it."""
    pictures = [picture(size, drawing) for size in ICO_SIZES]
    table, at = b"", 6 + 16 * len(pictures)
    for size, made in zip(ICO_SIZES, pictures, strict=True):
        table += struct.pack("<BBBBHHII", size % 256, size % 256, 0, 0, 1, 32, len(made), at)
        at += len(made)
    return struct.pack("<HHH", 0, 1, len(pictures)) + table + b"".join(pictures)


def icns() -> bytes:
    """The icon as macOS reads it."""
    entries = b""
    for kind, size in ICNS_SIZES.items():
        made = picture(size)
        entries += kind + struct.pack(">I", 8 + len(made)) + made
    return b"icns" + struct.pack(">I", 8 + len(entries)) + entries


def make_icons(folder: Path) -> None:
    """Writes icon.png, icon.ico, console.ico and icon.icns."""
    (folder / "icon.png").write_bytes(picture(WINDOW_SIZE))
    (folder / "icon.ico").write_bytes(ico())
    (folder / "console.ico").write_bytes(ico(CONSOLE))
    (folder / "icon.icns").write_bytes(icns())
