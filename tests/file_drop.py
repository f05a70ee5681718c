"""Another program that drops files on a window of an X screen, as a file manager does: the source's side of the
drag-and-drop protocol XDND 5 (freedesktop.org, "Drag-and-Drop Protocol for the X Window System")."""

from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any

from Xlib import X, display
from Xlib.protocol import event

VERSION, NOW = 5, X.CurrentTime


class Source:
    """One drag of files, over the window at (`x`, `y`) on the screen."""

    def __init__(self, files: Sequence[Path], x: int, y: int) -> None:
        self.screen = display.Display()
        self.root = self.screen.screen().root
        self.own = self.root.create_window(0, 0, 1, 1, 0, X.CopyFromParent)
        self.uris = "".join(f"{file.as_uri()}\r\n" for file in files).encode("ascii")
        self.at = x << 16 | y
        self.target = next(self._aware(self.root))

    def _atom(self, name: str) -> int:
        return int(self.screen.intern_atom(name))

    def _aware(self, window: Any) -> Iterator[Any]:
        for each in window.query_tree().children:
            if each.get_full_property(self._atom("XdndAware"), X.AnyPropertyType):
                yield each
            yield from self._aware(each)

    def _tell(self, kind: str, *numbers: int) -> None:
        data = (32, [self.own.id, *numbers, *[0] * (4 - len(numbers))])
        self.target.send_event(event.ClientMessage(window=self.target, client_type=self._atom(kind), data=data))
        self.screen.flush()

    def over(self) -> None:
        """Drags the files over the window, until it says whether it would take them."""
        self.own.set_selection_owner(self._atom("XdndSelection"), NOW)
        self._tell("XdndEnter", VERSION << 24, self._atom("text/uri-list"))
        self._tell("XdndPosition", 0, self.at, NOW, self._atom("XdndActionCopy"))
        self._await("XdndStatus")

    def drop(self) -> None:
        """Lets them go there, and hands them over."""
        self._tell("XdndDrop", 0, NOW)
        self._await("XdndFinished")
        self.screen.close()

    def leave(self) -> None:
        """Drags them away again."""
        self._tell("XdndLeave")
        self.screen.close()

    def _await(self, kind: str) -> None:
        while True:
            heard = self.screen.next_event()
            if heard.type == X.SelectionRequest:
                self._hand_over(heard)
            elif heard.type == X.ClientMessage and heard.client_type == self._atom(kind):
                return

    def _hand_over(self, asked: Any) -> None:
        asked.requestor.change_property(asked.property, asked.target, 8, self.uris)
        names = ("time", "requestor", "selection", "target", "property")
        asked.requestor.send_event(event.SelectionNotify(**{name: getattr(asked, name) for name in names}))
