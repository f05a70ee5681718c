"""What is told at the press, the cutter and the packing table: banners, pictures, strips, captions, choices."""

from dataclasses import replace
from types import SimpleNamespace
from typing import Any

import pytest

from xlbatch.job.job import Settings
from xlbatch.kept.memory import KeptDecal
from xlbatch.paper.measure import text_width
from xlbatch.paper.style import BANNER
from xlbatch.placement.place import Place, Register
from xlbatch.plan import Plan
from xlbatch.press.step import PressStep
from xlbatch.sheets import cut_list, inputs, placement_pictures, roll_layout
from xlbatch.sheets.bag_tags import _piece
from xlbatch.sheets.banner import _lines, _strips, _wait, banners, films_by_settings, set_to

IN = 25.4


@pytest.fixture
def settings(plan: Plan) -> Settings:
    return replace(plan.job.settings, people_pressing=1)


@pytest.fixture
def step(plan: Plan) -> PressStep:
    """Pressed at 165 °C on a bare garment, the plate ready."""
    step = plan.pressing.steps[0]
    film = replace(step.film, name="Sky", temperature=165.0, warm_up=5, press=15, back=0, peel="cold", pressure="firm")
    press = replace(step.press, kind="heat press", cover="")
    return replace(step, film=film, press=press, temperature=165.0, batch=3, lane=2, warm_up=5, wait=0)


@pytest.mark.parametrize(
    ("seconds", "told"),
    [(0, ""), (20, " (wait 20 s)"), (59, " (wait 59 s)"), (60, " (wait 1 min)"), (61, " (wait 2 min)"),
     (120, " (wait 2 min)")],
)  # fmt: skip
def test_a_wait_for_the_plate(step: PressStep, seconds: float, told: str) -> None:
    assert _wait(replace(step, wait=seconds)) == told


def test_a_banner_names_batch_garments_and_settings(step: PressStep, settings: Settings) -> None:
    """Parted where the heat changes; told in short where nothing is set anew."""
    worn = step.place.garment
    other = replace(step, place=replace(step.place, garment=replace(worn, row=replace(worn.row, no=9))))
    hotter = replace(other, temperature=170.0, wait=90.0, film=replace(step.film, name="Sun", temperature=170.0))
    no = worn.no

    def told(*steps: PressStep, before: Any = (), pressing: int = 1) -> list[list[str]]:
        parts = banners(steps, replace(settings, people_pressing=pressing), 2000.0, before, {})
        return [[strong + rest for strong, rest in lines] for lines, _ in parts]

    sky = "Sky · 329 °F, bare garment 5 s first, press 15 s, peel cold, firm pressure"
    assert told(step, other) == [[f"Batch 3 · no. {no}, 9", sky]]
    assert told(step, pressing=2) == [[f"Press 2 · Batch 3 · no. {no}", sky]]
    sun = sky.replace("Sky · 329 °F", "Sun · 338 °F (wait 2 min)")
    assert told(step, step, hotter) == [[f"Batch 3 · no. {no}, 9", sky], [sun]]
    assert told(step, before=set_to((step,), settings)) == [[f"Batch 3 · no. {no} · Sky, 329 °F, press 15 s"]]
    assert told(step, before=set_to((replace(step, lane=1),), settings)) == [[f"Batch 3 · no. {no}", sky]]
    assert told(replace(step, warm_up=0)) == [[f"Batch 3 · no. {no}", sky.replace("bare garment 5 s first, ", "")]]


def test_films_pressed_alike_are_named_together_once(step: PressStep, settings: Settings) -> None:
    sun, slow = (
        replace(step, film=replace(step.film, name=name, press=press)) for name, press in (("Sun", 15), ("Ice", 20))
    )
    assert list(films_by_settings((step, sun, slow, step), settings).values()) == [["Sky", "Sun"], ["Ice"]]
    iron = replace(step, press=replace(step.press, kind="iron"), film=replace(step.film, back=10, warm_up=0))
    (words,) = films_by_settings((iron,), settings)
    assert words.heat.startswith("dial ")
    assert words.heat.endswith(", no steam")
    assert (words.bare, words.back) == ("", "back 10 s")


def test_strips_are_told_where_they_have_other_numbers(step: PressStep) -> None:
    sun = replace(step, film=replace(step.film, name="Sun"))
    sun = replace(sun, place=replace(sun.place, decal=replace(sun.place.decal, id="D900")))
    own = step.place.decal.id
    assert _strips((step, sun), {}) == ""
    assert _strips((step, sun), {own: 3, "D900": 3}) == ""
    assert _strips((step, sun), {"D900": 5}) == " · strips Sky 3, Sun 5"


def test_a_line_too_long_for_its_room_goes_on_in_the_next() -> None:
    parts = ["one two", "three", "four"]
    room = text_width("Strong", BANNER, True) + text_width(" · one two, three", BANNER)
    assert list(_lines("Strong", parts, room)) == [("Strong", " · one two, three"), ("", "four")]
    assert list(_lines("Strong", parts, room - 0.5)) == [("Strong", " · one two"), ("", "three, four")]


@pytest.fixture
def place(plan: Plan) -> Place:
    place = plan.pressing.steps[0].place
    blank = replace(place.garment.blank, size="M")
    return replace(
        place, garment=replace(place.garment, blank=blank), measured_from="front collar seam", below_collar=4 * IN,
        above_opening=None, above_hem=None, register=None,
        decal=replace(place.decal, spec=replace(place.decal.spec, position="full front")),
    )  # fmt: skip


def sized(place: Place, size: str, **changes: Any) -> Place:
    garment = replace(place.garment, blank=replace(place.garment.blank, size=size))
    return replace(place, garment=garment, **changes)


