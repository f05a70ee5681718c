"""A warm-up is for bare garments: banner and cards ask for none where a piece already lies on all of them."""

from collections.abc import Callable
from pathlib import Path

from tests.pages.cells import texts_of
from xlbatch.pages.write_pages import write_pages
from xlbatch.plan import Plan
from xlbatch.sheets.banner import films_by_settings

DESIGNS = [
    ["Design", "Decal", "What", "Text", "Film", "Position", "Height"],
    ["Two", "Front", "text", "LAKE", "Navy smooth", "full front", "2 in"],
    ["Two", "Back", "text", "CREW", "White stretch", "full back", "2 in"],
    ["One", "Back", "text", "CREW", "White stretch", "full back", "2 in"],
]


def test_only_films_on_bare_garments_have_a_warm_up(plan_of: Callable[..., Plan], tmp_path: Path) -> None:
    plan = plan_of([["Who", "Size", "Design"], ["Ana", "L", "Two"], ["Bo", "L", "Two"]], Designs=DESIGNS)
    white = [step for step in plan.pressing.steps if step.film.name == "White stretch"]
    navy = [step for step in plan.pressing.steps if step.film.name == "Navy smooth"]
    assert [words.bare for words in films_by_settings(navy, plan.job.settings)] == ["bare garment 5 s first"]
    assert [words.bare for words in films_by_settings(white, plan.job.settings)] == [""]
    write_pages(tmp_path / "pages.xlsx", plan, "plan.xlsx")
    cards = " | ".join(texts_of(tmp_path / "pages.xlsx", "Press cards"))
    assert cards.count("warm-up") == 1


def test_a_film_on_some_bare_garments_says_so(plan_of: Callable[..., Plan], tmp_path: Path) -> None:
    plan = plan_of([["Who", "Size", "Design"], ["Ana", "L", "Two"], ["Bo", "L", "One"]], Designs=DESIGNS)
    write_pages(tmp_path / "pages.xlsx", plan, "plan.xlsx")
    cards = " | ".join(texts_of(tmp_path / "pages.xlsx", "Press cards"))
    assert cards.count("warm-up 5 s if bare") == 1
