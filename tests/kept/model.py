"""A model of a job as it goes on: it is told what was done, and knows what must have come of it. It shares no code with
what keeps a plan's memory."""

from collections import Counter
from dataclasses import dataclass, field
from typing import Any

from tests.plan_book import Key, PlanBook, Row
from xlbatch.units import mm_per

FILM_OF = {"Front": "Black smooth", "Back": "Red smooth", "Number": "Red smooth"}
PIECES = {"Name": ("Front", "Back"), "Team": ("Front", "Number"), "Short": ("Front",)}  # of each design
DESIGNS = [
    ["Design", "Decal", "What", "Film", "Position", "Height", "Scale with size"],
    ["Name", "Front", "print name", "Black smooth", "full front", "1 in", "no"],
    ["Name", "Back", "print name", "Red smooth", "back name", "1 in", "yes"],
    ["Team", "Front", "print name", "Black smooth", "full front", "1 in", "no"],
    ["Team", "Number", "number", "Red smooth", "back number", "3 in", "no"],
    ["Short", "Front", "print name", "Black smooth", "full front", "1 in", "no"],
]
SCALED = "Back"  # the piece whose size is by the garment's
FILM = [["Film", "Rolls sold"], ["Black smooth", "5 yd = 20.00"], ["Red smooth", "5 yd = 21.00"]]
ROLL = 5 * mm_per("yd")
END = 2 * mm_per("in") + 20  # margins of a run, and gaps beside a strip, mm
ROUNDED = 4.0  # mm: a printed length is off by less
READY, OVER = ("cut", "weeded"), ("pressed", "spoiled")
Strip = tuple[str, int, int]  # film, run and strip number
NOWHERE = ("", 0, 0)
Kind = tuple[str, str]  # size and color


@dataclass
class Shirt:
    """A garment: what the list says, what is on it by piece, and the blank it is on (None: none yet)."""

    name: str
    size: str
    color: str
    design: str
    number: str
    on_it: dict[str, str] = field(default_factory=dict)  # piece: decal
    blank: Kind | None = None
    planned: Kind | None = None  # the blank that the plan on the table takes
    cancelled: bool = False
    done: bool = False  # as the Roster's Status says
    gone: bool = False  # its row was deleted from the plan on the table
    paid: float | None = None

    def row(self) -> dict[str, object]:
        """Its row on the list."""
        cells = (self.name, self.size, self.color, self.design, self.number)
        return dict(zip(("Who", "Size", "Color", "Design", "Number"), cells, strict=True))

    def missing(self) -> list[str]:
        return [] if self.done else [piece for piece in PIECES[self.design] if piece not in self.on_it]

    def text(self, piece: str) -> str:
        return self.number if piece == "Number" else self.name


@dataclass
class Decal:
    """A decal that was planned: whose it is, what it says, where it was laid, and what became of it."""

    owner: int
    piece: str
    text: str
    size: str  # of the garment it was drawn for
    strip: Strip
    state: str = "to cut"


@dataclass
class Typed:
    """Something written by hand, of which nothing like stands elsewhere: the sheet, whose row, the heading."""

    sheet: str
    key: Key
    heading: str
    text: str


