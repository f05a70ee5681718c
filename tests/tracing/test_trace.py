"""Pictures become outlines: as exact as their dots allow, each color in its place, and what is no drawing is named."""

import struct
import zlib
from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest
from PIL import Image, ImageDraw, ImageFilter

from tests.drawings import read_artwork
from tests.tracing.pictures import BADGE, FADES, PLAIN, SIDE, TWO, by_color, drawn, off, saved, svg
from xlbatch.geometry.ink import Ink
from xlbatch.geometry.outline import Segment, Segments
from xlbatch.geometry.path import bounds, signed_area, transform
from xlbatch.svg.artwork import Drawing, drawing_of
from xlbatch.svg.layer import Layers
from xlbatch.tracing.trace import COARSEST, trace

RED, BLUE = "#dd0000", "#0000aa"


def traced(path: Path) -> Layers:
    found = trace(path)
    assert isinstance(found, Layers), found
    return found


def told(found: Layers) -> set[str]:
    return {note.code for note in found.notes}


def truth(shapes: str, folder: Path) -> dict[str, tuple[Segment, ...]]:
    """The drawing's own outlines, in dots, what is hidden left out."""
    file = folder / "truth.svg"
    file.write_text(svg(shapes), encoding="utf-8")
    drawing = read_artwork(file, apart=True)
    assert isinstance(drawing, Drawing)
    scale = SIDE / 2000  # a drawing is read at 2,000 units across
    return {color: transform(tuple(segments(ink)), (scale, 0, 0, scale, 0, 0)) for color, ink in drawing.fills.items()}


def segments(ink: Ink) -> Segments:
    return Segments(ink.verbs, ink.points.tobytes())


def test_a_black_drawing_is_traced_within_a_fraction_of_a_dot(tmp_path: Path) -> None:
    found = by_color(traced(saved(drawn(PLAIN), tmp_path / "plain.png")))
    (ours,) = found.values()
    away = off(ours, truth(PLAIN, tmp_path)["#000000"])
    assert away.mean() < 0.15
    assert np.quantile(away, 0.99) < 0.6  # corners that the dots have rounded


def test_corners_stay_sharp(tmp_path: Path) -> None:
    """Each corner of a square has a point of the outline within 0.4 dots, though its own dot is a quarter covered."""
    shape = '<path d="M100.5 100.5H700.5V700.5H100.5Z"/>'
    (ours,) = by_color(traced(saved(drawn(shape), tmp_path / "square.png"))).values()
    ends = np.array([at[-2:] for _, at in ours if at])
    for corner in ((100.5, 99.5), (700.5, 99.5), (700.5, 699.5), (100.5, 699.5)):
        assert np.hypot(*(ends - corner).T).min() < 0.4
    assert sum(verb == "L" for verb, _ in ours) == 4


@pytest.mark.parametrize("kind", ["png", "jpg", "webp", "clear"])
def test_each_color_has_its_area(kind: str, tmp_path: Path) -> None:
    image = drawn(BADGE, None if kind == "clear" else "white")
    how = {"quality": 90, "subsampling": 0} if kind == "jpg" else {"lossless": True} if kind == "webp" else {}
    found = traced(saved(image, tmp_path / f"badge.{'png' if kind == 'clear' else kind}", **how))
    drawing = drawing_of(found, apart=True)
    assert isinstance(drawing, Drawing)
    areas = sorted(ink.area for ink in drawing.fills.values())
    wanted = truth(BADGE, tmp_path)
    if kind != "clear":  # white is then the background, enclosed
        assert [layer.color for layer in found.layers if not layer.use] == ["#ffffff"]
        del wanted["#ffffff"]
    assert areas == pytest.approx(sorted(signed_area(theirs) for theirs in wanted.values()), rel=0.01)


def test_colors_that_touch_lie_edge_to_edge(tmp_path: Path) -> None:
    """What is seen of all of them is what they are together."""
    found = traced(saved(drawn(BADGE, None), tmp_path / "badge.png"))
    drawing = drawing_of(found, apart=True)
    assert isinstance(drawing, Drawing)
    assert sum(ink.area for ink in drawing.fills.values()) == pytest.approx(np.pi * 340**2, rel=1e-3)


def test_the_color_that_holds_the_others_is_drawn_first(tmp_path: Path) -> None:
    found = traced(saved(drawn(BADGE, None), tmp_path / "badge.png"))
    assert [layer.color for layer in found.layers][:2] == ["#1144aa", "#ffcc33"]


def test_a_picture_is_upright_and_y_runs_upward(tmp_path: Path) -> None:
    (box,) = [
        bounds(ours) for color, ours in by_color(traced(saved(drawn(TWO), tmp_path / "a.png"))).items() if color == BLUE
    ]
    assert box == pytest.approx((430, 420, 690, 680), abs=0.5)


