"""The window for a dropped list or a double-click: choose a list, see it planned, open what came of it."""

import shutil
import sys
from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path
from queue import Empty
from typing import TYPE_CHECKING

from xlbatch.fault import report
from xlbatch.resources import examples, home
from xlbatch.run import STAGES, Options
from xlbatch.window.open_file import open_with_its_program
from xlbatch.window.open_with import can_offer, offer
from xlbatch.window.remembered import (
    last_folder,
    metric,
    recent_lists,
    remember_folder,
    remember_lists,
    remember_units,
)
from xlbatch.window.worker import Done, ListDone, Worker, planning

if TYPE_CHECKING:
    import tkinter
    from tkinter import ttk

    from xlbatch.window.planning_view import ProgressView
    from xlbatch.window.worker import Job

LISTEN = 50  # ms between two looks at what the working thread says
KINDS = [("Lists of people", "*.xlsx *.xlsm *.xls *.ods *.csv"), ("All files", "*")]


def open_window(lists: Sequence[Path], options: Options) -> int | None:
    """Shows the window until it is closed, planning `lists` at once.

    The highest exit code of what was planned, or None where there is no display to show it on."""
    try:
        import tkinter
    except ImportError:
        return None
    _see_each_dot()
    try:
        root = tkinter.Tk(className="xlbatch")
    except tkinter.TclError:  # no display
        return None
    window = Window(root, options)
    if lists:
        window.plan(lists)
    root.mainloop()
    return window.code


def _see_each_dot() -> None:
    """Asks Windows not to enlarge the window as a blurred picture on dense screens: the type is enlarged instead."""
    if sys.platform == "win32":
        import ctypes

        ctypes.windll.shcore.SetProcessDpiAwareness(1)


