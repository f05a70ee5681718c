"""What the pieces of a design are called, bottom one first."""

from dataclasses import replace

from tests.art.conftest import SPEC


def test_a_border_lies_under_its_text() -> None:
    assert SPEC.pieces == ("Name",)
    assert replace(SPEC, outline_film="Gold smooth").pieces == ("Name border", "Name")
