"""Sign-up workbooks: sent round, filled in, and joined to one job."""

import shutil
import subprocess
from collections.abc import Mapping, Sequence
from dataclasses import replace
from io import BytesIO
from pathlib import Path

import pytest
from openpyxl import load_workbook
from PIL import Image, ImageChops, ImageColor

from tests.plan_book import NOW, decals, written
from tests.workbooks import Rows, write_workbook
from xlbatch.each_list import jobs_in
from xlbatch.job.job import Job, RosterRow
from xlbatch.roster.read import Reading, read
from xlbatch.run import Options, run
from xlbatch.sign_up.asked import asked
from xlbatch.sign_up.form import CONSENT, HOUSEHOLD, NAME
from xlbatch.sign_up.sample_shirt import sample_shirt
from xlbatch.sign_up.together import read_together
from xlbatch.sign_up.write_sign_up import write_sign_ups
from xlbatch.trade.tables import color_hex

Person = Mapping[str, str | int]
HALE: tuple[Person, ...] = ({"Who": "Ida Hale", "Shirt for": "youth", "Size": "Youth M", "Print name": "IDA"},
        {"Who": "Tom Hale", "Shirt for": "adult", "Size": "L"})  # fmt: skip
RUSK: tuple[Person, ...] = ({"Who": "Bea Rusk", "Shirt for": "ladies", "Size": "Ladies L", "How many": 2},)
WREN: tuple[Person, ...] = ({"Who": "Cy Wren", "Shirt for": "adult", "Size": "lrge"},)  # typed over the drop-down


def filled(folder: Path, name: str, household: str, people: Sequence[Person], consent: str = "yes") -> Path:
    """A sign-up workbook of the event, filled in as a person does and saved under a name."""
    blank = folder / "Harbor picnic.xlsx"
    if not blank.exists():
        write_sign_ups(blank, None)
    book = load_workbook(blank)
    sheet = book[NAME]
    labels = {cell.value: cell.row for (cell,) in sheet.iter_rows(max_col=1) if cell.value}
    sheet.cell(labels[HOUSEHOLD], 3, household)
    sheet.cell(labels[CONSENT], 3, consent)
    columns = {cell.value: number for number, cell in enumerate(sheet[labels["Who"]], 1)}
    for row, person in enumerate(people, labels["Who"] + 1):
        for heading, value in person.items():
            sheet.cell(row, columns[heading], value)
    path = folder / f"{name}.xlsx"
    book.save(path)
    return path


def saved_by_another(path: Path, kind: str) -> Path:
    """The file as LibreOffice saves it, the first one gone."""
    if not shutil.which("soffice"):
        pytest.skip("needs LibreOffice")
    profile = f"-env:UserInstallation=file://{path.parent}/profile"
    made = path.parent / "again"
    command = ["soffice", "--headless", profile, "--convert-to", kind, "--outdir", str(made), str(path)]
    subprocess.run(command, check=True, capture_output=True)
    path.unlink()
    return (made / f"{path.stem}.{kind}").rename(path.with_suffix(f".{kind}"))


def joined(paths: Sequence[Path]) -> Reading:
    """The one job that files dropped together make."""
    ((path, options),) = jobs_in(paths, Options())
    reading = read_together(path, options.forms)
    assert isinstance(reading, Reading)
    return reading


def read_job(path: Path) -> Job:
    reading = read(path)
    assert isinstance(reading, Reading)
    return reading.job


def shirts(roster: Sequence[RosterRow]) -> list[tuple[str, str, str, str]]:
    return [(row.who, row.group, row.size, row.print_name) for row in roster]


def test_files_of_a_family_become_one_job(tmp_path: Path) -> None:
    hale, rusk = filled(tmp_path, "hale", "Hale", HALE), filled(tmp_path, "rusk", "Rusk", RUSK)
    twice = Path(shutil.copy(hale, tmp_path / "hale (1).xlsx"))
    wren = filled(tmp_path, "wren", "Wren", WREN)
    reading = joined([saved_by_another(hale, "xlsx"), twice, saved_by_another(rusk, "ods"), wren])
    assert reading.job.settings.job_name == "Harbor picnic"
    assert shirts(reading.job.roster) == [
        ("Ida Hale", "Hale", "Youth M", "IDA"), ("Tom Hale", "Hale", "L", ""), ("Bea Rusk", "Rusk", "Ladies L", ""),
        ("Bea Rusk", "Rusk", "Ladies L", ""), ("Cy Wren", "Wren", "Adult lrge", ""),
    ]  # fmt: skip
    codes = [problem.code for problem in reading.problems if problem.level != "note"]
    assert codes == ["size-unknown"]  # what a drop-down gave is no doubt
    assert [problem.code for problem in reading.problems].count("sign-up-twice") == 2


