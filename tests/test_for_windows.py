"""What would go wrong on Windows alone, told on any system: text files in the system's own encoding, names that Windows
keeps for devices or cannot have (Python's own PureWindowsPath is the judge)."""

import ast
from collections.abc import Iterator
from pathlib import Path, PureWindowsPath

import pytest
from hypothesis import given
from hypothesis import strategies as st

from xlbatch.file_names import names_apart, plain_name, whole_name

TOP = Path(__file__).parents[1]
SOURCES = sorted(path for folder in ("xlbatch", "build") for path in (TOP / folder).rglob("*.py"))
DEVICES = ("CON", "con", "PRN", "AUX", "NUL", "COM1", "LPT9", "CON.txt", "nul .txt", "COM¹")
FORBIDDEN = '<>:"/\\|?*'  # Microsoft, "Naming Files, Paths, and Namespaces"


def without_encoding(source: str) -> Iterator[str]:
    """The calls that read or write a text file in whatever encoding the system has."""
    for node in ast.walk(ast.parse(source)):
        if not isinstance(node, ast.Call) or any(word.arg in ("encoding", None) for word in node.keywords):
            continue
        name = node.func.attr if isinstance(node.func, ast.Attribute) else getattr(node.func, "id", "")
        modes = [word.value for word in node.keywords if word.arg == "mode"] + node.args[:2]
        binary = any(isinstance(mode, ast.Constant) and "b" in str(mode.value) for mode in modes)
        of_a_module = isinstance(node.func, ast.Attribute) and isinstance(node.func.value, ast.Name) and (
            node.func.value.id in ("Image", "os", "tarfile", "zipfile")
        )  # fmt: skip
        if name in ("read_text", "write_text") or (name == "open" and not binary and not of_a_module):
            yield ast.unparse(node)


@pytest.mark.parametrize("path", SOURCES, ids=lambda path: str(path.relative_to(TOP)))
def test_every_text_file_says_its_encoding(path: Path) -> None:
    assert list(without_encoding(path.read_text(encoding="utf-8"))) == []


def test_a_text_file_without_one_is_seen() -> None:
    lines = ("path.write_text('a')", "path.read_text()", "open(path)", "path.open('w')", "path.open(mode='r')")
    for line in lines:
        assert list(without_encoding(line)) == [line]
    for line in ("path.open('rb')", "path.read_text(encoding='utf-8')", "Image.open(path)", "open(path, 'rb')"):
        assert list(without_encoding(line)) == []


def names_of(text: str) -> list[str]:
    """The names of the files that are made of a group's, a film's and a list's name."""
    plain = plain_name(text)
    return [f"message - {plain}.txt", f"01 {plain} - already mirrored.svg", f"{whole_name(text, 'Sign up')}.xlsx"]


def wrong_for_windows(name: str) -> bool:
    path = PureWindowsPath(name)
    parted = path.name != name or path.drive or set(name) & set(FORBIDDEN) or min(name) < " "
    return bool(parted) or path.is_reserved() or name.endswith((".", " ")) or len(name) > 255


@given(st.one_of(st.text(), st.sampled_from(DEVICES), st.text(alphabet='CONaux.:/\\ *?"<>|\t')))
def test_names_are_such_as_windows_takes(text: str) -> None:
    assert [name for name in names_of(text) if wrong_for_windows(name)] == []


@pytest.mark.parametrize("name", ["CON", "nul.txt", "a/b", "a\\b", "a:b", "a.", "a ", "a?", "a\tb"])
def test_a_name_that_windows_does_not_take_is_seen(name: str) -> None:
    assert wrong_for_windows(name)


@given(st.lists(st.text(alphabet="aAb/:. "), unique=True))
def test_no_two_groups_have_names_that_windows_takes_for_one(groups: list[str]) -> None:
    names = names_apart(groups, "without a group")
    assert list(names) == groups
    assert len({name.casefold() for name in names.values()}) == len(groups)
