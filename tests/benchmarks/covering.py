"""Which tests run a line of the program: a map that coverage makes once, a file of tests at a time, and makes anew for
the files that changed. What a fixture of a whole file runs counts for every test that uses it."""

import hashlib
import json
import os
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import pytest
from coverage import Coverage, CoverageData

from tests.benchmarks import warm
from tests.benchmarks.mutants import PACKAGE, Mutant

MAP = PACKAGE.parent / "dist" / "covering"
LONGEST = 40  # s of the processor for one file: its tests after that are left out
LEFT_OUT = ("tests/window/", "tests/build/", "tests/benchmarks/", "tests/sheets/test_print.py",
            "tests/test_mutations.py", "tests/test_fuzz.py", "tests/test_faults.py", "tests/test_promises.py",
            "tests/test_rooms.py", "tests/test_docs.py")  # fmt: skip


class Contexts:
    """Heard by pytest: has coverage keep apart what each test runs, and what each fixture that several tests share."""

    def __init__(self, measured: Coverage) -> None:
        self._measured = measured
        self._context, self._since = "", _processor_time()
        self.seconds: dict[str, float] = {}
        self.contexts: dict[str, list[str]] = {}  # of each test that passed

    def _switch(self, context: str) -> str:
        """Ends the context before, and returns it."""
        now, before = _processor_time(), self._context
        self.seconds[before] = self.seconds.get(before, 0) + now - self._since
        self._context, self._since = context, now
        self._measured.switch_context(context)
        return before

    @pytest.hookimpl(wrapper=True)
    def pytest_runtest_protocol(self, item: pytest.Function) -> Iterator[None]:
        self._switch(item.nodeid)
        self.contexts[item.nodeid] = [item.nodeid, *_shared(item)]
        try:
            return (yield)
        finally:
            self._switch("")
            if sum(self.seconds.values()) > LONGEST:
                item.session.shouldstop = "enough of this file"

    @pytest.hookimpl(wrapper=True)
    def pytest_fixture_setup(
        self, fixturedef: pytest.FixtureDef[object], request: pytest.FixtureRequest
    ) -> Iterator[None]:
        if fixturedef.scope == "function":
            return (yield)
        before = self._switch(_name(fixturedef.argname, getattr(request, "param_index", 0)))
        try:
            return (yield)
        finally:
            self._switch(before)

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        if not report.passed:
            self.contexts.pop(report.nodeid, None)


def _shared(item: pytest.Function) -> Iterator[str]:
    indices = item.callspec.indices if hasattr(item, "callspec") else {}
    for name in item.fixturenames:
        yield _name(name, indices.get(name, 0))


def _name(fixture: str, index: int) -> str:
    return f"fixture {fixture} {index}"


def _processor_time() -> float:
    return sum(os.times()[:4])


@dataclass(frozen=True)
class Covering:
    """What the tests of one file run."""

    file: str
    contexts: Mapping[str, list[str]]  # of each test
    seconds: Mapping[str, float]  # of each context
    modules: Mapping[str, str]  # the mark of each module when the map was made
    data: Path

    def running(self, mutant: Mutant, mark: str) -> frozenset[str]:
        """The contexts that run the place; any line of its module where that has changed since, or where the place is
        run as the module is loaded."""
        by_line = self._by_line(mutant.module)
        if mutant.in_function and self.modules.get(mutant.module) == mark:
            lines: Iterable[int] = range(mutant.first, mutant.last + 1)
        else:
            lines = by_line
        return frozenset(context for line in lines for context in by_line.get(line, ()) if context)

    @cache  # noqa: B019 - as many as there are files of tests
    def _by_line(self, module: str) -> dict[int, list[str]]:
        data = CoverageData(str(self.data))
        data.read()
        paths = [path for path in data.measured_files() if path.endswith(f"/xlbatch/{module}")]
        by_line = data.contexts_by_lineno(paths[0]) if paths else {}
        data.close()
        return by_line

    def __hash__(self) -> int:
        return hash(self.file)


def mapped(tree: Path) -> list[Covering]:
    """The map for the copy of the tree, made anew where it has to be."""
    MAP.mkdir(parents=True, exist_ok=True)
    marks = {path.relative_to(tree / "xlbatch").as_posix(): mark(path) for path in (tree / "xlbatch").rglob("*.py")}
    files = [path.relative_to(tree).as_posix() for path in sorted((tree / "tests").rglob("test_*.py"))]
    return [_of_file(tree, file, marks) for file in files if not file.startswith(LEFT_OUT)]


def mark(path: Path) -> str:
    return hashlib.sha256(path.read_bytes()).hexdigest()[:12]


def _of_file(tree: Path, file: str, marks: Mapping[str, str]) -> Covering:
    data = MAP / file.replace("/", " ")
    kept = data.with_suffix(".json")
    own = mark(tree / file)
    known = json.loads(kept.read_text(encoding="utf-8")) if kept.exists() else {}
    if known.get("mark") != own:
        data.unlink(missing_ok=True)
        kept.unlink(missing_ok=True)
        warm.in_child(lambda: _measure(tree, file, data, kept, own, marks), 3 * LONGEST)
        if not kept.exists():
            kept.write_text(json.dumps({"mark": own, "contexts": {}, "seconds": {}, "modules": {}}), encoding="utf-8")
        known = json.loads(kept.read_text(encoding="utf-8"))
        print(f"{file}: {len(known['contexts'])} tests, {sum(known['seconds'].values()):.0f} s", flush=True)
    return Covering(file, known["contexts"], known["seconds"], known["modules"], data)


def _measure(tree: Path, file: str, data: Path, kept: Path, own: str, marks: Mapping[str, str]) -> bool:
    measured = Coverage(data_file=str(data), source=[str(tree / "xlbatch")], config_file=False)
    heard = Contexts(measured)
    measured.start()
    warm.run_tests(tree, [file], heard)
    measured.stop()
    measured.save()
    told = {"mark": own, "contexts": heard.contexts, "seconds": heard.seconds, "modules": marks}
    kept.write_text(json.dumps(told), encoding="utf-8")
    return False
