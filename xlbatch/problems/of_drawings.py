"""The kinds of problem that drawings have: their words, parts, colors and fonts."""

from xlbatch.problems.kind import Kind

DRAWING_KINDS: tuple[Kind, ...] = (
    Kind("braces-unknown", "stop", "{found} names no column of the list and no setting.",
         "Write the heading of a column in braces, such as {{Group}} or {{First name}}."),
    Kind("braces-blank", "stop", "{name} is blank for {who}, and a text asks for it.",
         "Fill it in, or write - to leave its room empty."),
    Kind("sample-text", "stop", "“{found}” in the drawing looks like a sample, and would be cut so.",
         "Write what is meant under Replace by on Drawing parts: {{Group}}, {{Who}} or a text."),
    Kind("font-nearest", "check", "The font {font} is not at hand; {used} was used.",
         "Look at the proof. Put the font's file beside the workbook, or name another under Font."),
)  # fmt: skip
