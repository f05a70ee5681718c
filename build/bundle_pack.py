"""The part of bundle.py that runs in the environment it set up: bundle_pack.py SCRATCH."""

# mypy: disable-error-code=import-not-found
# (the modules beside a script are found when it runs)

import os
import platform
import shutil
import subprocess
import sys
import zipfile
from pathlib import Path

BUILD = Path(__file__).resolve().parent
ROOT = BUILD.parent
DIST = ROOT / "dist"
sys.path.insert(0, str(BUILD))  # the checkout is importable, and so must be what lies beside a script

from icon import make_icons  # noqa: E402
from leave_out import strip_symbols  # noqa: E402

from xlbatch import __version__  # noqa: E402
from xlbatch.blank_workbook import write_blank_workbook  # noqa: E402
from xlbatch.window.open_with import desktop_entry  # noqa: E402

SYSTEM = {"darwin": "macos", "win32": "windows"}.get(sys.platform, "linux")
QUIET = ("--noconfirm", "--log-level", "WARN")
DEFLATE_MOST = 9
BESIDE = r'sh -c "exec \\"\\$(dirname \\"\\$0\\")/xlbatch\\" --window \\"\\$@\\"" %k %F'  # wherever the folder lies


def freeze(scratch: Path) -> Path:
    """Has PyInstaller make the program; the folder or, on macOS, the application it made."""
    make_icons(scratch)
    command: list[str | Path] = [sys.executable, "-m", "PyInstaller", BUILD / "xlbatch.spec", *QUIET]
    command += ["--distpath", scratch / "made", "--workpath", scratch / "work"]
    subprocess.run(command, check=True, env=os.environ | {"XLBATCH_ICONS": str(scratch)})
    made = scratch / "made" / "xlbatch"
    if SYSTEM == "linux":
        strip_symbols(made / "_internal")
    return made.with_suffix(".app") if SYSTEM == "macos" else made


def lay_out(made: Path, folder: Path) -> None:
    """Puts the program, the page to read first, and blank workbooks into the folder that people get."""
    shutil.rmtree(folder, ignore_errors=True)
    shutil.copytree(made, folder / made.name if SYSTEM == "macos" else folder, symlinks=True)
    shutil.copy(BUILD / "Read me.html", folder)
    if SYSTEM == "linux":
        (folder / "xlbatch.desktop").write_text(desktop_entry(BESIDE), encoding="utf-8")
        (folder / "xlbatch.desktop").chmod(0o755)
        shutil.copy(made / "_internal" / "xlbatch" / "icon.png", folder / "xlbatch.png")
    write_blank_workbook(folder / "Blank roster, inches.xlsx", metric=False)
    write_blank_workbook(folder / "Blank roster, centimeters.xlsx", metric=True)


def pack(folder: Path, archive: Path) -> None:
    """Zips a folder, with the links in it as links and what may be run still so."""
    with zipfile.ZipFile(archive, "w", zipfile.ZIP_DEFLATED, compresslevel=DEFLATE_MOST) as zipped:
        for file in sorted(folder.rglob("*")):
            name = str(file.relative_to(folder.parent))
            if file.is_symlink():
                link = zipfile.ZipInfo(name)
                link.create_system = 3  # Unix, whose file kinds the next line gives
                link.external_attr = 0o120777 << 16
                zipped.writestr(link, str(file.readlink()))
            elif file.is_file():
                zipped.write(file, name)


def megabytes(path: Path) -> float:
    """The size of a file, or of all files in a folder, in MB of 10^6 bytes."""
    files = [path] if path.is_file() else [each for each in path.rglob("*") if each.is_file() and not each.is_symlink()]
    return sum(each.stat().st_size for each in files) / 1e6


def main(scratch: Path) -> None:
    """Makes dist/xlbatch and dist/xlbatch-VERSION-SYSTEM-PROCESSOR.zip, and says how large they are."""
    folder = DIST / "xlbatch"
    archive = DIST / f"xlbatch-{__version__}-{SYSTEM}-{platform.machine().lower()}.zip"
    DIST.mkdir(exist_ok=True)
    lay_out(freeze(scratch), folder)
    pack(folder, archive)
    for path in (folder, archive):
        print(f"{path}: {megabytes(path):.0f} MB")


if __name__ == "__main__":
    main(Path(sys.argv[1]))
