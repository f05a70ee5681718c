"""Loads the DXF library without its habits: it would look through all fonts of this computer, which no outline needs,
and note them in the person's home."""

import os
import tempfile
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from ezdxf.document import Drawing

_NO_FONTS = '{"version": 0, "font-faces": []}'


def new_drawing() -> "Drawing":
    """An empty drawing as of release 2000, in mm; the same bytes each time it is written."""
    before = dict(os.environ)
    with tempfile.TemporaryDirectory() as folder:
        cache = Path(folder, "ezdxf", "font_manager_cache.json")
        cache.parent.mkdir()
        cache.write_text(_NO_FONTS, encoding="utf-8")
        os.environ |= {"XDG_CACHE_HOME": folder, "XDG_CONFIG_HOME": folder}
        try:
            from ezdxf._options import options
            from ezdxf.filemanagement import new
            from ezdxf.units import MM
        finally:
            os.environ.clear()
            os.environ.update(before)
    options.write_fixed_meta_data_for_testing = True  # else the time of the run stands in it
    return new("R2000", units=MM)
