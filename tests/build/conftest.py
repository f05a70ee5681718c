"""The scripts in build/ are no package: a script finds those beside it, and so do these tests."""

from importlib import import_module
from pathlib import Path
from types import ModuleType

import pytest

BUILD = Path(__file__).resolve().parents[2] / "build"


@pytest.fixture
def environment(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> ModuleType:
    """build/environment.py, its environments in a temporary folder."""
    monkeypatch.syspath_prepend(str(BUILD))
    module = import_module("environment")
    monkeypatch.setattr(module, "HOME", tmp_path / "home")
    return module


@pytest.fixture
def make_examples(monkeypatch: pytest.MonkeyPatch) -> ModuleType:
    """build/make_examples.py."""
    monkeypatch.syspath_prepend(str(BUILD))
    return import_module("make_examples")


@pytest.fixture
def make_mistakes(monkeypatch: pytest.MonkeyPatch) -> ModuleType:
    """build/make_mistakes.py."""
    monkeypatch.syspath_prepend(str(BUILD))
    return import_module("make_mistakes")
