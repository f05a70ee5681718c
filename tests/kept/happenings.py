"""What else people do in a plan: in the Roster, with money and orders, with the workbook itself."""

from random import Random

from tests.kept.at_work import Desk, is_
from tests.kept.model import PIECES, Shirt, Typed, stock_key, to_buy
from tests.plan_book import KEYS, Row
from tests.workbooks import heading_at

NAMES = ("Ana", "Ivo", "Mei", "Noor", "Kai", "Zoe", "Tom", "Lea", "Uma", "Bo", "Eli", "Fay", "Gus", "Hal", "Ida", "Jo")
BOX = "☐"
SIZES, COLORS = ("S", "M", "L", "XL"), ("white", "navy")
OWN = "Where it lies"  # a column of their own
NOTED = (
    ("Press log", "Note"), ("Press log", "By"), ("Proof", "Checked"), ("Shopping list", "Note"), ("Roster", "Note"),
    ("Press log", OWN), ("Proof", OWN), ("Roster", OWN), ("Money", OWN), ("Cut list", OWN),
)  # fmt: skip


def someone(random: Random, name: str) -> Shirt:
    """A new name on the list."""
    design, number = random.choice(list(PIECES)), str(random.randint(10, 99))
    return Shirt(name, random.choice(SIZES), random.choice(COLORS), design, number)


def _buy(row: Row) -> int:
    there: int = row["On hand"] + row["On the way"]
    return max(0, int(row["Needed"]) + int(row["Spares"]) - there)


