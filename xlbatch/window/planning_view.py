"""The window while a list is being planned: the stages, how far it is, and a button to stop it."""

import tkinter
from collections.abc import Callable, Sequence
from tkinter import ttk

from xlbatch.window.look import DEEP, INK, QUIET, WindowLook, button, short, wrapping
from xlbatch.window.worker import Doing

STEPS = 1000
MARKS = {"done": "✓", "now": "►", "to come": ""}


class ProgressView:
    """Shows each stage as it begins. Escape stops, as the button does."""

    def __init__(
        self, root: tkinter.Misc, look: WindowLook, title: str, stages: Sequence[str], stop: Callable[[], None]
    ) -> None:
        self.frame = ttk.Frame(root, padding="20p")
        self._ask, self._look = stop, look
        foot = ttk.Frame(self.frame)
        foot.pack(fill="x", side="bottom")
        self._stop = button(foot, "Stop", self.stop)
        self._stop.pack(side="right")
        self._next = wrapping(ttk.Label(foot, style="Quiet.TLabel"))
        self._next.pack(side="left", fill="x", expand=True)
        self._title = wrapping(ttk.Label(self.frame, text=title, font=look.fonts["large"], foreground=DEEP))
        self._title.pack(fill="x", pady=("4p", "8p"))
        self._bar = ttk.Progressbar(self.frame, maximum=STEPS)
        self._bar.pack(fill="x", pady=("0", "10p"))
        rows = ttk.Frame(self.frame)
        rows.pack(fill="x")
        rows.columnconfigure(1, weight=1)
        self._stages = {stage: (ttk.Label(rows, width=2), ttk.Label(rows)) for stage in stages}
        for row, labels in enumerate(self._stages.values()):
            for column, label in enumerate(labels):
                label.grid(row=row, column=column, sticky="ew", pady="1p")
        self._mark(*stages[:1])
        self._stop.focus_set()
        self.frame.bind("<Destroy>", lambda _event: root.winfo_toplevel().unbind("<Escape>"))
        root.winfo_toplevel().bind("<Escape>", lambda _event: self.stop())

    def show(self, doing: Doing) -> None:
        """Marks the stage that is under way, and moves the bar on."""
        self._title["text"] = f"Planning {short(doing.name)}"
        self._bar["value"] = STEPS * doing.share
        self._mark(doing.step.stage, doing.step.words)

    def _mark(self, now: str = "", words: str = "…") -> None:
        """Marks the stages before this one as done, and tells the words about it."""
        state = "done"
        for stage, (mark, label) in self._stages.items():
            state = "now" if stage == now else "to come" if state == "now" else state
            font = self._look.fonts["strong" if state == "now" else "text"]
            mark.configure(text=MARKS[state], font=font)
            told = f"{stage} {words}" if state == "now" else stage
            label.configure(text=told, font=font, foreground=QUIET if state == "to come" else INK)

    def wait(self, count: int) -> None:
        """Says how many more were dropped meanwhile."""
        self._next["text"] = f"{count} more dropped, planned next." if count else ""

    def stop(self) -> None:
        """Asks for a stop, once, and says so."""
        if str(self._stop["state"]) != "disabled":
            self._stop.configure(state="disabled", text="Stopping …")
            self._ask()
