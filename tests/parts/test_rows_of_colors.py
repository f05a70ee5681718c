"""The rows of Designs and the lines of Drawing parts that a drawing gives, and what is told of them."""

from collections.abc import Callable, Sequence
from pathlib import Path

import pytest

from tests.parts.by_hand import block, drawing, layer
from xlbatch.job.job import Job
from xlbatch.job.part_line import PartLine
from xlbatch.job.source import Source
from xlbatch.parts.drawn import Drawn
from xlbatch.parts.find import parts_of
from xlbatch.parts.looked import Looked
from xlbatch.parts.part_lines import Matched
from xlbatch.parts.part_questions import questions
from xlbatch.parts.take_up import with_drawings
from xlbatch.problems import Problem
from xlbatch.roster.read import Reading

SVG = '<svg xmlns="http://www.w3.org/2000/svg" width="10in" height="10in" viewBox="0 0 400 400">{}</svg>'
HILL = '<path d="M20 260L200 60L380 260Z" fill="#1f4630"/>'
SUN = '<circle cx="330" cy="60" r="40" fill="#f0b429"/>'
WORD = '<text x="60" y="340" font-size="70" font-family="Anton" fill="#1f4630">BROMBEL</text>'
ROSTER = [["Who", "Group", "Size", "Design"], ["Ana", "Novak", "M", "Camp"], ["Tiri", "Abano", "M", "Camp"]]
HEADS = ["Design", "Decal", "What", "Artwork", "Artwork color", "Film", "Width", "Height", "Position"]
PARTS = ["Artwork", "Part", "Color", "Use", "Replace by", "Join", "Film"]
FILM = [["Film", "Kind", "Color"]]
BLACK, WHITE, GOLD = (
    ["Black own", "smooth", "black"],
    ["White own", "smooth", "white"],
    ["Gold own", "smooth", "gold"],
)

TakenUp = Callable[..., tuple[Job, tuple[Problem, ...]]]


@pytest.fixture
def taken_up(reading_of: Callable[..., Reading], tmp_path: Path) -> TakenUp:
    """The job of designs and lines with its drawing looked at, and what is told."""

    def make(
        designs: Sequence[dict[str, str]],
        *lines: dict[str, str],
        body: str = HILL + SUN,
        films: Sequence[list[str]] = (),
    ) -> tuple[Job, tuple[Problem, ...]]:
        (tmp_path / "camp.svg").write_text(SVG.format(body), encoding="utf-8")
        usual = {"Design": "Camp", "Decal": "Art", "What": "artwork", "Artwork": "camp.svg"}
        rows = [[(usual | design).get(heading, "") for heading in HEADS] for design in designs]
        typed = [[({"Artwork": "camp.svg"} | line).get(heading, "") for heading in PARTS] for line in lines]
        sheets = {"Designs": [HEADS, *rows], "Drawing parts": [PARTS, *typed]}
        return with_drawings(reading_of(ROSTER, **sheets, **({"Film": [*FILM, *films]} if films else {})).job)

    return make


def rows(job: Job) -> list[tuple[str, str, str, int]]:
    """The decal, color, film and layer of each row that someone typed."""
    own = (spec for spec in job.designs if not spec.source.built_in)
    return [(spec.decal, spec.artwork_color, spec.film, spec.layer) for spec in own]


def told(problems: Sequence[Problem]) -> dict[str, str]:
    return {problem.code: problem.wrong for problem in problems}


def test_a_row_that_names_no_color_becomes_one_a_color(taken_up: TakenUp) -> None:
    job, problems = taken_up([{}])
    assert rows(job) == [("Art, forest", "forest", "Forest smooth", 1), ("Art, gold", "gold", "Gold smooth", 2)]
    assert told(problems)["colors-chosen"] == (
        "camp.svg has several colors; each was given the nearest film: forest → Forest smooth; gold → Gold smooth."
    )
    assert next(problem.rows for problem in problems if problem.code == "colors-chosen") == (2, 3)


@pytest.mark.parametrize(
    ("design", "films", "body", "made"),
    [
        ({}, [BLACK, WHITE], HILL + SUN, [("Black own", 1), ("White own", 2)]),  # of the films listed alone
        ({}, [BLACK], HILL + SUN, [("Black own", 1), ("Black own", 1)]),
        ({}, [BLACK, WHITE, GOLD], HILL, [("Black own", 1)]),
        ({}, [WHITE, GOLD], SUN, [("Gold own", 1)]),
        ({"Artwork color": "gold"}, [BLACK, WHITE, GOLD], HILL + SUN, [("Gold own", 1)]),
        ({"Artwork color": "gold", "Film": "Black own"}, [BLACK, GOLD], HILL + SUN, [("Black own", 1)]),
    ],
)
def test_the_film_of_each_color(
    design: dict[str, str], films: list[list[str]], body: str, made: list[tuple[str, int]], taken_up: TakenUp
) -> None:
    job, _ = taken_up([design], films=films, body=body)
    assert [row[2:] for row in rows(job)] == made


