"""The cautions every press sheet carries."""

import pytest

from xlbatch.trade.tables import table

TOUCH_LIMITS = {"under 1 s": 70, "1 to 10 s": 60}  # °C, metal: IEC 62368-1


def cautions() -> str:
    return " ".join(line["Caution"] for line in table("cautions"))


@pytest.mark.parametrize("held", TOUCH_LIMITS)
def test_every_press_heat_burns(held: str) -> None:
    """Source: IEC 62368-1, touch temperature limits for metal. Every film's heat is far above."""
    coolest = min((float(line["Press temperature (°F)"]) - 32) / 1.8 for line in table("film_kinds"))
    assert coolest > TOUCH_LIMITS[held] + 40
    assert "burn skin at once" in cautions()


@pytest.mark.parametrize("rule", ["16 CFR 1610", "1615", "1616", "1307", "REACH Annex XVII entry 51", "EN 14682"])
def test_the_rules_for_children_are_pointed_at_not_decided(rule: str) -> None:
    """Source: 16 CFR 1615/1616, 1610 and 1307; REACH Annex XVII entry 51; EN 14682."""
    assert rule in cautions()
    assert "ask a qualified person" in cautions()
