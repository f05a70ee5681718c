"""Buttons beside one another, in as many rows as the window's width asks for. Arrow keys move among them."""

import tkinter
from collections.abc import Callable
from tkinter import ttk

from xlbatch.window.look import button

GAP = "4p"


class ButtonRows(ttk.Frame):
    """As high as its rows; none of its buttons is ever cut off or out of the window."""

    def __init__(self, parent: tkinter.Misc) -> None:
        super().__init__(parent, height=1)
        self._widgets: list[tkinter.Widget] = []
        self.bind("<Configure>", lambda _event: self._lay())

    def add(self, text: str, command: Callable[[], None], *, main: bool = False) -> ttk.Button:
        """A button at the end."""
        made = button(self, text, command, main=main)
        self.take(made)
        return made

    def take(self, widget: tkinter.Widget) -> None:
        """A widget at the end, whose parent must be this."""
        widget.bind("<Configure>", lambda _event: self._lay(), add=True)
        for key, step in (("<Left>", -1), ("<Up>", -1), ("<Right>", 1), ("<Down>", 1)):
            widget.bind(key, lambda _event, step=step: self._move(widget, step))  # type: ignore[misc]
        self._widgets.append(widget)
        self._lay()

    def clear(self) -> None:
        """Takes all away."""
        for widget in self._widgets:
            widget.destroy()
        self._widgets.clear()

    def _lay(self) -> None:
        """Places the widgets one beside the other, a new row where the width is used up."""
        gap, y = round(self.winfo_fpixels(GAP)), 0
        for row in self._rows(gap):
            high, x = max(widget.winfo_reqheight() for widget in row), 0
            for widget in row:
                widget.place_configure(x=x, y=y + (high - widget.winfo_reqheight()) // 2)
                x += widget.winfo_reqwidth() + gap
            y += high + gap
        if self.winfo_reqheight() != y - gap:
            self.configure(height=max(y - gap, 1))

    def _rows(self, gap: int) -> list[list[tkinter.Widget]]:
        rows: list[list[tkinter.Widget]] = []
        left = 0
        for widget in self._widgets:
            wide = widget.winfo_reqwidth() + gap
            if not rows or wide - gap > left:
                rows.append([])
                left = self.winfo_width()
            rows[-1].append(widget)
            left -= wide
        return rows

    def _move(self, widget: tkinter.Widget, step: int) -> None:
        others = self._widgets
        others[(others.index(widget) + step) % len(others)].focus_set()
