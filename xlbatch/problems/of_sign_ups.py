"""The kinds of problem that the answers of sign-up workbooks can have, where several are joined."""

from xlbatch.problems.kind import Kind

SIGN_UP_KINDS: tuple[Kind, ...] = (
    Kind("sign-up-open", "check", "{count} on the list did not answer the sign-up: {found}.",
         "Remind them; their rows wait for a size."),
    Kind("sign-up-twice", "note", "{found} signed up twice with the same answers ({file}); it counts once.",
         "Nothing to do; write 2 under How many if two are wanted."),
    Kind("sign-up-differs", "check", "{who} signed up twice: under {heading} this row has {kept}, {file} says {found}.",
         "This row stays as it is. Ask, and change its cell here if the other answer is right."),
    Kind("sign-up-consent", "check", "{household}: whether children's names may be printed was answered with {found}.",
         "Ask a parent before anything is cut; write none under Print name where the answer is no."),
)  # fmt: skip
