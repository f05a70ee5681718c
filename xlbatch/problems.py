"""A problem found in a person's workbook, and the table of all kinds of problem.

A person's mistake is a Problem with its sheet and cell, never an exception. To add a kind, add a line to
KINDS: its code, its level, what is wrong and what to do, with {facts} filled in by whoever finds it.
"""

from dataclasses import dataclass
from typing import Literal, NamedTuple

Level = Literal["stop", "check", "note"]


class Where(NamedTuple):
    """A cell of the person's workbook: sheet name and A1 reference ("" where no one cell is meant)."""

    sheet: str
    cell: str = ""


@dataclass(frozen=True)
class Kind:
    """One kind of problem. `stop` holds the row back; `check` and `note` do not."""

    code: str
    level: Level
    wrong: str
    todo: str


@dataclass(frozen=True)
class Problem:
    """One finding. `rows` are the Roster rows it holds back or is about (sheet row numbers)."""

    kind: Kind
    where: Where
    found: str
    wrong: str
    todo: str
    suggestion: str = ""
    rows: tuple[int, ...] = ()

    @property
    def code(self) -> str:
        return self.kind.code

    @property
    def level(self) -> Level:
        return self.kind.level

    @property
    def sentence(self) -> str:
        """The whole finding in one line, for a console or a window."""
        place = " ".join(part for part in self.where if part)
        hint = f" Did you mean {self.suggestion}?" if self.suggestion else ""
        return f"{place}: {self.wrong} {self.todo}{hint}".removeprefix(": ")


