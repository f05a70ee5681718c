"""One history of a job: a list, its plan, and plans dropped again after what people did with them, held against a model
of the job."""

import subprocess
from collections import Counter
from collections.abc import Callable, Iterator
from pathlib import Path
from random import Random
from tempfile import TemporaryDirectory

from tests.kept.happenings import NAMES, Happenings, someone
from tests.kept.model import DESIGNS, FILM, Model
from tests.plan_book import PlanBook, codes, drop
from tests.workbooks import Rows, write_workbook
from xlbatch.run import Outcome

Drop = Callable[[Path], Outcome]


def live(seed: int, folder: Path, drops: int = 5, *, office: bool = False, drop: Drop = drop) -> Counter[str]:
    """One history; `office`: saved by LibreOffice in between. Raises AssertionError where the plan and the model part.
    Returns what was done in it."""
    random, model, told = Random(seed), Model(), Counter[str]()
    names = iter(NAMES)
    book = _planned(drop(_list(random, folder, model, names)), model)
    for _ in range(drops):
        things = Happenings(random, book, model, names)
        told.update(things.some())
        book.book.save(book.path)
        path = book.path
        if office and random.random() < 0.5:
            kind = random.choice(("xlsx", "ods"))
            told[f"saved by LibreOffice as .{kind}"] += 1
            path = through_office(path, kind)
        nothing_left = not any(
            shirt.missing() and not shirt.cancelled for shirt in (*model.shirts.values(), *model.joining)
        )
        if nothing_left:
            assert drop(path).written is None
            return told
        book = _planned(drop(path), model)
    _finish(book, model, drop)
    return told


def _list(random: Random, folder: Path, model: Model, names: Iterator[str]) -> Path:
    model.joining = [someone(random, next(names)) for _ in range(random.randint(3, 5))]
    rows = [shirt.row() for shirt in model.joining]
    people: Rows = [[*rows[0]], *([*row.values()] for row in rows)]
    return write_workbook(folder / "job.xlsx", {"Roster": people, "Designs": DESIGNS, "Film": FILM})


def _planned(outcome: Outcome, model: Model) -> PlanBook:
    assert outcome.code == 0, f"{outcome.message} {[p.wrong for p in outcome.problems if p.level == 'stop']}"
    assert outcome.written, outcome.message
    book = PlanBook(outcome.written)
    model.learn(book)
    model.judge(book, codes(outcome))
    return book


def _finish(book: PlanBook, model: Model, drop: Drop) -> None:
    """Everything left is cut and pressed: then every shirt is made, each piece once, and nothing is left to do."""
    book.cut("x")
    book.result("ok")
    for _, row in book.steps():
        model.pressed(row["Decal"], "ok")
    assert not any(shirt.missing() for shirt in model.shirts.values() if not shirt.cancelled)
    book.book.save(book.path)
    outcome = drop(book.path)
    assert outcome.written is None, outcome.message


def through_office(path: Path, kind: str) -> Path:
    """The workbook as LibreOffice saves it, in its place."""
    with TemporaryDirectory() as home:
        command = (
            "soffice",
            "--headless",
            f"-env:UserInstallation=file://{home}",
            "--convert-to",
            kind,
            "--outdir",
            home,
        )
        subprocess.run([*command, str(path)], check=True, capture_output=True, timeout=120)
        saved = path.with_suffix(f".{kind}")
        path.unlink()
        saved.write_bytes((Path(home) / saved.name).read_bytes())
    return saved
