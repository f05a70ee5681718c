"""What a decal of a garment says: the print name, the number, or the design's own text."""

import re
from collections.abc import Mapping

from xlbatch.job.job import NO_NAME, DecalSpec, RosterRow, Settings
from xlbatch.trade.name_parts import first_name, last_name

_PLACEHOLDER = re.compile(r"\{([^{}]+)\}")


def print_name(row: RosterRow, settings: Settings) -> str:
    """The name to print: as typed in Print name, else the whole, first or last name of Who; "" for none."""
    if row.print_name == NO_NAME:
        return ""
    if row.print_name:
        return row.print_name
    if settings.print_ == "first name":
        return row.first_name or first_name(row.who)
    if settings.print_ == "last name":
        return row.last_name or last_name(row.who)
    return row.who


def decal_text(spec: DecalSpec, row: RosterRow, settings: Settings) -> str:
    """The text of one decal on one garment; "" for artwork, and for a text with nothing to say."""
    match spec.what:
        case "artwork":
            return ""
        case "print name":
            return print_name(row, settings)
        case "number":
            return row.number
        case "text":
            return _filled(spec.text, row, settings)


def _filled(text: str, row: RosterRow, settings: Settings) -> str:
    """`text` with {Who}, {Group}, {Shared line} … replaced; other braces stay as typed."""
    known = _placeholders(row, settings)
    return _PLACEHOLDER.sub(lambda found: known.get(found[1].strip().casefold(), found[0]), text).strip()


def _placeholders(row: RosterRow, settings: Settings) -> Mapping[str, str]:
    return {
        "who": row.who,
        "group": row.group,
        "print name": print_name(row, settings),
        "number": row.number,
        "size": row.size,
        "shared line": settings.shared_line,
        "job name": settings.job_name,
    }
