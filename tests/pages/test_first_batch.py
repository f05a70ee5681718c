"""The batch that is pressed first is the one to stop after, whatever its number."""

import re
from collections.abc import Callable
from pathlib import Path

from tests.pages.cells import texts_of
from xlbatch.pages.write_pages import write_pages
from xlbatch.plan import Plan

DESIGNS = [
    ["Design", "Decal", "What", "Text", "Film", "Position", "Height", "Width", "Sized for"],
    ["Crew", "Front", "text", "LAKE", "Navy smooth", "full front", "2 in", None, None],
    ["Crew", "Back", "text", "CREW", "White stretch", "full back", "2 in", None, None],
    ["Kid", "Front", "text", "LAKE", "Red stretch", "full front", "2 in", None, None],
    ["Kid", "Tag", "text", "POND", "Gold low-heat", "full back", "2 in", None, None],
]


def test_the_first_pressed_batch_is_the_one_to_stop_after(plan_of: Callable[..., Plan], tmp_path: Path) -> None:
    roster = [["Who", "Size", "Design", "Color"]]
    roster += [
        [f"{'AnaBoCyDi'[at % 4 * 2 :][:2]} {chr(65 + at)}", "L", "Kid" if at < 9 else "Crew", "gray"]
        for at in range(18)
    ]
    plan = plan_of(roster, Designs=DESIGNS)
    write_pages(tmp_path / "pages.xlsx", plan, "plan.xlsx")
    cards = texts_of(tmp_path / "pages.xlsx", "Press cards")
    banners = [int(text.split()[1]) for text in cards if re.fullmatch(r"BATCH \d+", text)]
    assert plan.pressing.steps[0].batch == banners[0] != 1
    assert next(text for text in cards if text.startswith("STOP after")).startswith(f"STOP after batch {banners[0]} ")
    assert any(re.match(r"Batches [\d–, ]+: first every 1", text) for text in cards)
