"""The command: exit codes and what it says."""

import os
import subprocess
import sys
from pathlib import Path

import pytest
from openpyxl import load_workbook

from tests.workbooks import heading_at, write_workbook
from xlbatch import __version__, cli, each_list
from xlbatch.run import STAGES, Outcome

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
    pages = ["roster - to print 2.xlsx", "roster - to print.xlsx"]
    assert names == ["roster - plan 2.xlsx", "roster - plan.xlsx", *pages, "roster.xlsx"]


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

    monkeypatch.setattr(each_list, "run", fault)
    assert cli.main([str(roster(tmp_path, ["Ana Novak", None, "M"]))]) == 70
    report = (tmp_path / "xlbatch fault report.txt").read_text(encoding="utf-8")
    assert "ValueError" in report
    assert "Novak" not in report + capsys.readouterr().err


def test_a_fault_in_one_list_stops_none_of_the_others(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    paths = [roster(tmp_path, ["Ana", None, "M"], name=name) for name in ("a.xlsx", "b.xlsx", "c.xlsx")]
    planned = []

    def fault_in_b(path: Path, *_: object) -> Outcome:
        if path.stem == "b":
            raise ValueError
        planned.append(path.stem)
        return Outcome(0, "")

    monkeypatch.setattr(each_list, "run", fault_in_b)
    assert cli.main([*map(str, paths)]) == 70
    assert planned == ["a", "c"]


@pytest.mark.parametrize("fault", [MemoryError(), ImportError("part.so: failed to map segment from shared object")])
def test_a_full_memory_is_3_and_said(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, fault: Exception
) -> None:
    def no_room(*_: object) -> None:
        raise fault

    monkeypatch.setattr(each_list, "run", no_room)
    assert cli.main([str(roster(tmp_path, ["Ana", None, "M"]))]) == 3
    assert "memory is full" in capsys.readouterr().err


def test_a_folder_without_lists_is_3(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main([str(tmp_path)]) == 3
    assert "no list of people in this folder" in capsys.readouterr().err


def test_progress_is_drawn_on_a_terminal_only(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    path = roster(tmp_path, ["Ana", None, "M"])
    cli.main([str(path)])
    assert capsys.readouterr().err == ""
    monkeypatch.setattr("sys.stderr.isatty", lambda: True)
    cli.main([str(path)])
    said = capsys.readouterr().err
    assert [stage for stage in STAGES if f"] {stage} " in said] == list(STAGES)
    assert "\n" not in said


def test_a_program_without_a_console_and_without_a_display_still_plans(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = roster(tmp_path, ["Ana", None, "M"])
    monkeypatch.setattr("sys.stdout", None)
    monkeypatch.setattr("sys.stderr", None)
    monkeypatch.setattr("xlbatch.window.window.open_window", lambda *_: None)
    assert cli.main([str(path)]) == 0
    assert (tmp_path / "roster - plan.xlsx").exists()


def test_a_console_that_lacks_a_letter_gets_another(tmp_path: Path) -> None:
    path = roster(tmp_path, ["Шевчук", None, "?"], name="Шевчук.xlsx")
    command = [sys.executable, "-m", "xlbatch", "--check", str(path)]
    for encoding in ("cp1252", "ascii"):  # of the console; another program at the end of a pipe is given UTF-8
        surroundings = os.environ | {"PYTHONIOENCODING": encoding}
        done = subprocess.run(command, capture_output=True, env=surroundings, check=False)
        assert done.returncode == 2
        assert done.stderr == b""
        assert done.stdout.startswith("Шевчук.xlsx: ".encode())


@pytest.mark.parametrize("sense", ["out", "error"])
def test_a_pipe_that_is_closed_is_no_fault(tmp_path: Path, sense: str) -> None:
    path = roster(tmp_path, ["Ana", None, "M"]) if sense == "out" else tmp_path / "missing.xlsx"
    reading, writing = os.pipe()
    os.close(reading)
    pipes = {"stdout": writing, "stderr": subprocess.PIPE}
    if sense == "error":
        pipes = {"stdout": subprocess.PIPE, "stderr": writing}
    done = subprocess.run([sys.executable, "-m", "xlbatch", "--no-window", str(path)], **pipes, check=False)  # type: ignore[call-overload]
    os.close(writing)
    assert done.returncode == (0 if sense == "out" else 3)
    assert not done.stdout
    assert not done.stderr
    assert not list(tmp_path.glob("*fault*"))
    assert (tmp_path / "roster - plan.xlsx").exists() == (sense == "out")


def test_a_second_fault_report_does_not_replace_the_first(tmp_path: Path) -> None:
    from xlbatch.fault import report

    for name in ("xlbatch fault report.txt", "xlbatch fault report 2.txt"):
        assert f"is in {tmp_path / name}." in report(ValueError(), tmp_path)
    assert "xlbatch" in report(ValueError(), tmp_path / "missing")


@pytest.mark.skipif(sys.platform != "linux", reason="other systems have no such names")
def test_a_file_name_that_is_no_text(tmp_path: Path) -> None:
    path = os.fsencode(tmp_path) + b"/caf\xe9.csv"
    with open(path, "wb") as file:  # noqa: PTH123 - bytes
        file.write(b"Who,Size\nAna,M\n")
    done = subprocess.run([sys.executable, "-m", "xlbatch", path], capture_output=True, check=False)
    assert (done.returncode, done.stderr) == (0, b"")
    assert os.path.exists(os.fsencode(tmp_path) + b"/caf\xe9 - plan.xlsx")  # noqa: PTH110
    plan = next(tmp_path.glob("*plan.xlsx"))
    assert "caf\N{REPLACEMENT CHARACTER}" in str(list(load_workbook(plan)["Job sheet"].values))


def test_a_list_that_is_called_csv_and_nothing_else(tmp_path: Path) -> None:
    (tmp_path / ".csv").write_text("Who,Size\nAna,M\n")
    assert cli.main([str(tmp_path / ".csv")]) == 0
    assert (tmp_path / "list - plan.xlsx").exists()


def test_groups_of_names_that_file_systems_bear(tmp_path: Path) -> None:
    """61 emoji are 244 bytes; direction marks belong to no name."""
    groups = ["\N{BALLOON}" * 61, "\u202egroup\u202c", "CON", "a/b:c"]
    rows = [["Who", "Size", "Group"], *(["Ana", "M", group] for group in groups)]
    path = write_workbook(tmp_path / "roster.xlsx", {"Roster": rows})
    assert cli.main([str(path), "--effort", "0"]) in (0, 1)
    names = {file.name for file in (tmp_path / "roster - plan - cut files").glob("message*.txt")}
    assert names == {
        "message - " + "\N{BALLOON}" * 25 + ".txt",
        "message - group.txt",
        "message - CON.txt",
        "message - a-b-c.txt",
    }


def test_without_a_home_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def nameless() -> Path:
        raise RuntimeError("Could not determine home directory.")

    from xlbatch.lettering import computer_fonts

    monkeypatch.setattr(Path, "home", nameless)
    computer_fonts.font_files.cache_clear()
    computer_fonts.font_files()
    computer_fonts.font_files.cache_clear()
    assert cli.main([str(roster(tmp_path, ["Ana", None, "M"]))]) == 0


def test_version(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as stopped:
        cli.main(["--version"])
    assert stopped.value.code == 0
    assert __version__ in capsys.readouterr().out
