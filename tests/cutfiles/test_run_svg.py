"""The files to cut and their guides: closed outlines, mirrored exactly once, measuring what the workbook says."""

import io
import xml.etree.ElementTree as ET
from dataclasses import replace

import numpy as np
import pytest
import resvg_py
from numpy.typing import NDArray
from PIL import Image

from xlbatch.art.decal import Decal
from xlbatch.cutfiles.run_svg import LETTERS, cut_files
from xlbatch.film.layout import Layout, Lying, Run, Strip
from xlbatch.geometry.outline import Outline, Segment, pack
from xlbatch.job.job import DecalSpec, Film
from xlbatch.job.source import Source
from xlbatch.roster.settings import read_settings

SETTINGS = read_settings(None, "Picnic & <Co>")[0]
FILM = Film(
    Source("Film"), "Black smooth", "smooth", "black", 120, 100, (), (), 165, 5, 30, 15, "warm", "medium", False, 1
)
SPEC = DecalSpec(
    Source("Designs"), "Name", "Front", "text", "", "", "", "", "Black smooth", 1, "", None, None, None, "", True
)
SVG = "{http://www.w3.org/2000/svg}"
# an L, 40 wide and 60 high, its foot to the right, a square hole in the foot; the hole is drawn last
L_SHAPE: tuple[Segment, ...] = (
    ("M", (0, 0)), ("L", (40, 0)), ("L", (40, 20)), ("L", (15, 20)), ("L", (15, 60)), ("L", (0, 60)), ("Z", ()),
    ("M", (25, 5)), ("L", (25, 15)), ("L", (35, 15)), ("L", (35, 5)), ("Z", ()),
)  # fmt: skip
DOTS = 8  # a millimeter


def decal(number: int, text: str = "Ana", outlined: bool = True) -> Decal:
    outline = Outline(pack(L_SHAPE), 40, 60, 2, 280, 1500) if outlined else None
    return Decal(f"D{number:03d}", 1, SPEC, text, "Black smooth", "", 40, 60, outline)


def run_of(*lying: Lying, mirrored: bool = True) -> Run:
    strip = Strip(1, 10, 120, lying)
    return Run(1, FILM, 140, (strip,), mirrored, "roll")


def files_of(run: Run) -> dict[str, str]:
    return {file.name.split(" - ")[1]: file.text for file in cut_files(Layout((), (run,), ()), SETTINGS)}


def filled(svg: str) -> NDArray[np.bool_]:
    """The page as rendered: True where there is ink, DOTS dots a millimeter, bottom row first."""
    png = resvg_py.svg_to_bytes(svg_string=svg, background="white", dpi=DOTS * 25.4)
    return np.asarray(Image.open(io.BytesIO(bytes(png))).convert("L"))[::-1] < 128


def ink(svg: str) -> tuple[float, float, float, float]:
    """Left, lead, right and end of the ink, in mm."""
    along, across = np.nonzero(filled(svg))
    return across.min() / DOTS, along.min() / DOTS, (across.max() + 1) / DOTS, (along.max() + 1) / DOTS


@pytest.mark.parametrize("turned", [0, 90, 180, 270])
@pytest.mark.parametrize("mirrored", [True, False])
def test_the_ink_lies_where_the_layout_says(turned: int, mirrored: bool) -> None:
    lying = Lying(decal(1), 22.5, 31.25, turned)  # type: ignore[arg-type]  # one of the four, by the list above
    run = run_of(lying, mirrored=mirrored)
    left, lead, right, end = ink(next(iter(files_of(run).values())))
    assert (left, lead) == pytest.approx((22.5, 31.25), abs=0.1)
    assert (right - left, end - lead) == pytest.approx(run.ink_box, abs=0.1)


def test_a_page_is_mirrored_exactly_once() -> None:
    """As by matrix(-1 0 0 1 W 0) of SVG about the page's width W: the mirrored page is the plain one, flipped."""
    plain = filled(files_of(run_of(Lying(decal(1), 20, 30, 0), mirrored=False))["not mirrored.svg"])
    mirrored = filled(files_of(run_of(Lying(decal(1), 100 - 20 - 40, 30, 0)))["already mirrored.svg"])
    assert (mirrored == plain[:, ::-1]).all()
    assert not (mirrored == plain).all()


def test_an_upright_decal_reads_upright_seen_from_the_leading_end() -> None:
    """Not mirrored, the L's stem is at the left of its box and its foot at the leading end."""
    page = filled(files_of(run_of(Lying(decal(1), 20, 30, 0), mirrored=False))["not mirrored.svg"])
    assert page[80 * DOTS, 25 * DOTS]
    assert not page[80 * DOTS, 50 * DOTS]
    assert page[32 * DOTS, 58 * DOTS]


def test_a_quarter_turn_is_counterclockwise() -> None:
    """Turned so, the L's foot points up at the right, its stem lies along the bottom."""
    page = filled(files_of(run_of(Lying(decal(1), 20, 30, 90), mirrored=False))["not mirrored.svg"])
    assert page[35 * DOTS, 22 * DOTS]  # the stem's top, now at the left, beside the leading end
    assert page[68 * DOTS, 79 * DOTS]  # the foot's tip
    assert not page[68 * DOTS, 30 * DOTS]


