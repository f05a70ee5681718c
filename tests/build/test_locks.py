"""The locks name every package with its version and its hashes, and nothing of where they were made."""

import re
import tomllib
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
PLAN, TEST = ROOT / "build" / "requirements.lock", ROOT / "build" / "requirements-test.lock"
BUNDLE = ROOT / "build" / "requirements-bundle.lock"
ENTRY = re.compile(
    r"([a-z0-9][a-z0-9-]*)==(\S+)(?: ; ([^\\\n]+?))? \\\n((?: {4}--hash=sha256:[0-9a-f]{64}(?: \\)?\n)+)"
)


def without_comments(lock: Path) -> str:
    return re.sub(r"^#.*\n", "", lock.read_text(encoding="utf-8"), flags=re.MULTILINE)


def entries(lock: Path) -> dict[str, str]:
    """Each package's whole entry, by name."""
    return {match[1]: match[0] for match in ENTRY.finditer(without_comments(lock))}


def named(requirements: list[str]) -> set[str]:
    return {re.split(r"[<>=\s;\[]", line, maxsplit=1)[0].lower().replace("_", "-") for line in requirements}


@pytest.mark.parametrize("lock", [PLAN, TEST, BUNDLE], ids=lambda lock: lock.name)
def test_a_lock_holds_nothing_but_versions_with_hashes(lock: Path) -> None:
    assert ENTRY.sub("", without_comments(lock)) == ""


@pytest.mark.parametrize("lock", [PLAN, TEST, BUNDLE], ids=lambda lock: lock.name)
def test_a_lock_names_no_host_and_no_folder(lock: Path) -> None:
    text = lock.read_text(encoding="utf-8").replace("python3 build/lock.py", "")
    assert not re.search(r"https?:|file:|index-url|find-links|[/@]", text)


def test_every_dependency_is_locked() -> None:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    assert named(project["dependencies"]) <= set(entries(PLAN))
    assert named(project["optional-dependencies"]["test"]) <= set(entries(TEST))
    assert named(project["optional-dependencies"]["bundle"]) <= set(entries(BUNDLE))


@pytest.mark.parametrize("lock", [TEST, BUNDLE], ids=lambda lock: lock.name)
def test_the_very_packages_people_plan_with_are_tested_and_bundled(lock: Path) -> None:
    assert entries(PLAN).items() <= entries(lock).items()