KINDS: tuple[Kind, ...] = (
    # the list of people
    Kind("size-missing", "stop", "No size is given.", "Fill in the size."),
    Kind("size-unknown", "stop", "“{found}” is no size this program knows.",
         "Write a size such as M, Youth M, 2T or 12M."),
    Kind("size-read-as", "check", "“{found}” was read as {size}: it was taken for {taken_for}.",
         "Ask, and write the size itself, such as {size}."),
    Kind("size-whose", "check", "“{found}” was read as the adult size; this family also has children's sizes.",
         "Ask, and write Youth {found} if the child's size is meant; so for its other rows."),
    Kind("size-not-made", "stop", "{garment} is not listed in size {size}.",
         "Choose a size from the Garments sheet, or add a row for this one there."),
    Kind("garment-unknown", "stop", "“{found}” is not on the Garments sheet.",
         "Correct the name, or add the garment to the Garments sheet."),
    Kind("garment-read-as", "check", "The garments were read by what they are usually called: {read}.",
         "Nothing to do, if that is right; else write the name of a garment on the Garments sheet."),
    Kind("color-not-made", "check", "{garment} is not listed in {found}.",
         "Make sure the shop has it; add the color to the Garments sheet."),
    Kind("design-unknown", "stop", "“{found}” is not on the Designs sheet.",
         "Correct the name, or add rows for this design to the Designs sheet."),
    Kind("design-only", "note", "“{found}” is the only design on Designs: it is used where the list names none.",
         "Nothing to do, if that is right; else write the design's name under Design."),
    Kind("design-chosen", "check", "The list names no design; “{found}” is used, not {others}.",
         "Write on the sheet Job which is the Usual design, or the design of each row under Design."),
    Kind("design-unused", "note", "No row uses the design “{found}”.",
         "Nothing to do, if none should; else write its name under Design."),
    Kind("given-unused", "check", "No row uses the {what} “{found}”, nor any other of yours; used: {used}.",
         "Write its name where it is wanted: a garment on the Roster, a film on the Designs sheet."),
    Kind("name-missing", "stop", "This design prints a name and none is given.", "Fill in Who or Print name."),
    Kind("number-missing", "stop", "This design prints a number and none is given.", "Fill in the Number."),
    Kind("name-open", "stop", "“{found}” stands for a name that is still open.",
         "Fill in the name. If it really is to be printed, write it in both Who and Print name."),
    Kind("name-or-none", "check", "“{found}” may be a name, or mean that there is none; it will be printed.",
         "Ask; choose a design without a name if none is wanted."),
    Kind("name-alike", "check", "“{found}” is spelled almost like “{other}” in {place}.",
         "Ask which spelling is right, if they should be one."),
    Kind("letters-mixed", "check", "“{found}” mixes alphabets: {letters}.",
         "Type the name anew, if these letters came by copying."),
    Kind("capitals-odd", "check", "“{found}” is written with unusual capitals and will be printed so.",
         "Write Print name as it should be printed."),
    Kind("name-and-more", "check", "“{found}” holds more than a name and will be printed so.",
         "Write Print name as it should be printed."),
    Kind("encoding-judged", "check", "This text file does not say how its letters are written; it was read as {found}.",
         "Look at these names. If one is wrong, export the list once more as UTF-8 or as a workbook."),
    Kind("encoding-broken", "stop", "“{found}” lost its accented letters on the way into this list.",
         "Type it anew, or export the list once more as UTF-8."),
    Kind("number-no-digits", "stop", "“{found}” is no number: only digits are printed.",
         "Write it in digits, such as 7."),
    Kind("number-no-digits-unprinted", "check", "“{found}” is no number; this design prints none.",
         "Write it in digits, such as 7, in case it is printed later."),
    Kind("list-numbers-unprinted", "check", "The list gives numbers, but the design “{design}” prints none.",
         "Add a row with What = number to the Designs sheet if they are to be printed."),
    Kind("number-open", "stop", "“{found}” stands for a number that is still open.", "Fill in the Number."),
    Kind("number-twice", "check", "Number {found} in this color is also worn by {who} of the same group.",
         "Give one of them another number, if they play together."),
    Kind("number-alike", "check", "Number {found} and the {other} of {who} are one number with and without a zero.",
         "Ask which is meant; both are printed as typed."),
    Kind("number-illegal", "stop", "Number {found} is not legal by the rule {rule} ({edition}): {legal}.",
         "Choose a legal number, or clear Number rule on the sheet Job. Follow your league's current book."),
    Kind("number-rule-unknown", "check", "There is no number rule “{found}”; numbers were not checked by one.",
         "Write one of: {rules}. Or clear the cell."),
    Kind("number-too-low", "check",
         "Number {found} is {measure} high on {garment}; {rule} ({edition}) asks for {least}.",
         "Raise Height on the Designs sheet. Follow your league's current book."),
    Kind("number-too-thin", "check",
         "Number {found} has strokes about {measure} wide on {garment}; {rule} ({edition}) asks for {least}.",
         "Raise Height or choose a bolder Font on the Designs sheet. Follow your league's current book."),
    Kind("contrast-low", "check", "{film} hardly shows on {found}: a contrast of {ratio} to 1, and 3 to 1 is wanted.",
         "Choose another film or garment color, or an Outline film."),
    Kind("duplicate-row", "check", "This row is the same as row {row}.",
         "If it was entered twice, write “cancelled” in Status; if two are wanted, leave it."),
    Kind("who-twice", "check", "{found} is also in row {row}.",
         "If it is the same person by mistake, write “cancelled” in Status."),
    Kind("size-doubtful", "check", "“{found}” was read as {many} of size {size}.",
         "Ask, and write the size alone, how many under How many."),
    Kind("cut-unclear", "stop", "There is no size {found} for {whom}, whom the cut or the title over this row names.",
         "Write the whole size, such as Youth M or 12M."),
    Kind("not-made", "note", "“{found}” here says that none is wanted; none is made.",
         "Nothing to do; else clear it and fill in the size."),
    Kind("wanted-unclear", "check", "It is not clear whether one is wanted (found: {found}); one is made.",
         "Write yes or no."),
    Kind("row-left-out", "check", "This row {why}; none is made.",
         "Nothing to do, if none is wanted; else put the row among the others."),
    Kind("name-remark", "check", "The name was read as “{name}”, and “{remark}” as a remark.",
         "Write the name alone, and the remark under Note."),
    Kind("note-asks", "check", "The note “{found}” seems to ask for something ({asks}); nothing was done about it.",
         "Change the row as the note asks, and take those words out of the note."),
    Kind("print-answer", "note", "“{found}” was taken for an answer; printed: {text}.",
         "Look at the proof; write the text itself to make it sure."),
    Kind("print-answer-unclear", "check", "“{found}” was taken for no name; nothing is printed.",
         "Write the text itself, or no name."),
    Kind("print-aside", "check", "“{text}” is printed; the rest of “{found}” was taken for a remark.",
         "Write the text alone into Print name."),
    Kind("how-many-unclear", "stop", "“{found}” is no whole number of garments.", "Write 1, 2, 3 …"),
    Kind("status-unknown", "stop", "“{found}” is no status.",
         "Leave it blank or write done, redo film, redo garment or cancelled."),
    Kind("garment-no-twice", "check", "Garment no. {found} stands in two rows; this one was given {number}.",
         "Nothing to do, unless the row was copied by mistake."),
    Kind("garment-no-unclear", "check", "“{found}” is no garment number; this row was given {number}.",
         "Leave Garment no. blank in new rows."),
    Kind("text-cleaned", "note", "Spaces or hidden characters were taken out: now “{now}”.", "Nothing to do."),
    Kind("result-unknown", "check", "“{found}” is no result.",
         "Choose ok, redo film or redo garment from the list; until then the step counts as not done."),
    Kind("arrived-unclear", "check", "“{found}” cannot be read as {wanted}; what came of this line was not counted.",
         "Write it like this: {example}. Or leave the box and change On hand on the Garments sheet."),
    Kind("arrived-unmarked", "check", "Blanks were pressed that are not marked as arrived: {kinds}.",
         "Mark Arrived on the Shopping list, or write how many came, and drop the plan again; till then what is left "
         "of them is not known and not counted as on hand."),
    Kind("film-not-counted", "check", "{found} that came or was cut is not counted by itself.",
         "Measure what is left and write it into this cell, like this: 12 in x 40 in. Left over on the Film "
         "requirement of the plan you dropped says what there is once all its runs are cut."),
    Kind("price-unclear", "check", "“{found}” cannot be read as {wanted}; this price was not used.",
         "Write it like this: {example}."),
    Kind("paid-taken-over", "note", "Written under Paid on the sheet Money, and taken over into Roster: {what}.",
         "Nothing to do, if it is right."),
    Kind("paid-two-ways", "check",
         "Paid was changed here to {found} and on the sheet Money, in {cell}, to {other}; what stands here is used.",
         "Write what was paid in all into Paid, on Roster or on Money."),
    Kind("paid-not-read", "check", "“{found}” under Paid was not taken over: {why}.",
         "Write what was paid for a garment into its row, on Roster or on Money, as an amount or yes."),
    # any sheet
    Kind("cell-error", "stop", "The cell shows the spreadsheet error {found}.",
         "Mend the formula or type the value."),
    Kind("formula-unsaved", "stop", "The cell holds a formula whose result was never saved.",
         "Open the workbook in your spreadsheet program, save it and drop it again."),
    Kind("date-for-size", "stop", "The spreadsheet turned this cell into the date {found}.",
         "Format the cell as text and type it again."),
    Kind("value-unclear", "stop", "“{found}” cannot be read as {wanted}.", "Write it like this: {example}."),
    Kind("setting-unclear", "check", "“{found}” cannot be read as {wanted}; {used} was used.",
         "Write it like this: {example}."),
    Kind("setting-unknown", "check", "“{found}” is no setting of this program and was left out.",
         "Correct the name, or delete the row."),
    Kind("setting-twice", "check", "{found} is given twice; the last one is used.", "Delete one of the two rows."),
    Kind("film-twice", "check", "The film “{found}” is listed twice; the first row is used.",
         "Delete one of the two rows, or give one another name."),
    Kind("decal-twice", "check", "The design {design} has two decals called “{found}”; both are made.",
         "Give one another name, or delete it."),
    Kind("garment-twice", "check", "{garment} {size} is listed twice in the same colors; the first row is used.",
         "Delete one of the two rows."),
    Kind("value-needed", "stop", "{heading} is blank.", "Fill it in."),
    Kind("heading-unknown", "note", "Columns that are kept, but not used: {found}.",
         "If one matters, rename its heading to one of this sheet's own."),
    Kind("heading-twice", "check", "{found} was not read: {meaning} was read from {won}. Here stands first: {holds}.",
         "Delete or rename one of the two columns."),
    Kind("headings-missing", "check", "No row of headings was found; {read}.",
         "Look at the first rows of the Roster; a row with Who and Size above the list makes it sure."),
    Kind("heading-by-content", "check", "No heading says so, but by what stands there {read}.",
         "Look at the first rows of the Roster; use the headings Who and Size to make it sure."),
    Kind("print-unused", "check", "The first row prints “{printed}”; {column} says “{example}” and is not printed.",
         "If that is to be printed, head it Print name; else leave it."),
    Kind("column-size-unused", "check", "{column} looks like sizes (first: {example}) and was not used.",
         "If it is a second garment's size, give it rows of their own, or head both: Tee size, Hoodie size."),
    Kind("column-answer-unused", "check", "{column} says yes and no (first: {example}) and was not used.",
         "If it says who gets one, head it Want a shirt."),
    Kind("list-without-names", "check", "The list has no names: the garments are counted, and no name is printed.",
         "Nothing to do, if that is right. Else give a Shared line on Job, a text on Designs, or names here."),
    Kind("list-chat", "check", "This was read as a chat: each sender is a person, the one size in the message theirs.",
         "Compare the plan's Roster with the chat; write the rest by hand."),
    Kind("list-under-sizes", "check", "The names were read as listed under their sizes.",
         "Nothing to do, if the plan's Roster is right."),
    Kind("list-in-cells", "check", "Several people were read from one cell, each a name and a size.",
         "Nothing to do, if the plan's Roster is right."),
    Kind("sheet-again", "check", "The sheet “{found}” has the same people as “{other}” and was not read.",
         "Nothing to do, if “{other}” is right; else take it out."),
    Kind("sheet-older", "check", "The sheet “{found}” looks old or is hidden; its {count} rows were not read.",
         "If they belong to the list, show the sheet and give it another name."),
    Kind("sheet-joined", "check", "The list goes on on the sheet “{found}”; its rows were read too.",
         "Nothing to do, if it belongs to the list; else take the sheet out."),
    Kind("table-joined", "check", "A further table begins here; its rows were read as part of the list.",
         "Nothing to do, if it belongs to the list; else put it on a sheet of its own."),
    Kind("table-aside", "check", "The rows from here on look like a table of another kind and were not read.",
         "If there are people among them, put them under the list's own headings."),
    Kind("row-group", "check", "“{found}” was taken for the group of the rows below it.",
         "If it is a person, fill in Size."),
    Kind("list-sideways", "check", "This list runs sideways: each column was read as a row.",
         "Nothing to do, if the plan's Roster is right."),
    Kind("line-not-read", "check", "No name and size was found in the line “{found}”; it was not read.",
         "If it is a person, write it like the other lines, name first."),
    Kind("size-several", "check", "“{found}” names several sizes; one garment of each is made.",
         "If only one is wanted, write that one."),
    Kind("row-above", "check", "This row stands above the headings and was not read.",
         "If it is a person, put it below the row of headings."),
    Kind("row-title", "note", "“{found}” was taken for a title.", "Nothing to do, if it is no one's name."),
    Kind("row-totals", "note", "This row was taken for the list's totals and was not read.",
         "If it is a person, fill in Size."),
    Kind("row-aside", "check", "Nothing in this row stands under a heading that was understood; it was not read.",
         "If it is a person, put name and size under those headings."),
    Kind("sheet-unknown", "note", "The sheet “{found}” was not understood and was not read.",
         "Nothing to do, if it is your own."),
    Kind("sheet-second", "check", "The sheet “{found}” looks like a second {meaning} and was not read.",
         "Put its rows on the sheet {first}."),
    Kind("sheet-hidden-rows", "check", "{count} rows of this sheet are hidden or filtered out; they were read too.",
         "Show them and look; write “cancelled” in Status where one is not wanted."),
    Kind("cell-too-long", "check", "“{found}” is {count} characters long; a spreadsheet's cell holds 32,767, so the "
         "plan has only the beginning.", "Shorten it, if the rest matters."),
    Kind("no-rows", "stop", "There is no row with a size on the list.",
         "Head one column Size, beside the names, and write each one's size in it: M, Youth M, 2T."),
    Kind("list-not-found", "stop",
         "No list of people was found: neither a row of headings with Size among them, nor a column of sizes.",
         "Write one person a row, the name in one cell and the size (M, Youth M, 2T) in another, and above them a row "
         "with the headings Who and Size."),
    # designs, artwork, lettering
    Kind("artwork-missing", "stop", "The drawing “{found}” is not beside the workbook.",
         "Put the SVG file into the workbook's folder, or leave Artwork blank and give Width and Height."),
    Kind("artwork-unreadable", "stop", "The drawing “{found}” cannot be cut: {reason}.", "{remedy}"),
    Kind("artwork-color-missing", "stop", "The drawing has nothing filled with {found}.",
         "Use one of its colors: {colors}."),
    Kind("artwork-color-needed", "stop", "The drawing has more than one color: {colors}.",
         "Write in Artwork color which one this row cuts; give each other color a row of its own."),
    Kind("artwork-color-unused", "check",
         "The drawing's color {found} is on no row of the Designs sheet and is not cut.",
         "Add a row for it, or leave it if it is not wanted."),
    Kind("font-unknown", "check", "There is no font “{found}”; {used} was used.",
         "Name one of the bundled fonts: {fonts}."),
    Kind("font-lacks", "stop", "No bundled font can draw {letters}.",
         "Put a font file that has them beside the workbook and name it under Font, or write Print name otherwise."),
    Kind("font-other", "check", "{font} lacks {letters}; this text is set in {used}.",
         "Look at the proof; name another font on the Designs sheet if you prefer."),
    Kind("font-computer", "check", "No bundled font can draw {letters}; this text is set in {used} of this computer.",
         "Look at the proof; another computer may not have this font."),
    Kind("text-directions", "note", "“{found}” mixes letters that read from the right with others.",
         "Look at the proof: the parts stand in the order in which such a line is read."),
    Kind("arch-too-strong", "check", "“{found}” is too short to bend by {asked}°; it was bent by {used}°.",
         "Look at the proof, or give a smaller Arch."),
    Kind("stroke-thin", "check", "{which}: a stroke is only {width} wide; {film} holds from {least}.",
         "Look at the proof, where the places are marked. {remedy}"),
    Kind("gap-thin", "check", "{which}: a gap is only {width} wide; in {film} one weeds from {least}.",
         "Look at the proof, where the places are marked. {remedy}"),
    Kind("dot-small", "check",
         "{which}: a separate piece is no bigger than a dot {width} wide; {film} holds strokes from {least}.",
         "Look at the proof, where the places are marked. {remedy}"),
    Kind("decal-too-fine", "stop", "{which} is so fine that nothing of it would hold; {film} holds from {least}.",
         "{remedy}"),
    Kind("off-center", "note",
         "{which}: most of the ink lies to the {heavy} of the middle, by {part} % of the width.",
         "As you look at the garment, it would look centered {shift} more to the {light}; the Decals sheet has each. "
         "Nothing is moved by itself."),
    Kind("film-unknown", "stop", "“{found}” is not on the Film sheet.",
         "Correct the name, or add the film to the Film sheet."),
    Kind("lettering-too-long", "stop", "“{text}” does not fit {widest} wide with letters {least} high.",
         "Shorten the text, or let it be wider: {needed} would do."),
    Kind("decal-wider-than-film", "stop", "{decal} would be {width} × {height}; {film} is {usable} wide.",
         "Make it at most {fits} wide, or use a wider roll."),
    Kind("decal-longer-than-strip", "stop", "{decal} is {length} long on the film; the longest {limit} is {most}.",
         "Make the decal smaller, or raise {setting} on the sheet Job."),
    Kind("decal-off-garment", "stop",
         "{decal} ({width} × {height}) does not fit {garment} {size} at the position {position}.",
         "Make it at most {fits}, or choose another position."),
    Kind("decals-overlap", "stop", "{decal} and {other} would lie on one another on {garment} {size}.",
         "Give them other positions, or make them smaller."),
    Kind("position-unknown", "stop", "“{found}” is no position this program knows.", "Use one of: {positions}."),
    Kind("position-not-made", "stop", "There is no {position} on {garment} {size}.", "Choose another position."),
    Kind("measure-missing", "stop", "{garment} {size} has no {measure}, which {position} is measured by.",
         "Measure one and fill in the Garments sheet."),
    # heat
    Kind("heat-over-limit", "stop",
         "{film} is pressed at {temperature}; {garment} bears {limit} ({reason}).", "{remedy}"),
    Kind("heat-check-label", "check",
         "{film} is pressed at {temperature}; {fabric} often bears only {limit}, and the care label was not checked.",
         "Read the label and fill in Iron dots on the Garments sheet."),
    Kind("dye-may-show", "check",
         "{garment} in {found} is polyester: in the heat its dye can come through lighter film.",
         "Press a trial and look the next day, or use a film made to block dye, as its maker says."),
    Kind("press-too-cool", "stop", "{film} is pressed at {temperature}; {press} reaches {hottest}.",
         "Use another film kind or another press."),
    Kind("heat-order", "stop",
         "{later} comes in a later layer than {earlier} and is pressed hotter than {earlier} bears.",
         "Give both the same layer where they do not overlap (the hotter goes first then), or choose another film."),
    Kind("heat-over-pressed", "check", "{earlier} is already on this garment; {later} is pressed hotter than it bears.",
         "Keep the plate off it, or follow the film maker's sheet for pressing over it."),
    # what was assumed
    Kind("assumed", "note", "{what}: not given, so this is used: {used}.",
         "Change it on the sheet {sheet} if it is wrong."),
    Kind("label-not-checked", "note", "The care label of {garment} was not checked.",
         "Read the label before the first press and fill in Iron dots on the Garments sheet."),
    Kind("price-missing", "note", "No price is given for {what}; the costs with it are left blank.",
         "Fill in the price on the sheet {sheet}."),
    Kind("on-hand-which-color", "check", "{garment} {size} on hand: the number does not say which color.",
         "Write it like this: white = 3; red = 2."),
)  # fmt: skip

_BY_CODE = {kind.code: kind for kind in KINDS}


def problem(
    code: str, where: Where, found: object = "", *, suggestion: str = "", rows: tuple[int, ...] = (), **facts: object
) -> Problem:
    """A problem of the kind `code`, its texts filled in from `found` and `facts`. Raises KeyError if one lacks."""
    kind = _BY_CODE[code]
    facts["found"] = found
    return Problem(kind, where, str(found), kind.wrong.format_map(facts), kind.todo.format_map(facts), suggestion, rows)