def test_a_picture_turned_by_its_camera_is_turned_back(tmp_path: Path) -> None:
    exif = Image.Exif()
    exif[0x0112] = 6  # held a quarter turn to the left
    path = saved(drawn(TWO).rotate(90), tmp_path / "turned.jpg", exif=exif, quality=95, subsampling=0)
    found = traced(path)
    blue = max(by_color(found).items(), key=lambda each: int(each[0][5:], 16))[1]
    assert bounds(blue) == pytest.approx((430, 420, 690, 680), abs=1)
    assert "picture-changed" in told(found)


def test_colors_for_a_press_become_colors_of_a_screen(tmp_path: Path) -> None:
    found = traced(saved(drawn(TWO).convert("CMYK"), tmp_path / "press.jpg", quality=95))
    assert len(by_color(found)) == 2
    assert "picture-changed" in told(found)


def test_sixteen_bits_are_read(tmp_path: Path) -> None:
    gray = np.asarray(drawn(PLAIN).convert("L")).astype(np.uint16) * 257
    found = traced(saved(Image.fromarray(gray), tmp_path / "gray.png"))
    assert list(by_color(found)) == ["#000000"]
    assert "picture-changed" in told(found)
    (tmp_path / "colors.png").write_bytes(sixteen_bits(np.asarray(drawn(TWO))))
    assert set(by_color(traced(tmp_path / "colors.png"))) == {RED, BLUE}


def sixteen_bits(rgb: np.ndarray[tuple[int, ...], np.dtype[np.uint8]]) -> bytes:
    """A PNG file with 16 bits a channel (PNG 3, 4.1 and 11.2), which Pillow itself does not write."""
    rows = b"".join(b"\0" + (line.astype(">u2") * 257).tobytes() for line in rgb)
    return png(rgb.shape[1], rgb.shape[0], rows)


def png(across: int, down: int, rows: bytes) -> bytes:
    """A PNG file of red, green and blue with 16 bits each, whatever its rows hold."""
    head = struct.pack(">IIBBBBB", across, down, 16, 2, 0, 0, 0)
    chunks = ((b"IHDR", head), (b"IDAT", zlib.compress(rows)), (b"IEND", b""))
    return b"\x89PNG\r\n\x1a\n" + b"".join(
        struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data)) for name, data in chunks
    )


@pytest.mark.parametrize("white", [False, True])
@pytest.mark.parametrize("spread", [4, 10])
def test_a_shadow_around_a_shape_is_left_out(white: bool, spread: int, tmp_path: Path) -> None:
    """The shape keeps its size, whether the shadow fades into nothing or into white."""
    shape = drawn(TWO, None)
    glow = Image.new("RGBA", shape.size, "#000000")
    glow.putalpha(shape.getchannel("A").filter(ImageFilter.GaussianBlur(spread)).point(lambda level: level * 0.6))
    glow.alpha_composite(shape)
    if white:
        page = Image.new("RGBA", shape.size, "white")
        page.alpha_composite(glow)
        glow = page.convert("RGB")
    found = traced(saved(glow, tmp_path / "glow.png"))
    assert set(by_color(found)) == {RED, BLUE}
    assert bounds(by_color(found)[RED]) == pytest.approx((120, 120, 560, 680), abs=1.5)
    assert "picture-left-out" in told(found)


def test_near_colors_are_one_and_at_most_six_are_left(tmp_path: Path) -> None:
    shades = ("#cc0000", "#ce0100", "#113399", "#1f44aa", "#118833", "#eecc22", "#000000", "#ff8811", "#8822aa")
    bars = "".join(
        f'<rect x="{40 + 80 * number}" y="40" width="80" height="720" fill="{color}"/>'
        for number, color in enumerate(shades)
    )
    found = traced(saved(drawn(bars), tmp_path / "bars.png"))
    assert len(by_color(found)) == 6
    (note,) = [note for note in found.notes if note.code == "picture-colors"]
    assert note.facts["count"] == 8


def test_the_background_is_what_is_in_the_corners(tmp_path: Path) -> None:
    found = traced(saved(drawn(TWO, "#118833"), tmp_path / "green.png"))
    assert set(by_color(found)) == {RED, BLUE}
    assert "picture-background" in told(found)


def test_the_widest_it_is_good_for(tmp_path: Path) -> None:
    """As many dots as the drawing has, each `COARSEST` wide; fewer where it was made larger than it had dots for."""
    sharp = traced(saved(drawn(TWO), tmp_path / "sharp.png")).widest
    assert sharp == pytest.approx((690 - 120) * COARSEST, rel=0.05)
    large = drawn(TWO, width=200).resize((SIDE, SIDE), Image.Resampling.BICUBIC)
    enlarged = traced(saved(large, tmp_path / "large.png")).widest
    assert sharp
    assert enlarged
    assert enlarged < sharp / 2


def reason(path: Path) -> str:
    found = trace(path)
    assert not isinstance(found, Layers)
    (fault,) = found
    assert fault.remedy.endswith(".")
    assert not set("{}") & set(fault.reason + fault.remedy)
    return fault.reason