class Happenings(Desk):
    """One plan on the table, and what is done with it before it is dropped."""

    def some(self) -> list[str]:
        """A few things happen. Returns which."""
        things = self.random.sample(self.ORDINARY, self.random.randint(3, 7))
        things += [thing for thing in self.AT_LAST if self.random.random() < 0.25]
        for thing in things:
            thing(self)
        return [thing.__name__ for thing in things]

    # in the Roster

    def a_shirt(self, *, begun: bool | None = None) -> int | None:
        """One of the list, of which nothing else was said in this plan; begun or not where that is asked."""
        on_list = [row["Garment no."] for _, row in self.book.rows("Roster", "Who") if row["Garment no."]]
        numbers = [
            no
            for no in on_list
            if no not in self.rows_touched and begun in (None, self.model.shirts[no].blank is not None)
        ]
        if not numbers:
            return None
        no: int = self.random.choice(numbers)
        self.rows_touched.add(no)
        return no

    def join(self) -> None:
        if name := next(self.names, ""):
            shirt = someone(self.random, name)
            self.book.join(first=self.chance(0.5), **shirt.row())
            self.model.joining.append(shirt)

    def copy_row(self) -> None:
        """A row is copied, its number with it, for someone else."""
        no, name = self.a_shirt(), next(self.names, "")
        if no and name:
            sheet = self.book.sheet("Roster")
            row = self.book.row_of(no)
            values = [cell.value for cell in sheet[row]]
            below = self.random.choice((0, 1))
            sheet.insert_rows(row + below)
            for across, value in enumerate(values, 1):
                sheet.cell(row + below, across).value = value
            for heading, value in (("Who", name), ("Print name", None)):
                sheet.cell(row + below, heading_at(sheet, heading)[1]).value = value
            shirt = self.model.shirts[no]
            copied = (shirt.color, shirt.design, shirt.number)
            self.model.joining.append(Shirt(name, shirt.size, *copied, cancelled=shirt.cancelled))

    def cancel(self) -> None:
        if self.chance(0.4) and (no := self.a_shirt()):
            shirt = self.model.shirts[no]
            shirt.cancelled, shirt.done = not shirt.cancelled, False
            self.book.edit(no, "Status", "cancelled" if shirt.cancelled else None)
            self.settled.add(no)

    def delete(self) -> None:
        if self.chance(0.3) and (no := self.a_shirt()):
            self.book.sheet("Roster").delete_rows(self.book.row_of(no))
            shirt = self.model.shirts[no]
            shirt.cancelled, shirt.gone = shirt.cancelled or not shirt.done, True

    def rename(self) -> None:
        if no := self.a_shirt():
            self.model.shirts[no].name = self.token(self.random.choice(NAMES)).replace(" ", "")[:8]
            self.book.edit(no, "Print name", self.model.shirts[no].name)

    def resize(self) -> None:
        if no := self.a_shirt():
            self.model.shirts[no].size = self.random.choice(SIZES)
            self.book.edit(no, "Size", self.model.shirts[no].size)

    def recolor(self) -> None:
        if no := self.a_shirt():
            self.model.shirts[no].color = self.random.choice(COLORS)
            self.book.edit(no, "Color", self.model.shirts[no].color)

    def redesign(self) -> None:
        if no := self.a_shirt():
            self.model.shirts[no].design = self.random.choice(list(PIECES))
            self.book.edit(no, "Design", self.model.shirts[no].design)

    def renumber(self) -> None:
        if no := self.a_shirt():
            self.model.shirts[no].number = str(self.random.randint(10, 99))
            self.book.edit(no, "Number", self.model.shirts[no].number)

    def redo(self) -> None:
        """Status says that a garment, or the film on it, is to be made anew."""
        no = self.a_shirt(begun=True) if self.chance(0.4) else None
        if no and no not in self.settled and not self.model.shirts[no].cancelled and no not in self._said():
            film = bool(self.model.shirts[no].on_it) and self.chance(0.5)  # else its film is marked as spoiled
            self.book.edit(no, "Status", "redo film" if film else "redo garment")
            (self.model.film_spoiled if film else self.model.garment_spoiled)(no)
            self.settled.add(no)

    def not_done(self) -> None:
        """Done, or what is done so far, was marked by mistake."""
        no = self.a_shirt(begun=True) if self.chance(0.4) else None
        if no and not self.model.shirts[no].cancelled and no not in self._said():
            self.book.edit(no, "Status", None)
            self.book.edit(no, "Done so far", None)
            self.model.not_pressed(no)
            self.settled.add(no)

    def _said(self) -> set[int]:
        """The garments of which the Press log says something now."""
        return {self.model.decals[name].owner for name, said in self.marked.items() if said}

    # money, notes, orders

    def pay(self) -> None:
        if no := self.a_shirt():
            self.model.shirts[no].paid = self.random.randint(1, 20)
            on_money = (no,) in self.book.of("Money", "Paid") and self.chance(0.5)
            paid = self.model.shirts[no].paid
            self.book.mark("Money" if on_money else "Roster", "Paid", paid, is_(**{"Garment no.": no}))

    def note(self) -> None:
        """Notes in every place there is for them."""
        sheet, heading = self.random.choice(NOTED)
        self.book.add_column(sheet, heading)
        if whose := list(self.book.of(sheet, heading)):
            typed = Typed(sheet, self.random.choice(whose), heading, self.token("note"))
            self.rows_touched |= {*typed.key} if sheet == "Roster" else set()  # nobody deletes what was just written
            self.book.mark(sheet, heading, typed.text, is_(**dict(zip(KEYS[sheet], typed.key, strict=True))))
            place = typed.sheet, typed.key, typed.heading
            self.model.typed = [t for t in self.model.typed if (t.sheet, t.key, t.heading) != place] + [typed]

    def order(self) -> None:
        """All, or some of it, is ordered; or an order is taken back."""
        for row in to_buy(self.book):
            key, buy = stock_key(row), _buy(row)
            if row["Ordered"] != BOX or row["Arrived"] != BOX or not self.chance(0.6):
                continue
            many = buy if self.chance(0.7) else self.random.randint(0, buy)
            many = many or -min(self.model.way[key], self.random.randint(0, 1))
            if many:
                self._mark_line(row, "Ordered", many, buy)
                self.model.way[key] += many

    def arrive(self) -> None:
        """What is on the way has come, or what was bought without ordering; or has not come after all."""
        for row in to_buy(self.book):
            key = stock_key(row)
            there = self.model.way[key] or _buy(row)
            if row["Arrived"] != BOX or not self.chance(0.6):
                continue
            many = there if self.chance(0.7) else self.random.randint(0, there)
            many = many or -min(self.model.came[key], self.random.randint(0, 1))
            if many:
                self._mark_line(row, "Arrived", many, there)
                self.model.way[key] = max(0, self.model.way[key] - many)
                self.model.came[key] += many

    def _mark_line(self, row: Row, heading: str, many: int, all_: int) -> None:
        same = is_(Item=row["Item"], Size=row["Size"], Color=row["Color"])
        self.book.mark("Shopping list", heading, "yes" if many == all_ else many, same)

    # the workbook itself

    def sort(self) -> None:
        """The rows of a table in another order."""
        for name, key in (("Roster", "Who"), ("Shopping list", "Item")):
            if self.chance(0.7):
                self.book.shuffle(name, key, self.random)

    def move_sheets(self) -> None:
        self.book.book.move_sheet("Press log", -3)
        for name in ("Cut list", "Press log", "Shopping list", "Proof"):
            if self.chance(0.4):
                self.book.book[name].insert_rows(1)
            if self.chance(0.4):
                self.book.book[name].insert_cols(self.random.randint(1, 6))

    def rename_sheets(self) -> None:
        for name in ("Cut list", "Press log", "Shopping list", "Proof", "Money", "Roster", "Film", "Garments"):
            if self.chance(0.4):
                self.book.book[name].title = f"Our {name.lower()}"

    ORDINARY = (
        *(Desk.cut,) * 3, *(Desk.press,) * 3, Desk.spoil, Desk.not_cut, join, join, copy_row, cancel, delete, rename,
        resize, recolor, redesign, renumber, redo, not_done, pay, pay, note, note, order, order, arrive, arrive,
    )  # fmt: skip
    AT_LAST = (sort, move_sheets, rename_sheets)