@pytest.mark.parametrize(
    ("designs", "films", "film", "why"),
    [
        ([{"Artwork color": "gold"}], [BLACK], "Black own", "it is the only one listed"),
        ([{"Artwork color": "gold"}], [BLACK, GOLD], "Gold own", "its color is nearest"),
        ([{"What": "text", "Artwork": ""}], [BLACK, GOLD], "Black own", "it is listed first"),
        ([{"What": "text", "Artwork": ""}, {"Decal": "More", "What": "text", "Artwork": "", "Film": "Gold own"}],
         [BLACK, GOLD], "Gold own", "the design uses it"),
        ([{"What": "text", "Artwork": ""}, {"Design": "Tag", "What": "text", "Artwork": "", "Film": "Gold own"}],
         [BLACK, GOLD], "Black own", "it is listed first"),
    ],
)  # fmt: skip
def test_a_blank_film_is_chosen_and_told(
    designs: list[dict[str, str]], films: list[list[str]], film: str, why: str, taken_up: TakenUp
) -> None:
    job, problems = taken_up(designs, films=films)
    assert job.designs[0].film == film
    assert told(problems)["film-chosen"] == f"Film is blank for Art; {film} was used: {why}."


def test_two_rows_of_a_drawing_name_their_colors_themselves(taken_up: TakenUp) -> None:
    job, problems = taken_up([{"Artwork color": "gold"}, {"Decal": "Rest"}])
    assert [row[:2] for row in rows(job)] == [("Art", "gold"), ("Rest", "")]
    assert "colors-chosen" not in told(problems)
    job, problems = taken_up([{"Artwork color": "gold"}, {"Design": "Tag"}])
    assert [row[:2] for row in rows(job)] == [("Art", "gold"), ("Art, forest", "forest"), ("Art, gold", "gold")]


@pytest.mark.parametrize(
    ("design", "width", "height"),
    [
        ({"Width": "10 in"}, 254, 254 * 240 / 360),
        ({"Height": "4 in"}, 101.6 * 360 / 240, 101.6),
        ({"Width": "10 in", "Height": "9 in"}, 254, 254 * 240 / 360),
    ],
)
def test_parts_are_as_large_as_on_the_shirt(
    design: dict[str, str], width: float, height: float, taken_up: TakenUp
) -> None:
    """The drawing is 360 wide and 240 high: a sun from 20 and 380, a hill down to 260."""
    body = '<rect x="20" y="20" width="360" height="240" fill="#1f4630"/>'
    job, _ = taken_up([design], body=body)
    (line,) = job.drawing_parts
    assert (line.width, line.height) == pytest.approx((width, height), abs=0.3)
    assert line.place == "50 % across, 50 % down"
    assert (line.color, line.text, line.artwork, line.part, line.use) == ("#1f4630", "", "camp.svg", "1", True)


def test_a_drawing_of_no_size_is_as_wide_as_artwork_there_usually_is(taken_up: TakenUp) -> None:
    body = '<rect x="20" y="20" width="360" height="240" fill="#1f4630"/>'
    chest, front = (
        taken_up([{"Position": place}], body=body)[0].drawing_parts[0].width for place in ("left chest", "front")
    )
    assert chest
    assert front
    assert 60 < chest < 130 < 200 < front < 400


def test_the_first_row_that_gives_a_size_tells_it(taken_up: TakenUp) -> None:
    body = '<rect x="20" y="20" width="360" height="240" fill="#1f4630"/>'
    job, _ = taken_up([{"Artwork color": "forest"}, {"Design": "Tag", "Width": "5 in"}], body=body)
    assert [line.width for line in job.drawing_parts] == [pytest.approx(127, abs=0.3)]


def test_a_part_with_a_film_of_its_own_has_a_row_over_the_others(taken_up: TakenUp) -> None:
    job, _ = taken_up([{}], {"Part": "2", "Film": "Red smooth"})
    assert rows(job)[-1] == ("Art, part 2", "part 2", "Red smooth", 3)
    job, _ = taken_up([{}], {"Part": "2", "Film": "Red smooth", "Use": "no"})
    assert len(rows(job)) == 2
    job, problems = taken_up([{}], {"Part": "2", "Film": "Rde smooth"})
    assert (len(rows(job)), "film-unknown" in told(problems)) == (2, True)
    again = [
        {"Artwork color": "forest", "Film": "Forest smooth"},
        {"Decal": "Art, part 2", "Artwork color": "part 2", "Film": "Red smooth"},
    ]
    job, _ = taken_up(again, {"Part": "2", "Film": "Black smooth"})
    assert [row[1:3] for row in rows(job)] == [("forest", "Forest smooth"), ("part 2", "Black smooth")]
    job, _ = taken_up(again, {"Part": "2"})  # it has none any more
    assert [row[1] for row in rows(job)] == ["forest"]


