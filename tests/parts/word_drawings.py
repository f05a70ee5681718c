"""A hundred drawings with a word in them, of eight kinds, each made from a seed: the SVG, and what the word's ink is.

Words are invented. Letters stand as separate paths, as one path, in a group, or in one path with all of their color, as
drawing programs leave them."""

import math
import random
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field

from tests.parts.drawn_shapes import (
    FootLine,
    Shape,
    around,
    box,
    d,
    disk,
    joined,
    letters,
    path,
    polygon,
    star,
    svg,
    tree,
)
from xlbatch.geometry.path import transform
from xlbatch.geometry.weld import border, path_of, tidy, weld
from xlbatch.lettering.arch import arc_of, bent

KINDS = ("ring", "over", "script", "open", "border", "worn", "arc", "sheet")
WORDS = (
    *(
        "Brombel",
        "TILTUNA",
        "Vorrel",
        "OKALINDA",
        "Jéliri",
        "Pödd",
        "HÜRRA",
        "Minnifil",
        "Quaggle",
        "ZEBROX",
        "Ostervik",
    ),
    *("Lumpi", "FARNOW", "Tjälle", "Wobbin", "RAKETA", "Yiddelby", "GROVE", "Hollipop", "Snjor"),
)
FONTS = ("Archivo Black", "Anton", "Arimo Bold", "Alfa Slab One", "Saira Condensed", "Oswald Bold")


@dataclass(frozen=True)
class Made:
    """A drawing: its file's text, and the word in it by color (`open`: as holes), in page units, y downward.

    `line` is what the word stands on, `copies` how other colors repeat it: grown so much, and moved. `loose` bits may
    go with the word or not."""

    name: str
    kind: str
    text: str
    svg: str
    word: dict[str, Shape]
    straight: bool = True
    loose: tuple[Shape, ...] = field(default=())
    line: FootLine = field(default_factory=FootLine)
    copies: Mapping[str, tuple[float, complex]] = field(default_factory=dict)


def drawings() -> tuple[Made, ...]:
    """The hundred drawings, the same every time."""
    return tuple(_made(number) for number in range(100))


def _made(number: int) -> Made:
    dice = random.Random(number)
    kind = KINDS[number % len(KINDS)]
    return _KINDS[kind](f"{kind} {number:02}", dice)


def arranged(dice: random.Random, word: Sequence[Shape], rest: Sequence[Shape], color: str) -> str:
    """Word and rest in one color, as one of the ways in which drawing programs leave them."""
    way = dice.choice(("flat", "flat", "grouped", "word one path", "all one path", "word one path", "rest first"))
    parts_of_rest = [path(shape, color) for shape in rest]
    if way == "all one path":
        return path(joined((*rest, *word)), color)
    if way == "word one path":
        return path(joined(word), color) + "".join(parts_of_rest)
    if way == "grouped":
        return f"<g>{''.join(path(s, color) for s in word)}</g><g>{''.join(parts_of_rest)}</g>"
    mine = [path(shape, color) for shape in word]
    return "".join(mine + parts_of_rest if way == "flat" else parts_of_rest + mine)


def _picked(dice: random.Random) -> tuple[str, str]:
    return dice.choice(WORDS), dice.choice(FONTS)


def _reach(shapes: Iterable[Shape]) -> float:
    return max(abs(at[i] - 200) for shape in shapes for _, at in shape for i in range(0, len(at), 2))


def _ring(name: str, dice: random.Random) -> Made:
    text, font = _picked(dice)
    word = letters(font, text, dice.uniform(35, 60), 220, 200, 215)
    rest = [shape for _, shape in around(dice, _reach(word) - dice.uniform(0, 8))]
    if dice.random() < 0.4:
        rest += letters(font, dice.choice(("CAMP", "TRIP", "CLUB")), 16, 100, 200, 255)
    return Made(name, "ring", text, svg(arranged(dice, word, rest, "#000000")), {"#000000": joined(word)})


