"""What is asked about a drawing's parts and the lines of Drawing parts."""

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence

from xlbatch.check.names import did_you_mean
from xlbatch.check.text import has_braces
from xlbatch.job.job import Job
from xlbatch.job.part_line import PartLine
from xlbatch.parts.drawn import Drawn
from xlbatch.parts.part_lines import Matched, PartLooks
from xlbatch.problems import Problem, problem
from xlbatch.problems.phrases import phrase


def questions(
    job: Job, drawn: Drawn, rows: tuple[int, ...], matches: Matched, looks: Mapping[str, PartLooks]
) -> Iterator[Problem]:
    """All that is asked about one drawing, worn in `rows`: `looks` of each part, and the lines `found` for them."""
    yield from _samples(job, drawn, rows, matches.lines)
    yield from _lost(drawn, rows, matches.lost, looks)
    yield from _left_out(drawn, rows, matches.lines)
    for line in matches.lines.values():
        yield from _named(job, drawn, rows, line, looks)


def of_no_drawing(line: PartLine, names: Iterable[str]) -> Iterator[Problem]:
    """Asks about a line whose drawing no design uses, where it wants something."""
    if line.typed or not line.use:
        near = did_you_mean(line.artwork, names)
        yield problem("part-of-none", line.source.at("Artwork"), line.artwork, suggestion=near)


def _samples(job: Job, drawn: Drawn, rows: Collection[int], lines: Mapping[str, PartLine]) -> Iterator[Problem]:
    """Asks once about words cut alike on the garments of several groups, where none of the drawing is replaced."""
    wearing = [row for row in job.roster if row.source.row in rows]
    words = [part for part in drawn.looked.parts if part.kind in ("word", "text") and part.use]
    done = any(line.replace_by or not line.use for line in lines.values()) or any(
        part.text and has_braces(part.text.words) for part in words
    )
    if len({row.group.casefold() for row in wearing if row.group}) < 2 or done or not words:
        return
    named = [f"{part.label} (“{part.text.words}”)" if part.text else part.label for part in words]
    are, it = ("are", "one of them") if len(named) > 1 else ("is", "it")
    parts = f"Part{'s' * (len(named) > 1)} {_listed(named)}"
    facts = {"parts": parts, "artwork": drawn.name, "are": are, "it": it, "count": len(wearing)}
    yield problem("sample-alike", drawn.spec.source.at("Artwork"), "", suggestion="", rows=tuple(rows), **facts)


def _lost(
    drawn: Drawn, rows: tuple[int, ...], lost: Sequence[PartLine], looks: Mapping[str, PartLooks]
) -> Iterator[Problem]:
    """Tells of lines whose part is not in the drawing, or not any more."""
    for line in lost:
        where = line.source.at("Part")
        if line.part not in looks and not line.color:
            yield _unknown(drawn, rows, line, "Part", line.part, looks)
        elif line.typed or not line.use:
            yield problem("part-lost", where, line.part, artwork=drawn.name, rows=rows)
        else:
            yield problem("part-gone", where, line.part, artwork=drawn.name)


def _left_out(drawn: Drawn, rows: tuple[int, ...], lines: Mapping[str, PartLine]) -> Iterator[Problem]:
    """Tells what is proposed not to be cut, as long as no line says so."""
    where = drawn.spec.source.at("Artwork")
    out = [part for part in drawn.looked.parts if not part.use and part.label not in lines]
    enclosed = [part for part in out if "background" not in part.doubts]
    for part in out:
        if part not in enclosed:
            yield problem("background-left-out", where, artwork=drawn.name, part=part.label, rows=rows)
    if enclosed:
        key = "enclosed area" if len(enclosed) == 1 else "enclosed areas"
        areas = phrase(key, parts=_listed([part.label for part in enclosed]), color=enclosed[0].color)
        yield problem("picture-enclosed", where, drawn.name, suggestion="", rows=rows, areas=areas)


def _named(
    job: Job, drawn: Drawn, rows: tuple[int, ...], line: PartLine, looks: Mapping[str, PartLooks]
) -> Iterator[Problem]:
    """Tells of a film or part named in a line that there is none such."""
    films = [film.name for film in job.films]
    if line.film and line.film.casefold() not in map(str.casefold, films):
        near = did_you_mean(line.film, films)
        yield problem("film-unknown", line.source.at("Film"), line.film, suggestion=near, rows=rows)
    if line.join and (line.join not in looks or line.join == line.part):
        yield _unknown(drawn, rows, line, "Join", line.join, looks)


def _unknown(
    drawn: Drawn, rows: tuple[int, ...], line: PartLine, heading: str, typed: str, looks: Mapping[str, PartLooks]
) -> Problem:
    labels = ", ".join(label for label in looks if not label[-1].isalpha())
    facts = {"artwork": drawn.name, "parts": labels}
    return problem("part-unknown", line.source.at(heading), typed, suggestion="", rows=rows, **facts)


def _listed(words: Sequence[str]) -> str:
    """The words as a sentence lists them: 1, 2 and 3."""
    return " and ".join(filter(None, (", ".join(words[:-1]), *words[-1:])))
