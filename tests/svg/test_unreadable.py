"""What keeps a drawing from being cut is named; a mangled or hostile file is refused."""

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.drawings import SVG, drawing, faults, read
from xlbatch.svg.artwork import Drawing


@pytest.mark.parametrize(
    ("body", "fault"),
    [
        ('<image href="photo.png" width="5" height="5"/>', "image"),
        ('<image href="http://example.com/photo.png"/>', "image"),
        ('<path d="M0 0H9V9z" stroke="red" vector-effect="non-scaling-stroke"/>', "stroke"),
        ('<line x2="9" y2="9" stroke="red" stroke-linecap="pointed"/>', "stroke"),
        ('<path d="M0 0H9V9z" marker-end="url(#m)"/>', "marker"),
        ('<rect width="9" height="9" fill="url(#nowhere)"/>', "missing color"),
        ('<rect width="9" height="9" fill="url(colors.svg#red)"/>', "external"),
        ('<use href="http://example.com/shapes.svg#a"/>', "external"),
        ('<style>@import "http://example.com/a.css";</style>', "external"),
        ('<g id="a"><use href="#a"/></g>', "use"),
        ('<g id="a"><use href="#b"/></g><g id="b"><use href="#a"/></g>', "use"),
        (
            '<clipPath id="c" clip-path="url(#c)"><rect/></clipPath>'
            '<g clip-path="url(#c)"><rect width="9" height="9"/></g>',
            "clip",
        ),
        ('<switch><g requiredFeatures="x"/></switch>', "unknown"),
        ('<path d="M0 0H9#V9z"/>', "path"),
        ('<linearGradient id="g"/><rect width="9" height="9" fill="url(#g)"/>', "gradient"),
        ('<defs><pattern id="p"/></defs><rect width="9" height="9" fill="url(#p)"/>', "pattern"),
        ('<rect width="9" height="9" mask="url(#m)"/>', "mask"),
        ('<g clip-path="url(#c)"><rect width="9" height="9"/></g>', "clip"),
        ('<rect width="9" height="9" style="filter:url(#f)"/>', "filter"),
        ('<use href="#a"/>', "use"),
        ('<rect width="9" height="9" opacity=".5"/>', "see-through"),
        ('<rect width="9" height="9" fill="rgba(0,0,0,.5)"/>', "see-through"),
        ('<rect width="9" height="9" fill-opacity="50%"/>', "see-through"),
        ("<style>rect:any-such{fill:red}</style>", "style sheet"),
        ("<script>alert(1)</script>", "moving"),
        ("<foreignObject/>", "text box"),
        ("<blob/>", "unknown"),
        ('<rect width="9" height="9" fill="reddish"/>', "color"),
        ('<rect width="9 apples" height="9"/>', "number"),
        ('<path d="M0 0 L"/>', "path"),
        ('<path d="M0 0L1e 5L9 9z"/>', "path"),
        ('<path d="M0 0C1e20 1e20 -1e20 3 5 5z"/>', "path"),
        ('<rect width="9PX" height="9"/>', "number"),
        ('<rect style="width:9px" height="9"/>', "placed by style"),
        ('<rect width="9" height="9" style="transform:rotate(45deg)"/>', "placed by style"),
        ('<rect width="9" height="9" transform="rotate(45)" transform-origin="5 5"/>', "placed by style"),
        ('<rect width="9" height="9" style="mix-blend-mode:multiply"/>', "see-through"),
        ('<rect width="9" height="9" fill="hsla(9, 50%, 50%, .5)"/>', "see-through"),
        ('<rect width="9" height="9" clip-path="circle(5px)"/>', "clip"),
        ('<rect width="9" height="9" fill="url()"/>', "missing color"),
        ('<style>g{rect{fill:red}}</style><g><rect width="9" height="9"/></g>', "style sheet"),
        ('<style>g:has(rect){fill:red}</style><g><rect width="9" height="9"/></g>', "style sheet"),
        (f'<rect width="9" height="9" style="fill:{"(" * 9_999}"/>', "too deep"),
        ('<path d="M1e300 0 L9 9 L0 9z"/>', "path"),
        ('<g transform="rotate()"><rect width="9" height="9"/></g>', "number"),
        ("", "no ink"),
        ('<rect width="9" height="9" fill="none"/>', "no ink"),
    ],
)
def test_what_cannot_be_cut_is_named(tmp_path: Path, body: str, fault: str) -> None:
    assert faults(tmp_path, body) == (fault,)


def test_all_faults_are_named_at_once(tmp_path: Path) -> None:
    assert faults(tmp_path, '<image/><g><use href="#a"/></g><image/>') == ("image", "use")


def test_many_copies_of_copies_end(tmp_path: Path) -> None:
    """Ten levels of ten copies would be ten thousand million shapes."""
    levels = "".join(f'<g id="l{level}">' + f'<use href="#l{level - 1}"/>' * 10 + "</g>" for level in range(1, 11))
    body = f'<defs><rect id="l0" width="1" height="1"/>{levels}</defs><use href="#l10"/>'
    assert faults(tmp_path, body) == ("too detailed",)


def test_what_is_not_shown_is_no_fault(tmp_path: Path) -> None:
    unseen = '<defs><text/></defs><g display="none"><image/></g><title>x</title><linearGradient id="unused"/>'
    notes = (
        '<n:view xmlns:n="http://example.com/notes"><n:grid/></n:view><rect visibility="hidden" width="9" height="9"/>'
    )
    rect = '<rect width="9" height="9" stroke="red" stroke-width="0"/>'
    assert list(drawing(tmp_path, unseen + notes + rect).fills) == ["#000000"]


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


@settings(derandomize=True, max_examples=300, deadline=None)
@given(st.data())
def test_no_mangled_drawing_ends_in_a_fault_of_the_program(
    tmp_path_factory: pytest.TempPathFactory, data: st.DataObject
) -> None:
    at = data.draw(st.integers(0, len(SAMPLE)))
    cut = data.draw(st.integers(0, 6))
    put = data.draw(st.text("0123456789.-+eEaAzZ<>\"'=&#(), \u00e9", max_size=6))
    read(tmp_path_factory.getbasetemp(), SAMPLE[:at] + put + SAMPLE[at + cut :])
