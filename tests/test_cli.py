"""The command: exit codes and what it says."""

from pathlib import Path

import pytest
from openpyxl import load_workbook

from tests.workbooks import heading_at, write_workbook
from xlbatch import __version__, cli

HEAD = ["Who", "Garment", "Size"]


def roster(folder: Path, *rows: list[object], name: str = "roster.xlsx") -> Path:
    return write_workbook(folder / name, {"Roster": [HEAD, *rows]})


def problems_in(path: Path) -> list[dict[str, object]]:
    rows = list(load_workbook(path)["Problems"].iter_rows(values_only=True))
    at = next(at for at, row in enumerate(rows) if "Level" in row)
    return [dict(zip(map(str, rows[at]), row, strict=True)) for row in rows[at + 1 :] if row[0]]


def test_everything_planned_is_0(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = roster(tmp_path, ["Ana", None, "M"])
    before = path.read_bytes()
    assert cli.main([str(path)]) == 0
    said = capsys.readouterr()
    assert f"Plan:      {tmp_path / 'roster - plan.xlsx'}" in said.out
    assert f"Cut files: {tmp_path / 'roster - plan - cut files'}" in said.out
    assert said.err == ""
    assert path.read_bytes() == before


def test_two_bad_rows_are_1_and_named(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = roster(tmp_path, ["Ana", None, "M"], ["Ivo", None, "Mediun"], ["Mei", "Crew nek tee", "L"])
    assert cli.main([str(path)]) == 1
    assert "1 garment planned, 2 held back." in capsys.readouterr().out
    stops = [row for row in problems_in(tmp_path / "roster - plan.xlsx") if row["Level"] == "stop"]
    assert {(row["Sheet"], row["Cell"], row["Found"], row["Suggestion"]) for row in stops} == {
        ("Roster", "C3", "Mediun", "M"),
        ("Roster", "B4", "Crew nek tee", "Crew-neck tee"),
    }
    assert all(row["What is wrong"] and row["What to do"] for row in stops)


def test_all_rows_bad_is_2_with_the_problems_written(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = roster(tmp_path, ["Ana", None, None], ["Ivo", None, "Mediun"])
    assert cli.main([str(path)]) == 2
    assert "Nothing could be planned." in capsys.readouterr().out
    assert sorted(each.name for each in tmp_path.iterdir()) == ["roster - problems.xlsx", "roster.xlsx"]
    assert [row["Code"] for row in problems_in(tmp_path / "roster - problems.xlsx") if row["Level"] == "stop"] == [
        "size-missing",
        "size-unknown",
    ]


@pytest.mark.parametrize(
    ("name", "content"), [("text.xlsx", b"Who,Size\nAna,M\n"), ("empty.xlsx", b""), ("missing.xlsx", None)]
)
def test_a_file_that_cannot_be_read_is_3(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], name: str, content: bytes | None
) -> None:
    path = tmp_path / name
    if content is not None:
        path.write_bytes(content)
    assert cli.main([str(path)]) == 3
    said = capsys.readouterr()
    assert said.out == ""
    assert said.err.count("\n") == 1
    assert name in said.err
    assert "Traceback" not in said.err


def test_several_workbooks_give_the_highest_code(tmp_path: Path) -> None:
    good = roster(tmp_path, ["Ana", None, "M"], name="good.xlsx")
    bad = roster(tmp_path, ["Ana", None, "?"], name="bad.xlsx")
    assert cli.main([str(good), str(bad)]) == 2
    assert (tmp_path / "good - plan.xlsx").exists()


def test_a_folder_means_its_rosters_not_its_plans(tmp_path: Path) -> None:
    roster(tmp_path, ["Ana", None, "M"])
    assert cli.main([str(tmp_path)]) == 0
    assert cli.main([str(tmp_path)]) == 0
    names = sorted(path.name for path in tmp_path.glob("*.xlsx"))
    assert names == ["roster - plan 2.xlsx", "roster - plan.xlsx", "roster.xlsx"]


def test_check_only_writes_the_problems(tmp_path: Path) -> None:
    path = roster(tmp_path, ["Ana", None, "M"], ["Ivo", None, "?"])
    assert cli.main(["--check", str(path)]) == 1
    assert sorted(each.name for each in tmp_path.iterdir()) == ["roster - problems.xlsx", "roster.xlsx"]


def test_to_another_folder(tmp_path: Path) -> None:
    path = roster(tmp_path, ["Ana", None, "M"])
    assert cli.main([str(path), "--to", str(tmp_path / "new folder")]) == 0
    assert (tmp_path / "new folder" / "roster - plan.xlsx").exists()


def test_a_blank_workbook_can_be_filled_and_planned(tmp_path: Path) -> None:
    path = tmp_path / "fresh.xlsx"
    assert cli.main(["--blank", str(path)]) == 0
    assert cli.main(["--blank", str(path)]) == 3  # never over one that exists
    book = load_workbook(path)
    sheet = book["Roster"]
    for down, (who, size) in enumerate([("Ana", "M"), ("Ivo", "Youth L")], 1):
        for heading, value in (("Who", who), ("Size", size)):
            row, column = heading_at(sheet, heading)
            sheet.cell(row + down, column).value = value
    book.save(path)
    assert cli.main([str(path)]) == 0


def test_a_fault_inside_is_70_with_a_report_without_the_list(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    def fault(*_: object) -> None:
        raise ValueError("Ana Novak")

    monkeypatch.setattr(cli, "run", fault)
    monkeypatch.chdir(tmp_path)
    assert cli.main([str(roster(tmp_path, ["Ana Novak", None, "M"]))]) == 70
    report = (tmp_path / "xlbatch fault report.txt").read_text(encoding="utf-8")
    assert "ValueError" in report
    assert "Novak" not in report + capsys.readouterr().err


def test_version(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as stopped:
        cli.main(["--version"])
    assert stopped.value.code == 0
    assert __version__ in capsys.readouterr().out