def test_answers_that_differ_are_asked_and_the_first_stays(tmp_path: Path) -> None:
    first = filled(tmp_path, "hale", "Hale", HALE)
    other = filled(tmp_path, "hale new", "Hale", [{**HALE[0], "Size": "Youth L"}, {**HALE[1], "Print name": "TOMMY"}])
    reading = joined([first, other])
    assert [row.size for row in reading.job.roster] == ["Youth M", "L"]
    asked = [problem for problem in reading.problems if problem.code == "sign-up-differs"]
    assert [(problem.found, problem.where.sheet) for problem in asked] == [("Youth L", "Roster"), ("TOMMY", "Roster")]
    assert "hale new.xlsx, row 8" in asked[0].wrong


def test_no_consent_is_asked_for_children_alone(tmp_path: Path) -> None:
    children = filled(tmp_path, "hale", "Hale", HALE, consent="")
    grown = filled(tmp_path, "rusk", "Rusk", RUSK, consent="")
    asked = [problem for problem in joined([children, grown]).problems if problem.code == "sign-up-consent"]
    assert len(asked) == 1
    assert "Hale" in asked[0].wrong


def test_expected_people_take_their_answer_and_the_others_are_named(tmp_path: Path) -> None:
    people = (["Ida Hale", "Hale", None], ["Tom Hale", "Hale", "M"], ["Ned Ode", "Ode", None])
    roster: Rows = [["Who", "Group", "Size"], *people]
    expected = write_workbook(tmp_path / "Harbor picnic list.xlsx", {"Roster": roster})
    reading = joined([expected, filled(tmp_path, "hale", "Hale", HALE)])
    assert shirts(reading.job.roster)[:2] == [("Ida Hale", "Hale", "Youth M", "IDA"), ("Tom Hale", "Hale", "M", "")]
    told = {problem.code: problem.found for problem in reading.problems}
    assert told["sign-up-open"] == "Ned Ode"
    assert told["sign-up-differs"] == "Adult L"


def test_last_years_people_stand_in_the_new_forms(tmp_path: Path) -> None:
    roster = [["Who", "Group", "Size"], ["Ida Hale", "Hale", "Youth M"], ["Tom Hale", "Hale", "XL"], ["Bo", "Ode", "S"]]
    last = write_workbook(tmp_path / "last.xlsx", {"Roster": roster})
    hale, ode = write_sign_ups(tmp_path / "next.xlsx", last)
    assert (hale.name, ode.name) == ("next - Hale.xlsx", "next - Ode.xlsx")
    rows = list(load_workbook(hale)[NAME].iter_rows(values_only=True))
    head = next(at for at, row in enumerate(rows) if row[0] == "Who")
    ida, tom = (dict(zip(rows[head], row, strict=True)) for row in rows[head + 1 : head + 3])
    assert (ida["Size"], ida["Note"], tom["Size"]) == (None, "was Youth M", "XL")


def test_a_late_form_joins_a_plan_and_nothing_is_cut_again(tmp_path: Path) -> None:
    ((path, options),) = jobs_in([filled(tmp_path, "hale", "Hale", HALE)], Options(effort=0))
    first = written(run(path, options, lambda _: None, NOW))
    first.cut()
    first.book.save(first.path)
    late = filled(tmp_path, "rusk", "Rusk", RUSK[:1])
    ((plan, options),) = jobs_in([late, first.path], Options(effort=0))
    assert plan == first.path
    second = written(run(plan, options, lambda _: None, NOW))
    assert decals(second, "cut") == {"D001", "D002"}
    assert {row["Who"] for _, row in second.rows("Decals", "Decal") if row["Now"] == "to cut"} == {"Bea Rusk"}