def _over(name: str, dice: random.Random) -> Made:
    text, font = _picked(dice)
    word = letters(font, text, dice.uniform(30, 45), 200, 200, 215)
    ground = dice.choice((box(80, 160, 320, 235), disk(200, 200, 130, 0.6), box(70, 165, 330, 230, 12)))
    color = dice.choice(("#ffffff", "#f0b429", "#ffffff", "#1a1a1a"))
    body = path(ground, "#1a1a1a") + "".join(path(s, "#1a1a1a") for s in (tree(130, 150, 60), tree(270, 150, 60)))
    body += path(star(200, 100, 22), "#c3202f")
    mine = [path(s, color) for s in word] if dice.random() < 0.5 else [path(joined(word), color)]
    body += f"<g>{''.join(mine)}</g>" if dice.random() < 0.3 or color == "#1a1a1a" else "".join(mine)
    return Made(name, "over", text, svg(body), {color: joined(word)})


def _script(name: str, dice: random.Random) -> Made:
    text = dice.choice([word for word in WORDS if not word.isupper()])
    word = letters("Lobster", text, dice.uniform(50, 70), 230, 200, 215)
    welded = weld(path_of(joined(word)))
    rest = [disk(200, 250, 80, 0.06)] if dice.random() < 0.5 else []
    rest += [shape for _, shape in around(dice, 125)]
    return Made(name, "script", text, svg(arranged(dice, [welded], rest, "#1f4fa3")), {"#1f4fa3": welded}, False)


def _open(name: str, dice: random.Random) -> Made:
    text, font = _picked(dice)
    word = letters(font, text, dice.uniform(35, 50), 210, 200, 217)
    ground = dice.choice((disk(200, 200, 150), box(70, 130, 330, 270), disk(200, 200, 160, 0.7)))
    holes = [star(200, 145, 12), star(200, 250, 10)] if dice.random() < 0.6 else []
    body = path(joined((ground, *holes, *word)), "#1f4630")
    if dice.random() < 0.4:
        body += path(star(200, 30, 18), "#1f4630")
    return Made(name, "open", text, svg(body), {"open": joined(word)}, line=FootLine(217))


def _border(name: str, dice: random.Random) -> Made:
    text, font = _picked(dice)
    word = letters(font, text, dice.uniform(35, 55), 240, 200, 215)
    way = dice.choice(("stroke", "grown", "shadow", "grown and shadow", "knocked out"))
    rest = "".join(path(shape, "#c3202f") for _, shape in around(dice, _reach(word) + 12))
    found: dict[str, Shape] = {"#f0b429": joined(word)}
    copies: dict[str, tuple[float, complex]] = {}
    body = rest
    wide = dice.uniform(2.0, 4.0)
    if "shadow" in way:
        x, y = dice.uniform(2, 5), dice.uniform(2, 5)
        moved = transform(joined(word), (1, 0, 0, 1, x, y))
        found["#17233f"], copies["#17233f"] = moved, (0.0, complex(x, y))
        body += path(moved, "#17233f")
    if "grown" in way:
        grown = border(weld(path_of(joined(word))), wide)
        found["#1a1a1a"], copies["#1a1a1a"] = grown, (wide, 0j)
        body += path(grown, "#1a1a1a")
    if way == "knocked out":
        ground = box(60, 165, 340, 230)
        body += path(joined((ground, *word)), "#1a1a1a")
        found["open"], copies["open"] = joined(word), (0.0, 0j)
    mine = joined(word)
    if way == "stroke":
        more = f' stroke="#1a1a1a" stroke-width="{2 * wide:.3f}" stroke-linejoin="round" paint-order="stroke"'
        body += "".join(path(s, "#f0b429", more) for s in word)
        found["#1a1a1a"], copies["#1a1a1a"] = border(weld(path_of(mine)), wide), (wide, 0j)
    else:
        body += path(mine, "#f0b429") if dice.random() < 0.5 else "".join(path(s, "#f0b429") for s in word)
    return Made(name, "border", text, svg(body), found, copies=copies)


def _specks(dice: random.Random, shapes: Sequence[Shape], many: int) -> list[Shape]:
    """Little holes strewn over the box of the shapes."""
    xs = [at[i] for shape in shapes for _, at in shape for i in range(0, len(at), 2)]
    ys = [at[i] for shape in shapes for _, at in shape for i in range(1, len(at), 2)]
    found = []
    for _ in range(many):
        x, y, r = dice.uniform(min(xs), max(xs)), dice.uniform(min(ys), max(ys)), dice.uniform(0.4, 1.3)
        found.append(polygon([(x + r * dice.uniform(0.5, 1) * math.cos(a), y + r * dice.uniform(0.5, 1) * math.sin(a))
                              for a in (0.3, 1.5, 2.9, 4.1, 5.3)]))  # fmt: skip
    return found


