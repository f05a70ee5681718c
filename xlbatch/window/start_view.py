"""The window before there is a list: plan one, plan a recent one again, make a blank one, open the examples."""

import tkinter
from collections.abc import Callable, Sequence
from pathlib import Path
from tkinter import ttk

from xlbatch.window.button_rows import ButtonRows
from xlbatch.window.look import CARD, DEEP, INK, WindowLook, button, short, wrapping

WELCOME = "A list of people goes in, the sheets and cut files for their shirts come out."
HERE = "Drop your list here, or choose it"
ON_THE_ICON = "Drop your list on the program's icon, or choose it here"  # where the window can take none
KIND = "a workbook or .csv with a name and a size in each row."
RECENT = "Or one planned lately (Enter or a double-click plans it again):"


class StartView:
    """The choices. The words above give way first where there is little room, the recent lists after them."""

    def __init__(
        self, root: tkinter.Misc, look: WindowLook, drop: str, note: str, *, choose: Callable[[], None],
        plan: Callable[[Path], None], blank: Callable[[bool], None], sign_up: Callable[[bool], None],
        examples: Callable[[], None], offer: Callable[[], None] | None, recent: Sequence[Path], metric: bool,
    ) -> None:  # fmt: skip
        """`drop` says where to drop a list, `note` what happened before. `blank` and `sign_up` are told whether
        centimeters are wanted."""
        self.frame = ttk.Frame(root, padding="16p")
        rows = ButtonRows(self.frame)
        rows.pack(side="bottom", fill="x", pady=("10p", "0"))
        self._units = tkinter.BooleanVar(self.frame, metric)
        rows.add("Make a blank list …", lambda: blank(self._units.get()))
        rows.add("Make a sign-up sheet …", lambda: sign_up(self._units.get()))
        for words, centimeters in (("in inches", False), ("in centimeters", True)):
            rows.take(ttk.Radiobutton(rows, text=words, variable=self._units, value=centimeters))
        rows.add("Open the examples", examples)
        if offer:
            rows.add("Offer me under Open with", offer)
        if note:
            wrapping(ttk.Label(self.frame, text=note, font=look.fonts["text"])).pack(side="bottom", fill="x", pady="6p")
        first = button(self.frame, "Plan a list …", choose, main=True)
        first.pack(side="bottom", pady=("10p", "0"))
        first.focus_set()
        card = tkinter.Frame(self.frame, background=CARD, highlightbackground=DEEP, highlightthickness="1p")
        card.pack(side="bottom", fill="both", expand=True)
        ttk.Label(self.frame, text="xlbatch", style="Title.TLabel").pack(anchor="w")
        wrapping(ttk.Label(self.frame, text=WELCOME)).pack(fill="x", pady=("0", "8p"))
        if recent:
            self._list_recent(card, look, recent, plan)
        where = wrapping(ttk.Label(card, text=f"{drop}:\n{KIND}", background=CARD, justify="center", anchor="center"))
        where.pack(fill="both", expand=not recent, pady="10p", padx="10p")

    def _list_recent(
        self, card: tkinter.Misc, look: WindowLook, recent: Sequence[Path], plan: Callable[[Path], None]
    ) -> None:
        lines = tkinter.Listbox(
            card, font=look.fonts["text"], height=1, exportselection=False, background=CARD, foreground=INK,
            selectbackground=DEEP, selectforeground=CARD, activestyle="none", relief="flat", highlightthickness="1p",
        )  # fmt: skip
        for path in recent:
            lines.insert("end", f"{short(path.name)}  in {short(path.parent.name)}")
        lines.pack(side="bottom", fill="both", expand=True, padx="8p", pady=("0", "8p"))
        wrapping(ttk.Label(card, text=RECENT, background=CARD)).pack(side="bottom", fill="x", padx="10p")

        def chosen(_event: object) -> None:
            selected = lines.curselection()  # type: ignore[no-untyped-call]
            if selected:
                plan(recent[selected[0]])

        def entered(_event: object) -> None:
            if not lines.curselection():  # type: ignore[no-untyped-call]
                lines.selection_set(0)

        lines.bind("<FocusIn>", entered)
        for event in ("<Return>", "<KP_Enter>", "<Double-Button-1>"):
            lines.bind(event, chosen)