def checkered(shape: Image.Image) -> Image.Image:
    page = Image.new("RGB", shape.size, "white")
    draw = ImageDraw.Draw(page)
    for row in range(0, SIDE, 16):
        for column in range(row // 16 % 2 * 16, SIDE, 32):
            draw.rectangle((column, row, column + 15, row + 15), "#cccccc")
    page.paste(shape, (0, 0), shape)
    return page


def scene() -> Image.Image:
    """Nothing flat anywhere: noise in all colors, smoothed a little, as in a photograph."""
    noise = np.random.default_rng(7).integers(0, 256, (SIDE, SIDE, 3), dtype=np.uint8)
    return Image.fromarray(noise).filter(ImageFilter.GaussianBlur(1))


def animated(path: Path) -> Path:
    return saved(drawn(TWO), path, save_all=True, append_images=[drawn(PLAIN)])


def halved(path: Path, **how: object) -> Path:
    data = saved(drawn(BADGE), path, **how).read_bytes()
    path.write_bytes(data[: len(data) // 2])
    return path


def written(path: Path, data: bytes) -> Path:
    path.write_bytes(data)
    return path


BAD: dict[str, tuple[Callable[[Path], Path], str]] = {
    "fading": (lambda at: saved(drawn(FADES), at / "a.png"), "fade"),
    "photograph": (lambda at: saved(scene(), at / "a.jpg"), "photograph"),
    "checkerboard": (lambda at: saved(checkered(drawn(TWO, None)), at / "a.png"), "checkerboard"),
    "checkerboard jpg": (lambda at: saved(checkered(drawn(TWO, None)), at / "a.jpg"), "checkerboard"),
    "tiny": (lambda at: saved(drawn(TWO, width=20), at / "a.png"), "only 20 by 20"),
    "huge": (lambda at: saved(Image.new("1", (12_000, 12_000)), at / "a.png"), "12,000 by 12,000"),
    "bomb": (lambda at: written(at / "a.png", png(60_000, 60_000, bytes(1_000_000))), "larger than any drawing"),
    "cut off": (lambda at: halved(at / "a.png"), "cut off"),
    "cut off jpg": (lambda at: halved(at / "a.jpg"), "cut off"),
    "animated": (lambda at: animated(at / "a.png"), "moving"),
    "animated webp": (lambda at: animated(at / "a.webp"), "moving"),
    "gif": (lambda at: saved(drawn(TWO), at / "a.gif"), "GIF"),
    "blank": (lambda at: saved(Image.new("RGB", (400, 400), "white"), at / "a.png"), "nothing but"),
    "blurred": (lambda at: saved(drawn(TWO).filter(ImageFilter.GaussianBlur(9)), at / "a.png"), ""),
}


@pytest.mark.filterwarnings("ignore")
@pytest.mark.parametrize("what", BAD)
def test_what_is_no_drawing_is_told_in_a_sentence(what: str, tmp_path: Path) -> None:
    make, words = BAD[what]
    assert words in reason(make(tmp_path))


@pytest.mark.parametrize(
    ("head", "words"),
    [
        (b"\0\0\0\x18ftypheic\0\0\0\0", "HEIC"),
        (b"", "damaged"),
        (b"just words", "no picture"),
        (b"\x89PNG\r\n\x1a\n" + bytes(40), "damaged"),
        (b"\xff\xd8\xff\xe0" + bytes(40), "damaged"),
        (b"RIFF\0\0\0\0WEBP" + bytes(40), "damaged"),
    ],
)
def test_what_is_no_picture_is_told(head: bytes, words: str, tmp_path: Path) -> None:
    path = tmp_path / "a.png"
    path.write_bytes(head)
    assert words in reason(path)


def test_a_file_is_known_by_its_bytes_not_its_name(tmp_path: Path) -> None:
    path = saved(drawn(TWO), tmp_path / "named.jpg", format="PNG")
    assert set(by_color(traced(path))) == {RED, BLUE}


def test_where_colors_touch_the_lower_goes_on_under_the_upper(tmp_path: Path) -> None:
    """Half a millimeter in a drawing ten inches wide, here 680 dots; laid side by side, they only touch."""
    square = '<path d="M60 60H740V740H60Z" fill="#1144aa"/><path d="M200 200H600V600H200Z" fill="#ffcc33"/>'
    found = traced(saved(drawn(square), tmp_path / "square.png"))
    blue = abs(signed_area(by_color(found)["#1144aa"]))
    under = 0.5 * 680 / 254
    assert blue == pytest.approx(680**2 - (400 - 2 * under) ** 2, rel=1e-3)
    apart = drawing_of(found, apart=True)
    assert isinstance(apart, Drawing)
    assert apart.fills["#1144aa"].area == pytest.approx(680**2 - 400**2, rel=1e-3)


def test_a_small_hole_under_an_upper_color_is_filled(tmp_path: Path) -> None:
    dots = '<path d="M60 60H740V740H60Z" fill="#1144aa"/><circle cx="400" cy="400" r="4" fill="#ffcc33"/>'
    image = drawn(dots + '<circle cx="200" cy="200" r="60" fill="#ffcc33"/>')
    found = by_color(traced(saved(image, tmp_path / "a.png")))
    assert sum(verb == "M" for verb, _ in found["#1144aa"]) == 2
