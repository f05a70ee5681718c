"""Drawings of kinds that the hundred do not have: how people and drawing programs also set a word, each with what its
ink is. Words are invented."""

import math
from collections.abc import Iterable

import pathops
from fontTools.svgLib.path import parse_path

from tests.parts.drawn_shapes import PAGE, Shape, box, d, disk, joined, letters, path, polygon, star, svg
from tests.parts.word_drawings import Made
from xlbatch.geometry.path import transform
from xlbatch.geometry.weld import border, path_of, weld
from xlbatch.lettering.arch import Arc, bent

INK, RED, GOLD = "#1f4630", "#c3202f", "#f0b429"


def each(shapes: Iterable[Shape], color: str = INK) -> str:
    return "".join(path(shape, color) for shape in shapes)


def turned(shapes: Iterable[Shape], degrees: float) -> list[Shape]:
    c, s = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
    return [transform(shape, (c, s, -s, c, 200 - 200 * c + 200 * s, 200 - 200 * s - 200 * c)) for shape in shapes]


def spread(shapes: Iterable[Shape], by: float) -> list[Shape]:
    """Letters moved apart, or into one another where `by` is negative, the middle one staying."""
    all_ = list(shapes)
    return [transform(s, (1, 0, 0, 1, by * (at - (len(all_) - 1) / 2), 0)) for at, s in enumerate(all_)]


def on_circle(shapes: Iterable[Shape], radius: float, heads_out: bool) -> list[Shape]:
    """Letters set with their feet at y 200 and their middle at x 200, put onto a circle about the page's middle."""
    upward = [transform(shape, (1, 0, 0, -1, -200, 200)) for shape in shapes]
    if heads_out:
        return [transform(bent(s, Arc(0, 0, radius)), (1, 0, 0, -1, 200, 200 - radius)) for s in upward]
    return [transform(bent(s, Arc(0, 0, -radius)), (1, 0, 0, -1, 200, 200 + radius)) for s in upward]


def made(name: str, text: str, body: str, word: dict[str, Shape], **more: object) -> Made:
    return Made(name, name, text, svg(body), word, **more)  # type: ignore[arg-type]


def two_words() -> Made:
    word = letters("Anton", "TIMM HIL", 50, 300, 200, 215)
    rest = [star(60 + 40 * n, 330, 12) for n in range(8)]
    return made("two words", "TIMM HIL", each(word) + each(rest), {INK: joined(word)})


def letters_into_one_another() -> Made:
    word = spread(letters("Archivo Black", "AVATORA", 60, 300, 200, 215), -3.5)
    whole = weld(path_of(joined(word)))
    rest = [disk(90, 310, 20), box(130, 300, 320, 320)]
    return made("into one another", "AVATORA", each(word) + each(rest), {INK: whole})


def umlauts() -> Made:
    word = letters("Arimo Bold", "Grüßemänn", 50, 300, 200, 215)
    return made("umlauts", "Grüßemänn", path(joined(word), INK) + each([star(200, 90, 30)]), {INK: joined(word)})


def under_a_shape() -> Made:
    word = letters("Anton", "FARNOW", 60, 260, 200, 225)
    body = each(word, INK) + path(star(320, 225, 26), GOLD) + path(box(60, 300, 340, 312), INK)
    return made("under a shape", "FARNOW", body, {INK: joined(word)})


def out_of_a_bar() -> Made:
    word = letters("Alfa Slab One", "BROMBEL", 40, 240, 200, 220)
    body = path(joined((box(40, 170, 360, 230), *word)), INK) + each([star(200, 120, 30), star(200, 290, 30)])
    return made("out of a bar", "BROMBEL", body, {"open": joined(word)})