def test_page_and_groups_are_as_agreed() -> None:
    root = ET.fromstring(files_of(run_of(Lying(decal(17), 0, 10, 0)))["already mirrored.svg"])
    assert (root.get("width"), root.get("height"), root.get("viewBox")) == ("100mm", "140mm", "0 0 100 140")
    (outer,) = root.findall(f"{SVG}g")
    (group,) = outer.findall(f"{SVG}g")
    assert group.get("id") == "D017"
    assert group.findtext(f"{SVG}title") == "D017 Ana, Black smooth"
    (path,) = group.findall(f"{SVG}path")
    assert {word[0] for word in (path.get("d") or "").split() if word[0].isalpha()} == {"M", "L", "Z"}


@pytest.mark.parametrize(
    ("typed", "title"),
    [
        ("Tom & <b>Ann</b>", "Tom & <b>Ann</b>"),
        ("a\x00b\x07 c\nd", "ab c d"),
        ("Zoë 🎈 שלום", "Zoë 🎈 שלום"),
        ('"]]>', '"]]>'),
        ("lone \ud800 surrogate", "lone surrogate"),
    ],
)
def test_any_text_makes_a_readable_file(typed: str, title: str) -> None:
    for text in files_of(run_of(Lying(decal(1, typed), 0, 10, 0))).values():
        root = ET.fromstring(text.encode("utf-8"))
        titles = [each.text for each in root.iter(f"{SVG}title")]
        assert f"D001 {title}, Black smooth" in titles
        assert titles[0] == "Picnic & <Co>, run 1, Black smooth"


def test_decals_known_by_size_stand_only_in_the_guide() -> None:
    sized = replace(decal(2), outline=None)
    files = files_of(run_of(Lying(decal(1), 0, 10, 0), Lying(sized, 50, 10, 0)))
    assert "D002" not in files["already mirrored.svg"]
    assert "D002" in files["guide.svg"]
    assert list(files_of(run_of(Lying(sized, 0, 10, 0)))) == ["guide.svg"]


def test_the_guide_shows_boxes_strip_cuts_and_a_square_of_one_inch() -> None:
    first, second = Strip(1, 10, 60, (Lying(decal(1), 0, 10, 0),)), Strip(2, 76, 54, (Lying(decal(2), 0, 76, 0),))
    run = replace(run_of(Lying(decal(1), 0, 10, 0)), strips=(first, second))
    root = ET.fromstring(files_of(run)["guide.svg"])
    boxes = [tuple(rect.get(at) for at in ("x", "y", "width", "height")) for rect in root.iter(f"{SVG}rect")]
    assert boxes == [("0", "70", "40", "60"), ("0", "4", "40", "60"), ("0", "0", "25.4", "25.4")]
    (cut,) = root.iter(f"{SVG}line")
    assert cut.get("y1") == cut.get("y2") == "67"  # in the middle of the gap from 70 to 76, from the far end
    assert {text.text for text in root.iter(f"{SVG}text")} == {"D001", "D002", "Strip 1", "Strip 2"}


def test_the_guide_writes_each_number_in_the_middle_of_its_box() -> None:
    """A box of 40 by 60 at (22.5, 31.25) on 140 mm of film: its top is 140 - 31.25 - 60 = 48.75 from the far end, its
    middle 42.5 across. Letters of at most 5 mm hang by half their height below the middle: 48.75 + 30 + 2.5 = 81.25; in
    a small box they are half as high as it is, or as wide as four of them need."""
    flat = replace(decal(2), width=40, height=6, outline=None)
    narrow = replace(decal(3), width=10, height=60, outline=None)
    lying = (Lying(decal(1), 22.5, 31.25, 0), Lying(flat, 0, 20, 0), Lying(narrow, 80, 20, 0))
    root = ET.fromstring(files_of(run_of(*lying))["guide.svg"])
    places = [tuple(text.get(at) for at in ("x", "y", "font-size")) for text in root.iter(f"{SVG}text")]
    assert LETTERS == 5
    assert places == [
        ("42.5", "81.25", "5"),
        ("20", "118.5", "3"),  # 140 - 20 - 6 + (6 + 3) / 2
        ("85", "91.25", "2.5"),  # 140 - 20 - 60 + (60 + 2.5) / 2
        ("1", "129", "4"),  # the strip's number, 1 mm above its beginning at 10
    ]


def test_the_same_layout_gives_the_same_bytes() -> None:
    run = run_of(Lying(decal(1), 1 / 3, 10 + 2 / 3, 90))
    assert files_of(run) == files_of(run)
    assert "0.3333" not in files_of(run)["already mirrored.svg"]


def test_a_test_cut_lies_in_the_leading_margin_and_is_measured() -> None:
    run = replace(run_of(Lying(decal(1), 22.5, 31.25, 0)), test_cut=5.0)
    text = files_of(run)["already mirrored.svg"]
    left, lead, right, end = ink(text)
    assert (left, lead) == pytest.approx((0, 2.5), abs=0.1)  # in the middle of the margin of 10
    assert (right - left, end - lead) == pytest.approx(run.ink_box, abs=0.1)
    assert text.index("test-cut") < text.index("D001")


def test_no_test_cut_unless_asked_for() -> None:
    assert "test-cut" not in files_of(run_of(Lying(decal(1), 22.5, 31.25, 0)))["already mirrored.svg"]
    assert not SETTINGS.test_cut
