"""How many real drawings are read, and how well they agree with resvg.

Run: -m tests.benchmarks.artwork_benchmark [FOLDER OF SVG…]

Without a folder: the W3C SVG 1.1 files of Debian's librsvg2-tests, live text taken out. With folders, such as the 4x3
flags of the npm package flag-icons: the first 200 drawings of each.
"""

import sys
import tempfile
import time
from collections import Counter
from collections.abc import Iterable
from pathlib import Path

from tests.drawings import agreement, w3c_files

ALIKE = 0.98


def report(name: str, files: Iterable[Path]) -> None:
    read = unlike = count = 0
    reasons: Counter[str] = Counter()
    began = time.perf_counter()
    for file in files:
        count += 1
        found = agreement(file)
        if isinstance(found, tuple):
            reasons[" and ".join(found)] += 1
        elif found >= ALIKE:
            read += 1
        else:
            unlike += 1
            print(f"  {file.name}: {found:.4f}")
    print(f"{name}: {count} files, {read} read and alike, {unlike} unlike, {time.perf_counter() - began:.0f} s")
    for reason, times in reasons.most_common():
        print(f"  {times:4} {reason}")


if __name__ == "__main__":
    if len(sys.argv) == 1:
        with tempfile.TemporaryDirectory() as scratch:
            report("W3C SVG 1.1", w3c_files(Path(scratch)))
    for folder in sys.argv[1:]:
        report(folder, sorted(Path(folder).glob("*.svg"))[:200])
