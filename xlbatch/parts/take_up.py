"""A job with its drawings looked at: a row a color, films where none was named, and a line for each part."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from pathlib import Path

from xlbatch.check.names import same
from xlbatch.files.beside import beside, folder_of
from xlbatch.job.job import DecalSpec, Film, Job
from xlbatch.job.part_line import PartLine
from xlbatch.job.source import Source
from xlbatch.parts.color_layers import color_layers
from xlbatch.parts.color_words import color_in, nearest_film, words_for
from xlbatch.parts.drawn import Drawn
from xlbatch.parts.edit import film_color
from xlbatch.parts.looked import Looked, look_at
from xlbatch.parts.part import Part
from xlbatch.parts.part_lines import PartLooks, looks_of, matched, place_text
from xlbatch.parts.part_questions import of_no_drawing, questions
from xlbatch.problems import Problem, problem
from xlbatch.problems.phrases import phrase
from xlbatch.trade.usual_sizes import artwork_width
from xlbatch.units import mm_per


def with_drawings(job: Job) -> tuple[Job, tuple[Problem, ...]]:
    """The job with what its drawings and films say filled into Designs and Drawing parts; and what to ask."""
    work = _TakingUp(job)
    lines = tuple(work.lines())
    designs = tuple(row for spec in job.designs for row in work.rows(spec, lines))
    designs = tuple(work.with_film(spec, designs) for spec in designs)
    return replace(job, designs=designs, drawing_parts=lines), tuple(dict.fromkeys(work.problems))


class _TakingUp:
    def __init__(self, job: Job) -> None:
        self.job = job
        self.problems: list[Problem] = []
        self.wearers: dict[str, dict[int, None]] = {}
        for row in job.roster:
            design = (row.design or job.settings.usual_design).casefold()
            self.wearers.setdefault(design, {})[row.source.row] = None
        self.used: dict[str, frozenset[str]] = {}  # of each drawing, the parts that are cut
        self.drawn = {drawn.name.casefold(): drawn for drawn in self._drawings()}
        self.films = self._films()

    def _drawings(self) -> Iterator[Drawn]:
        seen: set[str] = set()
        for spec in self.job.designs:
            name = spec.artwork.strip()
            if spec.what != "artwork" or not name or name.casefold() in seen:
                continue
            file = beside(folder_of(self.job.path), name)
            looked = look_at(Path(file)) if file else None
            if isinstance(looked, Looked):
                seen.add(name.casefold())
                yield Drawn(name, spec, looked, self._unit(name, looked))

    def _unit(self, name: str, looked: Looked) -> float:
        """The mm of a unit on the shirt: as the first row that gives the drawing's width or height has it."""
        rows = [spec for spec in self.job.designs if same(spec.artwork, name)]
        left, bottom, right, top = looked.box
        sized = next((spec for spec in rows if spec.width or spec.height), None)
        if sized and not sized.width and sized.height:
            return sized.height / (top - bottom)
        return ((sized.width if sized else None) or artwork_width(rows[0].position if rows else "")) / (right - left)

    def _films(self) -> tuple[Film, ...]:
        """The films that the person listed or a design names; where there are none, or only the usual design that no
        one typed names one, all the program knows."""
        typed = any(spec.film or spec.outline_film for spec in self.job.designs if not spec.source.built_in)
        designs = self.job.designs if typed else ()
        named = {name.casefold() for spec in designs for name in (spec.film, spec.outline_film) if name}
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
        known = {film.name.casefold() for film in self.job.films}
        own = [line for line in lines if same(line.artwork, drawn.name) and line.film.casefold() in known and line.use]
        if spec.artwork_color.startswith("part "):  # of a part with its own film: made anew where it still has one
            line = next((line for line in own if film_color(line.part) == spec.artwork_color), None)
            if line:
                yield replace(spec, film=line.film)
            return
        rows = tuple(self._by_color(spec, drawn))
        yield from rows
        together = [
            row for row in self.job.designs if same(row.design, spec.design) and same(row.artwork, spec.artwork)
        ]
        listed = {row.artwork_color for row in together}
        if spec == together[-1]:
            for line in own:
                color = film_color(line.part)
                if color not in listed:
                    decal, layer = f"{spec.decal}, {color}", max(row.layer for row in (*rows, *together)) + 1
                    yield replace(spec, decal=decal, artwork_color=color, film=line.film, layer=layer)

    def _by_color(self, spec: DecalSpec, drawn: Drawn) -> Iterator[DecalSpec]:
        used, colors = self.used[drawn.name.casefold()], self._colors(drawn)
        if spec.artwork_color or len(colors) < 2 or self._others_name_colors(spec):
            yield spec
            return
        words = words_for(colors)
        films = {color: self._nearest(color, spec) for color in colors}
        layers = color_layers(drawn.looked, used, films)
        films_text = "; ".join(
            f"{words[color]} → {films[color]}"
            if color in layers.layer_of
            else phrase("open on own film", color=words[color], ground=words[layers.open_on[color]], film=films[color])
            for color in colors
        )
        where = spec.source.at("Artwork color")
        self.problems.append(
            problem("colors-chosen", where, artwork=spec.artwork, films=films_text, rows=self._rows_of(spec))
        )
        for color, layer in layers.layer_of.items():
            yield replace(
                spec,
                decal=f"{spec.decal}, {words[color]}",
                artwork_color=words[color],
                film=films[color],
                layer=spec.layer + layer,
                outline_film=spec.outline_film if color == colors[0] else "",
                outline_width=spec.outline_width if color == colors[0] else None,
            )

    def _colors(self, drawn: Drawn) -> tuple[str, ...]:
        """The colors of what is cut of a drawing, the lowest first."""
        return drawn.looked.colors(self.used[drawn.name.casefold()])

    def _others_name_colors(self, spec: DecalSpec) -> bool:
        """Whether other rows of the design cut colors of the same drawing: then a blank one is left to be asked."""
        return any(
            same(other.design, spec.design) and same(other.artwork, spec.artwork) and other.source != spec.source
            for other in self.job.designs
        )

    def _nearest(self, color: str, spec: DecalSpec) -> str:
        if spec.film and len(self.films) == 1:
            return spec.film
        nearest = nearest_film(color, self.films) if color.startswith("#") else None
        return nearest.name if nearest else spec.film

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
        color = color_in(self._colors(drawn), spec.artwork_color) if drawn else None
        nearest = nearest_film(color, self.films) if color and color.startswith("#") else None
        if nearest:
            return nearest.name, phrase("nearest color")
        named = next((row.film for row in designs if same(row.design, spec.design) and row.film), None)
        if named:
            return named, phrase("used by design")
        return (self.films[0].name, phrase("first film")) if self.films else (None, "")

    # Drawing parts

    def lines(self) -> Iterator[PartLine]:
        """A line a part of each drawing, with what was typed into it; then lines of drawings that are not used."""
        for drawn in self.drawn.values():
            yield from self._lines(drawn)
        named = {spec.artwork.strip().casefold(): spec.artwork for spec in self.job.designs if spec.artwork}
        for line in self.job.drawing_parts:
            artwork = line.artwork.strip().casefold()
            if artwork not in self.drawn:
                self.problems += of_no_drawing(line, named.values()) if artwork not in named else ()
                yield line

    def _lines(self, drawn: Drawn) -> Iterator[PartLine]:
        box = drawn.looked.box
        looks: dict[str, PartLooks] = {}
        parts: dict[str, Part] = {}
        for part in drawn.looked.parts:
            for drawn_part in (part, *part.single):
                parts[drawn_part.label], looks[drawn_part.label] = drawn_part, looks_of(drawn_part, box, drawn.unit)
        typed = [line for line in self.job.drawing_parts if same(line.artwork, drawn.name)]
        matches = matched(typed, looks)
        self.used[drawn.name.casefold()] = drawn.looked.used({label: line.use for label, line in matches.lines.items()})
        self.problems += questions(self.job, drawn, self._rows_of(drawn.spec), matches, looks)
        for label, part in parts.items():
            line = matches.lines.get(label) or PartLine(Source("Drawing parts"), drawn.name, label, use=part.use)
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
