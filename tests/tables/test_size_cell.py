"""Sizes with what people write beside them. Invented; common practice, no source."""

import pytest

from xlbatch.job.job import Class
from xlbatch.tables.size_cell import SizeCell, counted_sizes, read_size_cell

# what is typed => the size, how many, a color, a garment, (what else), ? where it is asked about
CELLS = """
M => M
2 x L => L|x2|?
2 x M => M|x2
12 x lg => L|x12|?
3XL (wants it loose) => 3XL|(wants it loose)
M? => M|?
M ?? => M|?
maybe M => M|?
M, I think => M|?
Navy M => M|Navy
M navy blue => M|navy blue
Large ($15) => L|($15)
L $15 => L|($15)
+ 2 € XL => XL|(+ 2 €)
M, thanks => M
M please! => M
yes, L => L
no, L => -
W's M => Ladies M
K's L => Youth L
2xM => -
2× M => M|x2
3 M => M|x3|?
3 small => S|x3|?
10 M => M|x10|?
100 M => -
2 youth M => Youth M|x2|?
2 youth => -
M x 2 => M|x2
M (x 3) => M|x3
M x3 => M|x3
1 M (for Ana) => M|(for Ana)|?
M (for Ana) x 2 => M|x2|(for Ana)
M [slim fit] => M|(slim fit)
M relaxed => M|(relaxed)|?
M, slim fit => M|(slim fit)
L oversized => L|(oversized)|?
black V-neck, M => M|black|V-neck tee
M, black hoodie => M|black|hoodie
hoodie, M, red => M|red|hoodie
M - runs small => M|(runs small)|?
M, late => M|(late)
M; late, very => M|(late, very)
M (tall) => M Tall
M tall => M Tall
M (L) => M|(L)|?
M (navy) => M|navy
M (hoodie) => M|hoodie
hoodie (navy) M => M|navy|hoodie
M (or L) => M|(or L)|?
M, red => M|red
M, maybe L => -|?
tbd => -
huh => -
youth M? => Youth M|?
YM - slim => Youth M|(slim)
2 x navy M => M|x2|navy
2 x M, navy => M|x2|navy
navy, M => M|navy
M / navy => M|navy
"""


def words(cell: SizeCell) -> str:
    many, note = f"x{cell.many}" * (cell.many != 1), f"({cell.note})" * bool(cell.note)
    return "|".join(filter(None, (cell.size or "-", many, cell.color, cell.garment, note, "?" * cell.doubtful)))


@pytest.mark.parametrize("line", CELLS.strip().splitlines())
def test_what_a_size_cell_says(line: str) -> None:
    typed, said = line.split(" => ")
    assert words(read_size_cell(typed)) == said


@pytest.mark.parametrize("whom", ["youth", "ladies"])
@pytest.mark.parametrize(
    ("typed", "said"),
    [("M?", "M|?"), ("2 x M", "M|x2"), ("M (late)", "M|(late)"), ("navy M", "M|navy"), ("M slim", "M|(slim)|?")],
)
def test_whom_it_is_for_may_be_known(typed: str, said: str, whom: Class) -> None:
    assert words(read_size_cell(typed, whom)) == f"{whom.capitalize()} {said}"


def test_a_long_text_is_a_remark() -> None:
    """A cell of a hundred signs is still looked at."""
    assert words(read_size_cell(f"M ({'x' * 96})")) == f"M|({'x' * 96})"
    assert words(read_size_cell(f"M ({'x' * 97})")) == "-"


@pytest.mark.parametrize(
    ("typed", "parts"),
    [
        ("2 x M, 1 x L", ("2 x M", "1 x L")),
        ("1xS 1xL", ("1xS", "1xL")),
        ("1 M, 2 L", ("1 M", "2 L")),
        ("1 XL, 1 M", ("1 XL", "1 M")),
        ("M, 2 x L", ("M", "2 x L")),
        ("M x 2, L", ("M x 2", "L")),
        ("2xS", ("2xS",)),
        ("2 x M", ("2 x M",)),
        ("M, L", ()),
        ("1 M, L", ()),
        ("1 M", ()),
        ("2 x M, foo", ()),
        ("1xS 1xfoo", ()),
    ],
)
def test_sizes_that_are_counted(typed: str, parts: tuple[str, ...]) -> None:
    assert counted_sizes(typed) == parts
