"""What people do with film and garments, written into the plan as they would and told to the model of the job."""

from collections.abc import Callable, Iterator
from random import Random

from tests.kept.model import READY, Model, Strip
from tests.plan_book import PlanBook, Row
from tests.workbooks import heading_at


def is_(**cells: object) -> Callable[[Row], bool]:
    """Whether a row has these cells."""
    return lambda row: all(row[heading] == value for heading, value in cells.items())


class Desk:
    """One plan on the table, and what is marked in it at the cutter, at the weeding table and at the press."""

    def __init__(self, random: Random, book: PlanBook, model: Model, names: Iterator[str]) -> None:
        self.random, self.book, self.model, self.names = random, book, model, names
        self.marked = {row["Decal"]: False for _, row in book.steps()}  # whether its step says something now
        self.settled: set[int] = set()  # garments of which nothing more is said in this plan
        self.rows_touched: set[int] = set()

    def chance(self, share: float) -> bool:
        return self.random.random() < share

    def token(self, word: str) -> str:
        """A text that stands nowhere else."""
        return f"{word} {self.random.randint(10_000, 99_999)}"

    # at the cutter and the weeding table

    def cut(self) -> None:
        for row in self.book.strips(ready=False):
            if self.chance(0.7):
                weeded = self.chance(0.5) or row["Weeded"] == "x"
                self.book.cut("x", "Weeded" if weeded else "Cut", self._same(row))
                self.model.cut(self._strip(row), "weeded" if weeded else "cut")

    def spoil(self) -> None:
        """Decals go wrong before they are pressed, on strips marked as cut and on others."""
        for row in [*self.book.strips(ready=True), *self.book.strips(ready=False)]:
            names = [name for name in row["Decals"].split(", ") if not self.marked.get(name)]
            whole = len(names) == len(row["Decals"].split(", ")) and self.chance(0.2)
            wrong = names if whole else [name for name in names if self.chance(0.3)]
            if wrong and not row["Spoiled"] and self.chance(0.4):
                self.book.cut("all" if whole else ", ".join(wrong).lower(), "Spoiled", self._same(row))
                for name in wrong:
                    self.model.spoiled(name)
                self.marked |= dict.fromkeys(wrong, True)

    def not_cut(self) -> None:
        """A strip was not cut after all, or not weeded."""
        for row in self.book.strips(ready=True)[:1]:
            names = row["Decals"].split(", ")
            if row["Spoiled"] or any(self.marked.get(name) for name in names):
                continue
            was_cut = row["Weeded"] in ("yes", "x") and self.chance(0.5)  # only the weeding was marked by mistake
            for heading in ("Weeded",) if was_cut else ("Cut", "Weeded"):
                self.book.cut(None, heading, self._same(row))
            self.marked |= dict.fromkeys(names, True)
            for name in names:
                self.model.decals[name].state = "cut" if was_cut else "to cut"

    def _strip(self, row: Row) -> Strip:
        return row["Film"], row["Run"], row["Strip"]

    def _same(self, row: Row) -> Callable[[Row], bool]:
        return is_(Film=row["Film"], Run=row["Run"], Strip=row["Strip"])

    # at the press

    def press(self) -> None:
        """Batch by batch: results in rows, in a garment's last row, or in the banner for all."""
        for banner, rows in self.book.batches():
            free = [row for row in rows if not self.marked[row["Decal"]]]
            able = all(self._can_press(row) for row in rows) and len(free) == len(rows)
            how = self.random.choice(("rows", "rows", "last", "banner"))
            if how == "banner" and able and self.chance(0.5):
                self.book.sheet("Press log").cell(
                    banner, heading_at(self.book.sheet("Press log"), "Result")[1]
                ).value = "ok"
                self._say(rows, "ok")
            elif how == "last" and able:
                for no in dict.fromkeys(row["Garment no."] for row in rows):
                    if self.chance(0.6):
                        self._last_row([row for row in rows if row["Garment no."] == no])
            elif how == "rows":
                self._row_by_row(rows)

    def _last_row(self, own: list[Row]) -> None:
        result = self.random.choices(("ok", "redo film", "redo garment"), (8, 1, 1))[0]
        self.book.result(result, is_(Decal=own[-1]["Decal"]))
        self._say(own, result)

    def _row_by_row(self, rows: list[Row]) -> None:
        for row in rows:
            no = row["Garment no."]
            if not self._can_press(row) or self.marked[row["Decal"]] or self.chance(0.3):
                self.settled.add(no)  # a result further down would count for this row too
                continue
            result = self.random.choices(("ok", "redo film", "redo garment"), (8, 1, 1))[0]
            self.book.result(result, is_(Decal=row["Decal"]))
            self._say([row], result)
            if result == "redo garment":
                self.settled.add(no)

    def _can_press(self, row: Row) -> bool:
        decal, shirt = self.model.decals[row["Decal"]], self.model.shirts[row["Garment no."]]
        cut = decal.state in READY or (decal.state == "to cut" and self.chance(0.1))  # pressed, and Cut not marked
        return cut and not shirt.cancelled and row["Garment no."] not in self.settled

    def _say(self, rows: list[Row], result: str) -> None:
        for row in rows:
            self.marked[row["Decal"]] = True
            self.model.pressed(row["Decal"], "ok" if result == "redo garment" else result)
        if result == "redo garment":
            self.model.garment_spoiled(rows[0]["Garment no."])
