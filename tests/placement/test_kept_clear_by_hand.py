"""What of a garment a decal lies on, for boxes placed by hand, in mm."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from xlbatch.job.feature import Feature
from xlbatch.placement.clear_of_features import on_feature
from xlbatch.placement.keep_clear import beyond_armholes, met, on_collar
from xlbatch.placement.place import Extent, Place, around
from xlbatch.placement.register import registered
from xlbatch.plan import Plan
from xlbatch.trade.tables import practice

# 500 wide and 700 long; the front collar seam 100 below the shoulder, the back one 20
POCKET = Feature("pocket", "front", 200.0, 150.0, "hem")
PLACKET = Feature("placket", "front", 30.0, 120.0, "collar")
HOOD = Feature("hood", "back", 260.0, 200.0, "collar")


@pytest.fixture
def usual(plan_of: Callable[..., Plan]) -> Place:
    """100 x 40 in the middle of the front, its lower edge 300 above the hem."""
    place = plan_of([["Who", "Size"], ["Ana", "M"]]).places[0]
    blank = replace(
        place.garment.blank,
        chest=500.0,
        length=700.0,
        drop_front=100.0,
        drop_back=20.0,
        keep_clear=(POCKET, PLACKET, HOOD),
        between_armholes=380.0,
        neckline="crew",
    )
    return replace(
        place,
        garment=replace(place.garment, blank=blank),
        decal=replace(place.decal, width=100.0, height=40.0),
        side="front",
        measured_from="front collar seam",
        below_collar=260.0,
        above_opening=None,
        above_hem=None,
        from_center=0.0,
        clear_hem=300.0,
    )


@pytest.mark.parametrize(
    ("changes", "box"),
    [
        ({}, (-50, 300, 50, 340)),
        ({"from_center": 70.0}, (-120, 300, -20, 340)),  # to the wearer's right: left as one looks at the front
        ({"from_center": 70.0, "side": "back"}, (20, 300, 120, 340)),
        ({"above_opening": 25.0, "clear_hem": None, "side": "left sleeve"}, (-50, 25, 50, 65)),
        ({"above_opening": 0.0, "clear_hem": None, "side": "left sleeve"}, (-50, 0, 50, 40)),
    ],
)
def test_where_a_decal_s_box_lies(usual: Place, changes: dict[str, object], box: tuple[float, ...]) -> None:
    assert replace(usual, **changes).extent == box  # type: ignore[arg-type]


def test_the_box_around_several(usual: Place) -> None:
    assert around([usual, replace(usual, from_center=-70.0, clear_hem=100.0)]) == Extent(-50, 100, 120, 340)


@pytest.mark.parametrize(
    ("other", "meets"),
    [
        (Extent(10, 0, 20, 10), False),  # edge to edge
        (Extent(9.995, 0, 20, 10), False),  # by less than a hundredth
        (Extent(9, 0, 20, 10), True),
        (Extent(9, 10, 20, 20), False),
        (Extent(9, 9, 20, 20), True),
        (Extent(-5, -5, 50, 50), True),
        (Extent(2, -9, 3, -1), False),
    ],
)
def test_boxes_that_lie_on_one_another(other: Extent, meets: bool) -> None:
    box = Extent(0, 0, 10, 10)
    assert box.meets(other) is other.meets(box) is meets


@pytest.mark.parametrize(
    ("changes", "what"),
    [
        ({}, []),
        ({"clear_hem": 150.0}, []),  # right above the pocket
        ({"clear_hem": 140.0}, [("pocket", 10, False)]),
        ({"clear_hem": 20.0}, [("pocket", 40, False)]),
        ({"clear_hem": 140.0, "from_center": 149.0}, [("pocket", 10, False)]),
        ({"clear_hem": 140.0, "from_center": -151.0}, []),  # beside it
        ({"clear_hem": 440.0}, []),  # the placket ends 700 - 100 - 120 = 480 above the hem
        ({"clear_hem": 450.0}, [("placket", 10, True)]),
        ({"clear_hem": 450.0, "from_center": 66.0}, []),
        ({"clear_hem": 440.0, "side": "back"}, []),  # the hood ends 700 - 20 - 200 = 480 above it
        ({"clear_hem": 470.0, "side": "back"}, [("hood", 30, True)]),
        ({"clear_hem": None, "above_opening": 20.0, "side": "left sleeve"}, []),
    ],
)
def test_what_a_decal_lies_on(usual: Place, changes: dict[str, object], what: list[tuple[str, float, bool]]) -> None:
    """Its name, the height both share, and whether a decal may go below it."""
    place = replace(usual, **changes)  # type: ignore[arg-type]
    assert [(feature.name, feature.by, feature.can_move) for feature in met(place)] == what


@pytest.mark.parametrize(
    ("changes", "beyond"),
    [
        ({"clear_hem": 500.0}, 0),
        ({"clear_hem": 500.0, "from_center": 150.0}, 10),  # 150 + 50 is 10 more than half of 380
        ({"clear_hem": 500.0, "from_center": -155.0}, 15),
        ({"clear_hem": 500.0, "from_center": 140.0}, 0),
        ({"clear_hem": 400.0, "from_center": 150.0}, 0),  # below the armpit, 0.45 x 500 below the shoulder
        ({"clear_hem": 435.0, "from_center": 150.0}, 0),  # up to it
        ({"clear_hem": 436.0, "from_center": 150.0}, 10),
        ({"clear_hem": None, "above_opening": 500.0, "from_center": 150.0}, 0),  # on a sleeve
    ],
)
def test_how_far_a_decal_reaches_beyond_the_armholes(usual: Place, changes: dict[str, object], beyond: float) -> None:
    assert practice("how far below the shoulder the armpit lies, of the chest width") == 0.45
    assert beyond_armholes(replace(usual, **changes)) == pytest.approx(beyond)  # type: ignore[arg-type]


def test_a_garment_without_armholes_known_holds_nothing_back(usual: Place) -> None:
    blank = replace(usual.garment.blank, between_armholes=None)
    place = replace(usual, garment=replace(usual.garment, blank=blank), clear_hem=500.0, from_center=150.0)
    assert beyond_armholes(place) == 0


BESIDE = {"measured_from": "side of the collar seam"}


@pytest.mark.parametrize(
    ("changes", "lies_on"),
    [
        # a V of 0.36 x 500 = 180 across, straight to 100 below the shoulder: at 50 it is 45 to each side
        ({**BESIDE, "below_collar": 50.0, "from_center": -94.0}, True),
        ({**BESIDE, "below_collar": 50.0, "from_center": 94.0}, True),
        ({**BESIDE, "below_collar": 50.0, "from_center": -96.0}, False),
        ({**BESIDE, "below_collar": 75.0, "from_center": -72.0}, True),  # 22.5
        ({**BESIDE, "below_collar": 75.0, "from_center": -73.0}, False),
        ({**BESIDE, "below_collar": 75.0, "from_center": 10.0}, True),  # across the middle
        ({**BESIDE, "below_collar": 100.0, "from_center": 10.0}, False),  # under the V
        ({**BESIDE, "below_collar": None, "from_center": 10.0}, False),
        ({**BESIDE, "below_collar": 50.0, "from_center": 10.0, "side": "back"}, False),
        ({"below_collar": 0.0}, False),  # below the seam itself
    ],
)
def test_a_decal_beside_the_middle_may_lie_on_the_collar(
    usual: Place, changes: dict[str, object], lies_on: bool
) -> None:
    blank = replace(usual.garment.blank, neckline="V")
    place = replace(usual, garment=replace(usual.garment, blank=blank), **changes)  # type: ignore[arg-type]
    assert on_collar(place) is lies_on


@pytest.mark.parametrize(
    ("changes", "told"),
    [
        ({"clear_hem": 124.6}, "pocket of {} M, by 1 in."),  # the pocket reaches 150 up
        ({**BESIDE, "below_collar": 50.0, "from_center": -94.0}, "collar of {} M, by its inner edge."),
    ],
)
def test_how_far_a_decal_lies_on_something_is_told(
    plan_of: Callable[..., Plan], usual: Place, changes: dict[str, object], told: str
) -> None:
    job = plan_of([["Who", "Size"], ["Ana", "M"]]).job
    found = on_feature(job, replace(usual, **changes))  # type: ignore[arg-type]
    assert found
    assert found.wrong.endswith(told.format(usual.garment.blank.garment))


def test_a_layer_is_measured_from_the_top_and_left_of_the_lowest(plan_of: Callable[..., Plan]) -> None:
    """One drawing of two films: the upper one 12 below the top edge and 30 from the left edge of the lower."""
    plan = plan_of([["Who", "Size"], ["Ana", "M"]])
    lowest = plan.places[0]
    low, upper = (replace(lowest.decal.spec, layer=layer, artwork="sea.svg", decal=f"Sea {layer}") for layer in (1, 2))
    whole = (200.0, 100.0)
    base = replace(lowest.decal, id="D1", spec=low, drawing="sea.svg", width=200.0, height=100.0, whole=whole)
    over = replace(base, id="D2", spec=upper, width=40.0, height=50.0, offset=(30.0, 38.0))
    at = {"from_center": 0.0, "clear_hem": 300.0, "side": "front"}
    below = replace(lowest, decal=base, **at)  # type: ignore[arg-type]
    above = replace(below, decal=over, from_center=50.0, clear_hem=338.0)
    assert list(map(tuple, (below.extent, above.extent))) == [(-100, 300, 100, 400), (-70, 338, -30, 388)]
    over_base, alone = registered(plan.job, [above, below])
    assert [*(over_base.register or ())] == ["D1", 12, 30]
    assert alone.register is None