def _worn(name: str, dice: random.Random) -> Made:
    import pathops

    text, font = _picked(dice)
    word = letters(font, text, dice.uniform(40, 60), 230, 200, 215)
    rest = [shape for _, shape in around(dice, _reach(word))]

    def worn(shapes: Sequence[Shape], many: int) -> list[Shape]:
        holes = tidy(path_of(joined(_specks(dice, shapes, many))))
        return [_cut(shape, holes) for shape in shapes]

    def _cut(shape: Shape, holes: pathops.Path) -> Shape:
        whole = path_of(shape)
        whole.fillType = pathops.FillType.EVEN_ODD
        return weld(pathops.op(whole, holes, pathops.PathOp.DIFFERENCE, fix_winding=True))

    mine = worn(word, dice.randint(60, 160))
    loose = _specks(dice, word, dice.randint(0, 6)) if dice.random() < 0.5 else []
    inked = tidy(path_of(joined(mine)))
    loose = [s for s in loose if not len(pathops.op(path_of(s), inked, pathops.PathOp.INTERSECTION))]
    body = arranged(dice, mine, [*worn(rest, 60), *loose], "#6b1f2e")
    return Made(name, "worn", text, svg(body), {"#6b1f2e": joined(mine)}, loose=tuple(loose))


def _arc(name: str, dice: random.Random) -> Made:
    text, font = _picked(dice)
    word = letters(font, text, dice.uniform(28, 42), 210, 200, 200)
    flipped = [transform(shape, (1, 0, 0, -1, 0, 200)) for shape in word]  # y upward, feet at 0
    xs = [at[i] for shape in word for _, at in shape for i in range(0, len(at), 2)]
    if dice.random() < 0.6:
        arc = arc_of(min(xs), max(xs), 0.0, dice.choice((-1, 1)) * dice.uniform(40, 120))
        placed = [transform(bent(shape, arc), (1, 0, 0, -1, 200, 150)) for shape in flipped]
        rest = [star(200, 220, 40), *(disk(120 + 20 * n, 300, 6) for n in range(9))]
        line = FootLine(150, middle=arc.center, radius=arc.radius)
    else:
        a = math.radians(dice.choice((-1, 1)) * dice.uniform(8, 25))
        c, s = math.cos(a), math.sin(a)
        turn = (c, s, -s, c, 200 - 200 * c + 200 * s, 200 - 200 * s - 200 * c)
        placed = [transform(shape, turn) for shape in word]
        rest = [shape for _, shape in around(dice, _reach(placed))]
        line = FootLine(200, angle=a)
    body = arranged(dice, placed, rest, "#54307c")
    return Made(name, "arc", text, svg(body), {"#54307c": joined(placed)}, False, line=line)


def _sheet(name: str, dice: random.Random) -> Made:
    text, font = _picked(dice)
    word = letters(font, text, dice.uniform(35, 55), 230, 200, 215)
    style = "<style>.a{fill:#c3202f}.b,.c .d{fill:#1f4fa3;fill-rule:evenodd}@media print{.a{fill:#000}}</style>"
    rest = around(dice, _reach(word) + 2, 2)
    other = "".join(f'<path class="{"ab"[number]}" fill-rule="evenodd" d="{d(shape)}"/>' for number, shape in rest)
    if dice.random() < 0.5:
        mine = f'<g class="c">{"".join(f"""<path class="d" d="{d(s)}"/>""" for s in word)}</g>'
    else:
        mine = f'<path class="b" d="{d(joined(word))}"/>'
    body = f'<g id="layer1">{other}{mine}</g>' if dice.random() < 0.5 else mine + other
    return Made(name, "sheet", text, svg(body, style), {"#1f4fa3": joined(word)})


_KINDS: dict[str, Callable[[str, random.Random], Made]] = {
    "ring": _ring,
    "over": _over,
    "script": _script,
    "open": _open,
    "border": _border,
    "worn": _worn,
    "arc": _arc,
    "sheet": _sheet,
}
