"""The window for a double-click: choose a workbook, see what came of it, open the plan."""

import os
import subprocess
import sys
import threading
from datetime import datetime
from functools import partial
from pathlib import Path
from queue import Empty, SimpleQueue
from typing import TYPE_CHECKING

from xlbatch.run import Options, Outcome, run

if TYPE_CHECKING:
    import tkinter

LISTED = 200  # problems shown in the window; all stand in the workbook


def open_window() -> bool:
    """Shows the window until it is closed; False where there is no display to show it on."""
    try:
        import tkinter
    except ImportError:
        return False
    try:
        root = tkinter.Tk()
    except tkinter.TclError:  # no display
        return False
    _Window(root)
    root.mainloop()
    return True


class _Window:
    """One workbook at a time: a button, a line of progress, then the result."""

    def __init__(self, root: "tkinter.Tk") -> None:
        from tkinter import scrolledtext, ttk

        self.root, self.words = root, SimpleQueue[str | Outcome]()
        root.title("xlbatch")
        root.geometry("760x480")
        frame = ttk.Frame(root, padding=16)
        frame.pack(fill="both", expand=True)
        self.choose = ttk.Button(frame, text="Choose the list of people …", command=self._choose)
        self.choose.pack(fill="x")
        self.says = scrolledtext.ScrolledText(frame, wrap="word", font=("TkDefaultFont", 13), height=12)
        self.says.pack(fill="both", expand=True, pady=12)
        self.open_plan = ttk.Button(frame, text="Open the sheets", state="disabled")
        self.open_plan.pack(fill="x")
        self.open_folder = ttk.Button(frame, text="Open the cut files", state="disabled")
        self.open_folder.pack(fill="x", pady=(6, 0))
        self._say("Choose a workbook or .csv with one row a shirt: at least a name and a size.")
        self.choose.focus_set()

    def _choose(self) -> None:
        from tkinter import filedialog

        path = filedialog.askopenfilename(filetypes=[("Lists", "*.xlsx *.xlsm *.ods *.csv"), ("All files", "*")])
        if path:
            self.choose["state"] = "disabled"
            threading.Thread(target=self._plan, args=(Path(path),), daemon=True).start()
            self._listen()

    def _plan(self, path: Path) -> None:
        try:
            self.words.put(run(path, Options(), self.words.put, datetime.now()))
        except Exception:
            self.words.put(Outcome(3, "Something went wrong inside the program; your workbook is unchanged."))

    def _listen(self) -> None:
        """Shows what the planning thread says; only this thread may touch the window."""
        try:
            while True:
                word = self.words.get_nowait()
                if isinstance(word, Outcome):
                    self._show(word)
                    return
                self._say(f"{word} …")
        except Empty:
            self.root.after(80, self._listen)

    def _show(self, outcome: Outcome) -> None:
        telling = [f"{found.level}: {found.sentence}" for found in outcome.problems if found.level != "note"]
        written = [str(path) for path in (outcome.written, outcome.cut_files) if path]
        self._say("\n\n".join([outcome.message, *written, *telling[:LISTED]]))
        self.choose["state"] = "normal"
        for button, path in ((self.open_plan, outcome.written), (self.open_folder, outcome.cut_files)):
            button.configure(state="normal" if path else "disabled", command=partial(_open, path))

    def _say(self, text: str) -> None:
        self.says["state"] = "normal"
        self.says.delete("1.0", "end")
        self.says.insert("1.0", text)
        self.says["state"] = "disabled"


def _open(path: Path | None) -> None:
    """Opens a file or folder with the program this computer uses for it."""
    if path is None:
        return
    if sys.platform == "win32":
        os.startfile(path)
    else:
        subprocess.Popen(["open" if sys.platform == "darwin" else "xdg-open", str(path)])
