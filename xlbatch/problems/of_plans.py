"""The kinds of problem that only a plan dropped again can have: its marks, its memory, changes after work was begun."""

from xlbatch.problems.kind import Kind

PLAN_KINDS: tuple[Kind, ...] = (
    Kind("memory-damaged", "check", "This sheet, the plan's memory, was changed and cannot be read; what was cut is "
         "not known.", "Drop the plan as it was saved before, or write done and redo into Status on the Roster."),
    Kind("cut-not-known", "check", "{count} strips are marked as cut in a plan made before plans had a memory: what "
         "was on them is not known, and it is planned to be cut.",
         "Write done into Status on the Roster for garments that are made; look through what lies cut before cutting."),
    Kind("result-contradicts", "check", "“{found}” contradicts {other}, for the same {what}; it counts as not done.",
         "Leave only what is right, and drop the plan again."),
    Kind("pressed-no-result", "check", "Garment no. {number} is ticked as pressed and has no Result.",
         "Write ok, redo film or redo garment into Result; until then its steps count as not done."),
    Kind("mark-unclear", "check", "“{found}” cannot be read as {wanted}; it counts as not marked.",
         "Write yes, or clear the cell."),
    Kind("spoiled-unknown", "check", "“{found}” is no decal of this strip; it was not counted as spoiled.",
         "Write the decals' numbers, like this: D017, D019. Or all, for the whole strip."),
    Kind("film-came-unmarked", "check", "More of {found} was cut than is known to have been there.",
         "Mark Arrived on the Shopping list, or measure what is left and write it here, like this: 12 in x 40 in."),
    Kind("film-reckoned", "note", "What is left of {found} was reckoned from what came and what was cut.",
         "Measure it, and correct this cell if it is wrong."),
    Kind("changed-after-pressing", "check",
         "No. {number}: the {what} was pressed as {before}; the list now says {found}.",
         "It stays as it was pressed. Write redo garment into Status to make it anew, or {before} back; or ok into "
         "Answer."),
    Kind("cut-not-needed", "check", "{found} ({what}) of no. {number} lie cut and fit no garment to make now.",
         "Keep them, or write back what was planned. Under Answer, ok takes what is suggested, if anything is; no, or "
         "ok where nothing is, means not to be asked again."),
    Kind("done-without", "check", "No. {number} is done, and {found} of its design is not on it.",
         "To press that too, clear Status and write “{pressed}” into Done so far; else write ok into Answer."),
    Kind("design-after-pressing", "check",
         "{what} was {before} and is {found} now; {count} garments were pressed as it was before.",
         "They stay as they are. Write redo garment into Status of those to make anew; or ok into Answer."),
    Kind("row-deleted", "check", "Garment no. {found} ({who}) was planned and its row is gone.",
         "It is back as cancelled, so that its number, marks and payments stay known. Clear Status if it is wanted."),
    Kind("copied-with-it", "check", "Garment no. {copied} stands in two rows; this one was given {number} and begins "
         "anew, without “{found}”.", "Write that once more if it is true of this one too."),
    Kind("typed-over", "check", "“{found}” was written under {heading} of a sheet that the plan makes anew: it was not "
         "taken up.", "Change it on the sheet {sheet}, and drop the plan again."),
    Kind("typed-beside", "check", "“{found}” was written on a sheet that the plan makes anew: it was not taken up, and "
         "is kept on the sheet Changes.",
         "If it changes the job, change that on the sheet {sheet}, and drop the plan again."),
    Kind("anything-cut", "check", "Nothing on the Cut list is marked as cut, so everything is planned to be cut.",
         "Was anything cut? Then mark it in the plan you dropped, and drop that again; if not, write ok into Answer."),
    Kind("redo-under", "stop", "{found} is to be made anew, but {over}, which lies over it, is already pressed.",
         "It cannot go under what is pressed. Write redo garment, or ok if it can stay as it is."),
)  # fmt: skip
