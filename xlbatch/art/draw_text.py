"""The lettering of one garment → decals, and problems with its font, letters or length."""

import unicodedata

from xlbatch.art.bench import Bench, Drawn
from xlbatch.art.row_cut import Cut, decals_of
from xlbatch.art.size import USUAL_CAP_HEIGHT
from xlbatch.check.garment import Garment
from xlbatch.check.names import did_you_mean, same
from xlbatch.check.text import decal_text
from xlbatch.geometry.outline import Outline
from xlbatch.job.job import DecalSpec
from xlbatch.lettering.bidi import visual_runs
from xlbatch.lettering.computer_fonts import computer_font
from xlbatch.lettering.fonts import fewest_lacking, first_font, font_names, stand_in
from xlbatch.lettering.text_line import TooLong, fit, most_bent
from xlbatch.lettering.typeface import Typeface, set_line
from xlbatch.problems import Problem, Where, problem
from xlbatch.problems.phrases import phrase
from xlbatch.units import length_text, printed_text


def draw_text(bench: Bench, garment: Garment, spec: DecalSpec) -> Drawn:
    """The decals of a name, number or text: none where there is nothing to print."""
    text = unicodedata.normalize("NFC", " ".join(decal_text(spec, garment.row, bench.job.settings).split()))
    if not text:
        return (), ()
    lettering = _Lettering(bench, garment, spec, text)
    cut = lettering.cut()
    decals = decals_of(bench, garment, spec, cut, (spec,)) if cut else ()
    return decals, tuple(lettering.problems)


class _Lettering:
    """One text on one garment, and the problems found on the way to its outline."""

    def __init__(self, bench: Bench, garment: Garment, spec: DecalSpec, text: str) -> None:
        self.bench = bench
        self.garment = garment
        self.spec = spec
        self.text = text
        self.rows = (garment.row.source.row,)
        self.problems: list[Problem] = []

    def cut(self) -> Cut | None:
        face = self._face()
        if face is None or set_line(face, self.text).box is None:
            return None
        self._say_directions()
        fitted = self._fitted(face, self._arch(face))
        if fitted is None:
            return None
        outline, cap_height, condensed = fitted
        return Cut(
            outline,
            outline.width,
            outline.height,
            text=self.text,
            font=face.name,
            cap_height=cap_height,
            condensed=condensed,
            center=outline.center,
        )

    def _face(self) -> Typeface | None:
        """The font asked for, or the bundled one most like it that has all letters."""
        face = self._asked()
        lacks = set_line(face, self.text).lacks
        if not lacks:
            return face
        other = stand_in(self.text, face.name)
        if other:
            self._report("font-other", font=face.name, letters=_spelled(lacks), used=other.name)
            return other
        other, letters = computer_font(self.text), _spelled(fewest_lacking(self.text))
        if other:
            self._report("font-computer", letters=letters, used=other.name)
        else:
            self._report("font-lacks", letters=letters)
        return other

    def _asked(self) -> Typeface:
        asked = self.spec.font or self.bench.job.settings.font
        face = self.bench.font(asked)
        if face:
            return face
        setting = self.bench.job.setting_cells.get("Font", Where("Job"))
        self.problems.append(
            problem(
                "font-unknown",
                self.spec.source.at("Font") if self.spec.font else setting,
                asked,
                suggestion=did_you_mean(asked, font_names()),
                rows=self.rows,
                used=first_font().name,
                fonts=", ".join(font_names()),
            )
        )
        return first_font()

    def _say_directions(self) -> None:
        """Says that a line has letters that read from the right and letters or digits that read the other way."""
        if len({run.right for run in visual_runs(self.text)}) > 1:
            self._report("text-directions")

    def _arch(self, face: Typeface) -> float:
        """The degrees to bend by: as asked, or as many as a short text bears."""
        arch = self.spec.arch
        most = most_bent(face, self.text) if arch else 0.0
        if abs(arch) <= most:
            return arch
        bent = float(int(most)) * (1 if arch > 0 else -1)
        self._report("arch-too-strong", asked=f"{arch:g}", used=f"{bent:g}")
        return bent

    def _fitted(self, face: Typeface, arch: float) -> tuple[Outline, float, float] | None:
        """The outline as wide as film and garment allow, its cap height, and how far it is condensed; None, reported,
        where it is too long."""
        cap_height = self.bench.letters_high(self.garment, self.spec, self._cap_height())
        least = min(self.bench.job.settings.least_letter_height, cap_height)
        limits = self.bench.limits(self.garment, (self.spec,))
        fitted = None
        for width in limits.widths()[-1:] if self._may_join() else limits.widths():
            widest = min((width, *self._widths_typed()))
            scale = fit(
                face, self.text, cap_height, widest, least, arch, self.bench.job.settings.narrowest_letters / 100
            )
            if isinstance(scale, TooLong):
                self._too_long(widest, least, scale.needed)
                return None
            outline = self.bench.letter(face, self.text, scale, arch)
            fitted = outline, round(scale.up * face.cap_height, 3), round(scale.across / scale.up, 4)
            if limits.fits_film(outline.width, outline.height):
                break
        return fitted

    def _may_join(self) -> bool:
        """Whether other rows of the design may be one piece with it: it is then not made so long that only a turned
        piece would fit its film."""
        spec = self.spec
        return self.bench.job.settings.join and any(
            other != spec
            and other.layer == spec.layer
            and same(other.film, spec.film)
            and self._top(other) == self._top(spec)
            for other in self.garment.design
        )

    def _top(self, spec: DecalSpec) -> str:
        """The position that the rows at this row's position hang from."""
        blank = self.garment.blank
        position = self.bench.job.position(spec.position, blank.for_, blank.neckline)
        return position.top_of({other.position.casefold() for other in self.garment.design}) if position else ""

    def _cap_height(self) -> float:
        """The cap height as drawn."""
        if self.spec.height:
            return self.spec.height
        used = length_text(USUAL_CAP_HEIGHT, self.bench.job.settings.length_unit)
        what = phrase("letter height of", decal=self.spec.decal)
        where = self.spec.source.at("Height")
        self.problems.append(problem("assumed", where, rows=self.rows, what=what, used=used, sheet="Designs"))
        return USUAL_CAP_HEIGHT

    def _widths_typed(self) -> list[float]:
        """What the design says of the width; of lettering, Width means at most so wide."""
        return [
            self.bench.sized(self.garment, self.spec, width)
            for width in (self.spec.widest, self.spec.width)
            if width is not None
        ]

    def _too_long(self, widest: float, least: float, needed: float) -> None:
        unit = self.bench.job.settings.length_unit
        self._report(
            "lettering-too-long",
            text=self.text,
            widest=printed_text(max(widest, 0.0), unit),
            least=length_text(least, unit),
            needed=printed_text(needed, unit, up=True),
        )

    def _report(self, code: str, **facts: str) -> None:
        self.problems.append(problem(code, self._cell(), self.text, suggestion="", rows=self.rows, **facts))

    def _cell(self) -> Where:
        """The cell the text comes from."""
        row = self.garment.row
        match self.spec.what:
            case "print name":
                return row.source.at("Print name" if row.print_name else "Who")
            case "number":
                return row.source.at("Number")
            case _:
                return self.spec.source.at("Text")


def _spelled(letters: tuple[str, ...]) -> str:
    return ", ".join(f"{letter} (U+{ord(letter):04X})" for letter in letters)
