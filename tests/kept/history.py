"""A model of a job as it goes on: people mark, change and move things in a plan, drop it, and the model knows what must
have come of it. Shares no code with what keeps the plan's memory."""

import subprocess
from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path
from random import Random
from tempfile import TemporaryDirectory
from typing import Any

from tests.plan_book import PlanBook, Row, drop
from tests.workbooks import heading_at, write_workbook
from xlbatch.units import mm_per

PIECES = ("Front", "Back")
DESIGNS = [
    ["Design", "Decal", "What", "Film", "Position", "Height"],
    ["Name", "Front", "print name", "Black smooth", "full front", "1 in"],
    ["Name", "Back", "print name", "Red smooth", "back name", "1 in"],
]
FILM = [["Film", "Rolls sold"], ["Black smooth", "5 yd = 20.00"], ["Red smooth", "5 yd = 21.00"]]
NAMES = ("Ana", "Ivo", "Mei", "Noor", "Kai", "Zoe", "Tom", "Lea", "Uma", "Bo", "Eli", "Fay", "Gus", "Hal", "Ida", "Jo")
SIZES, COLORS = ("S", "M", "L", "XL"), ("white", "navy")
OVER = ("pressed", "spoiled")


@dataclass
class Shirt:
    """A garment: what the list says, what is on it by piece, and the blank it is on (None: none yet)."""

    name: str
    size: str
    color: str
    on_it: dict[str, str] = field(default_factory=dict)  # piece: decal
    blank: tuple[str, str] | None = None
    cancelled: bool = False
    paid: float | None = None

    @property
    def done(self) -> bool:
        return set(self.on_it) == set(PIECES)