def through_the_edge_of_a_bar() -> Made:
    """Letters as high as the bar they are cut out of: it falls apart."""
    word = letters("Anton", "HIMTIL", 70, 240, 200, 232)
    bar = path_of(box(40, 170, 360, 225))
    left = weld(pathops.op(bar, path_of(weld(path_of(joined(word)))), pathops.PathOp.DIFFERENCE, fix_winding=True))
    return made("through the edge", "HIMTIL", path(left, INK) + each([star(200, 100, 30)]), {"open": joined(word)})


def swash() -> Made:
    word = letters("Lobster", "Vorrel", 70, 240, 200, 205)
    tail = (("M", (95.0, 225.0)), ("C", (160.0, 205.0, 250.0, 250.0, 320.0, 212.0)),
            ("C", (250.0, 262.0, 160.0, 218.0, 95.0, 225.0)), ("Z", ()))  # fmt: skip
    whole = weld(path_of(joined((*word, polygon(((190, 200), (188, 232), (212, 232), (210, 200)))))))
    welded = weld(path_of(joined((whole, tail))))
    return made("swash", "Vorrel", path(welded, INK) + each([disk(200, 330, 30)]), {INK: welded}, straight=False)


def strokes_only() -> Made:
    lines = "M90 220V160L130 220V160M150 160V220M170 220V160L190 190L210 160V220M230 220V160H265M230 190H258"
    lines += "M285 160V220H320"
    body = f'<path d="{lines}" fill="none" stroke="{INK}" stroke-width="11"/>' + each([disk(200, 90, 30)])
    drawn = pathops.Path()
    parse_path(lines, drawn.getPen())
    drawn.stroke(11, pathops.LineCap.BUTT_CAP, pathops.LineJoin.MITER_JOIN, 4)
    drawn.convertConicsToQuads()
    return made("strokes only", "NIMFL", body, {INK: weld(drawn)})


def symbols() -> Made:
    word = letters("Anton", "TILLAT", 60, 260, 200, 225)
    kinds = "".join(f'<symbol id="s{at}" overflow="visible"><path d="{d(s)}"/></symbol>' for at, s in enumerate(word))
    used = "".join(f'<use href="#s{at}" fill="{INK}"/>' for at in range(len(word)))
    return made("symbols", "TILLAT", f"<defs>{kinds}</defs>{used}" + each([star(200, 100, 25)]), {INK: joined(word)})


def offset_page() -> Made:
    word = letters("Oswald Bold", "KESTRIM", 60, 260, 200, 225)
    inner = each(word) + each([star(200, 320, 25)])
    text = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="5in" height="360pt" viewBox="-150 90 {PAGE} {PAGE}">'
        '<g transform="translate(-150 90)"><svg width="100%" height="100%" '
        f'viewBox="0 0 {PAGE} {PAGE}">{inner}</svg></g></svg>'
    )
    return Made("offset page", "offset page", "KESTRIM", text, {INK: joined(word)})


def two_lines() -> Made:
    first, second = (letters("Anton", text, 45, 300, 200, y) for text, y in (("HOLLIPOP", 150), ("RAKETA", 215)))
    return made("two lines", "RAKETA", each([*first, *second, star(200, 310, 40)]), {INK: joined(second)})


def far_apart() -> Made:
    word = spread(letters("Archivo Black", "CAMP", 40, 200, 200, 215), 28)
    return made("far apart", "CAMP", each([*word, star(200, 320, 40)]), {INK: joined(word)})


def badge() -> Made:
    ring = path(joined((disk(200, 200, 190), disk(200, 200, 182))), INK)
    top = on_circle(letters("Anton", "OSTERVIK", 36, 260, 200, 200), 135, True)
    low = on_circle(letters("Anton", "ZEBROXA", 36, 200, 200, 200), 171, False)
    body = ring + each(top) + each(low) + each([star(200, 200, 60)])
    return made("badge", "ZEBROXA", body, {INK: joined(low)}, straight=False)


def descenders() -> Made:
    word = letters("Arimo Bold", "gyppsy", 60, 240, 200, 200)
    return made("descenders", "gyppsy", each([*word, box(60, 300, 340, 320)]), {INK: joined(word)})