def test_the_sizes_offered_follow_the_class(tmp_path: Path) -> None:
    """The drop-down's own formula, in cells beside it, as LibreOffice computes it."""
    write_sign_ups(tmp_path / "picnic.xlsx", None)
    book = load_workbook(tmp_path / "picnic.xlsx")
    sheet = book[NAME]
    (rule,) = [rule for rule in sheet.data_validations.dataValidation if rule.formula1 and "OFFSET" in rule.formula1]
    first = str(rule.sqref).partition(":")[0]
    row, class_column = int(first[1:]), "B"
    sheet.protection.disable()
    offered = {"youth": ["Youth XS", "Youth S", "Youth M"], "infant": ["6M", "12M", "18M"], "adult": ["XS", "S", "M"]}
    for below, (for_, _) in enumerate(offered.items()):
        sheet[f"{class_column}{row + below}"] = for_
        formula = rule.formula1.removeprefix("=").replace(f"${class_column}{row}", f"${class_column}{row + below}")
        for at in range(3):
            sheet.cell(row + below, 20 + at, f"=INDEX({formula},{at + 1})")
    book.save(tmp_path / "asked.xlsx")
    computed = load_workbook(saved_by_another(tmp_path / "asked.xlsx", "xlsx"), data_only=True)[NAME]
    assert [[computed.cell(row + below, 20 + at).value for at in range(3)] for below in range(3)] == [*offered.values()]


@pytest.mark.parametrize("metric", [False, True], ids=["Letter", "A4"])
def test_each_sheet_prints_on_one_page(tmp_path: Path, metric: bool) -> None:
    write_sign_ups(tmp_path / "picnic.xlsx", None, metric=metric)
    pdf = saved_by_another(tmp_path / "picnic.xlsx", "pdf")
    text = subprocess.run(["pdftotext", "-layout", str(pdf), "-"], check=True, capture_output=True, text=True).stdout
    pages = text.rstrip("\f").split("\f")
    assert len(pages) == 3
    assert "Signature" in pages[2]


def test_the_size_chart_is_the_jobs_own_in_both_units(tmp_path: Path) -> None:
    """EN 13402-3: a men's M is 94 to 102 cm around the chest, a child of US size 10 is 140 cm tall, of 12 152 cm."""
    garments = [["Garment", "For", "Size", "Chest width", "Body length"],
                ["Field tee", "adult", "M", "21 in", "74 cm"],
                ["Field tee", "youth", "Youth M", "45.7 cm", "2 ft"]]  # fmt: skip
    source = write_workbook(tmp_path / "list.xlsx", {"Roster": [["Who", "Size"]], "Garments": garments})
    write_sign_ups(tmp_path / "new.xlsx", source)
    rows: list[object] = list(load_workbook(tmp_path / "new.xlsx")["Sizes"].iter_rows(values_only=True))
    assert rows[-2:] == [
        ("adult", "M", 21, pytest.approx(53.3), 29.125, pytest.approx(74), "94 to 102 cm chest"),
        ("youth", "Youth M", 18, pytest.approx(45.7), 24, pytest.approx(61), "140 to 152 cm tall"),
    ]


def test_last_times_plan_asks_its_people_again(tmp_path: Path) -> None:
    ((path, options),) = jobs_in([filled(tmp_path, "hale", "Hale", HALE)], Options(effort=0))
    last = written(run(path, options, lambda _: None, NOW))
    last.mark("Garments", "On hand", "white = 2", lambda row: row["Size"] == "M")
    last.book.save(last.path)
    form, listed = write_sign_ups(tmp_path / "Harbor picnic again.xlsx", last.path)
    assert (form.name, listed.name) == ("Harbor picnic again - Hale.xlsx", "Harbor picnic again - list.xlsx")
    reading = read(listed)
    assert isinstance(reading, Reading)
    assert shirts(reading.job.roster) == [("Ida Hale", "Hale", "", "IDA"), ("Tom Hale", "Hale", "", "")]
    assert {blank.size: dict(blank.on_hand) for blank in reading.job.blanks if blank.on_hand} == {"M": {"white": 2}}
    again = joined([listed, form])  # Tom's size is known; a child's is asked anew
    assert [row.size for row in again.job.roster] == ["", "L"]
    assert [problem.found for problem in again.problems if problem.code == "sign-up-open"] == ["Ida Hale"]


def test_the_sheet_shows_the_shirt_that_most_people_get() -> None:
    examples = Path(__file__).parents[2] / "example_workbooks"
    job = read_job(examples / "lantern walk.xlsx")
    picture = sample_shirt(job, asked(job), 200, 132)
    assert picture is not None
    orange = ImageColor.getrgb(color_hex("orange") or "")
    with Image.open(BytesIO(picture.png)) as image:
        plain = Image.new("RGB", image.size, orange)
        off = ImageChops.difference(image.convert("RGB"), plain).convert("L")
        assert off.histogram()[:10] != [0] * 10
    nothing = replace(job, designs=(), blanks=())
    assert sample_shirt(nothing, asked(nothing), 200, 132) is None
