"""How the window looks: colors, large type in sizes that follow the screen, buttons that work by keyboard.

All measures are in points, which Tk turns into the screen's own dots.
"""

import re
import subprocess
import sys
import tkinter
from collections.abc import Callable
from tkinter import font, ttk

from xlbatch.resources import icon
from xlbatch.window.open_file import surroundings

PAPER, CARD, INK, QUIET = "#faf6ec", "#ffffff", "#1f2a2b", "#5b6a6b"
DEEP, DEEPER, FOCUS, STOP, CHECK = "#16535a", "#0e3a40", "#e4572e", "#b3261e", "#8a5a00"
HOVER = "#e3ecec"  # under the pointer: never the look of the chosen button
SIZES = {"small": 12, "text": 14, "strong": 14, "large": 19, "title": 26}  # points
WIDTH, HEIGHT = 600, 460  # points, where the screen has room for it
MOST = 0.9  # of the screen's width and height
LEAST = 0.7  # of the usual size
LONGEST, TAIL = 40, 12  # letters of a name on a line, and of them at its end
SMALLEST, LARGEST = -4, 16  # points that the type can be made smaller or larger by
_XFT_DPI = re.compile(r"^Xft\.dpi:\s*(\d+)", re.MULTILINE)


class WindowLook:
    """The fonts and styles of one window."""

    def __init__(self, root: tkinter.Tk) -> None:
        _fit_density(root)
        family = font.nametofont("TkDefaultFont").actual("family")
        bold = ("strong", "title")
        self.fonts = {
            name: font.Font(root, family=family, size=size, weight="bold" if name in bold else "normal")
            for name, size in SIZES.items()
        }
        self._larger = 0
        _style(root, self.fonts)
        root.configure(background=PAPER, highlightthickness="3p")
        self._root = root
        self.light(False)
        width, height = self._room(1.0)
        root.geometry(f"{width}x{height}")
        root.minsize(round(width * LEAST), round(height * LEAST))
        if icon().exists():
            root.iconphoto(True, tkinter.PhotoImage(file=icon()))
        for modifier in ("Control", "Command") if sys.platform == "darwin" else ("Control",):
            for key, by in (("plus", 1), ("equal", 1), ("KP_Add", 1), ("minus", -1), ("KP_Subtract", -1)):
                root.bind_all(f"<{modifier}-{key}>", lambda _event, by=by: self.enlarge(by))  # type: ignore[misc]

    def light(self, on: bool) -> None:
        """Puts a ring around the window while lists are held over it."""
        color = FOCUS if on else PAPER
        self._root.configure(highlightbackground=color, highlightcolor=color)

    def enlarge(self, by: int) -> None:
        """Makes all type larger by so many points (smaller, if negative), within reason."""
        self._larger = min(max(self._larger + by, SMALLEST), LARGEST)
        for name, type_ in self.fonts.items():
            type_.configure(size=SIZES[name] + self._larger)
        if by > 0:
            self._grow()

    def _room(self, times: float) -> tuple[int, int]:
        """Width and height in dots of so many times the usual window, as far as the screen has room for it."""
        root = self._root
        most = root.winfo_screenwidth() * MOST, root.winfo_screenheight() * MOST
        wide, high = (
            round(min(_dots(root, side * times), far)) for side, far in zip((WIDTH, HEIGHT), most, strict=True)
        )
        return wide, high

    def _grow(self) -> None:
        """Makes the window larger with its type, and moves it where it would leave the screen; never smaller."""
        root = self._root
        wide, high = self._room(1 + self._larger / SIZES["text"])
        wide, high = max(wide, root.winfo_width()), max(high, root.winfo_height())
        x = max(0, min(root.winfo_x(), root.winfo_screenwidth() - wide))
        y = max(0, min(root.winfo_y(), root.winfo_screenheight() - high))
        root.geometry(f"{wide}x{high}+{x}+{y}")


def short(name: str) -> str:
    """A file's name that fits on a line of the window, with its beginning and its end."""
    return name if len(name) <= LONGEST else f"{name[: LONGEST - TAIL].rstrip()} … {name[-TAIL:].lstrip()}"


def _fit_density(root: tkinter.Tk) -> None:
    """Takes a Linux desktop's own setting for dense screens, which Tk leaves aside; the others' it knows."""
    if root.tk.call("tk", "windowingsystem") != "x11":
        return
    try:
        ask = subprocess.run(["xrdb", "-query"], capture_output=True, text=True, timeout=1, env=surroundings())
    except (OSError, subprocess.SubprocessError):
        return
    if density := _XFT_DPI.search(ask.stdout):
        root.tk.call("tk", "scaling", int(density[1]) / 72)


def _dots(root: tkinter.Tk, points: float) -> int:
    return round(root.winfo_fpixels(f"{points}p"))


def _style(root: tkinter.Tk, fonts: dict[str, font.Font]) -> None:
    style = ttk.Style()
    style.theme_use("clam")
    style.configure(".", background=PAPER, foreground=INK, font=fonts["text"])
    style.configure("Title.TLabel", font=fonts["title"], foreground=DEEP)
    style.configure("Large.TLabel", font=fonts["large"])
    style.configure("Quiet.TLabel", font=fonts["small"], foreground=QUIET)
    style.configure("TRadiobutton", indicatorsize=_dots(root, 9), indicatorbackground=CARD, indicatorforeground=DEEP)
    style.configure("TScrollbar", arrowsize=_dots(root, 11))
    style.map("TRadiobutton", background=[("active", HOVER)], foreground=[("focus", STOP)])
    style.configure("TProgressbar", background=DEEP, troughcolor=CARD, arrowsize=_dots(root, 11))  # clam: its thickness
    for name, back, fore, over in (("TButton", CARD, INK, HOVER), ("Main.TButton", DEEP, CARD, DEEPER)):
        style.configure(
            name, background=back, foreground=fore, padding="7p", relief="raised", bordercolor=DEEP,
            lightcolor=back, darkcolor=back, focuscolor=back,
        )  # fmt: skip
        style.map(
            name,
            background=[("disabled", PAPER), ("active", over)],
            foreground=[("disabled", QUIET)],
            bordercolor=[("focus", FOCUS), ("disabled", QUIET)],
            lightcolor=[("focus", FOCUS), ("active", over)],
            darkcolor=[("focus", FOCUS), ("active", over)],
        )


def button(parent: tkinter.Misc, text: str, command: Callable[[], None], *, main: bool = False) -> ttk.Button:
    """A button that Enter presses as well as the space bar and the mouse."""
    made = ttk.Button(parent, text=text, command=command, style="Main.TButton" if main else "TButton")
    made.bind("<Return>", lambda _event: made.invoke())
    made.bind("<KP_Enter>", lambda _event: made.invoke())
    return made


def wrapping(label: ttk.Label) -> ttk.Label:
    """The label, its text broken at the label's width whatever that becomes."""
    label.bind("<Configure>", lambda event: label.configure(wraplength=event.width))
    return label
