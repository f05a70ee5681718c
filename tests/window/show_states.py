"""Shows the window's states one after another, and says of each whether every button is wholly inside the window and
the window inside nine tenths of the screen: show_states.py DPI LARGER FOLDER [PICTURES]. Run by test_window."""

import sys
import tkinter
from collections.abc import Callable, Iterator
from pathlib import Path
from tkinter import ttk

from xlbatch.outcome import LAYING, STAGES
from xlbatch.problems import KINDS, Problem, Where
from xlbatch.run import Offer, Options, Outcome, Step
from xlbatch.window import look, remembered
from xlbatch.window.planning_view import ProgressView
from xlbatch.window.window import Window
from xlbatch.window.worker import Doing, ListDone

LEAST_LIST = 15  # dots high: less shows no line of it
MOST = 0.901  # of the screen's width and height: nine tenths, and a dot
NAME = "the list of everyone in the spring relay, second version.xlsx"


def widgets(inside: tkinter.Misc) -> Iterator[tkinter.Misc]:
    for each in inside.winfo_children():
        yield each
        yield from widgets(each)


def unseen(root: tkinter.Tk) -> list[str]:
    """The buttons not wholly in the window, lists of which no line is seen, and what is wrong with the window."""
    root.update()
    right, bottom = root.winfo_rootx() + root.winfo_width(), root.winfo_rooty() + root.winfo_height()
    lost = [
        str(each["text"])
        for each in widgets(root)
        if isinstance(each, ttk.Button | ttk.Radiobutton)
        and not (
            each.winfo_viewable()
            and each.winfo_rootx() >= root.winfo_rootx()
            and each.winfo_rootx() + each.winfo_reqwidth() <= right
            and each.winfo_rooty() + each.winfo_reqheight() <= bottom
        )
    ]
    lost += [
        "the lists" for each in widgets(root)
        if isinstance(each, tkinter.Listbox) and not (each.winfo_viewable() and each.winfo_height() > LEAST_LIST)
    ]  # fmt: skip
    part = max(root.winfo_width() / root.winfo_screenwidth(), root.winfo_height() / root.winfo_screenheight())
    if part > MOST:
        lost.append(f"{part:.0%} of the screen")
    return lost


def unreached(root: tkinter.Tk) -> list[str]:
    """The buttons that Tab does not come to."""
    start = here = root.focus_lastfor()
    come_to = {str(here)}
    for _ in range(100):
        here = here.tk_focusNext() if here else None
        if here is None or here is start:
            break
        come_to.add(str(here))
    return [str(each["text"]) for each in widgets(root) if isinstance(each, ttk.Button) and str(each) not in come_to]


def results(folder: Path) -> tuple[ListDone, ListDone]:
    """One that went well but for some rows, with everything a result can have; one that failed."""
    kind = next(kind for kind in KINDS if kind.code == "size-unknown")
    wrong = "“Mediun” is no size that is known."
    problems = tuple(
        Problem(kind, Where("Roster", f"C{row}"), "Mediun", wrong, "Write it.", "M", (row,), "Ana") for row in (3, 9)
    )
    offers = (Offer("Plan it anyway", Options()), Offer("What if", Options()))
    lines = (
        "26 garments, 14 ft 3 in of film in 4 runs, $182.40 to buy, 3 h 40 min of hand work.",
        "Assumed, each in a cell you can change: Garment, Color, The font, The flat measures, The press settings.",
        "To print: the whole of the list - to print.xlsx; the proof first, the rest when it is signed.",
    )
    good = Outcome(
        1, "26 garments planned, 2 held back.", folder / "plan.xlsx", folder, folder / "print.xlsx", problems,
        2, lines, offers=offers,
    )  # fmt: skip
    failed = Outcome(
        3, f"Could not write to {folder}: the disk is full. Free some space on it.", unsaved=True, offers=offers
    )
    return ListDone(folder / NAME, good), ListDone(folder / NAME, failed)


def main(dpi: int, larger: int, folder: Path, pictures: str) -> None:
    look._fit_density = lambda root: root.tk.call("tk", "scaling", dpi / 72)
    root = tkinter.Tk(className="xlbatch")
    window = Window(root, Options())
    (folder / NAME).write_text("")
    remembered.remember_lists([folder / NAME])
    for _ in range(larger):
        window.look.enlarge(1)
    good, failed = results(folder)

    def progress() -> None:
        view = ProgressView(root, window.look, f"Planning {NAME}", STAGES, lambda: None)
        window._put(view.frame, "")
        view.show(Doing(NAME, Step(LAYING, 40, 100), 0.4))
        view.wait(3)

    states: dict[str, Callable[[], None]] = {
        "start": lambda: window.show_start("The examples are in /home/someone/xlbatch examples."),
        "progress": progress,
        "results": lambda: window._show_results([good, failed, good]),
        "failure": lambda: window._show_results([failed]),
    }
    for name, show in states.items():
        show()
        lost = unseen(root) + unreached(root)
        print(f"{name}: {', '.join(lost) or 'all seen'}")
        if pictures:
            from PIL import ImageGrab

            ImageGrab.grab().save(Path(pictures) / f"{name} {root.winfo_screenwidth()} {dpi} {larger}.png")
    root.destroy()


if __name__ == "__main__":
    main(int(sys.argv[1]), int(sys.argv[2]), Path(sys.argv[3]), sys.argv[4])
