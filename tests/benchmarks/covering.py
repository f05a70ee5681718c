"""Which tests run a line of the program: a map that coverage makes once, a file of tests at a time, and makes anew for
the files that changed. What a fixture of a whole file runs counts for every test that uses it."""

import hashlib
import json
import os
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from coverage import Coverage, CoverageData

from tests.benchmarks import warm
from tests.benchmarks.mutants import PACKAGE, Mutant

MAP = PACKAGE.parent / "dist" / "covering"
ALWAYS = ("tests/test_as_written.py",)  # small jobs, line by line: run for every change of what they run
LONGEST, LONGEST_ALWAYS = 12, 90  # s of the processor for one file: its tests after that are left out
MOST_NEAR = 3  # files of tests run for one change, where they are not in the map
NOTHING: dict[str, Any] = {"contexts": {}, "seconds": {}, "modules": {}}
LEFT_OUT = ("tests/window/", "tests/build/", "tests/benchmarks/", "tests/sheets/test_print.py",
            "tests/test_mutations.py", "tests/test_fuzz.py", "tests/test_faults.py", "tests/test_promises.py",
            "tests/test_rooms.py", "tests/test_docs.py")  # fmt: skip


class Contexts:
    """Heard by pytest: has coverage keep apart what each test runs, and what each fixture that several tests share."""

    def __init__(self, measured: Coverage, longest: float) -> None:
        self._measured, self._longest = measured, longest
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
            if sum(self.seconds.values()) > self._longest:
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


class Map:
    """What the files of tests of a copy of the tree run, made when it is asked for and kept."""

    def __init__(self, tree: Path) -> None:
        self.tree = tree
        MAP.mkdir(parents=True, exist_ok=True)
        program = tree / "xlbatch"
        self._marks = {path.relative_to(program).as_posix(): mark(path) for path in program.rglob("*.py")}
        files = [path.relative_to(tree).as_posix() for path in sorted((tree / "tests").rglob("test_*.py"))]
        self.texts = {file: (tree / file).read_text("utf-8") for file in files if not file.startswith(LEFT_OUT)}
        self._made: dict[str, Covering] = {}

    def known(self) -> list[Covering]:
        """What is in the map by now."""
        return [self.of(file) for file in self.texts if file in self._made or self._kept(file)]

    def near(self, mutant: Mutant) -> list[str]:
        """The few files likeliest to notice a change: those named after its module, or that import it."""
        name = "xlbatch." + mutant.module.removesuffix(".py").replace("/", ".")
        own, of_room = f"/test_{Path(mutant.module).stem}.py", f"tests/{mutant.room}/"
        named = [file for file, text in self.texts.items() if own in file or f"from {name} import" in text]
        return sorted(named, key=lambda file: (own not in file, not file.startswith(of_room)))[:MOST_NEAR]

    def of_room(self, mutant: Mutant) -> list[str]:
        """The other files of its room."""
        near = self.near(mutant)
        return [file for file in self.texts if file.startswith(f"tests/{mutant.room}/") and file not in near]

    def of(self, file: str) -> Covering:
        """What a file of tests runs."""
        if file not in self._made:
            known, data = self._kept(file), MAP / file.replace("/", " ")
            if not known:
                own = mark(self.tree / file)
                data.unlink(missing_ok=True)
                _kept_at(data).write_text(json.dumps(NOTHING | {"mark": own}), encoding="utf-8")
                longest = LONGEST_ALWAYS if file in ALWAYS else LONGEST
                warm.in_child(lambda: _measure(self.tree, file, data, own, self._marks, longest), 3 * longest)
                known = self._kept(file)
            self._made[file] = Covering(file, known["contexts"], known["seconds"], known["modules"], data)
        return self._made[file]

    def _kept(self, file: str) -> dict[str, Any]:
        """What was found before, of the file as it is."""
        kept = _kept_at(MAP / file.replace("/", " "))
        known: dict[str, Any] = json.loads(kept.read_text(encoding="utf-8")) if kept.exists() else {}
        return known if known.get("mark") == mark(self.tree / file) else {}


def mark(path: Path) -> str:
    return hashlib.sha256(path.read_bytes()).hexdigest()[:12]


def _kept_at(data: Path) -> Path:
    return data.with_name(f"{data.name}.json")


def _measure(tree: Path, file: str, data: Path, own: str, marks: Mapping[str, str], longest: float) -> bool:
    measured = Coverage(data_file=str(data), source=[str(tree / "xlbatch")], config_file=False)
    heard = Contexts(measured, longest)
    measured.start()
    warm.run_tests(tree, [file], heard)
    measured.stop()
    measured.save()
    told = {"mark": own, "contexts": heard.contexts, "seconds": heard.seconds, "modules": marks}
    _kept_at(data).write_text(json.dumps(told), encoding="utf-8")
    return False
