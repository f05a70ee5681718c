"""Lists dropped on the open window. Where the library for that can't be loaded, its buttons still do."""

import tkinter
from collections.abc import Callable

ANSWER = "copy"  # what the other program is told will be done with its files: they stay where they are


def take_drops(root: tkinter.Tk, take: Callable[..., None], light: Callable[[bool], None]) -> bool:
    """Has `take` called with the files dropped anywhere on the window, and `light` while some are held over it.

    False where this computer can't do it."""
    try:
        from tkinterdnd2 import TkinterDnD

        TkinterDnD.require(root)
        root.tk.call("tkdnd::drop_target", "register", ".", "DND_Files")
    except (ImportError, RuntimeError, tkinter.TclError):
        return False

    def dropped(files: str) -> str:
        light(False)
        root.after_idle(take, *root.tk.splitlist(files))  # once the other program knows that they have come
        return ANSWER

    def over(state: str) -> str:
        light(state == "1")
        return ANSWER

    dropped_, over_ = root.register(dropped), root.register(over)
    for event, script in (("Drop", f"{dropped_} %D"), ("DropEnter", f"{over_} 1"), ("DropLeave", f"{over_} 0")):
        root.tk.call("bind", ".", f"<<{event}>>", script)
    return True
