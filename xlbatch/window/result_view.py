"""The window after planning: what it comes to, what was held back and why, and what to do next."""

import tkinter
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import islice
from pathlib import Path
from tkinter import ttk

from xlbatch.problems import Level
from xlbatch.run import Options
from xlbatch.window.button_rows import ButtonRows
from xlbatch.window.look import CARD, CHECK, DEEP, INK, STOP, WindowLook, short, wrapping
from xlbatch.window.problem_lines import problem_lines
from xlbatch.window.worker import ListDone

LISTED = 500  # lines of problems shown; all stand in the workbook
LINES, LISTS = 5, 0.2  # results of several lists seen at once: lines, and part of the window's height
HEADS: dict[Level, str] = {"stop": "Held back", "check": "Please check"}
COLORS = {0: DEEP, 1: CHECK}  # by exit code; above, the color of what stops


@dataclass(frozen=True)
class Doings:
    """What the view's buttons do."""

    open_path: Callable[[Path], None]
    elsewhere: Callable[[Path], None]  # choose another folder for this list's plan
    plan: Callable[[Path, Options | None], None]  # this list once more, with other options if given
    another: Callable[[], None]


class ResultView:
    """One list's result; with several lists, a line for each to choose from, the first with trouble chosen."""

    def __init__(self, root: tkinter.Misc, look: WindowLook, results: Sequence[ListDone], doings: Doings) -> None:
        self.frame = ttk.Frame(root, padding="16p")
        self._results, self._do = results, doings
        self._buttons = ButtonRows(self.frame)
        self._buttons.pack(side="bottom", fill="x", pady=("8p", "0"))
        self._head = wrapping(ttk.Label(self.frame, font=look.fonts["large"], foreground=DEEP))
        self._text = _text(self.frame, look)
        shown = next((result_no for result_no, result in enumerate(results) if result.outcome.code), 0)
        if len(results) > 1:
            self._choices(look, shown)
        self._head.pack(fill="x", before=self._text.master)
        self._show(results[shown])

    def _choices(self, look: WindowLook, shown: int) -> None:
        lines = tkinter.Listbox(
            self.frame, font=look.fonts["text"], height=min(len(self._results), LINES), exportselection=False,
            background=CARD, foreground=INK, selectbackground=DEEP, selectforeground=CARD, activestyle="none",
        )  # fmt: skip
        for result_no, result in enumerate(self._results):
            lines.insert("end", _line(result))
            lines.itemconfigure(result_no, foreground=_color(result))
        lines.selection_set(shown)
        lines.activate(shown)
        lines.see(shown)
        lines.bind("<<ListboxSelect>>", lambda _event: self._show(self._results[_chosen(lines)]))
        lines.pack(fill="x", pady=("0", "8p"), before=self._text.master)

        def fit(event: "tkinter.Event[tkinter.Misc]") -> None:
            """As many lines as leave most of the window to the result."""
            room = int(event.height * LISTS / look.fonts["text"].metrics("linespace"))
            lines.configure(height=max(1, min(len(self._results), LINES, room)))

        self.frame.bind("<Configure>", fit)

    def _show(self, result: ListDone) -> None:
        self._head.configure(text=_head(result), foreground=_color(result))
        _fill(self._text, result)
        in_list = isinstance(self.frame.focus_get(), tkinter.Listbox)
        self._buttons.clear()
        made = [
            self._buttons.add(*action, main=not action_no) for action_no, action in enumerate(self._actions(result))
        ]
        if not in_list:
            made[0].focus_set()

    def _actions(self, result: ListDone) -> list[tuple[str, Callable[[], None]]]:
        """What can be done with a result, the likeliest first: the words on the button, and what it does."""
        done, doings = result.outcome, self._do
        opened = [
            ("Open the pages to print", done.to_print),
            ("Open the plan" if done.cut_files else "Open the problems", done.written),
            ("Open the folder", done.written and done.written.parent),
            ("Open my list", result.path if done.code < 3 or result.path.exists() else None),
        ]
        actions = [(words, lambda path=path: doings.open_path(path)) for words, path in opened if path]
        again = [("Plan it again" if done.cut_files else "Try again", lambda: doings.plan(result.path, None))]
        if done.unsaved:
            again.append(("Choose another folder …", lambda: doings.elsewhere(result.path)))
        again += [(offer.words, lambda offer=offer: doings.plan(result.path, offer.options)) for offer in done.offers]  # type: ignore[misc]
        both = [*actions, *again] if done.written else [*again, *actions]
        return [*both, ("Plan another list", doings.another)]