@dataclass
class Model:
    """Everything that is known of the job from what was done."""

    shirts: dict[int, Shirt] = field(default_factory=dict)
    joining: list[Shirt] = field(default_factory=list)  # on the list, and without a number yet
    decals: dict[str, Decal] = field(default_factory=dict)
    lengths: dict[Strip, float] = field(default_factory=dict)  # mm, as the Cut list says
    typed: list[Typed] = field(default_factory=list)
    used: Counter[Kind] = field(default_factory=Counter)
    came: Counter[Any] = field(default_factory=Counter)  # blanks by size and color, rolls by film
    way: Counter[Any] = field(default_factory=Counter)

    # what is done

    def on_strip(self, strip: Strip) -> list[Decal]:
        return [decal for decal in self.decals.values() if decal.strip == strip]

    def cut(self, strip: Strip, state: str = "cut") -> None:
        for decal in self.on_strip(strip):
            if decal.state not in OVER:
                decal.state = state

    def surely_cut(self, name: str) -> None:
        """A decal that is pressed or spoiled was cut, and its strip with it."""
        for decal in self.on_strip(self.decals[name].strip):
            decal.state = "cut" if decal.state == "to cut" else decal.state

    def spoiled(self, name: str) -> None:
        self.surely_cut(name)
        self.decals[name].state = "spoiled"

    def pressed(self, name: str, result: str) -> None:
        decal = self.decals[name]
        shirt = self.shirts[decal.owner]
        if shirt.blank is None:
            assert shirt.planned
            shirt.blank = shirt.planned
            self.used[shirt.blank] += 1
        self.surely_cut(name)
        decal.state = "pressed" if result == "ok" else "spoiled"
        if result == "ok":
            shirt.on_it[decal.piece] = name

    def garment_spoiled(self, no: int) -> None:
        shirt = self.shirts[no]
        self.film_spoiled(no)
        shirt.blank = None

    def film_spoiled(self, no: int) -> None:
        for name in self.shirts[no].on_it.values():
            self.decals[name].state = "spoiled"
        self.shirts[no].on_it, self.shirts[no].done = {}, False

    def not_pressed(self, no: int) -> None:
        """Done was cleared: nothing of it was pressed after all."""
        shirt = self.shirts[no]
        for name in shirt.on_it.values():
            self.decals[name].state = "weeded"
        if shirt.blank:
            self.used[shirt.blank] -= 1
        shirt.on_it, shirt.blank, shirt.done = {}, None, False

    # what the next plan must know

    def learn(self, book: PlanBook) -> None:
        """New garments and decals, and where those to cut lie; numbers mean what they meant."""
        waiting = {shirt.name: shirt for shirt in self.joining}
        for _, row in book.rows("Roster", "Who"):
            if row["Who"] and row["Garment no."] not in self.shirts:
                self.shirts[row["Garment no."]] = waiting.pop(row["Who"])
        assert not waiting, f"{sorted(waiting)} are on no list"
        self.joining = []
        for shirt in self.shirts.values():
            shirt.planned = shirt.blank or (shirt.size, shirt.color)
            shirt.done = not shirt.cancelled and not shirt.missing()
        for decal in self.decals.values():
            decal.strip = decal.strip if decal.state != "to cut" else NOWHERE
        for _, row in book.rows("Decals", "Decal"):
            name, strip = row["Decal"], (row["Film"], row["Run"], row["Strip"])
            no, piece = row["Garment no."], row["Piece"]
            decal = self.decals.setdefault(name, Decal(no, piece, row["Text"], "", strip))
            assert (decal.owner, decal.piece) == (no, piece), f"{name} means two things"
            if row["Now"] == "to cut":
                decal.strip, decal.text = strip, row["Text"]
                decal.size = (self.shirts[no].planned or ("",))[0]
        for row in book.strips(ready=False):
            length = float(row["Length (in)"]) * mm_per("in")
            strip = row["Film"], row["Run"], row["Strip"]
            taken = any(decal.state != "to cut" for decal in self.on_strip(strip))
            assert not taken, f"strip {strip} means two things"
            self.lengths[strip] = length

    def judge(self, book: PlanBook, codes: list[str]) -> None:
        """Raises AssertionError where the plan is not what must have come of it."""
        self.judge_decals(book)
        self.judge_steps(book)
        self.judge_questions(book)
        self.judge_typed(book)
        self.judge_blanks(book)
        self.judge_film(book, lacking="film-came-unmarked" in codes)

    def judge_decals(self, book: PlanBook) -> None:
        now = {row["Decal"]: row["Now"] for _, row in book.rows("Decals", "Decal")}
        for name, decal in self.decals.items():
            also = "not needed" if decal.state in READY else None if decal.state == "to cut" else decal.state
            assert now.get(name) in (decal.state, also), f"{name} is {now.get(name)}, not {decal.state}"
        listed = {name for row in book.strips(ready=True) for name in row["Decals"].split(", ")}
        on_table = {name for name, decal in self.decals.items() if decal.state in READY}
        assert listed == on_table, f"at the table: {sorted(listed ^ on_table)}"

    def judge_steps(self, book: PlanBook) -> None:
        """Each garment is made once: what it lacks is to press, from the table where it lies there, else to be cut."""
        steps = {(row["Garment no."], row["Piece"]): row["Decal"] for _, row in book.steps()}
        wanted = {(no, piece) for no, shirt in self.shirts.items() if not shirt.cancelled for piece in shirt.missing()}
        assert set(steps) == wanted, f"to press: {sorted(set(steps) ^ wanted)}"
        assert len(steps) == sum(1 for _ in book.steps())
        to_cut = Counter(name for row in book.strips(ready=False) for name in row["Decals"].split(", "))
        assert set(to_cut) <= set(steps.values()), "more is cut than is pressed"
        for (no, piece), name in steps.items():
            decal, shirt = self.decals[name], self.shirts[no]
            text, size = shirt.text(piece), (shirt.planned or ("",))[0]
            alike = [
                other
                for other, lying in self.decals.items()
                if (lying.owner, lying.piece, lying.text) == (no, piece, text)
                and (piece != SCALED or lying.size == size)
                and lying.state in READY
            ]
            assert decal.text == text, f"{name} says {decal.text}, not {text}"
            assert decal.state in READY or not alike, f"{name} is cut anew and {alike} lies there"
            assert to_cut[name] == (decal.state not in READY), f"{name} is cut {to_cut[name]} times"

    def judge_questions(self, book: PlanBook) -> None:
        """What the list says otherwise than a garment in hand is, is asked."""
        otherwise = {
            no
            for no, shirt in self.shirts.items()
            if shirt.blank and not shirt.cancelled and not shirt.gone and self._is_otherwise(shirt, shirt.blank)
        }
        asked = book.asked("changed-after-pressing") | book.asked("done-without")
        assert asked == otherwise, f"asked of {sorted(asked)}, changed {sorted(otherwise)}"
        gone = {no for no, shirt in self.shirts.items() if shirt.gone}
        assert {int(row["Found"]) for _, row in book.rows("Problems", "Code") if row["Code"] == "row-deleted"} == gone
        for no in gone:  # its row is back, and is asked about like the others from now on
            self.shirts[no].gone = False

    def _is_otherwise(self, shirt: Shirt, blank: Kind) -> bool:
        wanted = PIECES[shirt.design]
        texts = [self.decals[name].text == shirt.text(piece) for piece, name in shirt.on_it.items()]
        strange = set(shirt.on_it) - set(wanted) or (shirt.done and set(wanted) - set(shirt.on_it))
        return blank != (shirt.size, shirt.color) or bool(strange) or not all(texts)

    def judge_typed(self, book: PlanBook) -> None:
        for (no,), paid in book.of("Roster", "Paid").items():
            assert paid == self.shirts[no].paid, f"no. {no} paid {self.shirts[no].paid}, not {paid}"
        said = {str(row[name]) for row in book.changes() for name in ("Before", "Now") if row[name]}
        for typed in self.typed:
            there = book.of(typed.sheet, typed.heading) if book.has(typed.sheet, typed.heading) else {}
            kept = there.get(typed.key) == typed.text or any(typed.text in text for text in said)
            assert kept, f"{typed.sheet}, {typed.heading} of {typed.key}: {typed.text} is lost"

    def judge_blanks(self, book: PlanBook) -> None:
        """Bought = used and spoiled + left + on the way."""
        shelf: Counter[Kind] = Counter()
        for _, row in book.rows("Garments", "Neckline"):
            for part in str(row["On hand"] or "").split("; "):
                if " = " in part:
                    shelf[row["Size"], part.split(" = ")[0]] += int(part.split(" = ")[1])
        for kind in {*self.used, *(key for key in self.came if isinstance(key, tuple))}:
            assert shelf[kind] == max(0, self.came[kind] - self.used[kind]), f"{kind}: {shelf[kind]} on hand"
        way = Counter({stock_key(row): row["On the way"] for row in to_buy(book) if row["On the way"]})
        assert way == +self.way, f"on the way: {way}, not {self.way}"

    def judge_film(self, book: PlanBook, *, lacking: bool) -> None:
        cut = {decal.strip for decal in self.decals.values() if decal.state != "to cut"}
        for (film,), there in book.of("Film", "On hand").items():
            left = sum(_length(piece) for piece in str(there or "").split("; ") if piece)
            came, own = self.came[film] * ROLL, [self.lengths[strip] for strip in cut if strip[0] == film]
            least = came - sum(length + END for length in own) - (self.came[film] * 26 if own else 0)
            most = came - (0 if lacking else sum(length - ROUNDED for length in own))
            assert min(least, most) - ROUNDED <= left <= most + ROUNDED, (
                f"{film}: {left:.0f}, not {least:.0f}–{most:.0f}"
            )


def to_buy(book: PlanBook) -> list[Row]:
    """The lines of the Shopping list."""
    return [row for _, row in book.rows("Shopping list", "Item") if row["Kind"] in ("blank", "film", "supply")]


def stock_key(row: Row) -> Any:
    """What a line of the Shopping list is about: size and color of a blank, the film of a roll, a supply."""
    return (row["Size"], row["Color"]) if row["Kind"] == "blank" else row["Item"].split(",")[0]


def _length(piece: str) -> float:
    """The length of `12 in x 3 1/2 in` in mm."""
    *number, unit = piece.split(" x ")[1].split(" ")
    return sum(float(part) if "/" not in part else _fraction(part) for part in number) * mm_per(unit)


def _fraction(part: str) -> float:
    above, below = part.split("/")
    return float(above) / float(below)
