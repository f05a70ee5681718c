"""Which plan a workbook of pages to print belongs to: its properties say so, whatever the file is called."""

import re
import zipfile
from html import unescape

from xlbatch.files.package import part, size

PAGES_OF = "Pages to print of "  # begins the subject of such a workbook (a property of every office document)
_CORE = "docProps/core.xml"  # ECMA-376, part 2
_MOST = 100_000  # bytes: properties are never larger


def printed_of(archive: zipfile.ZipFile) -> str:
    """The plan's file name; "" for any other workbook. Raises Refusal for damage."""
    if _CORE not in archive.namelist() or size(archive, _CORE) > _MOST:
        return ""
    subject = re.search(rf"<dc:subject>{PAGES_OF}(.*?)</dc:subject>", part(archive, _CORE).decode("utf-8", "replace"))
    return unescape(subject[1]) if subject else ""
