"""A plan is written whole or not at all, and over nothing."""

from pathlib import Path

import pytest

from xlbatch.saving import CannotSave, base_name, is_returned, save_new, save_plan, save_problems


def text(content: str):  # type: ignore[no-untyped-def]
    return lambda path: path.write_text(content, encoding="utf-8")


def fail(path: Path) -> None:
    path.write_text("half", encoding="utf-8")
    raise OSError(28, "No space left on device")


@pytest.mark.parametrize(
    ("file", "base"),
    [
        ("roster.xlsx", "roster"),
        ("roster - plan.xlsx", "roster"),
        ("roster - plan 12.xlsx", "roster"),
        ("roster - problems 2.xlsx", "roster"),
        ("our - plan for May.xlsx", "our - plan for May"),
    ],
)
def test_the_name_of_the_job(file: str, base: str) -> None:
    assert base_name(Path(file)) == base
    assert is_returned(Path(file)) == (base != Path(file).stem)


def test_each_plan_gets_the_next_free_number(tmp_path: Path) -> None:
    names = [save_plan(tmp_path, "roster", text("x"), {"01.svg": "<svg/>"})[0].name for _ in range(3)]
    assert names == ["roster - plan.xlsx", "roster - plan 2.xlsx", "roster - plan 3.xlsx"]
    assert (tmp_path / "roster - plan 2 - cut files" / "01.svg").read_text() == "<svg/>"
    assert save_problems(tmp_path, "roster", text("x")).name == "roster - problems.xlsx"


def test_a_number_is_free_only_when_both_names_are(tmp_path: Path) -> None:
    (tmp_path / "roster - plan - cut files").mkdir()
    assert save_plan(tmp_path, "roster", text("x"), {})[0].name == "roster - plan 2.xlsx"


def test_a_failed_write_leaves_nothing(tmp_path: Path) -> None:
    with pytest.raises(CannotSave, match="No space left"):
        save_plan(tmp_path, "roster", fail, {"01.svg": "<svg/>"})
    assert list(tmp_path.iterdir()) == []


def test_what_a_killed_run_left_goes_with_the_next(tmp_path: Path) -> None:
    (tmp_path / ".roster.unfinished").mkdir()
    (tmp_path / ".roster.unfinished" / "roster - plan.xlsx").write_text("half")
    save_plan(tmp_path, "roster", text("x"), {})
    assert sorted(path.name for path in tmp_path.iterdir()) == ["roster - plan - cut files", "roster - plan.xlsx"]


def test_a_new_file_never_replaces_one(tmp_path: Path) -> None:
    (tmp_path / "roster.xlsx").write_text("mine")
    with pytest.raises(CannotSave, match="already exists"):
        save_new(tmp_path / "roster.xlsx", text("x"))
    assert (tmp_path / "roster.xlsx").read_text() == "mine"
