"""Lists for the window, what is seen in it, and waiting until something is."""

import tkinter
from collections.abc import Callable, Iterator
from pathlib import Path
from tkinter import ttk

from tests.workbooks import write_workbook
from xlbatch.window.window import Window

PATIENCE, LOOK = 60_000, 20  # ms
KEPT: list[Window] = []  # what belongs to a screen must not be cleared away by the thread that plans
HEAD = ["Who", "Garment", "Size"]


def roster(folder: Path, *sizes: str, name: str = "roster.xlsx") -> Path:
    return write_workbook(folder / name, {"Roster": [HEAD, *(["Ana", None, size] for size in sizes)]})


def widgets(inside: tkinter.Misc) -> Iterator[tkinter.Misc]:
    for each in inside.winfo_children():
        yield each
        yield from widgets(each)


def words(shown: Window) -> str:
    """All that can be read in the window."""
    said = []
    for each in widgets(shown.root):
        if isinstance(each, tkinter.Text):
            said.append(each.get("1.0", "end"))
        elif isinstance(each, tkinter.Listbox):
            said += each.get(0, "end")
        elif isinstance(each, ttk.Label | ttk.Button):
            said.append(str(each["text"]))
    return "\n".join(said)


def buttons(shown: Window) -> dict[str, ttk.Button]:
    return {str(each["text"]): each for each in widgets(shown.root) if isinstance(each, ttk.Button)}


def wait_until(shown: Window, true: Callable[[], bool]) -> None:
    """Lets the window live until something is true in it."""
    looks_left = PATIENCE // LOOK

    def look() -> None:
        nonlocal looks_left
        looks_left -= 1
        if true() or not looks_left:
            shown.root.quit()
        else:
            shown.root.after(LOOK, look)

    shown.root.after(0, look)
    shown.root.mainloop()
    assert true(), words(shown)


def planned(shown: Window, *paths: Path) -> None:
    shown.plan(paths)
    wait_until(shown, lambda: "Plan another list" in buttons(shown))
