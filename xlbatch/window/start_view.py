"""The window before there is a list: plan one, make a blank one, open the examples."""

import tkinter
from collections.abc import Callable
from tkinter import ttk

from xlbatch.window.look import CARD, DEEP, Look, button

WELCOME = "A list of people goes in, the sheets and cut files for their shirts come out."
HERE = "Drop your list here, or choose it"
ON_THE_ICON = "Drop your list on the program's icon, or choose it here"  # where the window can take none
KIND = "a workbook or .csv with a name and a size in each row."


def start_view(
    root: tkinter.Misc, look: Look, drop: str, choose: Callable[[], None], blank: Callable[[bool], None],
    examples: Callable[[], None], note: str,
) -> ttk.Frame:  # fmt: skip
    """The three choices.

    `drop` says where to drop a list, `note` what happened before. `blank` is told whether centimeters are wanted."""
    frame = ttk.Frame(root, padding="20p")
    ttk.Label(frame, text="xlbatch", style="Title.TLabel").pack(anchor="w")
    ttk.Label(frame, text=WELCOME).pack(anchor="w", pady=("0", "12p"))
    area = tkinter.Frame(frame, background=CARD, highlightbackground=DEEP, highlightcolor=DEEP, highlightthickness="1p")
    area.pack(fill="both", expand=True)
    inner = ttk.Frame(area, style="Card.TFrame", padding="14p")
    inner.place(relx=0.5, rely=0.5, anchor="center", relwidth=1)
    ttk.Style().configure("Card.TFrame", background=CARD)
    words = ttk.Label(inner, text=f"{drop}: {KIND}", background=CARD, justify="center", anchor="center")
    words.pack(fill="x", pady=("0", "12p"))
    words.bind("<Configure>", lambda event: words.configure(wraplength=event.width))
    first = button(inner, "Plan a list …", choose, main=True)
    first.pack()
    first.focus_set()
    row = ttk.Frame(frame)
    row.pack(fill="x", pady=("12p", "0"))
    for text, command in (
        ("Blank list, inches …", lambda: blank(False)),
        ("Blank list, centimeters …", lambda: blank(True)),
        ("Open the examples", examples),
    ):
        button(row, text, command).pack(side="left", fill="x", expand=True, padx="2p")
    said = ttk.Label(frame, text=note, font=look.fonts["text"])
    said.pack(fill="x", pady=("10p", "0"))
    said.bind("<Configure>", lambda event: said.configure(wraplength=event.width))
    return frame
