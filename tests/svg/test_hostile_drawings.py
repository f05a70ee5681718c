"""Drawings that are broken or mean harm: refused with their reason, nothing fetched, no fault of the program."""

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.svg.test_artwork import SVG, faults, read
from xlbatch.svg.artwork import Drawing

BILLION_LAUGHS = (
    '<!DOCTYPE svg [<!ENTITY a "ha">' + "".join(
        f'<!ENTITY {new} "{f"&{old};" * 10}">' for old, new in zip("abcdefgh", "bcdefghi", strict=True)
    ) + "]><svg><title>&i;</title></svg>"
)  # fmt: skip
EXTERNAL = '<!DOCTYPE svg [<!ENTITY x SYSTEM "file:///etc/passwd">]><svg><title>&x;</title></svg>'
PARAMETER = '<!DOCTYPE svg [<!ENTITY % x SYSTEM "http://example.com/x.dtd"> %x;]><svg/>'


@pytest.mark.parametrize(
    ("data", "fault"),
    [
        (BILLION_LAUGHS, "entities"),
        (EXTERNAL, "entities"),
        (PARAMETER, "entities"),
        (BILLION_LAUGHS.encode("utf-16"), "entities"),
        ("<svg>" + "<g>" * 200, "too deep"),
        (b"\x1f\x8b\x08\x00", "compressed"),
        ('<?xml version="1.0" encoding="x-none"?><svg/>', "letters"),
        ('<?xml version="1.0" encoding="Shift_JIS"?><svg/>', "letters"),
        ('<?xml version="1.0" encoding="base64"?><svg/>', "letters"),
        (b"\x89PNG\r\n\x1a\n", "not a drawing"),
        (b"%PDF-1.7", "not a drawing"),
        (b"", "not a drawing"),
        ("<html/>", "not a drawing"),
        (f"<svg {SVG}><rect", "broken"),
        (f"<svg {SVG}>&nothing;</svg>", "broken"),
        (b"<svg>" + b" " * 5_000_001, "too large"),
        (f'<svg {SVG} width="9" height="9"><path d="M0 0{" 9 9 1 0" * 60_000}"/></svg>', "too detailed"),
        (f'<svg {SVG} width="9" height="9"><path d="{"M0 0h1v1z" * 5_001}"/></svg>', "too detailed"),
        (f'<svg {SVG} width="0" height="-5" viewBox="0 0 0 0"/>', "no size"),
    ],
)
def test_a_hostile_or_broken_file_is_refused(tmp_path: Path, data: str | bytes, fault: str) -> None:
    assert read(tmp_path, data) == (fault,)


def test_a_document_type_from_elsewhere_is_not_fetched(tmp_path: Path) -> None:
    doctype = '<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://example.com/svg11.dtd">'
    found = read(
        tmp_path, f'<?xml version="1.0"?>{doctype}<svg {SVG} viewBox="0 0 9 9"><rect width="9" height="9"/></svg>'
    )
    assert isinstance(found, Drawing)


SAMPLE = (
    f'<svg {SVG} width="9mm" height="12" viewBox="0 0 9 9"><g transform="scale(2)" style="fill:red">'
    '<path fill="#f00" d="M0 0h3v3a1 1 0 0 1-3-3z"/><rect x="1" width="5%" height="2" rx="1"/></g></svg>'
)


@settings(max_examples=300, deadline=None)
@given(st.data())
def test_no_mangled_drawing_ends_in_a_fault_of_the_program(
    tmp_path_factory: pytest.TempPathFactory, data: st.DataObject
) -> None:
    at = data.draw(st.integers(0, len(SAMPLE)))
    cut = data.draw(st.integers(0, 6))
    put = data.draw(st.text("0123456789.-+eEaAzZ<>\"'=&#(), \u00e9", max_size=6))
    read(tmp_path_factory.getbasetemp(), SAMPLE[:at] + put + SAMPLE[at + cut :])


def test_many_copies_of_copies_end(tmp_path: Path) -> None:
    """Ten levels of ten copies would be ten thousand million shapes."""
    levels = "".join(f'<g id="l{level}">' + f'<use href="#l{level - 1}"/>' * 10 + "</g>" for level in range(1, 11))
    body = f'<defs><rect id="l0" width="1" height="1"/>{levels}</defs><use href="#l10"/>'
    assert faults(tmp_path, body) == ("too detailed",)
