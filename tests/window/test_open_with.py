"""Offered under Open with, as the desktop's own checker accepts it; and what the application bundle says on macOS."""

import importlib.util
import plistlib
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from xlbatch import __version__
from xlbatch.window import open_with

PROGRAM = Path('/home/someone/my $hirts & 100% `more` \\ "x"/xlbatch')


def test_an_entry_that_is_offered_and_stands_only_once(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    if sys.platform in ("win32", "darwin"):
        pytest.skip("these have no desktop entries")
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path))
    monkeypatch.setattr(sys, "executable", str(PROGRAM))
    assert not open_with.can_offer()  # not a program of its own
    monkeypatch.setattr(sys, "frozen", True, raising=False)
    assert open_with.can_offer()
    open_with.offer(PROGRAM)
    assert not open_with.can_offer()
    entry = tmp_path / "applications" / "xlbatch.desktop"
    command = next(line for line in entry.read_text().splitlines() if line.startswith("Exec="))
    # by the specification: \\ in the string is \, and \ before " ` $ \ in a quoted argument is only there for that sign
    assert command == r'Exec="/home/someone/my \\$hirts & 100%% \\`more\\` \\\\ \\"x\\"/xlbatch" --window %F'


@pytest.mark.parametrize("command", [open_with._exec(PROGRAM), "xlbatch --window %F"])
def test_the_entry_is_valid(tmp_path: Path, command: str) -> None:
    if not shutil.which("desktop-file-validate"):
        pytest.skip("needs desktop-file-utils")
    entry = tmp_path / "xlbatch.desktop"
    entry.write_text(open_with.desktop_entry(command), encoding="utf-8")
    done = subprocess.run(["desktop-file-validate", entry], capture_output=True, text=True, check=False)
    assert (done.returncode, done.stdout + done.stderr) == (0, "")


def test_the_property_list_of_the_application() -> None:
    file = Path(__file__).parents[2] / "build" / "mac_plist.py"
    spec = importlib.util.spec_from_file_location("mac_plist", file)
    assert spec
    assert spec.loader
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    made = plistlib.loads(plistlib.dumps(module.plist(__version__)))
    assert made["CFBundleVersion"] == __version__
    for kind in made["CFBundleDocumentTypes"]:
        assert (kind["CFBundleTypeRole"], kind["LSHandlerRank"]) == ("Viewer", "Alternate")
        assert kind["LSItemContentTypes"]