def test_measures_below_a_picture(place: Place, settings: Settings) -> None:
    def told(*places: Place) -> list[str]:
        return placement_pictures.measures(places, settings)

    large, low = sized(place, "L"), sized(place, "S", below_collar=3.5 * IN)
    assert told(place, place) == ["full front: 4 in below front collar seam"]
    assert told(place, low) == ["full front: S 3 1/2, M 4 in below front collar seam"]
    assert told(place, low, large) == ["full front: S 3 1/2, M/L 4 in below front collar seam"]
    assert told(place, low, sized(low, "M")) == ["full front: as on Placement below front collar seam"]
    sleeve = replace(place, below_collar=None, measured_from="sleeve opening", above_opening=IN)
    hem = replace(place, below_collar=None, measured_from="hem", above_hem=2 * IN)
    assert told(sleeve, hem) == ["full front: 1 in above sleeve opening", "full front: 2 in above hem"]
    assert told(replace(place, register=Register("D001", 0, 0))) == []


def test_drops_on_the_ruler(place: Place, settings: Settings) -> None:
    """In eighths: 3.95 in is one with 4 in, 3.9 in is not; layers and sleeves have none."""
    spec = replace(place.decal.spec, position="back name")
    back = replace(place, below_collar=3.95 * IN, decal=replace(place.decal, spec=spec))
    others = replace(place, below_collar=3.9 * IN), replace(place, below_collar=None), replace(
        place, below_collar=9.0, register=Register("D001", 0, 0)
    )  # fmt: skip
    found = placement_pictures.drops((place, back, back, *others), settings)
    assert {round(drop / IN, 3): positions for drop, positions in found.items()} == {
        4: ("full front", "back name"), 3.875: ("full front",),
    }  # fmt: skip


def test_words_below_a_picture_are_wrapped_and_moved_in() -> None:
    room = text_width("one two", placement_pictures.LETTER)
    assert placement_pictures._wrapped("one two three", room) == ["one two", "   three"]
    assert placement_pictures._wrapped("one two three", room - 0.5) == ["one", "   two", "   three"]
    wide = text_width("   three four", placement_pictures.LETTER)
    assert placement_pictures._wrapped("monstrously three four", wide) == ["monstrously", "   three four"]


def kept(id_: str, batch: int, garment: int) -> KeptDecal:
    return KeptDecal(id_, garment, "Name", "Ana", "Sky", 100, 40, 0, 1, 1, batch, "cut")


@pytest.mark.parametrize(
    ("unused", "batches"),
    [((), "2, 5"), (("D3",), "2; not needed: D3"), (("D1",), "2, 5; not needed: D1"),
     (("D1", "D2", "D3"), "not needed"), (("D9",), "2, 5")],
)  # fmt: skip
def test_for_which_batches_a_strip_is(unused: tuple[str, ...], batches: str) -> None:
    decals = kept("D1", 2, 7), kept("D2", 2, 7), kept("D3", 5, 8)
    assert cut_list._on_strip(decals, unused) == (batches, "7, 8", "D1, D2, D3")


def test_a_caption_says_which_part_of_a_run_is_drawn(plan: Plan) -> None:
    strips = tuple(SimpleNamespace(batch=no) for no in (1, 2, 3))
    run: Any = SimpleNamespace(
        no=4, strips=strips, film=SimpleNamespace(name="Sky"), length=30.06 * IN, cut_from="1 yd"
    )
    for part, some in ((strips, ""), (strips[:2], ", strips 1, 2"), (strips[2:], ", strip 3")):
        caption = roll_layout._caption(run, part, plan).replace("\u00a0", " ")  # type: ignore[arg-type]
        assert caption == f"Run 4{some}: Sky, 30 1/8 in long, from 1 yd"


def test_a_piece_on_a_tag_is_told_with_its_place_unless_its_name_says_it() -> None:
    def told(position: str, *names: str) -> str:
        specs = tuple(SimpleNamespace(decal=name, position=position) for name in names)
        return _piece(SimpleNamespace(decals=(SimpleNamespace(spec=specs[0], specs=specs),)))  # type: ignore[arg-type]

    assert told("back name", "Back name") == "Back name"
    assert told("full front", "Bird", "Beak", "Bird") == "Bird + Beak, full front"


class Offered:
    """A sheet that keeps what it is told to offer."""

    def __init__(self) -> None:
        self.told: list[tuple[Any, ...]] = []

    def data_validation(self, *cells_and_choices: Any) -> None:
        self.told.append(cells_and_choices)


def test_choices_are_offered_as_far_as_a_sheet_can_hold_them() -> None:
    def offered(source: Any, **more: Any) -> list[tuple[Any, ...]]:
        sheet = Offered()
        inputs.offer(SimpleNamespace(sheet=sheet), 5, 2, 10, source, **more)  # type: ignore[arg-type]
        return sheet.told

    choices = {"validate": "list", "source": ["a", "b"], "show_error": False}
    assert offered(["a", "b", "a"]) == [(5, 2, 14, 2, choices)]
    assert offered(["a", "b"], strict=True, hint="why")[0][4] == choices | {"show_error": True, "input_message": "why"}
    assert offered(["n" * 200, "m" * 54])
    assert not offered(["n" * 200, "m" * 55])  # 256 letters with the comma
    assert not offered([])
    assert not offered(["a, b", "c"])
    assert offered("=Film!A1, B1")
    assert offered([], hint="why") == [(5, 2, 14, 2, {"input_message": "why", "validate": "any"})]
    assert inputs.below("Film") == "=OFFSET(Film!$A$4,0,0,MAX(1,COUNTA(Film!$A$4:$A$203)),1)"
