"""Which dots are worked with: at most 3,200 across, upright, red, green, blue and cover."""

from pathlib import Path

import numpy as np
import pytest
from PIL import Image

from tests.tracing.pictures import saved
from xlbatch.problems.phrases import phrase
from xlbatch.tracing.picture_faults import Unfit
from xlbatch.tracing.raster import Raster, dots_of, read_raster, smaller


@pytest.mark.parametrize(
    ("size", "shape"),
    [
        ((3200, 90), (90, 3200)),
        ((6400, 90), (45, 3200)),
        ((90, 4800), (3200, 60)),
        ((3300, 1), (1, 3200)),
        ((9600, 1), (1, 3200)),
    ],
)
def test_a_large_picture_is_made_smaller(size: tuple[int, int], shape: tuple[int, int]) -> None:
    assert dots_of(Image.new("L", size, 7)).shape == (*shape, 4)


def test_how_wide_it_was_is_remembered(tmp_path: Path) -> None:
    raster = read_raster(saved(Image.new("RGB", (4800, 90), (9, 8, 7)), tmp_path / "a.png"))
    assert (raster.dots.shape, raster.across, raster.changes, raster.is_sharp) == ((60, 3200, 4), 4800, (), False)
    assert (raster.dots == (9, 8, 7, 255)).all()


def test_fewer_dots_are_the_means_of_those_before() -> None:
    dots = np.zeros((10, 40, 4), dtype=np.uint8)
    dots[:, ::2] = 200
    found = smaller(Raster(dots, 99, ("turned",)), 0.5)
    assert (found.dots.shape, found.across, found.changes) == ((5, 20, 4), 99, ("turned",))
    assert (found.dots == 100).all()
    assert smaller(Raster(dots, 99), 0.01).dots.shape == (1, 1, 4)


@pytest.mark.parametrize(
    ("image", "dot"),
    [
        (Image.new("RGBA", (70, 70), (200, 100, 50, 128)), (100, 50, 25, 128)),  # colors by how far they cover
        (Image.new("LA", (70, 70), (200, 128)), (100, 100, 100, 128)),
        (Image.new("1", (70, 70), 1), (255, 255, 255, 255)),
        (Image.fromarray(np.full((70, 70), 0x8040, dtype=np.uint16)), (128, 128, 128, 255)),
        (Image.fromarray(np.full((70, 70), 256, dtype=np.uint16)), (1, 1, 1, 255)),
        (Image.fromarray(np.full((70, 70), 255, dtype=np.uint16)), (255, 255, 255, 255)),  # of 8 bits after all
    ],
)
def test_every_kind_of_dot_becomes_red_green_blue_and_cover(image: Image.Image, dot: tuple[int, ...]) -> None:
    assert dots_of(image)[3, 3].tolist() == pytest.approx(list(dot), abs=1)


@pytest.mark.parametrize(
    ("mode", "turned", "changes"),
    [("RGB", 1, []), ("CMYK", 1, ["cmyk"]), ("RGB", 6, ["turned"]), ("CMYK", 3, ["cmyk", "turned"])],
)
def test_what_was_done_to_a_picture_is_said(mode: str, turned: int, changes: list[str], tmp_path: Path) -> None:
    exif = Image.Exif()
    exif[0x0112] = turned
    raster = read_raster(saved(Image.new(mode, (80, 70)), tmp_path / "a.jpg", exif=exif))
    assert raster.changes == tuple(map(phrase, changes))
    assert raster.dots.shape[:2] == ((80, 70) if turned == 6 else (70, 80))
    assert raster.across == raster.dots.shape[1]


@pytest.mark.parametrize(
    ("size", "fault"),
    [((64, 1), None), ((1, 64), None), ((63, 63), "too few dots"), ((5000, 5001), "too many dots")],
)
def test_a_picture_has_neither_too_few_nor_too_many_dots(
    size: tuple[int, int], fault: str | None, tmp_path: Path
) -> None:
    path = saved(Image.new("1", size), tmp_path / "a.png")
    if fault is None:
        assert read_raster(path).across == size[0]
        return
    with pytest.raises(Unfit) as unfit:
        read_raster(path)
    assert unfit.value.args == (fault, f"{size[0]:,}", f"{size[1]:,}")


@pytest.mark.parametrize(
    ("head", "fault"),
    [
        (b"\0\0\0\x18ftypheic", "heic"),
        (b"RIFF\0\0\0\0WAVE", "other"),
        (b"RAFF\0\0\0\0WEBP", "other"),
        (b"\0ftypheic", "other"),
        (b"GIF87a", "broken"),
        (b"", "broken"),
    ],
)
def test_a_file_is_known_by_its_first_bytes(head: bytes, fault: str, tmp_path: Path) -> None:
    (tmp_path / "a.png").write_bytes(head + bytes(20) * bool(head))
    with pytest.raises(Unfit) as unfit:
        read_raster(tmp_path / "a.png")
    assert unfit.value.args == (fault,)
