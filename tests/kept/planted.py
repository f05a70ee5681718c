"""Edits planted in a plan of which some is cut and some is pressed: Changes lists exactly these, and each on a garment
in hand, or on its design, is asked about at its cell."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path
from random import Random

from tests.plan_book import NOW, PlanBook, drop_for_workbook, written
from tests.workbooks import Rows, heading_at, write_workbook
from xlbatch.roster.read import Reading, read
from xlbatch.run import make_plan

NAMES = ("Ana", "Ivo", "Mei", "Noor", "Kai", "Zoe", "Tom", "Lea")
PRESSED, BEGUN, CUT = (1, 2), (3,), (4, 5)  # garment numbers; the others are still to cut
DESIGNS = [
    ["Design", "Decal", "What", "Film", "Position", "Height"],
    ["Name", "Front", "print name", "Black smooth", "full front", "1 in"],
    ["Name", "Number", "number", "Red smooth", "back number", "3 in"],
]
FILM = [["Film", "Rolls sold"], ["Black smooth", "5 yd = 20.00"], ["Red smooth", "5 yd = 21.00"]]
JOB: Rows = [
    ["Setting", "Value"],
    ["Shirts per strip", 1],
    ["Gap between decals", "1/4 in"],
    ["Needed by", "2026-09-01"],
]


@dataclass(frozen=True)
class Edit:
    """One edit: how it stands on Changes, and the cells at any of which it has to be asked about."""

    sheet: str
    what: str
    before: str
    now: str
    asked_at: tuple[str, ...] = ()

    @property
    def line(self) -> tuple[str, str, str, str]:
        return self.sheet, self.what, self.before, self.now


def worked_on(folder: Path) -> PlanBook:
    """The plan in which some strips are cut, two garments done, one begun."""
    people = [["Who", "Size", "Color", "Number"], *([name, "M", "white", str(at)] for at, name in enumerate(NAMES, 11))]
    sheets: dict[str, Rows] = {"Roster": people, "Designs": DESIGNS, "Film": FILM, "Job": JOB}
    book = written(drop_for_workbook(write_workbook(folder / "job.xlsx", sheets)))
    book.cut("x", where=lambda row: int(row["Garments"]) in (*PRESSED, *BEGUN, *CUT))
    book.result("ok", lambda row: row["Garment no."] in PRESSED)
    book.result("ok", lambda row: row["Garment no."] in BEGUN and row["Piece"] == "Front")
    book.book.save(book.path)
    return written(drop_for_workbook(book.path))


class Planting:
    """Edits in one plan, each of another row or setting."""

    def __init__(self, book: PlanBook, random: Random) -> None:
        self.book, self.random = book, random
        self.numbers = random.sample(range(1, len(NAMES) + 1), len(NAMES))

    def edits(self) -> list[Edit]:
        kinds = self.random.sample(self.KINDS, self.random.randint(1, 6))
        return [kind(self) for kind in sorted(kinds, key=self.KINDS.index)]

    def _roster(self, heading: str, before: str, value: object, now: str = "") -> Edit:
        no = self.numbers.pop()
        self.book.edit(no, heading, value)
        in_hand = no in (*PRESSED, *BEGUN) and heading not in ("Note", "Paid", "Group")
        asked_at = (self._cell(heading, no), *self._of_what_lies_cut(heading, no)) if in_hand else ()
        return Edit("Roster", heading, before, now or str(value), asked_at)

    def _cell(self, heading: str, no: int) -> str:
        _, column = heading_at(self.book.sheet("Roster"), heading)
        return str(self.book.sheet("Roster").cell(self.book.row_of(no), column).coordinate)

    def _of_what_lies_cut(self, heading: str, no: int) -> tuple[str, ...]:
        """A piece not pressed yet is asked about as one that fits no more, at its garment."""
        return (self._cell("Who", no),) if heading == "Number" and no in BEGUN else ()

    def size(self) -> Edit:
        return self._roster("Size", "M", self.random.choice(("S", "L", "XL")))

    def color(self) -> Edit:
        return self._roster("Color", "white", self.random.choice(("navy", "red")))

    def name(self) -> Edit:
        return self._roster("Print name", "", f"{self.random.choice(NAMES)}ka")

    def number(self) -> Edit:
        no = self.numbers[-1]
        return self._roster("Number", str(no + 10), str(self.random.randint(50, 90)))

    def note(self) -> Edit:
        return self._roster("Note", "", f"note {self.random.randint(100, 999)}")

    def paid(self) -> Edit:
        amount = self.random.randint(5, 30)
        return self._roster("Paid", "", amount, f"{amount}.00")

    def group(self) -> Edit:
        return self._roster("Group", "", "Aunts")

    def joiner(self) -> Edit:
        self.book.join(Who="Uma", Size="L", Color="white", Number="77")
        return Edit("Roster", "row added", "", "9, Uma, L, white, 77, 1")

    def gone(self) -> Edit:
        no = self.numbers.pop()
        row = {heading: value for _, row in self.book.rows("Roster", "Who") for heading, value in row.items()
               if row["Garment no."] == no}  # fmt: skip
        values = [str(value) for value in row.values() if value is not None]
        self.book.sheet("Roster").delete_rows(self.book.row_of(no))
        return Edit("Roster", "row deleted", ", ".join(values[:6]), "", ("row-deleted",))

    def gap(self) -> Edit:
        return self._cell_of("Job", "Value", lambda row: row["Setting"] == "Gap between decals", "1/4 in", "3/8 in")

    def day(self) -> Edit:
        return self._cell_of("Job", "Value", lambda row: row["Setting"] == "Needed by", "2026-09-01", "2026-10-01")

    def height(self) -> Edit:
        return self._cell_of("Designs", "Height (in)", lambda row: row["Decal"] == "Number", "3 in", "4 in", asked=True)

    def film(self) -> Edit:
        where: Callable[[object], bool] = lambda row: row["Decal"] == "Front"  # type: ignore[index]  # noqa: E731
        return self._cell_of("Designs", "Film", where, "Black smooth", "Red smooth", asked=True)

    def rolls(self) -> Edit:
        where: Callable[[object], bool] = lambda row: row["Film"] == "Red smooth"  # type: ignore[index]  # noqa: E731
        return self._cell_of("Film", "Rolls sold", where, "5 yd = 21.00", "5 yd = 19.50")

    def _cell_of(
        self, sheet: str, heading: str, where: Callable[..., bool], before: str, now: str, *, asked: bool = False
    ) -> Edit:
        row = next(at for at, row in self.book.rows(sheet, heading) if where(row))
        cell = self.book.sheet(sheet).cell(row, heading_at(self.book.sheet(sheet), heading)[1])
        cell.value = now
        return Edit(sheet, heading.partition(" (")[0], before, now, (cell.coordinate,) if asked else ())

    KINDS = (gone, size, color, name, number, note, paid, group, joiner, gap, day, height, film, rolls)


def differences(plan: Path, seed: int) -> Iterator[str]:
    """What is wrong in the plan made after random edits of the one given; nothing where all is as it should be."""
    book = PlanBook(plan)
    edits = Planting(book, Random(seed)).edits()
    edited = plan.with_name(f"edited {seed}.xlsx")
    book.book.save(edited)
    reading = read(edited)
    edited.unlink()
    assert isinstance(reading, Reading)
    made = make_plan(reading, 0, lambda _: None, NOW)
    newest = {(c.sheet, c.what, c.before, c.now) for c in made.memory.changes if c.plan == made.memory.plan}
    for line in {edit.line for edit in edits} ^ newest:
        yield f"{line} is {'too many' if line in newest else 'missing'}"
    asked = {(found.where.sheet, found.where.cell) for found in made.problems if found.level != "note"}
    codes = {found.code for found in made.problems}
    for edit in edits:
        if edit.asked_at and not any((edit.sheet, cell) in asked or cell in codes for cell in edit.asked_at):
            yield f"{edit} is not asked about"