class Window:
    """One view at a time: the choices, the progress, the results."""

    def __init__(self, root: "tkinter.Tk", options: Options) -> None:
        from xlbatch.window.dropping import take_drops
        from xlbatch.window.look import WindowLook

        self.root, self.options, self.look, self.work = root, options, WindowLook(root), Worker()
        self.code = 0
        self._waiting: list[Path] = []  # dropped while another list was being planned
        self._view: ttk.Frame | None = None
        self._closing = False
        root.protocol("WM_DELETE_WINDOW", self.close)
        root.report_callback_exception = self._fault
        if root.tk.call("tk", "windowingsystem") == "aqua":
            root.createcommand("::tk::mac::OpenDocument", self._dropped)
        self._takes_drops = take_drops(root, self._dropped, self.look.light)
        self.show_start()

    def show_start(self, note: str = "") -> None:
        """Shows the choices, and a line about what happened before."""
        from xlbatch.window.start_view import HERE, ON_THE_ICON, StartView

        view = StartView(
            self.root, self.look, HERE if self._takes_drops else ON_THE_ICON, note, choose=self._choose,
            plan=lambda path: self.plan([path]), blank=self._blank, sign_up=self._sign_up, examples=self._examples,
            offer=self._offer if can_offer() else None, recent=recent_lists(), metric=metric(),
        )  # fmt: skip
        self._put(view.frame, "")

    def plan(self, lists: Sequence[Path], options: Options | None = None, earlier: Sequence[ListDone] = ()) -> None:
        """Plans lists one after another, with other options if given, and shows the results after `earlier` ones."""
        from xlbatch.window.look import short

        remember_lists(lists)
        title = short(lists[0].name) if len(lists) == 1 else f"{len(lists)} lists"
        job = planning(lists, options or self.options)
        self._work(f"Planning {title}", job, self._show_results, earlier, stages=STAGES)

    def close(self) -> None:
        """Closes the window; what is being planned is stopped first, so that nothing half-written is left."""
        self._closing = True
        self.work.stop()
        if self.work.busy:
            self.root.withdraw()
        else:
            self.root.destroy()

    def _fault(self, _kind: type[BaseException], fault: BaseException, _at: object) -> None:
        """Says that something went wrong inside the window; one that is already closed has nothing to say."""
        if isinstance(fault, Exception) and self.root.tk.call("info", "commands", "."):
            self.code = 70
            self.show_start(report(fault, last_folder()))

    def _put(self, view: "ttk.Frame", title: str) -> None:
        if self._view:
            self._view.destroy()
        self._view = view
        view.pack(fill="both", expand=True)
        self._name(title)

    def _name(self, title: str) -> None:
        """Says in the window's title, and so in the list of windows, what it shows."""
        self.root.title(f"{title} - xlbatch" if title else "xlbatch")

    def _work(
        self,
        title: str,
        job: "Job",
        show: Callable[[list[ListDone]], None],
        earlier: Sequence[ListDone] = (),
        stages: Sequence[str] = (),
    ) -> None:
        from xlbatch.window.planning_view import ProgressView

        view = ProgressView(self.root, self.look, title, stages, self.work.stop)
        self._put(view.frame, title)
        self.work.start(job)
        self._listen(view, [*earlier], show)

    def _listen(self, view: "ProgressView", results: list[ListDone], show: Callable[[list[ListDone]], None]) -> None:
        """Shows what the working thread says; only this thread may touch the window."""
        view.wait(len(self._waiting))
        if self.work.doing:
            view.show(self.work.doing)
            self._name(f"{self.work.doing.share:.0%} {self.work.doing.name}")
        try:
            while True:
                word = self.work.said.get_nowait()
                if isinstance(word, ListDone):
                    results.append(word)
                else:
                    self._end(word, results, show)
                    return
        except Empty:
            self.root.after(LISTEN, self._listen, view, results, show)

    def _end(self, done: Done, results: list[ListDone], show: Callable[[list[ListDone]], None]) -> None:
        self.code = max([self.code, *(result.outcome.code for result in results)])
        if self._closing:
            self.root.destroy()
        elif self._waiting:
            waiting, self._waiting = self._waiting, []
            self.plan(waiting, earlier=results)
        elif done.words or (done.stopped and not results):
            self.show_start(done.words or "Stopped. Nothing was written.")
        else:
            show(results)

    def _show_results(self, results: list[ListDone]) -> None:
        from xlbatch.window.result_view import Doings, ResultView, head

        doings = Doings(
            open_path=self._open,
            elsewhere=self._elsewhere,
            plan=lambda path, options: self.plan([path], options),
            another=self.show_start,
        )
        self._put(ResultView(self.root, self.look, results, doings).frame, head(results))

    def _dropped(self, *files: str) -> None:
        """Plans files dropped on the window, or on the running program's icon (macOS); later, if it is busy."""
        if self.work.busy:
            self._waiting += map(Path, files)
        else:
            self.plan([Path(file) for file in files])

    def _choose(self) -> None:
        from tkinter import filedialog

        chosen = filedialog.askopenfilenames(parent=self.root, initialdir=last_folder(), filetypes=KINDS)
        if chosen:
            self.plan([Path(file) for file in chosen])

    def _elsewhere(self, path: Path) -> None:
        from tkinter import filedialog

        chosen = filedialog.askdirectory(parent=self.root, initialdir=home(), title="Where to write the plan")
        if chosen:
            self.plan([path], replace(self.options, folder=Path(chosen)))

    def _blank(self, in_centimeters: bool) -> None:
        from xlbatch.blank_workbook import write_blank_workbook

        def written(path: Path) -> str:
            write_blank_workbook(path, metric=in_centimeters)
            return f"The blank list is {path}. Fill it in, save it, and plan it here."

        self._new_workbook("my list.xlsx", "a blank list", written, in_centimeters)

    def _sign_up(self, in_centimeters: bool) -> None:
        from xlbatch.sign_up.write_sign_up import write_sign_ups

        def written(path: Path) -> str:
            write_sign_ups(path, None, metric=in_centimeters)
            return f"The sign-up sheet is {path}. Send it round, and drop here together what comes back."

        self._new_workbook("sign up.xlsx", "a sign-up sheet", written, in_centimeters)

    def _new_workbook(self, name: str, what: str, write: Callable[[Path], str], in_centimeters: bool) -> None:
        """Asks where to put a new workbook, has it written, and opens it; `write` gives what is said of it then."""
        from tkinter import filedialog

        chosen = filedialog.asksaveasfilename(
            parent=self.root, initialdir=last_folder(), initialfile=name, defaultextension=".xlsx",
            filetypes=[("Workbook", "*.xlsx")], confirmoverwrite=False, title=f"Where to put {what}",
        )  # fmt: skip
        if not chosen:
            return
        path = Path(chosen)
        remember_folder(path.parent)
        remember_units(metric=in_centimeters)
        written: list[str] = []

        def made(_results: list[ListDone]) -> None:
            self.show_start(written[0])
            self._open(path)

        self._work(f"Making {what}", lambda _say: written.append(write(path)), made)

    def _examples(self) -> None:
        """Opens a copy of the examples in the person's home, where plans of them can be written."""
        folder = home() / "xlbatch examples"
        try:
            if not folder.exists():
                shutil.copytree(examples(), folder)
        except OSError as error:
            self.show_start(f"The examples could not be copied to {folder}: {error.strerror}.")
            return
        remember_folder(folder)
        self.show_start(f"The examples are in {folder}.")
        self._open(folder)

    def _offer(self) -> None:
        """Has the computer offer the program for lists."""
        try:
            offer(Path(sys.executable))
        except OSError as error:
            self.show_start(f"That could not be noted: {error.strerror}.")
            return
        self.show_start("From now on xlbatch is offered under Open with for a list, never as the first.")

    def _open(self, path: Path) -> None:
        if not open_with_its_program(path):
            from tkinter import messagebox

            messagebox.showinfo("xlbatch", f"Nothing here opens it by itself. It is {path}", parent=self.root)
