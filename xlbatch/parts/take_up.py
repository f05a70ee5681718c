"""A job with its drawings looked at: a row a color, films where none was named, and a line for each part."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from xlbatch.check.names import same
from xlbatch.check.text import has_braces
from xlbatch.files.beside import beside, folder_of
from xlbatch.job.job import DecalSpec, Film, Job
from xlbatch.job.part_line import PartLine
from xlbatch.job.source import Source
from xlbatch.parts.color_words import color_in, nearest_film, words_for
from xlbatch.parts.edit import film_color
from xlbatch.parts.looked import Looked, look_at
from xlbatch.parts.part import Part
from xlbatch.parts.part_lines import Looks, looks_of, matched, place_text
from xlbatch.problems import Problem, problem
from xlbatch.problems.phrases import phrase
from xlbatch.trade.tables import practice
from xlbatch.units import mm_per

USUAL_WIDTH = practice("how wide artwork is on an adult M, where nothing is said")


def with_drawings(job: Job) -> tuple[Job, tuple[Problem, ...]]:
    """The job with what its drawings and films say filled into Designs and Drawing parts; and what to ask."""
    work = _TakingUp(job)
    lines = tuple(work.lines())
    designs = tuple(row for spec in job.designs for row in work.rows(spec, lines))
    designs = tuple(work.with_film(spec, designs) for spec in designs)
    return replace(job, designs=designs, drawing_parts=lines), tuple(dict.fromkeys(work.problems))


@dataclass(frozen=True, eq=False)
class _Drawn:
    """A drawing of a design: its name as typed, what it looks like, and mm a unit on the shirt."""

    name: str
    spec: DecalSpec
    looked: Looked
    unit: float


class _TakingUp:
    def __init__(self, job: Job) -> None:
        self.job = job
        self.problems: list[Problem] = []
        self.wearers: dict[str, dict[int, None]] = {}
        for row in job.roster:
            design = (row.design or job.settings.usual_design).casefold()
            self.wearers.setdefault(design, {})[row.source.row] = None
        self.drawn = {each.name.casefold(): each for each in self._drawings()}
        self.films = self._films()

    def _drawings(self) -> Iterator[_Drawn]:
        seen: set[str] = set()
        for spec in self.job.designs:
            name = spec.artwork.strip()
            if spec.what != "artwork" or not name or name.casefold() in seen:
                continue
            file = beside(folder_of(self.job.path), name)
            looked = look_at(Path(file)) if file else None
            if isinstance(looked, Looked):
                seen.add(name.casefold())
                yield _Drawn(name, spec, looked, self._unit(name, looked))

    def _unit(self, name: str, looked: Looked) -> float:
        """The mm of a unit on the shirt: as the first row that gives the drawing's width or height has it."""
        rows = [spec for spec in self.job.designs if same(spec.artwork, name)]
        left, bottom, right, top = looked.box
        sized = next((spec for spec in rows if spec.width or spec.height), None)
        if sized and not sized.width and sized.height:
            return sized.height / (top - bottom)
        return ((sized.width if sized else None) or USUAL_WIDTH) / (right - left)

    def _films(self) -> tuple[Film, ...]:
        """The films that the person listed or a design names; where there are none, all the program knows."""
        named = {name.casefold() for spec in self.job.designs for name in (spec.film, spec.outline_film) if name}
        own = tuple(film for film in self.job.films if not film.source.built_in or film.name.casefold() in named)
        once = {film.name.casefold(): film for film in reversed(own or self.job.films)}
        return tuple(reversed(once.values()))

    def _rows_of(self, spec: DecalSpec) -> tuple[int, ...]:
        return tuple(self.wearers.get(spec.design.casefold(), ()))

    # Designs

    def rows(self, spec: DecalSpec, lines: Sequence[PartLine]) -> Iterator[DecalSpec]:
        """The row, or a row for each color where it names none of several; and one for each part with its own film."""
        drawn = self.drawn.get(spec.artwork.strip().casefold()) if spec.what == "artwork" else None
        if drawn is None:
            yield spec
            return
        own = [line for line in lines if same(line.artwork, drawn.name) and line.film and line.use]
        if spec.artwork_color.startswith("part "):  # of a part with its own film: made anew where it still has one
            line = next((line for line in own if film_color(line.part) == spec.artwork_color), None)
            if line:
                yield replace(spec, film=line.film)
            return
        rows = tuple(self._by_color(spec, drawn))
        yield from rows
        together = [
            each for each in self.job.designs if same(each.design, spec.design) and same(each.artwork, spec.artwork)
        ]
        listed = {each.artwork_color for each in together}
        if spec == together[-1]:
            for line in own:
                color = film_color(line.part)
                if color not in listed:
                    decal, layer = f"{spec.decal}, {color}", max(row.layer for row in (*rows, *together)) + 1
                    yield replace(spec, decal=decal, artwork_color=color, film=line.film, layer=layer)

    def _by_color(self, spec: DecalSpec, drawn: _Drawn) -> Iterator[DecalSpec]:
        colors = drawn.looked.colors
        if spec.artwork_color or len(colors) < 2 or self._others_name_colors(spec):
            yield spec
            return
        words = words_for(colors)
        films = {color: self._nearest(color, spec) for color in colors}
        said = "; ".join(f"{words[color]} → {film}" for color, film in films.items())
        where = spec.source.at("Artwork color")
        self.problems.append(
            problem("colors-chosen", where, artwork=spec.artwork, films=said, rows=self._rows_of(spec))
        )
        for at, color in enumerate(colors):
            yield replace(
                spec,
                decal=f"{spec.decal}, {words[color]}",
                artwork_color=words[color],
                film=films[color],
                layer=spec.layer + at,
                outline_film=spec.outline_film if at == 0 else "",
                outline_width=spec.outline_width if at == 0 else None,
            )

    def _others_name_colors(self, spec: DecalSpec) -> bool:
        """Whether other rows of the design cut colors of the same drawing: then a blank one is left to be asked."""
        return any(
            same(other.design, spec.design) and same(other.artwork, spec.artwork) and other.source != spec.source
            for other in self.job.designs
        )

    def _nearest(self, color: str, spec: DecalSpec) -> str:
        if spec.film and len(self.films) == 1:
            return spec.film
        found = nearest_film(color, self.films) if color.startswith("#") else None
        return found.name if found else spec.film

    def with_film(self, spec: DecalSpec, designs: Sequence[DecalSpec]) -> DecalSpec:
        """The row with a film, where it names none: the only or nearest one."""
        if spec.film:
            return spec
        film, why = self._film(spec, designs)
        if film is None:
            return spec
        rows = self._rows_of(spec)
        where = spec.source.at("Film")
        self.problems.append(problem("film-chosen", where, decal=spec.decal, used=film, why=why, rows=rows))
        return replace(spec, film=film)

    def _film(self, spec: DecalSpec, designs: Sequence[DecalSpec]) -> tuple[str | None, str]:
        if len(self.films) == 1:
            return self.films[0].name, phrase("only film")
        drawn = self.drawn.get(spec.artwork.strip().casefold())
        color = color_in(drawn.looked.colors, spec.artwork_color) if drawn else None
        nearest = nearest_film(color, self.films) if color and color.startswith("#") else None
        if nearest:
            return nearest.name, phrase("nearest color")
        named = next((each.film for each in designs if same(each.design, spec.design) and each.film), None)
        if named:
            return named, phrase("used by design")
        return (self.films[0].name, phrase("first film")) if self.films else (None, "")

    # Drawing parts

    def lines(self) -> Iterator[PartLine]:
        """A line a part of each drawing, with what was typed into it; then lines of drawings that are not used."""
        for drawn in self.drawn.values():
            yield from self._lines(drawn)
        yield from (line for line in self.job.drawing_parts if line.artwork.strip().casefold() not in self.drawn)

    def _lines(self, drawn: _Drawn) -> Iterator[PartLine]:
        box = drawn.looked.box
        looks: dict[str, Looks] = {}
        parts: dict[str, Part] = {}
        for part in drawn.looked.parts:
            for each in (part, *part.single):
                parts[each.label], looks[each.label] = each, looks_of(each, box, drawn.unit)
        typed = [line for line in self.job.drawing_parts if same(line.artwork, drawn.name)]
        found = matched(typed, looks)
        self._samples(drawn, found.lines)
        self._lost(drawn, found.lost, looks)
        self._left_out(drawn, found.lines)
        for label, part in parts.items():
            line = found.lines.get(label) or PartLine(Source("Drawing parts"), drawn.name, label, use=part.use)
            look = looks[label]
            yield replace(
                line,
                part=label,
                color=look.color,
                text=look.text,
                width=self._printed(look.width),
                height=self._printed(look.height),
                place=place_text(look),
            )

    def _printed(self, mm: float) -> float:
        """A length that is written with two places in the job's unit."""
        unit = mm_per(self.job.settings.length_unit)
        return round(round(mm / unit, 2) * unit, 6)

    def _left_out(self, drawn: _Drawn, lines: Mapping[str, PartLine]) -> None:
        """Tells what is proposed not to be cut, as long as no line says so."""
        where, rows = drawn.spec.source.at("Artwork"), self._rows_of(drawn.spec)
        out = [part for part in drawn.looked.parts if not part.use and part.label not in lines]
        enclosed = [part for part in out if "background" not in part.doubts]
        for part in out:
            if part not in enclosed:
                facts = {"artwork": drawn.name, "part": part.label}
                self.problems.append(problem("background-left-out", where, rows=rows, **facts))
        if enclosed:
            labels = _listed([part.label for part in enclosed])
            key = "enclosed area" if len(enclosed) == 1 else "enclosed areas"
            areas = phrase(key, parts=labels, color=enclosed[0].color)
            self.problems.append(problem("picture-enclosed", where, drawn.name, suggestion="", rows=rows, areas=areas))

    def _samples(self, drawn: _Drawn, lines: Mapping[str, PartLine]) -> None:
        """Asks once about words cut alike on the garments of several groups, where none of the drawing is replaced."""
        rows = self._rows_of(drawn.spec)
        groups = {row.group.casefold() for row in self.job.roster if row.source.row in rows and row.group}
        words = [part for part in drawn.looked.parts if part.kind in ("word", "text") and part.use]
        done = any(line.replace_by or not line.use for line in lines.values()) or any(
            part.text and has_braces(part.text.words) for part in words
        )
        if len(groups) < 2 or done or not words:
            return
        count = sum(row.source.row in rows for row in self.job.roster)
        named = [f"{part.label} (“{part.text.words}”)" if part.text else part.label for part in words]
        parts = f"Part{'s' * (len(named) > 1)} {_listed(named)}"
        are, it = ("are", "one of them") if len(named) > 1 else ("is", "it")
        facts = {"parts": parts, "artwork": drawn.name, "are": are, "it": it, "count": count}
        where = drawn.spec.source.at("Artwork")
        self.problems.append(problem("sample-alike", where, "", suggestion="", rows=rows, **facts))

    def _lost(self, drawn: _Drawn, lost: Sequence[PartLine], looks: Mapping[str, Looks]) -> None:
        for line in lost:
            where = line.source.at("Part")
            if line.part not in looks and not line.color:
                labels = ", ".join(label for label in looks if not label[-1].isalpha())
                facts = {"artwork": drawn.name, "parts": labels}
                self.problems.append(
                    problem("part-unknown", where, line.part, suggestion="", rows=self._rows_of(drawn.spec), **facts)
                )
                continue
            code = "part-lost" if line.typed or not line.use else "part-gone"
            rows = self._rows_of(drawn.spec) if code == "part-lost" else ()
            self.problems.append(problem(code, where, line.part, artwork=drawn.name, rows=rows))


def _listed(words: Sequence[str]) -> str:
    """The words as a sentence lists them: 1, 2 and 3."""
    return " and ".join(filter(None, (", ".join(words[:-1]), *words[-1:])))