@dataclass
class History:
    """One job from its list to the last shirt. `told` counts what was done to it."""

    random: Random
    folder: Path
    office: bool = False  # saved by LibreOffice in between
    shirts: dict[int, Shirt] = field(default_factory=dict)
    owner: dict[str, tuple[int, str]] = field(default_factory=dict)  # decal: garment and piece
    state: dict[str, str] = field(default_factory=dict)
    text: dict[str, str] = field(default_factory=dict)
    strip: dict[str, tuple[str, int, int]] = field(default_factory=dict)
    notes: dict[str, str] = field(default_factory=dict)  # decal: what was written beside its step
    used: Counter[tuple[str, str]] = field(default_factory=Counter)
    came: Counter[Any] = field(default_factory=Counter)  # blanks by size and color, rolls by film
    on_list: set[int] = field(default_factory=set)
    told: Counter[str] = field(default_factory=Counter)

    def start(self) -> PlanBook:
        for no in range(1, self.random.randint(3, 5) + 1):
            self.shirts[no] = Shirt(NAMES[no - 1], self.random.choice(SIZES), self.random.choice(COLORS))
        people = [["Who", "Size", "Color"], *([s.name, s.size, s.color] for s in self.shirts.values())]
        sheets = {"Roster": people, "Designs": DESIGNS, "Film": FILM}
        return self.planned(write_workbook(self.folder / "job.xlsx", sheets))

    def planned(self, path: Path) -> PlanBook:
        outcome = drop(path)
        assert outcome.code in (0, 1), outcome.message
        assert outcome.written, outcome.message
        book = PlanBook(outcome.written)
        self.learn(book)
        self.judge(book)
        return book

    # what happens to a plan

    def change(self, book: PlanBook) -> None:
        """A few things happen, and the model takes note of each."""
        things = (
            self.cut, self.cut, self.press, self.press, self.spoil, self.take_back, self.join, self.cancel, self.rename,
            self.resize, self.pay, self.note, self.order, self.arrive, self.delete, self.sort, self.move_sheets,
        )  # fmt: skip
        for thing in self.random.sample(things, self.random.randint(2, 6)):
            self.told[thing.__name__] += 1
            thing(book)

    def strips(self, book: PlanBook, ready: bool) -> list[Row]:
        rows = [row for _, row in book.rows("Cut list", "Cut") if row["Decals"]]
        return [row for row in rows if (row["Cut"] == "yes") == ready]

    def cut(self, book: PlanBook) -> None:
        for row in self.strips(book, ready=False):
            if self.random.random() < 0.7:
                place = (row["Run"], row["Strip"])
                weeded = self.random.random() < 0.5
                book.cut("x", "Weeded" if weeded else "Cut", _is(Run=place[0], Strip=place[1]))
                for decal in row["Decals"].split(", "):
                    self.lie(decal, "weeded" if weeded else "cut")

    def lie(self, decal: str, state: str) -> None:
        if self.state[decal] not in OVER:
            self.state[decal] = state

    def press(self, book: PlanBook) -> None:
        """Some steps whose decals are cut, a garment's in order, until one goes wrong."""
        spoiled: set[int] = set()  # nothing more is pressed on these now
        marked = {r["Decal"] for _, r in book.rows("Press log", "Step") if r["Result"]}
        for _, row in list(book.rows("Press log", "Step")):
            no, decal = row["Garment no."], row["Decal"]
            if no is None or decal in marked:
                continue
            ready = self.state[decal] in ("cut", "weeded") and not self.shirts[no].cancelled
            if not ready or no in spoiled or self.random.random() < 0.3:
                spoiled.add(no)  # a result further down would count for this row too
                continue
            result = self.random.choices(("ok", "redo film", "redo garment"), (8, 1, 1))[0]
            if result == "redo garment" and any(self.owner[each][0] == no for each in marked):
                continue  # what the rows above say would count with it
            book.result(result, _is(Decal=decal))
            marked.add(decal)
            self.happened(no, decal, result)
            spoiled |= {no} if result == "redo garment" else set()

    def happened(self, no: int, decal: str, result: str) -> None:
        shirt = self.shirts[no]
        if shirt.blank is None:
            shirt.blank = (shirt.size, shirt.color)
            self.used[shirt.blank] += 1
        self.state[decal] = "pressed" if result == "ok" else "spoiled"
        if result == "ok":
            shirt.on_it[self.owner[decal][1]] = decal
        if result == "redo garment":
            for each in shirt.on_it.values():
                self.state[each] = "spoiled"
            shirt.on_it, shirt.blank = {}, None

    def spoil(self, book: PlanBook) -> None:
        pressed = {r["Decal"] for _, r in book.rows("Press log", "Step") if r["Result"]}
        for row in self.strips(book, ready=True):
            decals = [each for each in row["Decals"].split(", ") if each not in pressed]
            if decals and self.random.random() < 0.3:
                wrong = self.random.choice(decals)
                place = (row["Run"], row["Strip"])
                book.cut(wrong, "Spoiled", _is(Run=place[0], Strip=place[1]))
                self.state[wrong] = "spoiled"

    def take_back(self, book: PlanBook) -> None:
        """A strip was not cut after all: only where nothing else is said of it."""
        said = {r["Decal"] for _, r in book.rows("Press log", "Step") if r["Result"]}
        for row in self.strips(book, ready=True)[:1]:
            decals = row["Decals"].split(", ")
            mine = [each for each, place in self.strip.items() if place == self.strip[decals[0]]]
            if said & set(decals) or row["Spoiled"] or any(self.state[each] in OVER for each in mine):
                continue
            if len(mine) != len(decals):
                continue  # others of the strip are on no list now
            book.cut(None, where=_is(Run=row["Run"], Strip=row["Strip"]))
            for decal in decals:
                self.state[decal] = "to cut"

    def join(self, book: PlanBook) -> None:
        no = max(self.shirts) + 1
        if no <= len(NAMES):
            shirt = Shirt(NAMES[no - 1], self.random.choice(SIZES), self.random.choice(COLORS))
            book.join(Who=shirt.name, Size=shirt.size, Color=shirt.color)
            self.shirts[no] = shirt
            for piece in PIECES:
                self.told[f"new {piece}"] += 1

    def a_shirt(self) -> int | None:
        numbers = [no for no, s in self.shirts.items() if no in self.on_list and not s.cancelled and not s.done]
        return self.random.choice(numbers) if numbers else None

    def cancel(self, book: PlanBook) -> None:
        if (no := self.a_shirt()) and self.random.random() < 0.4:
            book.edit(no, "Status", "cancelled")
            self.shirts[no].cancelled = True

    def rename(self, book: PlanBook) -> None:
        if no := self.a_shirt():
            name = self.random.choice(NAMES) + self.random.choice("aeiou")
            book.edit(no, "Print name", name)
            self.shirts[no].name = name

    def resize(self, book: PlanBook) -> None:
        if no := self.a_shirt():
            self.shirts[no].size = self.random.choice(SIZES)
            book.edit(no, "Size", self.shirts[no].size)

    def pay(self, book: PlanBook) -> None:
        if no := self.a_shirt():
            self.shirts[no].paid = self.random.randint(1, 20)
            book.edit(no, "Paid", self.shirts[no].paid)

    def note(self, book: PlanBook) -> None:
        rows = [row for _, row in book.rows("Press log", "Step") if row["Decal"]]
        if rows:
            decal, text = self.random.choice(rows)["Decal"], f"note {self.random.randint(100, 999)}"
            book.mark("Press log", "Note", text, lambda r: r["Decal"] == decal)
            self.notes[decal] = text

    def order(self, book: PlanBook) -> None:
        book.mark("Shopping list", "Ordered", "yes", lambda r: r["Kind"] in ("blank", "film"))

    def arrive(self, book: PlanBook) -> None:
        for _, row in list(book.rows("Shopping list", "Item")):
            if row["Kind"] not in ("blank", "film") or row["Arrived"] != "☐":
                continue
            buy = max(0, row["Needed"] + row["Spares"] - row["On hand"] - row["On the way"])
            way = row["On the way"] + (buy if row["Ordered"] == "yes" else 0)
            count = way or buy
            book.mark("Shopping list", "Arrived", "x", _is(Item=row["Item"], Size=row["Size"], Color=row["Color"]))
            key = (row["Size"], row["Color"]) if row["Kind"] == "blank" else row["Item"].split(",")[0]
            self.came[key] += count

    def delete(self, book: PlanBook) -> None:
        if (no := self.a_shirt()) and self.random.random() < 0.3:
            row = next(at for at, cells in book.rows("Roster", "Who") if cells["Garment no."] == no)
            book.sheet("Roster").delete_rows(row)
            self.on_list.discard(no)
            self.shirts[no].cancelled = True

    def sort(self, book: PlanBook) -> None:
        """The Roster's rows in another order."""
        sheet = book.sheet("Roster")
        top, _ = heading_at(sheet, "Who")
        rows = [[cell.value for cell in row] for row in sheet.iter_rows(min_row=top + 1)]
        rows = [row for row in rows if any(value is not None for value in row)]
        self.random.shuffle(rows)
        for down, values in enumerate(rows, top + 1):
            for across, value in enumerate(values, 1):
                sheet.cell(down, across).value = value

    def move_sheets(self, book: PlanBook) -> None:
        book.book.move_sheet("Press log", -3)
        for name in ("Cut list", "Press log"):
            if self.random.random() < 0.5:
                book.book[name].insert_rows(1)

    # what must have come of it

    def learn(self, book: PlanBook) -> None:
        """New decals, their places, and the numbers on the list."""
        self.on_list = {row["Garment no."] for _, row in book.rows("Roster", "Who") if row["Garment no."]}
        for _, row in book.rows("Decals", "Decal"):
            decal, owner = row["Decal"], (row["Garment no."], row["Piece"])
            assert self.owner.setdefault(decal, owner) == owner, f"{decal} is {owner} and {self.owner[decal]}"
            if decal not in self.state:
                self.state[decal], self.text[decal] = "to cut", row["Text"]
            if row["Now"] == "to cut" and row["Run"]:
                self.strip[decal] = (row["Film"], row["Run"], row["Strip"])
                self.text[decal] = row["Text"]

    def judge(self, book: PlanBook) -> None:
        now = {row["Decal"]: row["Now"] for _, row in book.rows("Decals", "Decal")}
        for decal, state in self.state.items():
            said = now.get(decal)
            if state == "to cut":
                assert said in ("to cut", None), f"{decal} is {said}, not to cut"
            else:
                assert said == state or (said == "not needed" and state in ("cut", "weeded")), (
                    f"{decal}: {said}, {state}"
                )
        steps = [(row["Garment no."], row["Piece"], row["Decal"]) for _, row in book.rows("Press log", "Step")]
        steps = [step for step in steps if step[0]]
        wanted = [
            (no, piece)
            for no, shirt in self.shirts.items()
            for piece in PIECES
            if not shirt.cancelled and piece not in shirt.on_it
        ]
        assert sorted((no, piece) for no, piece, _ in steps) == sorted(wanted)
        to_cut = Counter(d for r in self.strips(book, ready=False) for d in r["Decals"].split(", "))
        for no, piece, decal in steps:
            assert self.owner[decal] == (no, piece)
            assert self.text[decal] == self.shirts[no].name, f"{decal} says {self.text[decal]}"
            assert to_cut[decal] == (self.state[decal] == "to cut")
        self.judge_typed(book)
        self.judge_stock(book)

    def judge_typed(self, book: PlanBook) -> None:
        paid = {row["Garment no."]: row["Paid"] for _, row in book.rows("Roster", "Who") if row["Garment no."]}
        for no, shirt in self.shirts.items():
            assert paid[no] == shirt.paid, f"paid for {no}"
        there = {row["Decal"]: row["Note"] for _, row in book.rows("Press log", "Step")}
        gone = "Changes" in book.book.sheetnames and [r["Before"] for _, r in book.rows("Changes", "What follows")]
        for decal, text in self.notes.items():
            assert there.get(decal) == text or (gone and text in gone), f"the note of {decal} is lost"

    def judge_stock(self, book: PlanBook) -> None:
        shelf: Counter[tuple[str, str]] = Counter()
        for _, row in book.rows("Garments", "Neckline"):
            for part in str(row["On hand"] or "").split("; "):
                if " = " in part:
                    shelf[row["Size"], part.split(" = ")[0]] += int(part.split(" = ")[1])
        for kind in {*self.used, *(key for key in self.came if isinstance(key, tuple))}:
            assert shelf[kind] == max(0, self.came[kind] - self.used[kind]), f"{kind}: {shelf[kind]} on hand"
        for _, row in book.rows("Film", "Kind"):
            length = sum(_length(piece) for piece in str(row["On hand"] or "").split("; ") if piece)
            cut = any(self.strip[d][0] == row["Film"] and s != "to cut" for d, s in self.state.items())
            bought = self.came[row["Film"]] * 5 * mm_per("yd")
            assert length <= bought + 1, row["Film"]
            assert cut or abs(length - bought) < 1, row["Film"]

    def finish(self, book: PlanBook) -> None:
        """Everything left is cut and pressed: then every shirt is made, each piece once."""
        book.cut("x")
        book.result("ok")
        for _, row in book.rows("Press log", "Step"):
            if row["Garment no."]:
                self.happened(row["Garment no."], row["Decal"], "ok")
        assert all(shirt.done for shirt in self.shirts.values() if not shirt.cancelled)
        outcome = book.drop()
        assert outcome.written is None, outcome.message