def digits() -> Made:
    word = letters("Anton", "2031", 60, 240, 200, 225)
    return made("digits", "2031", each([*word, star(200, 110, 40)]), {INK: joined(word)})


def signs() -> Made:
    word = letters("Archivo Black", "O'Hil-Tam", 50, 300, 200, 215)
    return made("signs", "O'Hil-Tam", each([*word, star(200, 320, 30)]), {INK: joined(word)})


def between_rules() -> Made:
    word = letters("Anton", "WOBBIN", 50, 260, 200, 220)
    rules = [box(60, 160, 340, 166), box(60, 224, 340, 230)]
    return made("between rules", "WOBBIN", each([*rules, *word]), {INK: joined(word)})


def hollow_letters() -> Made:
    """Only the line about each letter is drawn."""
    word = letters("Anton", "TILTUNA", 60, 280, 200, 225)
    body = "".join(f'<path d="{d(s)}" fill="none" stroke="{INK}" stroke-width="5"/>' for s in word)
    line = path_of(joined(word))
    line.stroke(5, pathops.LineCap.BUTT_CAP, pathops.LineJoin.MITER_JOIN, 4)
    line.convertConicsToQuads()
    return made("hollow", "TILTUNA", body + each([star(200, 100, 30)]), {INK: weld(line)})


def inlaid() -> Made:
    """A lighter letter within each letter."""
    word = letters("Archivo Black", "GROVE", 70, 280, 200, 225)
    outer = border(weld(path_of(joined(word))), 6)
    body = path(outer, INK) + each(word, GOLD) + path(box(60, 300, 340, 312), INK)
    return made("inlaid", "GROVE", body, {GOLD: joined(word), INK: outer})


def sloped_underlined() -> Made:
    word = turned(letters("Anton", "YIDDELBY", 50, 260, 200, 205), -12)
    bar = turned([box(70, 216, 330, 224)], -12)
    return made("sloped", "YIDDELBY", each([*word, *bar, disk(200, 330, 30)]), {INK: joined(word)}, straight=False)


def three_letters() -> Made:
    word = letters("Oswald Bold", "ANA", 60, 240, 200, 225)
    return made("three letters", "ANA", each([*word, star(110, 205, 22), star(290, 205, 22)]), {INK: joined(word)})


def large_initial() -> Made:
    first = letters("Alfa Slab One", "B", 90, 100, 90, 225)
    word = [*first, *letters("Alfa Slab One", "rombel", 62, 200, 235, 225)]
    return made("large initial", "Brombel", each([*word, box(60, 300, 340, 312)]), {INK: joined(word)})


def skewed_shadow() -> Made:
    word = letters("Anton", "QUAGGLE", 60, 280, 200, 225)
    shadow = transform(joined(word), (1, 0, 0.5, 0.5, -115, 112))
    body = path(shadow, "#999999") + each(word) + each([star(200, 100, 30)])
    return made("skewed shadow", "QUAGGLE", body, {INK: joined(word)})


def bouncing() -> Made:
    shapes = letters("Archivo Black", "MINNIFIL", 40, 300, 200, 215)
    word = [transform(s, (1, 0, 0, 1, 0, 14 * (-1) ** at)) for at, s in enumerate(shapes)]
    return made("bouncing", "MINNIFIL", each([*word, star(200, 330, 30)]), {INK: joined(word)}, straight=False)


def more_drawings() -> tuple[Made, ...]:
    """The drawings, the same every time."""
    return tuple(
        make()
        for make in (
            *(two_words, letters_into_one_another, umlauts, under_a_shape, out_of_a_bar, through_the_edge_of_a_bar),
            *(swash, strokes_only, symbols, offset_page, two_lines, far_apart, badge, descenders, digits, signs),
            *(between_rules, hollow_letters, inlaid, sloped_underlined, three_letters, large_initial, skewed_shadow),
            *(bouncing,),
        )
    )
