"""Work times: how long each piece of the work takes."""

from xlbatch.sheets.inputs import Input

WORK_TIMES = Input(
    name="Work times",
    advice="How long each piece of the work takes: measure your own and write it here. The Time plan and the labor on "
    "Money count with it.",
    records=lambda job: job.work_times.rows,
    fields={"Stage": "stage", "Work": "work", "Value": "value", "Unit": "unit"},
    widths={"Work": 2.6},
)
