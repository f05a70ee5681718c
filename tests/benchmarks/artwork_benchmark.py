"""How many real drawings are read, and how well they agree with resvg.

Files: `apt install librsvg2-tests` (W3C SVG 1.1; live text is taken out), and `npm pack flag-icons`, unpacked (MIT).
Run: -m tests.benchmarks.artwork_benchmark [FOLDER OF flag-icons]      exit code 1 where a goal is missed
"""

import sys
import tempfile
import time
from collections import Counter
from collections.abc import Iterable
from pathlib import Path

from tests.drawings import W3C, agreement, read_artwork, w3c_files

ALIKE = 0.98
W3C_READ, FLAGS, FLAGS_READ = 60, 200, 190
SLOWEST = 10.0  # seconds of one core for one drawing, its check by resvg among them


def report(name: str, files: Iterable[Path], goal: int) -> bool:
    """Prints how many are read and why the others are not; whether the goal is met and none is read wrongly."""
    files = list(files)
    reasons: Counter[str] = Counter()
    read, unlike, slowest = 0, 0, (0.0, "")
    for file in files:
        began = time.process_time()
        found = agreement(file)
        slowest = max(slowest, (time.process_time() - began, file.name))
        if isinstance(found, tuple):
            reasons["; ".join(found)] += 1
        elif found >= ALIKE:
            read += 1
        else:
            unlike += 1
            print(f"  {file.name}: {found:.4f}")
    met = read >= goal and not unlike and slowest[0] <= SLOWEST
    print(f"{'met' if met else 'MISSED'}: {name}: {read} of {len(files)} read and alike (goal {goal}), {unlike} unlike")
    print(f"  slowest: {slowest[1]}, {slowest[0]:.1f} s")
    for reason, times in reasons.most_common():
        print(f"  {times:4} {reason}")
    return met


def main(folders: list[str]) -> int:
    with tempfile.TemporaryDirectory() as scratch:
        met = report("W3C SVG 1.1", w3c_files(Path(scratch)), W3C_READ)
    for file in sorted(W3C.glob("*.svg")):
        read_artwork(file)  # as they are, live text among them: none crashes
    for folder in folders:
        flags = sorted(Path(folder).glob("**/4x3/*.svg"))[:FLAGS]
        met = report("flag-icons", flags, FLAGS_READ) and met
    return 0 if met else 1


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