def _is(**cells: object) -> Callable[[Row], bool]:
    """Whether a row has these cells."""
    return lambda row: all(row[heading] == value for heading, value in cells.items())


def _length(piece: str) -> float:
    number, unit = piece.split(" x ")[1].split(" ", 1)[0], piece.rsplit(" ", 1)[1]
    whole = piece.split(" x ")[1].rsplit(" ", 1)[0].split(" ")
    total = sum(float(part) if "/" not in part else _fraction(part) for part in whole)
    return (total or float(number)) * mm_per(unit)


def _fraction(part: str) -> float:
    above, below = part.split("/")
    return float(above) / float(below)


def through_office(book: PlanBook, kind: str) -> Path:
    """The plan as LibreOffice saves it."""
    book.book.save(book.path)
    with TemporaryDirectory() as home:
        command = ("soffice", "--headless", f"-env:UserInstallation=file://{home}", "--convert-to", kind, "--outdir")
        target = book.path.parent / "saved"
        subprocess.run([*command, str(target), str(book.path)], check=True, capture_output=True)
    saved = target / f"{book.path.stem}.{kind}"
    return saved.rename(book.path.with_name(f"{book.path.stem} saved.{kind}"))


def live(seed: int, folder: Path, drops: int = 5, *, office: bool = False) -> Counter[str]:
    """One history. Raises AssertionError where the plan and the model part. Returns what was done in it."""
    history = History(Random(seed), folder, office)
    book = history.start()
    for _ in range(drops):
        history.change(book)
        if office and history.random.random() < 0.5:
            history.told["saved by LibreOffice"] += 1
            book = history.planned(through_office(book, history.random.choice(("xlsx", "ods"))))
        else:
            book.book.save(book.path)
            book = history.planned(book.path)
        if not any(row["Garment no."] for _, row in book.rows("Press log", "Step")):
            return history.told
    history.finish(book)
    return history.told
