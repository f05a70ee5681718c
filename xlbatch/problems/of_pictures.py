"""The kinds of problem that only a drawing can have that is a picture made of dots, or a page of a PDF."""

from xlbatch.problems.kind import Kind

PICTURE_KINDS: tuple[Kind, ...] = (
    Kind("picture-changed", "note", "“{found}”: {what}.", "Look at the proof."),
    Kind("picture-left-out", "check", "“{found}”: {what} was left out.",
         "Look at the proof; if it belongs to the drawing, ask whoever made it for flat colors with hard edges."),
    Kind("picture-colors", "check",
         "“{found}” has {count} colors; those most alike were taken together, so that {most} are left.",
         "Look at the proof, or ask whoever made the drawing for it in fewer colors."),
    Kind("picture-background", "check",
         "“{found}” is {color} at its edges; that was taken for the background and is not cut.",
         "Look at the proof; if it is to be cut, ask for the drawing with white or nothing around it."),
    Kind("picture-enclosed", "check",
         "“{found}”: {areas}.",
         "Look at the proof. If one is to be cut, write yes under Use on the sheet Drawing parts."),
    Kind("picture-coarse", "check",
         "“{found}” has too few dots to be {width} wide: its outlines are good up to {widest}.",
         "Make it smaller, or ask whoever made the drawing for a larger picture, an SVG or a PDF."),
)  # fmt: skip