# what is asked


def asked(problems: Sequence[Problem]) -> list[tuple[str, str]]:
    return [
        (p.code, f"{p.where.sheet} {p.where.cell}") for p in problems if p.code not in ("colors-chosen", "film-chosen")
    ]


@pytest.mark.parametrize(
    ("line", "code"),
    [
        ({"Part": "7"}, [("part-unknown", "Drawing parts B2")]),
        ({"Part": "7", "Color": "#ff00ff"}, [("part-gone", "Drawing parts B2")]),
        ({"Part": "7", "Color": "#ff00ff", "Use": "no"}, [("part-lost", "Drawing parts B2")]),
        ({"Part": "7", "Color": "#ff00ff", "Replace by": "X"}, [("part-lost", "Drawing parts B2")]),
        ({"Part": "1", "Color": "#ff00ff"}, [("part-gone", "Drawing parts B2")]),
        ({"Part": "1"}, []),
        ({"Part": "1", "Join": "2"}, []),
        ({"Part": "1", "Join": "1"}, [("part-unknown", "Drawing parts F2")]),
        ({"Part": "1", "Join": "7"}, [("part-unknown", "Drawing parts F2")]),
        ({"Part": "1", "Film": "red smooth"}, []),
        ({"Part": "1", "Film": "Purple smoth"}, [("film-unknown", "Drawing parts G2")]),
        ({"Artwork": "cmap.svg", "Part": "1", "Film": "Red smooth"}, [("part-of-none", "Drawing parts A2")]),
        ({"Artwork": "cmap.svg", "Part": "1", "Use": "no"}, [("part-of-none", "Drawing parts A2")]),
        ({"Artwork": "cmap.svg", "Part": "1"}, []),  # it wants nothing
    ],
)
def test_what_a_line_asks(line: dict[str, str], code: list[tuple[str, str]], taken_up: TakenUp) -> None:
    _, problems = taken_up([{}], line)
    assert asked(problems) == code


@pytest.mark.parametrize(
    ("body", "line", "text"),
    [
        (WORD + SUN, {}, "Part 1 (“BROMBEL”) of camp.svg is cut alike on all 2."),
        (
            WORD + WORD.replace("340", "390") + SUN,
            {},
            "Parts 1 (“BROMBEL”) and 2 (“BROMBEL”) of camp.svg are cut alike",
        ),
        (WORD.replace("BROMBEL", "{Group}") + SUN, {}, ""),
        (WORD + SUN, {"Part": "2", "Use": "no"}, ""),  # someone has looked at them
        (WORD + SUN, {"Part": "1", "Replace by": "{Group}"}, ""),
        (WORD + SUN, {"Part": "2", "Film": "Red smooth"}, "Part 1"),
        (SUN + HILL, {}, ""),
    ],
)
def test_words_cut_alike_for_several_groups_are_asked(
    body: str, line: dict[str, str], text: str, taken_up: TakenUp
) -> None:
    _, problems = taken_up([{}], *[line] * bool(line), body=body)
    wrong = told(problems).get("sample-alike", "")
    assert wrong.startswith(text)
    assert bool(wrong) is bool(text)


@pytest.mark.parametrize(
    ("others", "typed", "text"),
    [
        (1, (), "“camp.svg”: part 2 is of the background's color, #ffffff, and stays open."),
        (2, (), "“camp.svg”: parts 2 and 3 are of the background's color, #ffffff, and stay open."),
        (3, (), "“camp.svg”: parts 2, 3 and 4 are of the background's color, #ffffff, and stay open."),
        (2, ("2",), "“camp.svg”: part 3 is of the background's color, #ffffff, and stays open."),  # 2 was looked at
        (1, ("2",), ""),
        (0, (), ""),
    ],
)
def test_what_a_picture_leaves_open_is_told_as_long_as_no_line_says_so(
    others: int, typed: Sequence[str], text: str, reading_of: Callable[..., Reading]
) -> None:
    job = reading_of(ROSTER, Designs=[HEADS, ["Camp", "Art", "artwork", "camp.svg", "", "", "", "", ""]]).job
    enclosed = [layer("#ffffff", block(100, 100 + 300 * at, 400 - 30 * at, 90), use=False) for at in range(others)]
    made = drawing(layer("#1f4630", block(1000, 100, 600, 700)), *enclosed)
    seen = Looked(made, parts_of(made, lambda _text: (0.0, 0.0, 0.0, 0.0)), Path())
    drawn = Drawn("camp.svg", job.designs[0], seen, 0.1)
    lines = {label: PartLine(Source("Drawing parts"), "camp.svg", label) for label in typed}
    problems = list(questions(job, drawn, (2, 3), Matched(lines, ()), {}))
    assert [problem.wrong for problem in problems] == [text] * bool(text)
    assert all(problem.rows == (2, 3) and problem.where.cell == "D2" for problem in problems)