def head(results: Sequence[ListDone]) -> str:
    """What came of one list, or of how many lists it is told."""
    return _head(results[0]) if len(results) == 1 else f"{len(results)} lists"


def _chosen(lines: tkinter.Listbox) -> int:
    return int(lines.curselection()[0])  # type: ignore[no-untyped-call]


def _color(result: ListDone) -> str:
    return COLORS.get(result.outcome.code, STOP)


def _head(result: ListDone) -> str:
    return result.outcome.message if result.outcome.code < 3 else "No plan was made."


def _line(result: ListDone) -> str:
    return f"{short(result.path.name)}: {_head(result)}"


def _text(parent: ttk.Frame, look: WindowLook) -> tkinter.Text:
    """A scrolling page to read and to copy from, which the arrow keys move through."""
    holder = ttk.Frame(parent)
    bar = ttk.Scrollbar(holder)
    text = tkinter.Text(
        holder, wrap="word", height=1, width=20, font=look.fonts["text"], background=CARD, foreground=INK,
        relief="flat", padx="10p", pady="8p", spacing1="2p", yscrollcommand=bar.set, takefocus=True,
        selectbackground=DEEP, selectforeground=CARD, inactiveselectbackground=DEEP,
    )  # fmt: skip
    bar.configure(command=text.yview)
    for tag, color in (("stop", STOP), ("check", CHECK), ("head", DEEP)):
        text.tag_configure(tag, foreground=color, font=look.fonts["strong"])
    text.bind("<Tab>", lambda _event: _leave(text))
    text.bind("<Up>", lambda _event: text.yview_scroll(-1, "units"))
    text.bind("<Down>", lambda _event: text.yview_scroll(1, "units"))
    text.bind("<Button-1>", lambda _event: text.focus_set())  # else what is chosen in it can't be copied
    text.bind("<Control-a>", lambda _event: _choose_all(text))
    text.bind("<Button-3>", lambda event: _offer_copy(text, event))
    bar.pack(side="right", fill="y")
    text.pack(side="left", fill="both", expand=True)
    holder.pack(fill="both", expand=True, pady=("8p", "0"))
    return text


def _offer_copy(text: tkinter.Text, event: "tkinter.Event[tkinter.Text]") -> None:
    menu = tkinter.Menu(text, tearoff=False)
    menu.add_command(label="Copy", command=lambda: text.event_generate("<<Copy>>"))
    menu.add_command(label="Choose all", command=lambda: _choose_all(text))
    menu.tk_popup(event.x_root, event.y_root)


def _choose_all(text: tkinter.Text) -> str:
    text.tag_add("sel", "1.0", "end")
    return "break"


def _leave(text: tkinter.Text) -> str:
    """Lets Tab move on, as it does elsewhere, where Tk would write one."""
    following = text.tk_focusNext()
    if following:
        following.focus_set()
    return "break"


def _fill(text: tkinter.Text, result: ListDone) -> None:
    done = result.outcome
    text["state"] = "normal"
    text.delete("1.0", "end")
    for line in (done.message,) if done.code >= 3 else done.in_short:
        text.insert("end", f"{line}\n")
    named = (
        ("To print", done.to_print),
        ("Plan" if done.cut_files else "Problems", done.written),
        ("Cut files", done.cut_files),
    )
    for word, path in named:
        if path:
            text.insert("end", f"{word}: ", "head", f"{path.name}\n")
    for level, head in HEADS.items():
        _list(text, head, level, result)
    text["state"] = "disabled"
    text.mark_set("insert", "1.0")


def _list(text: tkinter.Text, head: str, level: Level, result: ListDone) -> None:
    lines = problem_lines(result.outcome.problems, level)
    shown = list(islice(lines, LISTED))
    if not shown:
        return
    count = sum(problem.level == level for problem in result.outcome.problems)
    text.insert("end", f"\n{head} ({count})\n", level)
    for line in shown:
        text.insert("end", f"{line}\n")
    more = sum(1 for _ in lines)
    if more:
        text.insert("end", f"and {more} more in the workbook\n")
