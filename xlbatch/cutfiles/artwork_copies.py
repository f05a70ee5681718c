"""Copies of the drawings and fonts a job names, for a plan that is written to another folder."""

from collections.abc import Mapping
from pathlib import Path, PureWindowsPath

from xlbatch.files.beside import COPIES, beside, folder_of
from xlbatch.job.job import Job


def artwork_copies(job: Job, folder: Path) -> Mapping[str, bytes]:
    """The contents by place in the folder of cut files; nothing of what lies beside the plan, in `folder`, already."""
    names = [name for spec in job.designs for name in (spec.artwork, spec.font)]
    names += [name for line in job.drawing_parts for name in (line.artwork, line.replace_by, line.font)]
    copies = {}
    for name in dict.fromkeys(filter(None, (*names, job.settings.font))):
        file, there = beside(folder_of(job.path), name), beside(folder, name)
        if file and (there is None or there.read_bytes() != file.read_bytes()):
            copies["/".join((COPIES, *PureWindowsPath(name.strip()).parts))] = file.read_bytes()
    return copies
