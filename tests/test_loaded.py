"""An ordinary list does not wait for what it does not need to be loaded."""

import os
import subprocess
import sys
from pathlib import Path

SELDOM = {
    "charset_normalizer": "a .csv that does not say its encoding", "xlrd": "an old .xls list",
    "ezdxf": "cut files as DXF", "shapely": "interlocked shapes", "pypdfium2": "a drawing as PDF",
    "xlbatch.tracing.trace": "a drawing as a picture", "multiprocessing": "a large job", "tkinter": "the window",
    "http.client": "nothing",
}  # fmt: skip # modules, and what alone needs them
PROGRAM = """
import sys
from xlbatch.cli import main
assert main([sys.argv[1], "--no-window"]) == 0
print(*sys.modules)
"""


def test_a_bare_list_loads_nothing_it_does_not_need(tmp_path: Path) -> None:
    path = tmp_path / "list.csv"
    path.write_text("Who,Size\nAna,M\nBo,L\n", encoding="utf-8")
    command = [sys.executable, "-c", PROGRAM, str(path)]
    top = Path(__file__).parents[1]
    done = subprocess.run(
        command, check=True, capture_output=True, encoding="utf-8", cwd=top, env=os.environ | {"PYTHONPATH": str(top)}
    )
    loaded = done.stdout.splitlines()[-1].split()
    assert "xlbatch.sheets.write" in loaded
    assert [module for module in SELDOM if module in loaded] == []
