"""The font that words in a drawing are set in: the one named, or another that has all their letters."""

from collections.abc import Iterator

from xlbatch.lettering.computer_fonts import computer_font
from xlbatch.lettering.fonts import fewest_lacking, stand_in
from xlbatch.lettering.named_font import named_font
from xlbatch.lettering.typeface import Typeface, set_line
from xlbatch.parts.edit import PartNote, Rules
from xlbatch.svg.layer import Letters, LiveText


def spelled(letters: tuple[str, ...]) -> str:
    """Letters with their numbers, for a person who may not know them."""
    return ", ".join(f"{letter} (U+{ord(letter):04X})" for letter in letters)


class Faces:
    """Chooses fonts, and notes where another than the one named is used."""

    def __init__(self, rules: Rules) -> None:
        self.rules = rules
        self.notes: list[PartNote] = []

    def usual(self, look: Letters) -> Typeface:
        """The font that letters of a drawing are set in as they are; nothing is noted."""
        return named_font(look.fonts, look.bold, look.italic, self.rules.folder, self.rules.font).face

    def named(self, part: str, name: str, text: str) -> Typeface | None:
        """The font called `name` for a text; None, noted, where none can draw it."""
        return self._chosen(part, (name,) if name else (), True, False, text)

    def of_text(self, part: str, text: LiveText, name: str) -> dict[Letters, Typeface] | None:
        """The font for each look of a live text, all `name` where that is given."""
        faces: dict[Letters, Typeface] = {}
        for look, words in _words(text):
            families = (name,) if name else look.fonts
            face = self._chosen(part, families, look.bold, look.italic, words)
            if face is None:
                return None
            faces[look] = face
        return faces

    def _chosen(self, part: str, families: tuple[str, ...], bold: bool, italic: bool, text: str) -> Typeface | None:
        named = named_font(families, bold, italic, self.rules.folder, self.rules.font)
        if named.instead_of:
            self._note(part, "font-nearest", font=named.instead_of, used=named.face.name)
        lacks = set_line(named.face, text).lacks
        if not lacks:
            return named.face
        other = stand_in(text, named.face.name)
        if other:
            self._note(part, "font-other", font=named.face.name, letters=spelled(lacks), used=other.name)
            return other
        other, letters = computer_font(text), spelled(fewest_lacking(text))
        if other:
            self._note(part, "font-computer", letters=letters, used=other.name)
        else:
            self._note(part, "font-lacks", letters=letters)
        return other

    def _note(self, part: str, code: str, **facts: object) -> None:
        note = PartNote(part, code, facts)
        if note not in self.notes:
            self.notes.append(note)


def _words(text: LiveText) -> Iterator[tuple[Letters, str]]:
    for look in dict.fromkeys(span.look for span in text.spans):
        yield look, "".join(span.text for span in text.spans if span.look == look)
