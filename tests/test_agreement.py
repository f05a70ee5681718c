"""A plan is judged before it is written: one that does not agree with itself is not, and a plain sentence says so."""

from collections.abc import Callable
from dataclasses import replace
from datetime import datetime
from decimal import Decimal
from pathlib import Path

import pytest

from tests.workbooks import write_workbook
from xlbatch import cli
from xlbatch.agreement import RULES, disagreements
from xlbatch.cutfiles.run_svg import cut_files
from xlbatch.plan import Plan
from xlbatch.roster.read import Reading, read
from xlbatch.run import make_plan

GARMENTS = [["Garment", "Size", "Price"], ["Crew-neck tee", "M", "1 = 4.10"], ["Crew-neck tee", "L", "1 = 5"]]
FILM = [["Film", "Roll width", "Rolls sold"], ["Black smooth", "12 in", "3 yd = 12"]]


@pytest.fixture(scope="module")
def plan(tmp_path_factory: pytest.TempPathFactory) -> Plan:
    people = [["Who", "Size"], ["Ana", "M"], ["Ivo", "L"], ["Zoe", "M"], ["Uma", "L"], ["Pat", "M"]]
    path = tmp_path_factory.mktemp("a") / "roster.xlsx"
    reading = read(write_workbook(path, {"Roster": people, "Garments": GARMENTS, "Film": FILM}))
    assert isinstance(reading, Reading)
    made = make_plan(reading, 0, lambda _step: None, datetime(2026, 1, 1))
    assert all(line.blank and line.film for line in made.money)  # else its rule has nothing to judge
    return made


def names(plan: Plan) -> list[str]:
    return [file.name for file in cut_files(plan.layout, plan.job.settings)]


def test_a_plan_agrees(plan: Plan) -> None:
    assert disagreements(plan, names(plan)) == ()


def _without_a_strip(plan: Plan) -> Plan:
    run = plan.layout.runs[0]
    return replace(plan, layout=replace(plan.layout, runs=(replace(run, strips=run.strips[1:]), *plan.layout.runs[1:])))


def _twice_on_film(plan: Plan) -> Plan:
    return replace(plan, layout=replace(plan.layout, runs=plan.layout.runs * 2))


def _of_another_garment(plan: Plan) -> Plan:
    return replace(plan, decals=(replace(plan.decals[0], garment_no=9), *plan.decals[1:]))


def _in_two_batches(plan: Plan) -> Plan:
    one, *others = plan.pressing.steps
    second = replace(one, batch=one.batch + 1, place=replace(one.place, decal=plan.decals[1]))
    return replace(plan, pressing=replace(plan.pressing, steps=(one, second, *others)))


def _longer(plan: Plan) -> Plan:
    need = plan.layout.needs[0]
    return replace(plan, layout=replace(plan.layout, needs=(replace(need, length=need.length + 1),)))


def _one_blank_more(plan: Plan) -> Plan:
    blank, *others = plan.shopping
    return replace(plan, shopping=(replace(blank, needed=blank.needed + 1), *others))


def _a_cent_more(plan: Plan) -> Plan:
    one, *others = plan.money
    return replace(plan, money=(replace(one, film=(one.film or Decimal(0)) + Decimal("0.01")), *others))


SPOILED: tuple[tuple[str, Callable[[Plan], Plan]], ...] = (
    ("D001 is 0 times in Placement", lambda plan: replace(plan, places=plan.places[1:])),
    ("D001 is 2 times in Placement", lambda plan: replace(plan, places=(plan.places[0], *plan.places))),
    ("times in Press log", lambda plan: replace(plan, pressing=replace(plan.pressing, steps=plan.pressing.steps[1:]))),
    ("on 0 runs", _without_a_strip),
    ("on 2 runs", _twice_on_film),
    ("which is not planned", _of_another_garment),
    ("D001 is given 2 times", lambda plan: replace(plan, decals=(plan.decals[0], *plan.decals))),
    ("lacks 1 decals", lambda plan: replace(plan, decals=plan.decals[1:])),
    ("garment number 1 is given 2 times", lambda plan: replace(plan, garments=(plan.garments[0], *plan.garments))),
    ("is pressed in 2 batches", _in_two_batches),
    ("not as long as their sum", _longer),
    ("5 garments need a blank", _one_blank_more),
    ("shares of the film", _a_cent_more),
)


@pytest.mark.parametrize(("words", "spoil"), SPOILED)
def test_each_disagreement_is_seen(plan: Plan, words: str, spoil: Callable[[Plan], Plan]) -> None:
    assert words in "; ".join(disagreements(spoil(plan), names(plan)))


def test_every_rule_was_seen_to_fail(plan: Plan) -> None:
    seen = {rule for _, spoil in SPOILED for rule in RULES if list(rule(spoil(plan)))}
    assert seen == set(RULES)


def test_a_run_without_its_cut_file_and_two_files_of_one_name(plan: Plan) -> None:
    assert "run 1 lacks its cut file" in disagreements(plan, names(plan)[1:])
    assert "2 files have the same name" in disagreements(plan, [*names(plan), names(plan)[0].upper()])


def test_nothing_is_written_then_and_it_is_said(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    path = write_workbook(tmp_path / "roster.xlsx", {"Roster": [["Who", "Size"], ["Ana Novak", "M"]]})
    monkeypatch.setattr("xlbatch.agreement.RULES", (lambda _plan: ["decal D001 is on 2 runs"],))
    assert cli.main([str(path), "--effort", "0"]) == 70
    said = capsys.readouterr().err
    assert said.startswith(
        "The plan was not written, as it does not agree with itself: decal D001 is on 2 runs. "
        "Your workbook is unchanged. A short report without your list is in "
    )
    report = tmp_path / "xlbatch fault report.txt"
    assert "decal D001 is on 2 runs" in report.read_text(encoding="utf-8")
    assert {each.name for each in tmp_path.iterdir()} == {path.name, report.name}
