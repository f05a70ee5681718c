"""The window after planning: what was written, which rows were held back and why, and buttons to open it all."""

import tkinter
from collections.abc import Callable, Sequence
from pathlib import Path
from tkinter import ttk

from xlbatch.problems import Level, Problem
from xlbatch.window.look import CARD, CHECK, DEEP, INK, STOP, Look, button, short
from xlbatch.window.worker import Result

LISTED = 500  # problems shown; all stand in the workbook
HEADS: dict[Level, str] = {"stop": "Held back", "check": "Please check"}


class ResultView:
    """One list's result; with several lists, a line for each to choose from."""

    def __init__(
        self, root: tkinter.Misc, look: Look, results: Sequence[Result], open_path: Callable[[Path], None],
        elsewhere: Callable[[Path], None], again: Callable[[], None],
    ) -> None:  # fmt: skip
        self.frame = ttk.Frame(root, padding="16p")
        self._results, self._open, self._elsewhere = results, open_path, elsewhere
        self._buttons = ttk.Frame(self.frame)
        self._again = button(self.frame, "Plan another list", again)
        self._again.pack(side="bottom", fill="x", pady=("4p", "0"))
        self._buttons.pack(side="bottom", fill="x", pady=("8p", "0"))
        self._head = ttk.Label(self.frame, font=look.fonts["large"], foreground=DEEP)
        self._head.bind("<Configure>", lambda event: self._head.configure(wraplength=event.width))
        self._text = _text(self.frame, look)
        if len(results) > 1:
            self._choices(look)
        self._head.pack(fill="x", before=self._text.master)
        self._show(results[0])

    def _choices(self, look: Look) -> None:
        lines = tkinter.Listbox(
            self.frame, font=look.fonts["text"], height=min(len(self._results), 5), exportselection=False,
            background=CARD, foreground=INK, selectbackground=DEEP, selectforeground=CARD, activestyle="none",
        )  # fmt: skip
        for result in self._results:
            lines.insert("end", _line(result))
        lines.selection_set(0)
        lines.bind("<<ListboxSelect>>", lambda _event: self._show(self._results[_chosen(lines)]))
        lines.pack(fill="x", pady=("0", "8p"), before=self._text.master)

    def _show(self, result: Result) -> None:
        self._head["text"] = _head(result)
        _fill(self._text, result)
        for each in self._buttons.winfo_children():
            each.destroy()
        made = [button(self._buttons, *each, main=not at) for at, each in enumerate(self._actions(result))]
        for each in made:
            each.pack(side="left", fill="x", expand=True, padx="2p")
        (made[0] if made else self._again).focus_set()

    def _actions(self, result: Result) -> list[tuple[str, Callable[[], None]]]:
        """What can be done with a result: the words on the button, and what it does."""
        done = result.outcome
        actions: list[tuple[str, Callable[[], None]]] = []
        if done.written:
            words = "Open the plan" if done.cut_files else "Open the problems"
            actions.append((words, lambda path=done.written: self._open(path)))  # type: ignore[misc]
        if done.cut_files:
            actions.append(("Open the cut files", lambda path=done.cut_files: self._open(path)))  # type: ignore[misc]
        if done.unsaved:
            actions.append(("Choose another folder …", lambda: self._elsewhere(result.path)))
        return actions


def _chosen(lines: tkinter.Listbox) -> int:
    return int(lines.curselection()[0])  # type: ignore[no-untyped-call]


def _head(result: Result) -> str:
    return result.outcome.message if result.outcome.code < 3 else "No plan was made."


def _line(result: Result) -> str:
    return f"{short(result.path.name)}: {_head(result)}"


def _text(parent: ttk.Frame, look: Look) -> tkinter.Text:
    """A scrolling page to read, which the arrow keys move through."""
    holder = ttk.Frame(parent)
    bar = ttk.Scrollbar(holder)
    text = tkinter.Text(
        holder, wrap="word", height=4, width=20, font=look.fonts["text"], background=CARD, foreground=INK,
        relief="flat", padx="10p", pady="8p", spacing1="2p", yscrollcommand=bar.set, takefocus=True,
    )  # fmt: skip
    bar.configure(command=text.yview)
    for tag, color in (("stop", STOP), ("check", CHECK), ("head", DEEP)):
        text.tag_configure(tag, foreground=color, font=look.fonts["strong"])
    text.bind("<Tab>", lambda _event: _leave(text))
    text.bind("<Up>", lambda _event: text.yview_scroll(-1, "units"))
    text.bind("<Down>", lambda _event: text.yview_scroll(1, "units"))
    bar.pack(side="right", fill="y")
    text.pack(side="left", fill="both", expand=True)
    holder.pack(fill="both", expand=True, pady=("8p", "0"))
    return text


def _leave(text: tkinter.Text) -> str:
    """Lets Tab move on, as it does elsewhere, where Tk would write one."""
    following = text.tk_focusNext()
    if following:
        following.focus_set()
    return "break"


def _fill(text: tkinter.Text, result: Result) -> None:
    done = result.outcome
    text["state"] = "normal"
    text.delete("1.0", "end")
    if done.code >= 3:
        text.insert("end", f"{done.message}\n")
    for word, path in (("Plan" if done.cut_files else "Problems", done.written), ("Cut files", done.cut_files)):
        if path:
            text.insert("end", f"{word}: ", "head", f"{path}\n")
    for level, head in HEADS.items():
        _list(text, head, level, [found for found in done.problems if found.level == level])
    text["state"] = "disabled"
    text.mark_set("insert", "1.0")


def _list(text: tkinter.Text, head: str, level: Level, found: list[Problem]) -> None:
    if not found:
        return
    text.insert("end", f"\n{head} ({len(found)})\n", level)
    for each in found[:LISTED]:
        text.insert("end", f"{each.sentence}\n")
    if len(found) > LISTED:
        text.insert("end", f"and {len(found) - LISTED} more in the workbook\n")
