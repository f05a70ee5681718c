"""Roster: the list as it was understood, one row a garment, to be changed and dropped again."""

from collections.abc import Iterable, Mapping, Sequence

from xlbatch.job.job import Job
from xlbatch.sheets import garments_input
from xlbatch.sheets.inputs import FIRST, SPARE_ROWS, Input
from xlbatch.trade import columns as trade

_NAMES = ("First name", "Last name")


def columns(job: Job) -> tuple[trade.InputColumn, ...]:
    """The contract's columns; first and last name where the list had them."""
    apart = any(row.first_name or row.last_name for row in job.roster)
    return tuple(column for column in trade.columns("Roster") if apart or column.heading not in _NAMES)


def choices(job: Job, headings: Sequence[str]) -> Mapping[str, Iterable[str] | str]:
    """Drop-downs: the garments, colors and designs of this workbook, the sizes of the garment in the same row."""
    blanks = garments_input.listed(job)
    return {
        "Garment": [blank.garment for blank in blanks],
        "Color": [color for blank in blanks for color in blank.colors],
        "Design": [spec.design for spec in job.designs],
        "Size": _sizes(headings.index("Garment"), len(garments_input.GARMENTS.rows(job)), job.settings.usual_garment),
    }


def _sizes(place: int, blanks: int, usual: str) -> str:
    """A formula for the cells of the Garments sheet that list the sizes of the garment in this row."""
    garment, last = f"${chr(ord('A') + place)}{FIRST + 1}", FIRST + blanks + SPARE_ROWS
    size = chr(ord("A") + [column.heading for column in trade.columns("Garments")].index("Size"))
    name = f'IF({garment}="","{usual.replace(chr(34), chr(34) * 2)}",{garment})'
    names = f"Garments!$A${FIRST + 1}:$A${last}"
    return f"=OFFSET(Garments!${size}${FIRST},MATCH({name},{names},0),0,COUNTIF({names},{name}),1)"


ROSTER = Input(
    name="Roster",
    advice="One row a garment. Change or add rows and drop this workbook again. Colored cells carry a note. "
    "Leave Garment no. blank in new rows; write cancelled in Status rather than deleting a row.",
    records=lambda job: job.roster,
    fields={
        "Garment no.": "no",
        "Who": "who",
        "First name": "first_name",
        "Last name": "last_name",
        "Group": "group",
        "Garment": "garment",
        "Size": "size_said",
        "Color": "color",
        "Design": "design",
        "Print name": "print_name",
        "Number": "number",
        "Note": "note",
        "Paid": "paid",
        "Confirmed": "confirmed",
        "Status": "status",
        "Done so far": "done_so_far",
    },
    choices=choices,
    columns=columns,
    same={"How many": 1},
)
